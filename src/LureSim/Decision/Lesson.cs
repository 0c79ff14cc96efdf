using LureSim.Light;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;
using LureSim.Sight;

namespace LureSim.Decision;

/// <summary>Why red turns black in one water.</summary>
/// <param name="Water">The water in words.</param>
/// <param name="SecchiDepth">Secchi depth, m.</param>
/// <param name="Plate">Light x red = what is left, by depth.</param>
/// <param name="Dark">Depth at which red goes dark, by each criterion, to the eye of the lesson's fish.</param>
public sealed record RedLesson(string Water, double SecchiDepth, SpectralPlate Plate, IReadOnlyList<DarkDepth> Dark);

/// <summary>How far off the fish of a spot makes out the colours of the tackle box, and what it then sees.</summary>
/// <param name="Chart">Sighting distances by depth and colour, looking level.</param>
/// <param name="Strips">The chosen colour against the water at growing distance: level, then from below.</param>
public sealed record SightFinding(SightChart Chart, IReadOnlyList<SilhouetteStrip> Strips)
{
    private const int StripPanels = 5;

    /// <summary>Works out sight at a spot.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="colours">What was found about its colours.</param>
    /// <param name="units">Units in which the distances are round where there is room.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static SightFinding Of(Scenario scenario, ColourFinding colours, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(colours);
        LightField field = colours.Chart.Field;
        double bottom = scenario.Spot.Depth;
        double[] depths = [.. colours.Chart.Depths.Where(d => d > 0).Order()];
        SightChart chart = SightChart.Of(field, colours.Eye, ViewDirection.Level, colours.Chart.Colours, depths, BodyChoice.Of(scenario).First.ApparentSize);

        // A fish below needs water below the lure: no deeper than the middle of the water.
        double level = colours.RunningDepth, above = Math.Min(level, bottom / 2);
        LurePattern lure = LurePattern.Plain(colours.Chart.Colours[colours.Chosen]);
        return new SightFinding(chart,
        [
            Strip(ViewDirection.Level, level),
            Strip(ViewDirection.Up, above),
        ]);

        SilhouetteStrip Strip(ViewDirection direction, double depth)
        {
            // Contrast is down to a hundredth at about eight tenths of the Secchi depth (4.8/c for a black target).
            double farthest = Math.Min(0.8 * field.Water.SecchiDepth, Appearance.FarthestDistance(field, direction, depth));
            return SilhouetteStrip.Of(field, lure, direction, depth, Distances(farthest, units));
        }
    }

    // From nothing to the farthest, each about twice the one before, in round numbers.
    private static double[] Distances(double farthest, UnitSystem units)
    {
        double unit = units == UnitSystem.Us ? UnitsNet.Length.FromFeet(1).Meters : 1;
        // Short paths need finer steps to stay apart.
        double step = units == UnitSystem.Metric ? (farthest < 0.8 ? 0.05 : 0.1) : (farthest / unit < 3 ? 0.1 : 0.5);
        List<double> distances = [0];
        for (int i = StripPanels - 2; i >= 0; i--)
        {
            double exact = farthest / Math.Pow(2, i) / unit;
            double round = Math.Floor((exact / step) + 1e-9) * step;
            double distance = Math.Min(farthest, (round > 0 ? round : exact) * unit);
            if (distance > distances[^1] * 1.2)
                distances.Add(distance);
        }

        return [.. distances];
    }
}

/// <summary>A lesson in light and sight: two waters to compare, and the spot of a scenario.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Clear">Red in clear water under a high sun.</param>
/// <param name="Stained">Red in tannin-stained water under the same sun.</param>
/// <param name="Colours">The colours of the box at the spot.</param>
/// <param name="Sight">How far off they are made out.</param>
public sealed record Lesson(Scenario Scenario, RedLesson Clear, RedLesson Stained, ColourFinding Colours, SightFinding Sight)
{
    /// <summary>Elevation of the sun over the two waters, degrees: the one for which the tables of the documentation are made.</summary>
    public const double SunElevationDegrees = 60;

    // Typical of their kinds, and those of the documentation's tables: Secchi depths in m.
    private const double ClearSecchi = 15;
    private const double StainedSecchi = 3;
    private static readonly double[] FeetDepths = [0, 3, 6, 10, 20, 30];
    private static readonly double[] MetreDepths = [0, 1, 2, 3, 6, 9];

    /// <summary>Computes a lesson.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="units">Units in which depths and distances are round.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1; null for none.</param>
    /// <param name="cancellation">Stops the work between its parts.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static Lesson Of(Scenario scenario, UnitSystem units, IProgress<double>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        Spot spot = scenario.Spot;
        cancellation.ThrowIfCancellationRequested();
        ColourFinding colours = Planner.Colours(scenario, (spot.StrikeZone.Top + spot.StrikeZone.Bottom) / 2, units);
        Done(0.3);
        RedLesson clear = Red("clear water", WaterKind.ClearOcean, ClearSecchi);
        Done(0.55);
        RedLesson stained = Red("tannin-stained water", WaterKind.TanninStained, StainedSecchi);
        Done(0.8);
        SightFinding sight = SightFinding.Of(scenario, colours, units);
        Done(1);
        return new Lesson(scenario, clear, stained, colours, sight);

        RedLesson Red(string name, WaterKind kind, double secchi)
        {
            // Deep water: the bottom of the spot would end the lesson too soon.
            var field = new LightField(OpticalWater.FromSecchi(kind, secchi), Atmosphere.Illuminate(SunElevationDegrees));
            double[] depths = units == UnitSystem.Us ? [.. FeetDepths.Select(d => UnitsNet.Length.FromFeet(d).Meters)] : MetreDepths;
            return new RedLesson(name, secchi, SpectralPlate.Of(field, LureColours.Red, depths), Darkening.Of(field, LureColours.Red, colours.Eye));
        }

        void Done(double share)
        {
            progress?.Report(share);
            cancellation.ThrowIfCancellationRequested();
        }
    }
}
