using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Puts a search for a retrieve into words.</summary>
public static class SearchWords
{
    /// <summary>What came out.</summary>
    /// <param name="search">The search.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="search"/> is null.</exception>
    public static IReadOnlyList<string> Sentences(RetrieveSearch search, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(search);
        var format = new UnitFormat(units);
        RetrieveTrial best = search.Best.Best, own = search.BestOwn;
        string lure = search.Head.IsNone ? search.Body.Label : $"{format.HeadText(search.Head)} with the {search.Body.Label}";
        if (best.Score <= 0)
            return [$"No retrieve of {lure} that was tried is in the strike zone with its action on; another weight or body is needed."];

        string cast = best.Presentation.CountDown is { } count ? $"count {UnitFormat.Fixed(count, 0)}" : "let it fall to the bottom";
        return
        [
            $"{Grammar.Capital(lure)}: {best.Presentation.Name} at {format.Speed.Text(best.Presentation.RetrieveSpeed)}, {cast}: in the zone {Percent(best.Coverage.ZoneShare)} of the retrieve, "
                + $"action on {Percent(best.ActionShare)}, both at once {Percent(best.LiveZoneShare)}, {Cost(best)}.",
            $"The best of your own, {own.Presentation.Name}: in the zone {Percent(own.Coverage.ZoneShare)}, action on {Percent(own.ActionShare)}, both at once {Percent(own.LiveZoneShare)}, {Cost(own)}. "
                + (search.BeatsOwn ? "The other way is worth learning." : own.Score >= best.Score ? "Nothing better was found: keep it." : "The difference is too small to change your ways."),
            .. search.Families.Skip(1).Select(other => other.Best).Select(trial => trial.Score <= 0
                ? $"{Grammar.Capital(trial.Presentation.Name)}: never in the zone with its action on."
                : $"{Grammar.Capital(trial.Presentation.Name)} at its best: both at once {Percent(trial.LiveZoneShare)}, {Cost(trial)}."),
        ];
    }

    // What a retrieve costs beside time out of the zone.
    private static string Cost(RetrieveTrial trial)
    {
        List<string> costs = [];
        if (trial.Coverage.BottomShare >= TrialVerdicts.Noticeable) costs.Add($"{Percent(trial.Coverage.BottomShare)} on the bottom");
        if (trial.Coverage.GrassShare >= TrialVerdicts.Noticeable) costs.Add($"{Percent(trial.Coverage.GrassShare)} in the grass");
        costs.Add(trial.StrokesPerMinute >= 0.5 ? $"{UnitFormat.Fixed(trial.StrokesPerMinute, 0)} strokes of the rod a minute" : "no rod work");
        return Grammar.Join(costs);
    }

    private static string Percent(double share) => UnitFormat.Share.Text(share);
}
