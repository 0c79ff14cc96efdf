using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Decision.Trials;

/// <summary>The parts of a score, each a factor from 0 to 1.</summary>
/// <param name="Zone">Share of the retrieve in the strike zone; time with the action off counts by what the bait is worth at rest.</param>
/// <param name="Wait">What waiting for the lure to come down to the zone leaves.</param>
/// <param name="Bottom">What lying on the bottom, being dragged along it and settling there leave.</param>
/// <param name="Snag">Chance that the cast comes back without a snag.</param>
/// <param name="Grass">What time in the grass leaves.</param>
/// <param name="Bow">What the bow of the line across the current leaves.</param>
/// <param name="Feel">What a line too slack to feel a tap leaves.</param>
/// <param name="Natural">How natural the bait looks on the retrieve.</param>
public readonly record struct ScoreTerms(double Zone, double Wait, double Bottom, double Snag, double Grass, double Bow, double Feel, double Natural)
{
    /// <summary>The score: their product.</summary>
    public double Score => Zone * Wait * Bottom * Snag * Grass * Bow * Feel * Natural;
}

/// <summary>The value by which candidates are ranked.</summary>
/// <remarks>
/// Score = time in the strike zone with the action on, times what is left after waiting, bottom, snags, grass, the bow of the line, a slack line and an unnatural
/// retrieve. Every part is measured in a natural unit (<see cref="Coverage"/>) and weighed by <see cref="ScoreWeights"/>; the weights are choices of this
/// project. Over tries of uncertain inputs the mean of the scores ranks (docs/decision.md).
/// </remarks>
public static class Ranking
{
    // Distance of the zone's lower edge from the bottom within which the zone counts as lying on it (m).
    private const double OnBottomMargin = 0.1;

    // Fish at a structure strike what comes within their reach: what a cast that never comes near is still worth, and seconds within reach that are enough (s). Assumed.
    private const double FarWorth = 0.5;
    private const double NearEnough = 5;

    /// <summary>Score of a coverage, 0 to 1.</summary>
    /// <param name="coverage">Where the lure spent its time.</param>
    /// <param name="spot">The spot.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="weights">Weights; null for those of the table.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    public static double Score(Coverage coverage, Spot spot, Rig rig, ScoreWeights? weights = null) => Terms(coverage, spot, rig, weights).Score;

    /// <summary>The parts of the score of a coverage.</summary>
    /// <param name="coverage">Where the lure spent its time.</param>
    /// <param name="spot">The spot.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="weights">Weights; null for those of the table.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    public static ScoreTerms Terms(Coverage coverage, Spot spot, Rig rig, ScoreWeights? weights = null)
    {
        ArgumentNullException.ThrowIfNull(coverage);
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(rig);
        weights ??= ScoreWeights.Default;
        var natural = Naturalness.Of(rig.Body.Profile);
        if (coverage.TimeToZone is not { } wait) return default;
        BottomCost cost = weights.Of(spot.Bottom);
        double drag = cost.Drag;

        // Soft mud carries a light head and is ploughed by a heavy one.
        if (spot.Bottom == BottomKind.Mud) drag *= Math.Min(1, (rig.Head.IsNone ? rig.Body.Kind.Mass(rig.Body) : rig.Head.Mass) / weights.MudWeight);
        double cast = coverage.CastLength > 0 ? coverage.CastLength : rig.Presentation.CastLength;

        // What falls short of the fish is in their zone on the part of the way that it covers at most.
        double reach = rig.Presentation is { CastWith: null, FullCast: false } ? Math.Min(1, cast / rig.Presentation.CastLength) : 1;
        double rest = Math.Max(0, coverage.BottomShare - coverage.DragShare);
        return new ScoreTerms(
            reach * Unit(coverage.LiveZoneShare + (natural.Idle * Math.Max(0, coverage.ZoneShare - coverage.LiveZoneShare))) * Near(coverage, spot),
            1 - Math.Min(1, wait / weights.WaitLimit),
            Unit(1 - (cost.Rest * rest) - (drag * coverage.DragShare) - (cost.Settled * coverage.SettledShare)),
            Math.Exp(-((cost.SnagMetre * coverage.DraggedLength) + (cost.SnagTouch * coverage.Touches))) * (1 - coverage.StructureSnag),
            Unit(1 - (weights.Grass * coverage.GrassShare)),
            Unit(1 - (weights.Bow * Math.Min(1, coverage.DriftAcross / cast))),
            Unit(1 - (weights.Feel * (1 - coverage.FeltShare))),
            natural.Factor(rig.Presentation));
    }

    /// <summary>Whether the strike zone lies on the bottom.</summary>
    internal static bool ZoneIsOnBottom(Spot spot) => spot.StrikeZone.Bottom >= spot.Depth - OnBottomMargin;

    private static double Near(Coverage coverage, Spot spot) => spot.Structures.Any(structure => structure.Role == StructureRole.PassClose)
        ? FarWorth + ((1 - FarWorth) * Math.Min(1, coverage.NearTime / NearEnough))
        : 1;

    private static double Unit(double value) => Math.Clamp(value, 0, 1);
}
