using LureSim.Model;

namespace LureSim.Decision.Trials;

/// <summary>The value by which candidates are ranked.</summary>
/// <remarks>
/// Score = share of the retrieve in the strike zone, times what is left after time lost in grass and on the bottom, times what is left of a minute and a half
/// after waiting for the lure to come down to the zone, times what the swing across the current leaves. Over draws of uncertain inputs the mean of the
/// scores ranks (docs/decision.md). The weights are choices of this project, stated here and in the user guide.
/// </remarks>
public static class Ranking
{
    // A lure in the grass collects grass: all of that time is lost.
    private const double GrassWeight = 1.0;

    // Touching bottom costs little where the zone lies on it, more where it does not, most on shell that cuts and snags.
    private const double BottomWeightInZone = 0.15;
    private const double BottomWeightAboveBottom = 0.5;
    private const double BottomWeightShell = 0.7;

    // A line swept across by as much as the cast is long costs this share: it goes slack, and strikes are felt late.
    private const double SwingWeight = 0.25;

    // Waiting time that would cost the whole score (s).
    private const double WaitLimit = 90;

    // Distance of the zone's lower edge from the bottom within which the zone counts as lying on it (m).
    private const double OnBottomMargin = 0.1;

    /// <summary>Score of a coverage, 0 to 1.</summary>
    /// <param name="coverage">Where the lure spent its time.</param>
    /// <param name="spot">The spot.</param>
    /// <param name="castLength">Length of the cast (m), above 0.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The cast is not above 0.</exception>
    public static double Score(Coverage coverage, Spot spot, double castLength)
    {
        ArgumentNullException.ThrowIfNull(coverage);
        ArgumentNullException.ThrowIfNull(spot);
        Guard.Positive(castLength);
        if (coverage.TimeToZone is not { } wait) return 0;
        double bottomWeight = spot.Bottom == BottomKind.Shell ? BottomWeightShell
            : ZoneIsOnBottom(spot) ? BottomWeightInZone
            : BottomWeightAboveBottom;
        double score = coverage.ZoneShare
            * (1 - (GrassWeight * coverage.GrassShare))
            * (1 - (bottomWeight * coverage.BottomShare))
            * (1 - Math.Min(1, wait / WaitLimit))
            * (1 - (SwingWeight * Math.Min(1, coverage.DriftAcross / castLength)));
        return Math.Clamp(score, 0, 1);
    }

    /// <summary>Whether the strike zone lies on the bottom.</summary>
    internal static bool ZoneIsOnBottom(Spot spot) => spot.StrikeZone.Bottom >= spot.Depth - OnBottomMargin;
}
