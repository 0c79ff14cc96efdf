using System.Text.Json;
using LureSim.Cli.Hosting;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Cli;

public class TripCommandTests
{
    private static string Demo(string name) => Repository.File("scenarios", name + ".yaml");

    [Fact]
    public async Task A_trip_writes_page_numbers_and_one_document()
    {
        using var folder = new TemporaryFolder();
        CliRun run = await CliRun.Of("trip", Demo("bridge-channel"), Demo("dock-dusk"), "--out", folder.Path, "--json");
        Assert.True(run.Code == ExitCode.Ok, run.Error);
        Assert.Equal(
            ["candidates.csv", "colours.csv", "coverage.csv", "fall.csv", "trip.csv", "trip.html", "trip.json"],
            Directory.GetFiles(folder.Path).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.Equal(run.Output, File.ReadAllText(Path.Combine(folder.Path, "trip.json")));

        // The shape that others read: names and kinds, and the values that were made by hand.
        using var document = JsonDocument.Parse(run.Output);
        JsonElement result = document.RootElement.GetProperty("result");
        Assert.Equal("trip", document.RootElement.GetProperty("command").GetString());
        Assert.Equal(["title", "order", "pack", "spots", "files"], result.EnumerateObject().Select(p => p.Name));
        Assert.Equal("Trip plan, 2 spots", result.GetProperty("title").GetString());
        JsonElement line = result.GetProperty("order")[0];
        Assert.Equal(["number", "title", "weight", "body", "colour", "count_down", "retrieve", "fallback"], line.EnumerateObject().Select(p => p.Name));
        Scenario bridge = ScenarioReader.Read(Demo("bridge-channel")).Scenario!;
        Assert.Equal(1, line.GetProperty("number").GetInt32());
        Assert.Equal(bridge.Title, line.GetProperty("title").GetString());
        Assert.Equal(bridge.Tackle.JigHeads[0].Label, line.GetProperty("weight").GetString());
        Assert.Equal(new UnitFormat(UnitSystem.Us).LureText(bridge.Tackle.Bodies[0]), line.GetProperty("body").GetString());
        Assert.Equal(bridge.Presentations[0].Name, line.GetProperty("retrieve").GetString());
        Assert.Equal(["jig heads", "lures", "colors", "line"], result.GetProperty("pack").EnumerateArray().Select(p => p.GetProperty("what").GetString()));
        Assert.Equal(2, result.GetProperty("spots").GetArrayLength());
        Assert.Equal(0.75, result.GetProperty("spots")[1].GetProperty("first").GetProperty("coverage").GetProperty("zone_share").GetDouble());
        string[] rows = File.ReadAllLines(Path.Combine(folder.Path, "trip.csv"));
        Assert.StartsWith("spot,title,head,head_mass_kg,body,colour,presentation,zone_share", rows[0], StringComparison.Ordinal);
        Assert.Equal(3, rows.Length);
    }

    [Fact]
    public async Task A_mistake_in_one_scenario_stops_the_trip_before_anything_is_written()
    {
        using var folder = new TemporaryFolder();
        string bad = Path.Combine(folder.Path, "bad.yaml");
        await File.WriteAllTextAsync(bad, TestScenario.With("depth: 12 ft", "depth: 12"));
        string to = Path.Combine(folder.Path, "out");
        CliRun run = await CliRun.Of("trip", Demo("grass-flat"), bad, "--out", to);
        Assert.Equal(ExitCode.Usage, run.Code);
        Assert.Contains("bad.yaml", run.Error, StringComparison.Ordinal);
        Assert.Contains("spot.depth", run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(to));
    }

    [Fact]
    public async Task A_cancelled_trip_leaves_nothing()
    {
        using var folder = new TemporaryFolder();
        string to = Path.Combine(folder.Path, "out");
        using var stop = new CancellationTokenSource();
        var pipeline = new FakePipeline
        {
            OnPlan = (_, outcome) =>
            {
                stop.Cancel();
                return outcome;
            },
        };
        CliRun run = await CliRun.Of(pipeline, stop.Token, "trip", Demo("bridge-channel"), Demo("dock-dusk"), "--out", to);
        Assert.Equal(ExitCode.Cancelled, run.Code);
        Assert.False(Directory.Exists(to));
    }

    [Fact]
    public async Task Compare_needs_two_rigs_and_writes_its_answer()
    {
        using var folder = new TemporaryFolder();
        CliRun none = await CliRun.Of("compare", Demo("grass-flat"), "--out", folder.Path);
        Assert.Equal(ExitCode.Usage, none.Code);
        Assert.Contains("compare:", none.Error, StringComparison.Ordinal);

        string file = Path.Combine(folder.Path, "two.yaml");
        await File.WriteAllTextAsync(file, TestScenario.Text + "\ncompare:\n  - {name: mine, jig_head: 1/8 oz}\n  - {name: hers, jig_head: 1/8 oz, colour: dark purple}\n");
        CliRun run = await CliRun.Of("compare", file, "--out", Path.Combine(folder.Path, "out"), "--json");
        Assert.True(run.Code == ExitCode.Ok, run.Error);
        using var document = JsonDocument.Parse(run.Output);
        JsonElement result = document.RootElement.GetProperty("result");
        Assert.Equal(["colour"], result.GetProperty("differences").EnumerateArray().Select(d => d.GetString()));
        Assert.Equal(1, result.GetProperty("measures")[1].GetProperty("effects")[0].GetProperty("share").GetDouble());
        Assert.StartsWith("measure,first,second,difference,effect", File.ReadAllText(Path.Combine(folder.Path, "out", "compare.csv")), StringComparison.Ordinal);
    }
}
