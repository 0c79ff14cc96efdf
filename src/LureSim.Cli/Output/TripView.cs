using System.Diagnostics;
using LureSim.Cli.Hosting;
using LureSim.Decision;
using LureSim.Decision.Colours;
using LureSim.Decision.Trials;
using LureSim.Decision.Trips;
using LureSim.Report.Trips;
using LureSim.Report.Words;
using LureSim.Sight;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows a trip: a card a spot; and all its numbers as CSV.</summary>
internal static class TripView
{
    /// <summary>Prints the cards and what to pack.</summary>
    public static void Write(IAnsiConsole console, TripOutcome outcome)
    {
        console.MarkupLineInterpolated($"[bold]{outcome.Trip.Title}[/]");
        console.WriteLine();
        if (outcome.Trip.Facts is { Day: { } day } facts)
        {
            console.MarkupLineInterpolated($"{Grammar.Capital(TripWords.Total(day))}");
            Views.WriteColumns(
                console,
                "day by the clock",
                new ViewColumn("time", [.. day.Stops.Select(stop => $"{TideWords.Clock(stop.Arrive)} to {TideWords.Clock(stop.Leave)}")], false),
                [
                    new ViewColumn("spot", [.. day.Stops.Select(stop => Views.Escape(TripWords.Place(facts, stop.Spot)))], false),
                    new ViewColumn("weight", [.. day.Stops.Select(stop => Views.Escape(TripWords.Heads(facts, stop)))], false),
                    new ViewColumn("good fishing", [.. day.Stops.Select(stop => TripWords.Time(stop.Value))], true),
                ]);
            foreach (string text in TripWords.Remarks(facts))
                console.MarkupLineInterpolated($"{text}");
            console.WriteLine();
        }

        CardView.Write(console, [.. outcome.Trip.Sheets.Select(sheet => sheet.Card())]);
        console.WriteLine();
        foreach (PackingList list in outcome.Trip.Pack)
            console.MarkupLineInterpolated($"Pack {list.What}: {string.Join("; ", list.Things.Select(thing => thing.Name))}");
    }

    /// <summary>The numbers of all spots, one file a kind, the number of the spot first in every row.</summary>
    public static IReadOnlyList<OutputFile> Tables(TripOutcome outcome)
    {
        var cover = new Csv("spot", "title", "head", "head_mass_kg", "body", "colour", "presentation", "zone_share", "time_to_zone_s", "median_depth_m", "score");
        var candidates = new Csv("spot", "head", "head_mass_kg", "body", "presentation", "zone_share", "above_share", "below_share", "bottom_share", "grass_share", "time_to_zone_s", "time_to_bottom_s", "median_depth_m", "deepest_depth_m", "retrieve_time_s", "drift_across_m", "score");
        var fall = new Csv("spot", "head", "head_mass_kg", "depth_m", "slack_line_s", "tight_line_s");
        var coverage = new Csv("spot", "presentation", "head", "head_mass_kg", "speed_m_s", "zone_share", "bottom_share", "grass_share", "median_depth_m");
        var colours = new Csv("spot", "colour", "seen_from_m", "seen_from_low_m", "seen_from_high_m", "difference_to_forage_jnd", "mode");
        for (int i = 0; i < outcome.Spots.Count; i++)
        {
            Plan plan = outcome.Spots[i].Plan;
            int spot = i + 1;
            Candidate first = plan.Choice.First;
            cover.Row(spot, plan.Scenario.Title, first.Rig.Head.Label, first.Rig.Head.Mass, first.Rig.Body.Label, outcome.Trip.Lines[i].Colour, first.Rig.Presentation.Name, first.Coverage.ZoneShare, first.Coverage.TimeToZone, first.Coverage.MedianDepth, first.Score);
            foreach (Candidate c in plan.Candidates)
            {
                Coverage v = c.Coverage;
                candidates.Row(spot, c.Rig.Head.Label, c.Rig.Head.Mass, c.Rig.Body.Label, c.Rig.Presentation.Name, v.ZoneShare, v.AboveShare, v.BelowShare, v.BottomShare, v.GrassShare, v.TimeToZone, v.TimeToBottom, v.MedianDepth, v.DeepestDepth, v.RetrieveTime, v.DriftAcross, c.Score);
            }

            foreach (FallColumn column in plan.FallTable.Columns)
            {
                for (int d = 0; d < plan.FallTable.Depths.Count; d++)
                    fall.Row(spot, column.Head.Label, column.Head.Mass, plan.FallTable.Depths[d], column.SlackLineSeconds[d], column.TightLineSeconds[d]);
            }

            CoverageGrid grid = plan.Grid;
            for (int h = 0; h < grid.Heads.Count; h++)
            {
                for (int s = 0; s < grid.Speeds.Count; s++)
                    coverage.Row(spot, grid.PresentationName, grid.Heads[h].Label, grid.Heads[h].Mass, grid.Speeds[s], grid.ZoneShare[h, s], grid.BottomShare[h, s], grid.GrassShare[h, s], grid.MedianDepth[h, s]);
            }

            foreach (ColourWorth worth in plan.Colours.Advice.Colours)
                colours.Row(spot, worth.Name, worth.SeenFrom, worth.Range.Low, worth.Range.High, worth.DifferenceToForage, Mode(worth.Seen.Mode));
        }

        return
        [
            .. outcome.Trip.Day is { } day ? [OutputFile.Text("clock.csv", Clock(outcome, day))] : Array.Empty<OutputFile>(),
            OutputFile.Text("trip.csv", cover.ToString()),
            OutputFile.Text("candidates.csv", candidates.ToString()),
            OutputFile.Text("fall.csv", fall.ToString()),
            OutputFile.Text("coverage.csv", coverage.ToString()),
            OutputFile.Text("colours.csv", colours.ToString()),
        ];
    }

    private static string Clock(TripOutcome outcome, TripDay day)
    {
        var csv = new Csv("stop", "spot", "title", "arrive", "leave", "travel_h", "good_fishing_h", "from", "head", "head_mass_kg");
        for (int i = 0; i < day.Stops.Count; i++)
        {
            TripStop stop = day.Stops[i];
            foreach (HeadFrom from in stop.Heads)
                csv.Row(i + 1, stop.Spot + 1, outcome.Trip.Sheets[stop.Spot].Scenario.Title, TideWords.Clock(stop.Arrive), TideWords.Clock(stop.Leave), stop.Travel, stop.Value, TideWords.Clock(from.Hours), from.Head.Label, from.Head.Mass);
        }

        return csv.ToString();
    }

    private static string Mode(SightMode mode) => mode switch
    {
        SightMode.Reflects => "reflects",
        SightMode.Silhouettes => "silhouettes",
        SightMode.GoneDark => "gone_dark",
        SightMode.MatchesBackground => "matches_background",
        _ => throw new UnreachableException(),
    };
}
