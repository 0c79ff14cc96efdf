using LureSim.Decision.Trials;

namespace LureSim.Decision.Search;

/// <summary>The numbers of a choice over its tries: what is shown, in place of those of one run.</summary>
/// <param name="Tries">Tries; 1 where everything is known.</param>
/// <param name="ZoneShare">Share of the retrieve in the strike zone.</param>
/// <param name="LiveZoneShare">Share of the retrieve in the strike zone with the action on.</param>
/// <param name="MedianDepth">Typical depth of the retrieve (m).</param>
/// <param name="TimeToZone">Seconds from splash-down to the zone; infinite where it never gets there.</param>
/// <param name="BottomShare">Share of the retrieve in contact with the bottom.</param>
/// <param name="GrassShare">Share of the retrieve in the grass.</param>
/// <param name="DriftAcross">Greatest way across the cast (m).</param>
/// <param name="Score">Score.</param>
public sealed record TryNumbers(
    int Tries, Interval ZoneShare, Interval LiveZoneShare, Interval MedianDepth, Interval TimeToZone, Interval BottomShare, Interval GrassShare, Interval DriftAcross, Interval Score)
{
    /// <summary>Chance that a cast hangs up on a structure of the spot, 0 to 1.</summary>
    public double Snag { get; init; }

    /// <summary>Seconds within reach of a structure to pass close by.</summary>
    public Interval Near { get; init; } = new(0, 0, 0, 0);

    /// <summary>The numbers of a rig.</summary>
    /// <param name="rig">The rig with its tries.</param>
    /// <exception cref="ArgumentNullException"><paramref name="rig"/> is null.</exception>
    public static TryNumbers Of(SearchedRig rig)
    {
        ArgumentNullException.ThrowIfNull(rig);
        return Of(rig.Outcomes, rig.Scores);
    }

    /// <summary>The numbers of some runs.</summary>
    /// <param name="o">Coverage in each run, at least one.</param>
    /// <param name="scores">Score of each run.</param>
    internal static TryNumbers Of(IReadOnlyList<Coverage> o, IReadOnlyList<double> scores)
    {
        return new TryNumbers(
            o.Count,
            Interval.Of(o.Select(c => c.ZoneShare)),
            Interval.Of(o.Select(c => c.LiveZoneShare)),
            Interval.Of(o.Select(c => c.MedianDepth)),
            Interval.Of(o.Select(c => c.TimeToZone ?? double.PositiveInfinity)),
            Interval.Of(o.Select(c => c.BottomShare)),
            Interval.Of(o.Select(c => c.GrassShare)),
            Interval.Of(o.Select(c => c.DriftAcross)),
            Interval.Of(scores))
        {
            Snag = o.Count > 0 ? o.Average(c => c.StructureSnag) : 0,
            Near = Interval.Of(o.Select(c => c.NearTime)),
        };
    }
}
