using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Model;
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
        string lure = ChoiceWords.Lure(search.Head, search.Body, format);
        if (best.Score <= 0)
            return [$"No retrieve of {lure} works in the strike zone here: take another weight or lure."];

        return
        [
            $"{Grammar.Capital(lure)}: {best.Presentation.Name}. {Working(best)}, {Cost(best)}.{Spread(best)}",
            $"The best of yours, {own.Presentation.Name}: {Lower(Working(own))}, {Cost(own)}. "
                + (search.BeatsOwn ? "The other one is worth learning." : own.Score >= best.Score ? "Nothing better was found: keep it." : "Not worth changing what you do."),
            .. search.Families.Skip(1).Select(other => other.Best).Select(trial => trial.Score <= 0
                ? $"{Grammar.Capital(trial.Presentation.Name)}: never working in the strike zone."
                : $"{Grammar.Capital(trial.Presentation.Name)} at its best: working in the zone {Percent(trial.LiveZoneShare)}, {Cost(trial)}."),
        ];
    }

    private static string Working(RetrieveTrial trial) =>
        $"In the strike zone {Percent(trial.Coverage.ZoneShare)} of the retrieve, working {Percent(trial.ActionShare)} of the time, working in the zone {Percent(trial.LiveZoneShare)}";

    // The range over the tries; nothing for a single run.
    private static string Spread(RetrieveTrial trial) => trial.Numbers is { } numbers
        ? $" Over {numbers.Tries} what-if tries it is in the zone {Percent(numbers.ZoneShare.Low)} to {Percent(numbers.ZoneShare.High)} (8 times in 10)."
        : "";

    private static string Lower(string text) => char.ToLowerInvariant(text[0]) + text[1..];

    // What a retrieve costs beside time out of the zone.
    private static string Cost(RetrieveTrial trial)
    {
        List<string> costs = [];
        if (trial.Coverage.BottomShare >= TrialVerdicts.Noticeable) costs.Add($"{Percent(trial.Coverage.BottomShare)} on bottom");
        if (trial.Coverage.GrassShare >= TrialVerdicts.Noticeable) costs.Add($"{Percent(trial.Coverage.GrassShare)} in grass");
        costs.Add(Strokes(trial));
        return Grammar.Join(costs);
    }

    private static string Strokes(RetrieveTrial trial)
    {
        string number = UnitFormat.Number(trial.StrokesPerMinute, 0);
        string stroke = trial.Presentation.Moves.Any(move => move.Kind == MoveKind.Lift) ? "lift" : "twitch";
        return number == "0" ? "reel only" : $"{number} {stroke}{(number == "1" ? "" : stroke == "lift" ? "s" : "es")} a minute";
    }

    private static string Percent(double share) => UnitFormat.PercentText(share);
}
