using LureSim.Light;
using LureSim.Motion;
using LureSim.Scenarios;
using LureSim.Sight;

namespace LureSim.Decision;

/// <summary>Puts computed figures into plain sentences.</summary>
public static class Wording
{
    // Share below which a thing is not worth a clause.
    private const double Noticeable = 0.05;

    /// <summary>One sentence on what a rig does, without units.</summary>
    /// <param name="track">Its track.</param>
    /// <param name="coverage">Its coverage.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Verdict(Track track, Coverage coverage)
    {
        ArgumentNullException.ThrowIfNull(track);
        ArgumentNullException.ThrowIfNull(coverage);
        if (track.Status == SimulationStatus.Failed) return "could not be computed: " + track.Message;
        if (coverage.TimeToZone is null) return coverage.BelowShare > coverage.AboveShare ? "never in the zone: runs below it" : "never gets down to the zone";
        string zone = $"in the zone {Percent(coverage.ZoneShare)} of the retrieve";
        if (coverage.GrassShare > Noticeable) return $"drags in the grass {Percent(coverage.GrassShare)} of the retrieve, {zone}";
        if (coverage.BottomShare > 0.5) return $"plods along the bottom {Percent(coverage.BottomShare)} of the retrieve, {zone}";
        if (coverage.BottomShare > Noticeable) return $"{zone}, touching bottom {Percent(coverage.BottomShare)}";
        if (coverage.AboveShare > 0.5) return $"mostly above the zone, {zone}";
        if (coverage.BelowShare > 0.5) return $"mostly below the zone, {zone}";
        return coverage.ZoneShare >= 0.5 ? $"runs clear: {zone}" : zone;
    }

    /// <summary>Why the first choice is the first choice, with numbers.</summary>
    /// <param name="scenario">The question.</param>
    /// <param name="first">First choice.</param>
    /// <param name="fallback">Second choice, or null.</param>
    /// <param name="candidates">All candidates.</param>
    /// <param name="fall">Count-down table.</param>
    /// <param name="colours">Colours.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Reasons(
        Scenario scenario,
        Candidate first,
        Candidate? fallback,
        IReadOnlyList<Candidate> candidates,
        FallTable fall,
        ColourFinding colours,
        UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(fall);
        ArgumentNullException.ThrowIfNull(colours);
        var show = new MeasureFormatter(units);
        var reasons = new List<string>();
        StrikeZone zone = scenario.Spot.StrikeZone;
        Coverage c = first.Coverage;
        string band = $"{show.Length.Number(zone.Top)} to {show.Length.Text(zone.Bottom)}";
        if (c.TimeToZone is { } time)
        {
            reasons.Add($"{Name(first, show)} spends {Percent(c.ZoneShare)} of the retrieve in the strike zone ({band} down), at a middle depth of {show.Length.Text(c.MedianDepth)}; "
                + $"it is there {show.Seconds.Text(time)} after splash-down.");
        }
        else
        {
            reasons.Add($"No rig of this tackle box reaches the strike zone ({band} down). {Name(first, show)} comes nearest: it runs at a middle depth of {show.Length.Text(c.MedianDepth)}.");
        }

        // The neighbours by weight with the same presentation show what a step lighter or heavier would cost.
        Candidate[] same = [.. candidates.Where(x => x.Rig.Presentation == first.Rig.Presentation).OrderBy(x => x.Rig.Head.Mass)];
        int index = Array.FindIndex(same, x => x.Rig.Head == first.Rig.Head);
        if (index > 0) reasons.Add($"One step lighter, {show.HeadLabel(same[index - 1].Rig.Head)}: {same[index - 1].Verdict}.");
        if (index + 1 < same.Length) reasons.Add($"One step heavier, {show.HeadLabel(same[index + 1].Rig.Head)}: {same[index + 1].Verdict}.");
        if (fallback is not null) reasons.Add($"Second choice: {Name(fallback, show)}: {fallback.Verdict}.");
        Candidate[] never = [.. same.Where(x => x.Coverage.TimeToBottom is null)];
        if (zone.Bottom >= scenario.Spot.Depth - 0.1 && never.Length > 0 && never.Length < same.Length)
            reasons.Add($"In this current {Join(never.Select(x => show.HeadLabel(x.Rig.Head)))} {(never.Length == 1 ? "does" : "do")} not reach bottom with this presentation.");
        reasons.AddRange(ColourReasons(colours, show));
        return reasons;
    }

    /// <summary>What may go wrong with the first choice, and where the model is weak here.</summary>
    /// <param name="scenario">The question.</param>
    /// <param name="first">First choice.</param>
    /// <param name="candidates">All candidates.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Warnings(Scenario scenario, Candidate first, IReadOnlyList<Candidate> candidates, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(candidates);
        var show = new MeasureFormatter(units);
        var warnings = new List<string>();
        Coverage c = first.Coverage;
        if (c.ZoneShare < 0.35)
        {
            bool shallow = candidates.All(x => x.Coverage.BelowShare < 0.2);
            warnings.Add($"Even the best rig is in the zone only {Percent(c.ZoneShare)} of the retrieve: {(shallow ? "a heavier head, a slower retrieve or a longer count-down would keep it down" : "look at the figures before you trust the ranking")}.");
        }

        if (c.BottomShare > 0.2 && scenario.Spot.Bottom == BottomKind.Shell) warnings.Add($"It touches shell {Percent(c.BottomShare)} of the retrieve: expect snags and check the leader.");
        if (c.GrassShare > Noticeable) warnings.Add($"It is in the grass {Percent(c.GrassShare)} of the retrieve: rig it weedless.");
        if (c.DriftAcross > 0.4 * first.Rig.Presentation.CastLength)
            warnings.Add($"The current carries it up to {show.Length.Text(c.DriftAcross)} across the cast: throw up-current of the target, and mind that the line belly makes strikes hard to feel.");
        Candidate? near = candidates.Where(x => x.Rig.Head != first.Rig.Head).MaxBy(x => x.Score);
        if (near is not null && near.Score > 0.95 * first.Score && first.Score > 0)
            warnings.Add($"{show.HeadLabel(near.Rig.Head)} ({near.Rig.Presentation.Name}) scores within 5 % of it: the model cannot tell these two apart.");
        if (scenario.Spot.SunElevation < 5 * Math.PI / 180) warnings.Add("The sun is near or below the horizon: light levels change by the minute, and the colours shown are for this elevation only.");
        return warnings;
    }

    private static IEnumerable<string> ColourReasons(ColourFinding colours, MeasureFormatter show)
    {
        ColourChart here = colours.AtRunningDepth;
        string depth = show.Length.Text(colours.RunningDepth);
        LureColour bright = here.Colours[colours.Brightest], dark = here.Colours[colours.Darkest];
        yield return $"At {depth} in this water {bright.Name} is the brightest colour of the box and {dark.Name} the darkest: the first stands out lit from above, the second as a silhouette from below.";
        string[] gone = [.. Enumerable.Range(0, here.Colours.Count).Where(i => here[0, i].Word is ColourWord.NearBlack or ColourWord.Unseen).Select(i => here.Colours[i].Name)];
        if (gone.Length > 0) yield return $"Near black there: {Join(gone)}.";
        foreach (DarkDepth red in colours.RedDarkens.Where(d => d.Criterion == DarkCriterion.LuminanceAgainstWhite))
            yield return red.Depth is { } d ? $"A red lure falls to near black against white at {show.Length.Text(d)} in this water." : "A red lure does not go near black against white at any depth in this water before all light is gone.";
    }

    private static string Name(Candidate candidate, MeasureFormatter show) =>
        $"{show.HeadLabel(candidate.Rig.Head)} with the {candidate.Rig.Body.Label}, {candidate.Rig.Presentation.Name} at {show.Speed.Text(candidate.Rig.Presentation.RetrieveSpeed)},";

    private static string Join(IEnumerable<string> items)
    {
        string[] all = [.. items];
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + " and " + all[^1];
    }

    private static string Percent(double share) => FormattableString.Invariant($"{100 * share:F0} %");
}
