using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;

namespace LureSim.Decision;

/// <summary>Something that may go wrong with a choice.</summary>
public enum ChoiceWarningKind
{
    /// <summary>Even this rig is seldom in the zone, and a heavier head, a slower retrieve or a longer count-down would keep it down.</summary>
    SeldomInZoneTooHigh,

    /// <summary>Even this rig is seldom in the zone, for other reasons.</summary>
    SeldomInZone,

    /// <summary>It touches shell.</summary>
    TouchesShell,

    /// <summary>It is in the grass.</summary>
    InGrass,

    /// <summary>The current carries it across the cast.</summary>
    SweptAcross,

    /// <summary>The second choice scores about as well.</summary>
    NearTie,

    /// <summary>The sun is near or below the horizon.</summary>
    LowSun,
}

/// <summary>A warning with its figure.</summary>
/// <param name="Kind">What may go wrong.</param>
/// <param name="Value">Share of the retrieve (0 to 1), way across (m) or elevation of the sun (degrees), by the kind; 0 where there is no figure.</param>
public sealed record ChoiceWarning(ChoiceWarningKind Kind, double Value);

/// <summary>A recommendation with what speaks for and against it.</summary>
/// <param name="First">The first choice.</param>
/// <param name="Fallback">The second choice: the best candidate with another jig head, or null when there is only one head.</param>
/// <param name="Lighter">The candidate with the next lighter head, otherwise the same; null if there is none.</param>
/// <param name="Heavier">The candidate with the next heavier head, otherwise the same; null if there is none.</param>
/// <param name="NeverOnBottom">Heads that never reach the bottom fished like the first choice, light to heavy; empty where that is nothing against them, or holds for all.</param>
/// <param name="Warnings">What may go wrong with it.</param>
public sealed record Choice(
    Candidate First, Candidate? Fallback, Candidate? Lighter, Candidate? Heavier, IReadOnlyList<JigHead> NeverOnBottom, IReadOnlyList<ChoiceWarning> Warnings)
{
    // Shares of the retrieve, of the cast and of the score that are worth a warning.
    private const double SeldomInZone = 0.35;
    private const double OftenBelow = 0.2;
    private const double OftenOnShell = 0.2;
    private const double FarAcross = 0.4;
    private const double NearTie = 0.95;

    // Elevation of the sun below which light changes by the minute (degrees).
    private const double LowSunDegrees = 5;

    /// <summary>Puts a choice together.</summary>
    /// <param name="scenario">The question.</param>
    /// <param name="first">First choice.</param>
    /// <param name="fallback">Second choice, or null.</param>
    /// <param name="candidates">All candidates.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    public static Choice Of(Scenario scenario, Candidate first, Candidate? fallback, IReadOnlyList<Candidate> candidates)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(candidates);

        // The neighbours by weight with the same presentation show what a step lighter or heavier would cost.
        Candidate[] same = [.. candidates.Where(x => x.Rig.Presentation == first.Rig.Presentation && x.Rig.Body == first.Rig.Body && !x.Rig.Head.IsNone).OrderBy(x => x.Rig.Head.Mass)];
        int index = Array.FindIndex(same, x => x.Rig.Head == first.Rig.Head);
        JigHead[] never = [.. same.Where(x => x.Coverage.TimeToBottom is null).Select(x => x.Rig.Head)];
        return new Choice(
            first,
            fallback,
            index > 0 ? same[index - 1] : null,
            index >= 0 && index + 1 < same.Length ? same[index + 1] : null,
            Ranking.ZoneIsOnBottom(scenario.Spot) && never.Length < same.Length ? never : [],
            [.. WarningsOf(scenario, first, fallback, candidates)]);
    }

    private static IEnumerable<ChoiceWarning> WarningsOf(Scenario scenario, Candidate first, Candidate? fallback, IReadOnlyList<Candidate> candidates)
    {
        Coverage c = first.Coverage;
        if (c.ZoneShare < SeldomInZone)
            yield return new(candidates.All(x => x.Coverage.BelowShare < OftenBelow) ? ChoiceWarningKind.SeldomInZoneTooHigh : ChoiceWarningKind.SeldomInZone, c.ZoneShare);
        if (c.BottomShare > OftenOnShell && scenario.Spot.Bottom == BottomKind.Shell)
            yield return new(ChoiceWarningKind.TouchesShell, c.BottomShare);
        if (c.GrassShare > TrialVerdicts.Noticeable)
            yield return new(ChoiceWarningKind.InGrass, c.GrassShare);
        if (c.DriftAcross > FarAcross * first.Rig.Presentation.CastLength)
            yield return new(ChoiceWarningKind.SweptAcross, c.DriftAcross);
        if (fallback is not null && fallback.Score > NearTie * first.Score && first.Score > 0)
            yield return new(ChoiceWarningKind.NearTie, 0);
        double sun = SpotLight.SunElevationDegrees(scenario.Spot);
        if (sun < LowSunDegrees)
            yield return new(ChoiceWarningKind.LowSun, sun);
    }
}
