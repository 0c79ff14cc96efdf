using System.Text.Json.Serialization;
using LureSim.Cli.Hosting;
using LureSim.Coupling;
using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Swimming;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows a search for a retrieve.</summary>
internal static class SearchView
{
    /// <summary>Prints the answer and the best of each kind.</summary>
    public static void Write(IAnsiConsole console, RetrieveSearch search, UnitFormat units)
    {
        console.MarkupLineInterpolated($"[bold]{search.Scenario.Title}[/]");
        foreach (string sentence in SearchWords.Sentences(search, units.System))
            console.MarkupLineInterpolated($"- {sentence}");
        RetrieveTrial[] rows = [.. search.Families.Select(f => f.Best), .. search.Own.OrderByDescending(t => t.Score)];
        Views.WriteColumns(
            console,
            "the best of each kind, then yours",
            new ViewColumn("retrieve", [.. rows.Select(t => Views.Escape(t.Family is null ? $"yours: {t.Presentation.Name}" : t.Presentation.Name))], false),
            [
                new ViewColumn($"speed ({units.Speed.Symbol})", [.. rows.Select(t => units.Speed.Number(t.Presentation.RetrieveSpeed))], true),
                new ViewColumn("count (s)", [.. rows.Select(t => t.Presentation.CountDown is { } count ? UnitFormat.Seconds.Number(count) : "to bottom")], true),
                new ViewColumn("in zone", [.. rows.Select(t => UnitFormat.Share.Text(t.Coverage.ZoneShare))], true),
                new ViewColumn("working", [.. rows.Select(t => UnitFormat.Share.Text(t.ActionShare))], true),
                new ViewColumn("working in zone", [.. rows.Select(t => UnitFormat.Share.Text(t.LiveZoneShare))], true),
                new ViewColumn("on bottom", [.. rows.Select(t => UnitFormat.Share.Text(t.Coverage.BottomShare))], true),
                new ViewColumn("twitches or lifts/min", [.. rows.Select(t => UnitFormat.Fixed(t.StrokesPerMinute, 0))], true),
                new ViewColumn("score", [.. rows.Select(t => UnitFormat.Fixed(100 * t.Score, 0))], true),
            ]);
    }

    /// <summary>All that was tried as CSV, one row a retrieve: the best of each kind, the scenario's own, then the rest in order.</summary>
    public static string ToCsv(RetrieveSearch search)
    {
        var csv = new Csv("kind", "role", "retrieve_speed_m_s", "count_down_s", "reel_for_s", "pause_s", "rod_height_m", "zone_share", "action_share", "live_zone_share", "bottom_share", "grass_share", "time_to_zone_s", "strokes_per_minute", "retrieve_time_s", "score");
        foreach (FamilyResult family in search.Families) Row(family.Best, "best");
        foreach (RetrieveTrial own in search.Own) Row(own, "own");
        foreach (RetrieveTrial trial in search.Families.SelectMany(f => f.Tried)) Row(trial, "tried");
        return csv.ToString();

        void Row(RetrieveTrial t, string role) => csv.Row(
            t.Presentation.Name, role, t.Presentation.RetrieveSpeed, t.Presentation.CountDown, Of(t, MoveKind.Reel)?.Duration, Of(t, MoveKind.Pause)?.Duration, RodHeight(t),
            t.Coverage.ZoneShare, t.ActionShare, t.LiveZoneShare, t.Coverage.BottomShare, t.Coverage.GrassShare, t.Coverage.TimeToZone, t.StrokesPerMinute, t.Coverage.RetrieveTime, t.Score);
    }

    /// <summary>The first move of a kind; null where there is none.</summary>
    internal static Move? Of(RetrieveTrial trial, MoveKind kind) => trial.Presentation.Moves.FirstOrDefault(move => move.Kind == kind);

    /// <summary>Travel of the rod tip (m); null where the rod rests.</summary>
    internal static double? RodHeight(RetrieveTrial trial) => (Of(trial, MoveKind.Twitch) ?? Of(trial, MoveKind.Lift))?.Travel;
}

/// <summary>A search in JSON.</summary>
internal sealed record SearchJson(
    string Title,
    HeadJson Head,
    string Body,
    IReadOnlyList<string> Sentences,
    bool BeatsOwn,
    IReadOnlyList<SearchJson.Trial> Best,
    IReadOnlyList<SearchJson.Trial> Own,
    IReadOnlyList<SearchJson.Trial> Tried,
    SearchJson.Table Action)
{
    public static SearchJson Of(SearchOutcome outcome)
    {
        RetrieveSearch search = outcome.Search;
        return new(
            search.Scenario.Title,
            HeadJson.Of(search.Head),
            search.Body.Label,
            SearchWords.Sentences(search, outcome.Units),
            search.BeatsOwn,
            [.. search.Families.Select(f => Of(f.Best))],
            [.. search.Own.Select(Of)],
            [.. search.Families.SelectMany(f => f.Tried).Select(Of)],
            new Table(
                ActionTable.Speeds,
                [.. search.Action.SteadyReports.Select(r => r.Verdict)],
                ActionTable.TwitchTravels,
                [.. search.Action.TwitchedReports.Select(r => r.Verdict)],
                search.Action.FallReport.Verdict));
    }

    private static Trial Of(RetrieveTrial t) => new(
        t.Presentation.Name,
        t.Presentation.RetrieveSpeed,
        t.Presentation.CountDown,
        SearchView.Of(t, MoveKind.Reel)?.Duration,
        SearchView.Of(t, MoveKind.Pause)?.Duration,
        SearchView.RodHeight(t),
        t.ActionShare,
        t.LiveZoneShare,
        t.StrokesPerMinute,
        t.Score,
        CoverageJson.Of(t.Coverage));

    internal sealed record Trial(
        string Retrieve,
        [property: JsonPropertyName("retrieve_speed_m_s")] double RetrieveSpeed,
        [property: JsonPropertyName("count_down_s")] double? CountDown,
        [property: JsonPropertyName("reel_for_s")] double? ReelFor,
        [property: JsonPropertyName("pause_s")] double? Pause,
        [property: JsonPropertyName("rod_height_m")] double? RodHeight,
        double ActionShare,
        double LiveZoneShare,
        double StrokesPerMinute,
        double Score,
        CoverageJson Coverage);

    internal sealed record Table(
        [property: JsonPropertyName("speeds_m_s")] IReadOnlyList<double> Speeds,
        IReadOnlyList<ActionVerdict> Steady,
        [property: JsonPropertyName("twitch_travels_m")] IReadOnlyList<double> TwitchTravels,
        IReadOnlyList<ActionVerdict> Twitched,
        ActionVerdict Fall);
}
