using LureSim.Light;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Sight;
using LureSim.Units;

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
        return coverage.ZoneShare >= 0.5 ? $"runs clear, {zone}" : zone;
    }

    /// <summary>Why the first choice is the first choice, with numbers.</summary>
    /// <param name="scenario">The question.</param>
    /// <param name="first">First choice.</param>
    /// <param name="fallback">Second choice, or null.</param>
    /// <param name="candidates">All candidates.</param>
    /// <param name="colours">Colours.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Reasons(
        Scenario scenario,
        Candidate first,
        Candidate? fallback,
        IReadOnlyList<Candidate> candidates,
        ColourFinding colours,
        UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(colours);
        var show = new MeasureFormatter(units);
        var reasons = new List<string>();
        StrikeZone zone = scenario.Spot.StrikeZone;
        Coverage c = first.Coverage;
        string band = $"{show.Length.Number(zone.Top)} to {show.Length.Text(zone.Bottom)}";
        if (c.TimeToZone is { } time)
        {
            reasons.Add($"{Capital(Name(first, show))} spends {Percent(c.ZoneShare)} of the retrieve in the strike zone ({band} down), at a middle depth of {show.Length.Text(c.MedianDepth)}; "
                + $"it is there {MeasureFormatter.Counted(time)} s after splash-down.");
        }
        else
        {
            reasons.Add($"No rig of this tackle box reaches the strike zone ({band} down). {Capital(Name(first, show))} comes nearest: it runs at a middle depth of {show.Length.Text(c.MedianDepth)}.");
        }

        // The neighbours by weight with the same presentation show what a step lighter or heavier would cost.
        Candidate[] same = [.. candidates.Where(x => x.Rig.Presentation == first.Rig.Presentation && x.Rig.Body == first.Rig.Body && !x.Rig.Head.IsNone).OrderBy(x => x.Rig.Head.Mass)];
        int index = Array.FindIndex(same, x => x.Rig.Head == first.Rig.Head);
        if (index > 0) reasons.Add($"One step lighter, {show.HeadLabel(same[index - 1].Rig.Head)}: {same[index - 1].Verdict}.");
        if (index >= 0 && index + 1 < same.Length) reasons.Add($"One step heavier, {show.HeadLabel(same[index + 1].Rig.Head)}: {same[index + 1].Verdict}.");
        if (fallback is not null) reasons.Add($"Second choice: {Name(fallback, show)}: {fallback.Verdict}.");
        Candidate[] never = [.. same.Where(x => x.Coverage.TimeToBottom is null)];
        if (Ranking.ZoneIsOnBottom(scenario.Spot) && never.Length > 0 && never.Length < same.Length)
            reasons.Add($"In this current {Join(never.Select(x => show.HeadLabel(x.Rig.Head)))} {(never.Length == 1 ? "does" : "do")} not reach bottom with this presentation.");
        if (colours.Advice is { } advice)
            reasons.AddRange(ColourWording.Sentences(advice, colours.Eye.CommonName, units));
        reasons.AddRange(ColourReasons(colours, show));
        return reasons;
    }

    /// <summary>What may go wrong with the first choice, and where the model is weak here.</summary>
    /// <param name="scenario">The question.</param>
    /// <param name="first">First choice.</param>
    /// <param name="fallback">Second choice, or null.</param>
    /// <param name="candidates">All candidates.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Warnings(Scenario scenario, Candidate first, Candidate? fallback, IReadOnlyList<Candidate> candidates, UnitSystem units)
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
        if (fallback is not null && fallback.Score > 0.95 * first.Score && first.Score > 0)
            warnings.Add($"{show.HeadLabel(fallback.Rig.Head)} ({fallback.Rig.Presentation.Name}) scores within 5 % of it: the model cannot tell these two apart.");
        if (SpotLight.SunElevationDegrees(scenario.Spot) < 5)
            warnings.Add($"The sun is near or below the horizon: light levels change by the minute, and the colours shown are for this {(scenario.Spot.Sky is SkyByClock ? "moment" : "elevation")} only.");
        return warnings;
    }

    /// <summary>A part of the day in words.</summary>
    /// <param name="regime">The part.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no part of the day.</exception>
    public static string Regime(LightRegime regime) => regime switch
    {
        LightRegime.Day => "Day",
        LightRegime.LowSun => "Low sun",
        LightRegime.Twilight => "Twilight",
        LightRegime.Night => "Night",
        _ => throw new ArgumentOutOfRangeException(nameof(regime), regime, "Not a part of the day."),
    };

    private static IEnumerable<string> ColourReasons(ColourFinding colours, MeasureFormatter show)
    {
        ColourChart here = colours.AtRunningDepth;
        string depth = show.Length.Text(colours.RunningDepth);
        Sighting first = colours.SeenLevel[0];
        string fish = $"{Article(colours.Eye.CommonName)}{(colours.Eye.Basis == EyeBasis.StandIn ? " (by a stand-in eye)" : "")}";
        if (first.Distance > 0)
        {
            IEnumerable<string> next = colours.SeenLevel.Skip(1).Take(2).Where(x => x.Distance > 0).Select(x => $"{x.Name} {show.Length.Text(x.Distance)}");
            string others = string.Join(", ", next);
            string end = colours.SeenLevel[^1] is { } last && last != first
                ? last.Distance > 0 ? $"; {last.Name} is made out last, at {show.Length.Text(last.Distance)}" : $"; {last.Name} is not made out at all"
                : "";
            yield return $"At {depth}, looking level, {fish} makes out {first.Name} farthest, {How(first)}: {show.Length.Text(first.Distance)}{(others.Length > 0 ? $" (then {others})" : "")}{end}.";
        }
        else
        {
            yield return $"At {depth} {fish} makes out no colour of this box by sight, looking level.";
        }

        if (colours.SeenFromBelow[0].Distance > 0)
            yield return $"From below every lure is darker than the light above it; {colours.SeenFromBelow[0].Name} makes the strongest silhouette.";
        string[] gone = [.. Enumerable.Range(0, here.Colours.Count).Where(i => here[0, i].Word is ColourWord.NearBlack or ColourWord.Unseen).Select(i => here.Colours[i].Name)];
        if (gone.Length > 0) yield return $"To a person's eye {Join(gone)} {(gone.Length == 1 ? "is" : "are")} near black there.";

        // Deeper than the spot nothing can be shown: the chart ends at the bottom.
        double bottom = colours.Chart.Depths.Max();
        string[] deeper = [.. colours.RedDarkens.Where(d => d.Depth > bottom).Select(d => Criterion(d.Criterion))];
        string[] dark = [.. colours.RedDarkens.Where(d => d.Depth <= bottom).Select(d => $"{Criterion(d.Criterion)} {(d.Depth < 0.01 ? "from the surface on" : $"at {show.Length.Text(d.Depth!.Value)}")}")];
        string[] never = [.. colours.RedDarkens.Where(d => d.Depth is null).Select(d => Criterion(d.Criterion))];
        if (dark.Length == 0)
        {
            string until = deeper.Length == 0 ? "before all light is gone" : never.Length == 0 ? "before the bottom" : "before the bottom, or before all light is gone";
            yield return $"Red does not go dark in this water {until}.";
            yield break;
        }

        yield return $"Red goes dark in this water {Join(dark)}"
            + (deeper.Length > 0 ? $"; {Join(deeper)} not before the bottom" : "")
            + (never.Length > 0 ? $"; {Join(never)} not before all light is gone" : "") + ".";
    }

    private static string How(Sighting sighting) => sighting.Mode switch
    {
        SightMode.Reflects => sighting.Channel == SightChannel.ConeColour ? "by its colour" : "as a bright shape",
        SightMode.MatchesBackground => "by its colour",
        _ => "as a dark shape",
    };

    private static string Criterion(DarkCriterion criterion) => criterion switch
    {
        DarkCriterion.LuminanceAgainstWhite => "to a person beside white",
        DarkCriterion.Chroma => "in hue",
        DarkCriterion.ContrastToWater => "against the water behind it",
        _ => "to the cones of the fish",
    };

    internal static string Article(string name) => "aeiou".Contains(name[0], StringComparison.OrdinalIgnoreCase) ? $"an {name}" : $"a {name}";

    private static string Name(Candidate candidate, MeasureFormatter show) =>
        $"{(candidate.Rig.Head.IsNone ? candidate.Rig.Body.Label : $"{show.HeadLabel(candidate.Rig.Head)} with the {candidate.Rig.Body.Label}")}, {candidate.Rig.Presentation.Name}{(candidate.Rig.Presentation.RetrieveSpeed > 0 ? $" at {show.Speed.Text(candidate.Rig.Presentation.RetrieveSpeed)}" : "")}";

    internal static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    internal static string Join(IEnumerable<string> items, string last = "and")
    {
        string[] all = [.. items];
        return all.Length < 2 ? string.Concat(all) : string.Join(", ", all[..^1]) + $" {last} " + all[^1];
    }

    internal static string Percent(double share) => FormattableString.Invariant($"{100 * share:F0} %");
}
