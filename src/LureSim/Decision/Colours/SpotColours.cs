using System.Diagnostics;
using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Decision.Colours;

/// <summary>The colours of a tackle box in the water of its spot.</summary>
public static class SpotColours
{
    /// <summary>Colours of the tackle box against depth at the spot, and the choice among them at one depth, for the body of the rules.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="runningDepth">Depth at which the lure runs (m), 0 to the depth of the spot.</param>
    /// <param name="scale">Lengths in which the depth rows are round.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The depth is outside the water.</exception>
    /// <exception cref="ArgumentException">The target fish or a colour is unknown.</exception>
    public static ColourFinding At(Scenario scenario, double runningDepth, LengthScale scale)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return At(scenario, BodyChoice.Of(scenario).First, [new RunningDepth(runningDepth, 1)], runningDepth, scale);
    }

    /// <summary>The same for a body at the depths at which it ran.</summary>
    internal static ColourFinding At(Scenario scenario, LureBody body, IReadOnlyList<RunningDepth> depths, double runningDepth, LengthScale scale, ParallelOptions? parallel = null)
    {
        Guard.InRange(runningDepth, 0, scenario.Spot.Depth);
        FishEye eye = Eye(scenario);
        ColourChart chart = Chart(scenario, scale);
        LightField field = chart.Field;
        return new ColourFinding(
            chart,
            runningDepth,
            ColourChart.Of(field, chart.Colours, [runningDepth]),
            Darkening.Of(field, LureColours.Red, eye),
            ColourAdvice.Of(scenario, body, depths, field, eye, Lures(scenario.Tackle), SightSpread.DefaultSamples, parallel),
            eye);
    }

    /// <summary>Colours of the tackle box against depth at the spot, from the surface to the bottom, without what a fish makes of them.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="scale">Lengths in which the depth rows are round.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">A colour is unknown.</exception>
    public static ColourChart Chart(Scenario scenario, LengthScale scale)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(scale);
        Spot spot = scenario.Spot;
        return ColourChart.Of(Field(spot), Of(scenario.Tackle), [0, .. scale.Depths(spot.Depth)]);
    }

    /// <summary>The colours of a box: by name or screen colour, then the measured ones.</summary>
    /// <param name="tackle">The box.</param>
    internal static IReadOnlyList<LureColour> Of(TackleBox tackle) =>
        [.. tackle.Colours.Select(Colour), .. tackle.MeasuredColours.Select(measured => LureColour.FromTable(measured.Name, measured.WavelengthsNm, measured.Reflectances))];

    /// <summary>What can be chosen of a box: its colours, then its lures of several colours.</summary>
    /// <param name="tackle">The box.</param>
    internal static IReadOnlyList<LurePattern> Lures(TackleBox tackle) => [.. Of(tackle).Select(LurePattern.Plain), .. Patterns(tackle)];

    /// <summary>The depths at which the parts of the lures of several colours can no longer be told apart at the spot.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="field">Light in the water.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">A colour or the fish is unknown.</exception>
    public static IReadOnlyList<PatternParts> Patterns(Scenario scenario, LightField field)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(field);
        FishEye eye = Eye(scenario);
        return [.. Patterns(scenario.Tackle).Select(pattern => PatternParts.Of(field, pattern, eye, scenario.Spot.Depth))];
    }

    private static IEnumerable<LurePattern> Patterns(TackleBox tackle)
    {
        IReadOnlyList<LureColour> own = Of(tackle);
        return tackle.Patterns.Select(pattern => new LurePattern(pattern.Name, Find(pattern.Back), Find(pattern.Side), Find(pattern.Belly), Eye: pattern.Eye is { } name ? Find(name) : null));

        LureColour Find(string name) => own.FirstOrDefault(colour => colour.Name == name) ?? Colour(name);
    }

    private static FishEye Eye(Scenario scenario) => FishEyes.TryFind(scenario.Spot.TargetFish, out FishEye? eye)
        ? eye
        : throw new ArgumentException($"There is no eye for the target fish '{scenario.Spot.TargetFish}'.", nameof(scenario));

    /// <summary>Light in the water of a spot.</summary>
    /// <param name="spot">The spot.</param>
    internal static LightField Field(Spot spot) => new(SpotLight.Water(spot), SpotLight.Surface(spot), SeaBed.Of(Bed(spot), spot.Depth));

    private static SeaBedKind Bed(Spot spot) => spot switch
    {
        { GrassHeight: > 0 } => SeaBedKind.Grass,
        { Bottom: BottomKind.Mud } => SeaBedKind.Mud,
        { Bottom: BottomKind.Shell or BottomKind.Hard } => SeaBedKind.Shell,
        { Bottom: BottomKind.Sand } => SeaBedKind.Sand,
        _ => throw new UnreachableException(),
    };

    /// <summary>The colour of a name of the tackle box.</summary>
    /// <param name="name">Preset name or hex colour.</param>
    /// <exception cref="ArgumentException">There is no such colour.</exception>
    internal static LureColour Colour(string name)
    {
        if (LureColours.TryFind(name, out LureColour? colour)) return colour;
        if (name.StartsWith('#')) return LureColour.FromHex(name, name);
        throw new ArgumentException($"There is no colour '{name}'.", nameof(name));
    }
}
