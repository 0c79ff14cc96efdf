namespace LureSim.Decision.Trials;

/// <summary>Where one track spent its time; shares are of the retrieve (from the first turn of the handle to the end), 0 to 1.</summary>
/// <param name="ZoneShare">Share of the retrieve inside the strike zone.</param>
/// <param name="AboveShare">Share above the zone.</param>
/// <param name="BelowShare">Share below the zone.</param>
/// <param name="BottomShare">Share in contact with the bottom; nearer than the length of a hook counts.</param>
/// <param name="GrassShare">Share inside the grass canopy.</param>
/// <param name="TimeToZone">Seconds from splash-down to the first entry into the zone; null if it never gets there.</param>
/// <param name="TimeToBottom">Seconds from splash-down to the first bottom contact; null if it never gets there.</param>
/// <param name="MedianDepth">Median depth during the retrieve (m).</param>
/// <param name="DeepestDepth">Greatest depth (m).</param>
/// <param name="RetrieveTime">Duration of the retrieve (s).</param>
/// <param name="DriftAcross">Greatest sideways displacement by the current (m).</param>
public sealed record Coverage(
    double ZoneShare,
    double AboveShare,
    double BelowShare,
    double BottomShare,
    double GrassShare,
    double? TimeToZone,
    double? TimeToBottom,
    double MedianDepth,
    double DeepestDepth,
    double RetrieveTime,
    double DriftAcross)
{
    /// <summary>Share of the retrieve inside the strike zone with the action on, 0 to <see cref="ZoneShare"/>; all of it where the action was not judged.</summary>
    public double LiveZoneShare { get; init; } = ZoneShare;

    /// <summary>Length of the cast (m), which is the lure's own where the scenario gives it by weight; 0 where it was not measured.</summary>
    public double CastLength { get; init; }

    /// <summary>Share of the retrieve dragged along the bottom, 0 to <see cref="BottomShare"/>: in contact and moving.</summary>
    public double DragShare { get; init; }

    /// <summary>Share of the retrieve on the bottom after the first seconds of each stay there (<see cref="ScoreWeights.SettleTime"/>), lying or dragged, 0 to <see cref="BottomShare"/>.</summary>
    public double SettledShare { get; init; }

    /// <summary>Way along the bottom in contact with it (m).</summary>
    public double DraggedLength { get; init; }

    /// <summary>Chance that lure or line hangs up on a structure of the spot, 0 to 1, over the directions that a cast takes; 0 where there is none.</summary>
    public double StructureSnag { get; init; }

    /// <summary>Seconds within reach of a structure that the lure is to pass close by, over the directions that a cast takes.</summary>
    public double NearTime { get; init; }

    /// <summary>Share of the retrieve in the shade of a structure, 0 to 1.</summary>
    public double ShadeShare { get; init; }

    /// <summary>How often the lure comes down on the bottom.</summary>
    public int Touches { get; init; }

    /// <summary>Share of the retrieve in which a tap on the lure can be felt, 0 to 1; a pull below the one that is needed counts in proportion.</summary>
    public double FeltShare { get; init; } = 1;

    /// <summary>The typical figures of some runs: the median of each; null times where half of the runs or more never get there.</summary>
    /// <param name="runs">Runs, at least one.</param>
    internal static Coverage Typical(IReadOnlyList<Coverage> runs)
    {
        return new Coverage(
            Median(c => c.ZoneShare),
            Median(c => c.AboveShare),
            Median(c => c.BelowShare),
            Median(c => c.BottomShare),
            Median(c => c.GrassShare),
            Time(c => c.TimeToZone),
            Time(c => c.TimeToBottom),
            Median(c => c.MedianDepth),
            Median(c => c.DeepestDepth),
            Median(c => c.RetrieveTime),
            Median(c => c.DriftAcross))
        {
            LiveZoneShare = Median(c => c.LiveZoneShare),
            DragShare = Median(c => c.DragShare),
            SettledShare = Median(c => c.SettledShare),
            DraggedLength = Median(c => c.DraggedLength),
            Touches = (int)Median(c => c.Touches),
            FeltShare = Median(c => c.FeltShare),
        };

        double Median(Func<Coverage, double> figure) => Interval.Of(runs.Select(figure)).Median;

        double? Time(Func<Coverage, double?> figure) => Median(c => figure(c) ?? double.PositiveInfinity) is var time && double.IsFinite(time) ? time : null;
    }
}
