using System.Text.Json;
using LureSim.Cli;
using LureSim.Cli.Commands;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Stepping;
using LureSim.Tests.Scenarios;
using Spectre.Console.Testing;

namespace LureSim.Tests.Cli;

public sealed class CommandLineTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly string valid;
    private readonly string invalid;

    public CommandLineTests()
    {
        valid = folder.Write("valid.yaml", TestScenario.Text);
        invalid = folder.Write("invalid.yaml", TestScenario.With("depth: 12 ft", "depth: 12").Replace("bottom: shell", "botom: shell", StringComparison.Ordinal));
    }

    public void Dispose() => folder.Dispose();

    private string Out => Path.Combine(folder.Path, "results");

    [Theory]
    [InlineData("--help")]
    [InlineData("plan", "--help")]
    [InlineData("fall", "--help")]
    [InlineData("path", "-h")]
    [InlineData("ask", "--help")]
    [InlineData("tide", "--help")]
    [InlineData("retrieve", "--help")]
    [InlineData("colours", "--help")]
    [InlineData("teach", "--help")]
    [InlineData("action", "--help")]
    [InlineData("check", "--help")]
    [InlineData("schema", "--help")]
    [InlineData("completion", "--help")]
    [InlineData("new", "--help")]
    public async Task Help_shows_usage_and_examples(params string[] arguments)
    {
        CliRun run = await CliRun.Of(arguments);
        Assert.Equal(0, run.Code);
        Assert.Contains("USAGE:", run.Output, StringComparison.Ordinal);
        Assert.Contains("EXAMPLES:", run.Output, StringComparison.Ordinal);
        Assert.Empty(run.Error);
    }

    [Fact]
    public async Task Examples_with_spaces_are_shown_as_they_must_be_typed() =>
        Assert.Contains("luresim path scenarios/bridge-channel.yaml --weight \"1/2 oz\"", (await CliRun.Of("path", "--help")).Output, StringComparison.Ordinal);

    [Fact]
    public async Task The_version_is_a_plain_number() =>
        Assert.Matches("^[0-9]+\\.[0-9]+\\.[0-9]+(-[0-9a-z.]+)?\n$", (await CliRun.Of("--version")).Output);

    [Fact]
    public async Task A_valid_scenario_checks_out()
    {
        CliRun run = await CliRun.Of("check", valid);
        Assert.Equal(0, run.Code);
        Assert.Equal($"{valid}: ok, Test channel\n", run.Output);
        Assert.Empty(run.Error);
    }

    [Fact]
    public async Task Problems_of_all_files_are_reported_on_standard_error()
    {
        CliRun run = await CliRun.Of("check", valid, invalid, Path.Combine(folder.Path, "none.yaml"));
        Assert.Equal(2, run.Code);
        Assert.Equal($"{valid}: ok, Test channel\n", run.Output);
        Assert.Contains($"{invalid}: 2 problems; nothing was run.", run.Error, StringComparison.Ordinal);
        Assert.Contains($"{invalid}:6:10: spot.depth: the number has no unit (12)\n    allowed: a length with a unit", run.Error, StringComparison.Ordinal);
        Assert.Contains($"{invalid}:7:3: spot.botom: unknown key", run.Error, StringComparison.Ordinal);
        Assert.Contains("    fix: write \"bottom\"\n", run.Error, StringComparison.Ordinal);
        Assert.Contains("none.yaml:1:1: (file): there is no such file", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Check_gives_one_document_with_json()
    {
        CliRun run = await CliRun.Of("check", valid, invalid, "--json");
        Assert.Equal(2, run.Code);
        JsonElement root = JsonDocument.Parse(run.Output).RootElement;
        Assert.Equal(1, root.GetProperty("schema_version").GetInt32());
        Assert.Equal("check", root.GetProperty("command").GetString());
        Assert.Equal("invalid_scenario", root.GetProperty("status").GetString());
        Assert.Equal(2, root.GetProperty("exit_code").GetInt32());
        JsonElement files = root.GetProperty("result").GetProperty("files");
        Assert.True(files[0].GetProperty("valid").GetBoolean());
        Assert.Equal(6, files[1].GetProperty("problems")[0].GetProperty("line").GetInt32());
        Assert.Contains("ok, Test channel", run.Error, StringComparison.Ordinal);
    }

    public static TheoryData<string[]> WrongLines =>
    [
        ["chek", "a.yaml"],
        ["check"],
        ["fall"],
        ["fall", "VALID", "extra"],
        ["fall", "VALID", "--nope"],
        ["fall", "VALID", "--units"],
        ["fall", "VALID", "--units", "si"],
        ["fall", "VALID", "--units", "US"],
        ["fall", "VALID", "--csv", "--json"],
        ["fall", "VALID", "--out"],
        ["fall", "VALID", "--out", "--csv"],
        ["fall", "VALID", "--out", ""],
        ["path"],
        ["path", "VALID", "--weight"],
        ["path", "VALID", "--weight", "1/4"],
        ["path", "VALID", "--weight", "2 oz"],
        ["path", "VALID", "--weight", "1/8 oz", "--presentation", "hopp"],
        ["path", "VALID", "--weight", "1/8 oz", "--lure", "none"],
        ["path", "VALID", "--weight", "1/8 oz", "--every", "0 s"],
        ["path", "VALID", "--weight", "1/8 oz", "--every", "1"],
        ["path", "VALID", "--weight", "1/8 oz", "--every", "1 ft"],
        ["path", "VALID", "--weight", "1/8 oz", "--every", "1e999 s"],
        ["plan", "VALID", "--draws", "3"],
        ["plan", "VALID", "--samples", "-1"],
        ["plan", "VALID", "--samples", "many"],
        ["plan", "VALID", "--samples", "1.5"],
        ["trip", "VALID", "--samples=99999999999"],
        ["retrieve", "VALID", "--runs", "many"],
        ["ask", "VALID", "--depth", "3"],
        ["ask", "VALID", "--depth", "100 ft"],
        ["ask", "VALID", "--weight", "2 oz"],
        ["tide", "VALID", "--presentation", "hopp"],
        ["tide", "VALID", "--out", ""],
        ["retrieve", "VALID", "--weight", "2 oz"],
        ["retrieve", "VALID", "--lure", "paddle tial"],
        ["retrieve", "VALID", "--runs", "11"],
        ["retrieve", "VALID", "--runs", "401"],
        ["retrieve", "VALID", "--out", ""],
        ["completion"],
        ["completion", "cmd"],
        ["schema", "--out"],
        ["--nope"],
    ];

    [Theory]
    [MemberData(nameof(WrongLines))]
    public async Task A_wrong_command_line_exits_with_2_and_writes_nothing(string[] arguments)
    {
        string[] before = folder.Content();
        CliRun run = await CliRun.Of([.. arguments.Select(argument => argument == "VALID" ? valid : argument)]);
        Assert.Equal(2, run.Code);
        Assert.NotEmpty(run.Error.Trim());
        Assert.Equal(arguments.Contains("--json"), run.Output.Length > 0);
        Assert.DoesNotContain("__default_command", run.Error, StringComparison.Ordinal);
        Assert.DoesNotMatch("Nullable|Int32", run.Error);
        Assert.Equal(before, folder.Content());
        Assert.False(Directory.Exists("__default_command"));
    }

    [Theory]
    [InlineData("fall")]
    [InlineData("colours")]
    [InlineData("teach")]
    [InlineData("plan")]
    [InlineData("path", "--weight", "1/8 oz")]
    public async Task An_invalid_scenario_exits_with_2_tells_all_and_writes_nothing(string command, params string[] more)
    {
        string[] before = folder.Content();
        CliRun run = await CliRun.Of([command, invalid, "--out", Out, "--json", .. more]);
        Assert.Equal(2, run.Code);
        JsonElement root = JsonDocument.Parse(run.Output).RootElement;
        Assert.Equal("invalid_scenario", root.GetProperty("status").GetString());
        Assert.Equal(command, root.GetProperty("command").GetString());
        Assert.Equal(2, root.GetProperty("problems").GetArrayLength());
        Assert.Contains("spot.botom", run.Error, StringComparison.Ordinal);
        Assert.Equal(before, folder.Content());
    }

    [Fact]
    public async Task A_usage_error_names_the_option_and_the_help_to_read()
    {
        Assert.Equal("--samples needs a whole number; \"many\" is none.\n", (await CliRun.Of("plan", valid, "--samples", "many")).Error);
        Assert.EndsWith("See luresim path --help.\n", (await CliRun.Of("path")).Error, StringComparison.Ordinal);
        Assert.EndsWith("See luresim --help.\n", (await CliRun.Of("pln", valid)).Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_usage_error_with_json_is_a_document_too()
    {
        CliRun run = await CliRun.Of("fall", valid, "--nope", "--json");
        JsonElement root = JsonDocument.Parse(run.Output).RootElement;
        Assert.Equal("usage_error", root.GetProperty("status").GetString());
        Assert.Equal(JsonValueKind.Null, root.GetProperty("result").ValueKind);
        Assert.NotEmpty(root.GetProperty("message").GetString()!);
    }

    [Fact]
    public async Task A_mistyped_name_is_answered_with_the_nearest()
    {
        Assert.Contains("did you mean \"hop\"? It has: slow and steady, hop.", (await CliRun.Of("path", valid, "--weight", "1/8 oz", "--presentation", "hopp")).Error, StringComparison.Ordinal);
        Assert.Contains("did you mean \"plain stick\"?", (await CliRun.Of("path", valid, "--weight", "1/8 oz", "--lure", "plain stik")).Error, StringComparison.Ordinal);
        Assert.Contains("It has: unweighted, 1/8 oz, 1/4 oz tungsten.", (await CliRun.Of("path", valid, "--weight", "2 oz")).Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1/8 oz", "1/8 oz")]
    [InlineData("3.5 g", "1/8 oz")]
    [InlineData("1/4 oz", "1/4 oz tungsten")]
    [InlineData("1/4 oz tungsten", "1/4 oz tungsten")]
    [InlineData("unweighted", "unweighted")]
    [InlineData("weightless", "unweighted")]
    [InlineData("1/4 ounce", "1/4 oz tungsten")]
    public async Task A_head_is_found_by_weight_or_label(string weight, string label)
    {
        var pipeline = new FakePipeline();
        Assert.Equal(0, (await CliRun.Of(pipeline, CancellationToken.None, "path", valid, "--weight", weight, "--presentation", "hop", "--lure", "plain stick")).Code);
        Assert.Equal(label, pipeline.LastRig!.Head.Label);
        Assert.Equal("hop", pipeline.LastRig.Presentation.Name);
        Assert.Equal("plain stick", pipeline.LastRig.Body.Label);
    }

    [Fact]
    public async Task Heads_of_the_same_weight_must_be_told_apart()
    {
        string file = folder.Write("two.yaml", TestScenario.With("- 1/8 oz", "- 1/4 oz\n    - {weight: 1/4 oz, metal: steel}"));
        Assert.Equal(0, (await CliRun.Of("path", file, "--weight", "1/4 oz")).Code);
        CliRun run = await CliRun.Of("path", file, "--weight", "0.25 oz");
        Assert.Equal(2, run.Code);
        Assert.Contains("write one of: 1/4 oz, 1/4 oz steel, 1/4 oz tungsten", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Fall_prints_the_count_down_table()
    {
        CliRun run = await CliRun.Of("fall", valid);
        Assert.Equal(0, run.Code);
        Assert.Empty(run.Error);
        Assert.Contains("depth (ft)", run.Output, StringComparison.Ordinal);
        Assert.Contains("1/4 oz tungsten", run.Output, StringComparison.Ordinal);
        string[] lines = run.Output.Split('\n');
        Assert.Contains(lines, line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries) is ["1.0", "1.5", "0.8", "0.5"]);
        Assert.Contains(lines, line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries) is ["2.0", "-", "-", "-"]);
    }

    [Fact]
    public async Task Units_change_the_text_but_not_the_documents()
    {
        CliRun us = await CliRun.Of("fall", valid, "--json");
        var pipeline = new FakePipeline();
        CliRun metric = await CliRun.Of(pipeline, CancellationToken.None, "fall", valid, "--json", "--units", "metric");
        Assert.Equal(us.Output, metric.Output);
        Assert.Contains("depth (m)", metric.Error, StringComparison.Ordinal);
        Assert.Contains("3.5 g", metric.Error, StringComparison.Ordinal);
        Assert.Equal(UnitSystem.Metric, pipeline.LastUnits);
    }

    [Fact]
    public async Task Fall_gives_csv_and_json()
    {
        CliRun csv = await CliRun.Of("fall", valid, "--csv");
        Assert.StartsWith("head,head_mass_kg,terminal_speed_m_s,depth_m,slack_line_s,tight_line_s\nunweighted,0,0.2,0.3048,1.5,2\nunweighted,0,0.2,0.6096,3,\n", csv.Output, StringComparison.Ordinal);
        JsonElement result = JsonDocument.Parse((await CliRun.Of("fall", valid, "--json")).Output).RootElement.GetProperty("result");
        Assert.Equal(0.6096, result.GetProperty("depths_m")[1].GetDouble());
        Assert.Equal(JsonValueKind.Null, result.GetProperty("columns")[0].GetProperty("tight_line_s")[1].ValueKind);
        Assert.Equal("tungsten", result.GetProperty("columns")[2].GetProperty("head").GetProperty("metal").GetString());
    }

    [Fact]
    public async Task Path_prints_track_events_and_coverage()
    {
        CliRun run = await CliRun.Of("path", valid, "--weight", "1/8 oz", "--units", "metric");
        Assert.Equal(0, run.Code);
        string[][] rows = [.. run.Output.Split('\n').Select(line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries))];
        Assert.Contains(rows, row => row is ["0.0", "10.00", "0.00", "0.00", "0.50", "10.20", "-", "sinking"]);
        Assert.Contains(rows, row => row is ["4.0", "8.00", "0.00", "1.00", "1.00", "8.20", "0.80", "reeling,", "in", "zone"]);
        Assert.DoesNotContain(rows, row => row is ["0.5", ..]);
        Assert.Contains("enters the strike zone", run.Output, StringComparison.Ordinal);
        Assert.Contains("75% in the strike zone", run.Output, StringComparison.Ordinal);
        Assert.Contains("reaches the strike zone 2 s after it hits the water, not the bottom", run.Output, StringComparison.Ordinal);
        Assert.Contains("In the strike zone 75% of the retrieve, on bottom 10%.", run.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Path_gives_every_sample_as_csv_and_json()
    {
        string[] lines = (await CliRun.Of("path", valid, "--weight", "1/8 oz", "--csv")).Output.TrimEnd('\n').Split('\n');
        Assert.Equal(10, lines.Length);
        Assert.All(lines, line => Assert.Equal(14, line.Split(',').Length));
        Assert.Equal("0.5,10,0,0.25,0,0,-0.5,0.5,,0,0,0,10.2,sinking", lines[2]);
        Assert.EndsWith(",reeling|in_zone", lines[9], StringComparison.Ordinal);

        JsonElement track = JsonDocument.Parse((await CliRun.Of("path", valid, "--weight", "1/8 oz", "--json")).Output).RootElement.GetProperty("result").GetProperty("track");
        Assert.Equal("completed", track.GetProperty("status").GetString());
        Assert.Equal(9, track.GetProperty("time_s").GetArrayLength());
        Assert.Equal(JsonValueKind.Null, track.GetProperty("rod_tension_n")[0].ValueKind);
        Assert.Equal("in_zone", track.GetProperty("state")[8][1].GetString());
        Assert.Equal("enters_zone", track.GetProperty("events")[0].GetProperty("kind").GetString());
    }

    [Fact]
    public async Task A_numerical_failure_exits_with_3_shows_the_part_before_and_writes_nothing()
    {
        var pipeline = new FakePipeline { OnPath = candidate => candidate with { Track = HandMade.Track(SimulationStatus.Failed, new SimulationEnd(SimulationEndReason.StepTooSmall, 2.1)) } };
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, "path", valid, "--weight", "1/8 oz", "--out", Out, "--json");
        Assert.Equal(3, run.Code);
        Assert.Contains("The lure could not be followed past 2.1 s after it hits the water", run.Error, StringComparison.Ordinal);
        JsonElement document = JsonDocument.Parse(run.Output).RootElement;
        Assert.Equal("numerical_failure", document.GetProperty("status").GetString());
        Assert.Equal(9, document.GetProperty("result").GetProperty("track").GetProperty("time_s").GetArrayLength());
        Assert.False(Directory.Exists(Out));
    }

    [Theory]
    [InlineData("plan", "The computation failed: The lure could not be followed past")]
    [InlineData("trip", "Test channel: the computation failed: The lure could not be followed past")]
    public async Task A_plan_that_rests_on_a_failed_track_is_none(string command, string message)
    {
        var pipeline = new FakePipeline
        {
            OnPlan = (_, outcome) => outcome with
            {
                Plan = outcome.Plan with { Choice = outcome.Plan.Choice with { First = outcome.Plan.Choice.First with { Track = HandMade.Track(SimulationStatus.Failed, new SimulationEnd(SimulationEndReason.StepTooSmall, 2.1)) } } },
            },
        };
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, command, valid, "--out", Out);
        Assert.Equal(3, run.Code);
        Assert.Contains(message, run.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(Out));
    }

    [Fact]
    public async Task A_time_limit_is_shown_and_is_no_failure()
    {
        var pipeline = new FakePipeline { OnPath = candidate => candidate with { Track = HandMade.Track(SimulationStatus.TimeLimit, new SimulationEnd(SimulationEndReason.LineNotIn, 600)) } };
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, "path", valid, "--weight", "1/8 oz");
        Assert.Equal(0, run.Code);
        Assert.Contains("Given up after 10 minutes of retrieve: the line does not come in.", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Depths_in_quarters_of_a_foot_keep_their_digits()
    {
        var us = new UnitFormat(UnitSystem.Us);
        Assert.Equal("0.75", Views.DepthUnit(us, [0.5 * 0.3048, 0.75 * 0.3048]).Number(0.75 * 0.3048));
        Assert.Equal("2.0", Views.DepthUnit(us, [0.3048, 2 * 0.3048]).Number(2 * 0.3048));
    }

    [Theory]
    [InlineData(40, 3)]
    [InlineData(80, 1)]
    public void A_table_too_wide_for_the_console_comes_in_blocks(int width, int blocks)
    {
        using TestConsole console = new TestConsole().Width(width);
        var first = new ViewColumn("depth", ["1", "2"], true);
        Views.WriteColumns(console, "table", first, [.. Enumerable.Range(0, 6).Select(index => new ViewColumn($"column {index}", ["[red]a[/]", "b"], false))]);
        Assert.Equal(blocks, console.Lines.Count(line => line.Contains("depth", StringComparison.Ordinal)));
        Assert.All(Enumerable.Range(0, 6), index => Assert.Single(console.Lines, line => line.Contains($"column {index}", StringComparison.Ordinal)));
        Assert.All(console.Lines, line => Assert.True(line.TrimEnd().Length <= width));
        Assert.DoesNotContain("\u2026", console.Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("ask")]
    [InlineData("tide")]
    public async Task Questions_about_jig_heads_need_one(string command)
    {
        string text = TestScenario.Text;
        int from = text.IndexOf("  jig_heads:", StringComparison.Ordinal), to = text.IndexOf("  colours:", StringComparison.Ordinal);
        string hard = folder.Write("hard.yaml", text[..from] + "  bodies:\n    - {profile: hard twitchbait, length: 4 in}\n" + text[to..]);
        CliRun run = await CliRun.Of(command, hard);
        Assert.Equal(2, run.Code);
        Assert.Contains($"{hard}: your box has no jig head, and {command} is about jig heads; add \"jig_heads:\"", run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
    }

    [Fact]
    public async Task Retrieve_prints_the_best_of_each_kind_and_writes_all_that_was_tried()
    {
        var pipeline = new FakePipeline();
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, "retrieve", valid, "--weight", "1/4 oz", "--out", Out);
        Assert.Equal(0, run.Code);
        Assert.Equal("1/4 oz tungsten", pipeline.LastRig!.Head.Label);
        Assert.Contains("In the strike zone 80% of the retrieve, working 50% of the time, working in the zone 45%", run.Output, StringComparison.Ordinal);
        Assert.Contains("yours: slow and steady", run.Output, StringComparison.Ordinal);
        string[] rows = (await File.ReadAllTextAsync(Path.Combine(Out, "retrieve.csv"))).TrimEnd().Split('\n');
        Assert.Equal(1 + 4 + 2 + (4 * 9), rows.Length);
        Assert.Equal(rows[0].Split(',').Length, rows[1].Split(',').Length);
        JsonElement result = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(Out, "retrieve.json"))).RootElement.GetProperty("result");
        Assert.Equal(4, result.GetProperty("best").GetArrayLength());
        Assert.Equal(36, result.GetProperty("tried").GetArrayLength());
        Assert.True(result.GetProperty("beats_own").GetBoolean());
        Assert.Equal("swims", result.GetProperty("action").GetProperty("steady")[0].GetString());
    }

    [Fact]
    public async Task A_presentation_named_like_a_formula_is_a_text_in_every_table()
    {
        string file = folder.Write("formula.yaml", TestScenario.With("name: slow and steady", "name: \"=cmd|'/c x'!A1\""));
        Assert.Equal(0, (await CliRun.Of("plan", file, "--out", Out)).Code);
        string[] rows = await File.ReadAllLinesAsync(Path.Combine(Out, "coverage.csv"));
        Assert.StartsWith("'=cmd|'/c x'!A1,unweighted,0,0.3048,", rows[1], StringComparison.Ordinal);
        Assert.All(Directory.GetFiles(Out, "*.csv").SelectMany(File.ReadAllLines), row => Assert.DoesNotMatch("(^|,)\"?=", row));
        Assert.Contains("\nhead_for_bottom_kg,,'=cmd|'/c x'!A1,", (await CliRun.Of("ask", file, "--csv")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Ask_prints_the_answers_in_plain_words_and_as_data()
    {
        CliRun run = await CliRun.Of("ask", valid, "--weight", "1/8 oz", "--depth", "6 ft");
        Assert.Equal(0, run.Code);
        Assert.Contains("- Lightest head that holds bottom here: 3/8 oz; your box has none heavy enough.", run.Output, StringComparison.Ordinal);
        Assert.Contains("- To hold 1/8 oz at 6 ft: can't be done with 1/8 oz. Even the slowest retrieve runs above it: go heavier or count longer.", run.Output, StringComparison.Ordinal);
        Assert.Contains("about a 4-count. In the zone on a count of 3 to 6.", run.Output, StringComparison.Ordinal);
        JsonElement answers = JsonDocument.Parse((await CliRun.Of("ask", valid, "--json")).Output).RootElement.GetProperty("result").GetProperty("answers");
        Assert.Equal(7, answers.GetArrayLength());
        Assert.Equal(0.010, answers[0].GetProperty("mass_kg").GetDouble());
        Assert.Equal("not_reachable", answers[1].GetProperty("status").GetString());
        Assert.Equal(JsonValueKind.Null, answers[1].GetProperty("speed_m_s").ValueKind);
        Assert.StartsWith("question,head,presentation,status,value,from,to,common_kg,owned,target_depth_m,because\nhead_for_bottom_kg,,slow and steady,Found,0.01,", (await CliRun.Of("ask", valid, "--csv")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Tide_writes_the_page_and_its_data()
    {
        var pipeline = new FakePipeline();
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, "tide", valid, "--out", Out, "--pdf", "--units", "metric");
        Assert.Equal(0, run.Code);
        Assert.Equal(new PlanRequest(UnitSystem.Metric, true), pipeline.LastRequest);
        Assert.Equal(Path.Combine("out", "grass-flat-tide"), new TideSettings { File = "scenarios/grass-flat.yaml" }.Folder);
        Assert.Contains("01:30", run.Output, StringComparison.Ordinal);
        foreach (string file in (string[])["tide.html", "tide.json", "tide.csv", "weights.csv"])
            Assert.True(File.Exists(Path.Combine(Out, file)), file);
        Assert.StartsWith("depth_m,current_m_s,holding_kg\n1.524,0,0.0035437\n", File.ReadAllText(Path.Combine(Out, "weights.csv")), StringComparison.Ordinal);
        Assert.EndsWith("3.048,0.514444,\n", File.ReadAllText(Path.Combine(Out, "weights.csv")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("trip")]
    public async Task The_number_of_draws_is_one_option_of_plan_and_trip(string command)
    {
        var pipeline = new FakePipeline();
        await CliRun.Of(pipeline, CancellationToken.None, command, valid, "--out", Out, "--samples", "0");
        Assert.Equal(new PlanRequest(UnitSystem.Us, false, 0), pipeline.LastRequest);
        Assert.Contains("--samples: 100000 is outside the range, 0 to ", (await CliRun.Of(command, valid, "--samples", "100000")).Error, StringComparison.Ordinal);
        string help = (await CliRun.Of(command, "--help")).Output;
        Assert.Equal(2, help.Split("--samples").Length);
        Assert.Contains("(default: what the scenario says, or 24)", help, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Colors_may_be_spelled_as_in_the_US() =>
        Assert.Equal((await CliRun.Of("colours", valid, "--json")).Output, (await CliRun.Of("colors", valid, "--json")).Output);

    [Fact]
    public async Task Check_tells_how_everyday_names_were_taken()
    {
        string file = folder.Write("everyday.yaml", TestScenario.With("target: red drum", "target: redfish"));
        Assert.Equal($"{file}: ok, Test channel\n    17: redfish: taken as red drum\n", (await CliRun.Of("check", file)).Output);
        JsonElement remark = JsonDocument.Parse((await CliRun.Of("check", file, "--json")).Output).RootElement.GetProperty("result").GetProperty("files")[0].GetProperty("remarks")[0];
        Assert.Equal("red drum", remark.GetProperty("meaning").GetString());
    }

    [Fact]
    public async Task Long_work_tells_that_it_goes_on_where_there_is_no_bar()
    {
        var pipeline = new FakePipeline
        {
            OnPlan = (_, outcome) =>
            {
                Thread.Sleep(2500);
                return outcome;
            },
        };
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, "plan", valid, "--out", Out);
        Assert.StartsWith("Planning ...\n", run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Colours_print_hex_and_brightness()
    {
        CliRun run = await CliRun.Of("colours", valid);
        Assert.Equal(0, run.Code);
        Assert.Contains("#80a080 40% muted", run.Output, StringComparison.Ordinal);
        Assert.StartsWith("colour,depth_m,srgb,relative_luminance,word\nwhite,0,#ffffff,1,bright\n", (await CliRun.Of("colours", valid, "--csv")).Output, StringComparison.Ordinal);
        Assert.Equal("#80a080", JsonDocument.Parse((await CliRun.Of("colours", valid, "--json")).Output).RootElement.GetProperty("result").GetProperty("columns")[0].GetProperty("srgb")[1].GetString());
    }

    [Fact]
    public async Task Card_prints_and_writes_the_cards_of_all_spots()
    {
        CliRun run = await CliRun.Of("card", valid, valid, "--out", Out);
        Assert.Equal(0, run.Code);
        Assert.Equal(2, run.Output.Split("TIE ON").Length - 1);
        Assert.Equal(["invalid.yaml", "results", "results/cards.html", "results/cards.json", "results/cards.pdf", "results/cards.txt", "valid.yaml"], folder.Content());
        Assert.Equal(2, JsonDocument.Parse((await CliRun.Of("card", valid, valid, "--json", "--out", Out)).Output).RootElement.GetProperty("result").GetProperty("cards").GetArrayLength());
        Assert.Equal(2, (await CliRun.Of("card", valid, Path.Combine(Path.GetDirectoryName(valid)!, "none.yaml"))).Code);
    }

    [Theory]
    [InlineData("path", "--weight", "1/8 oz")]
    [InlineData("fall")]
    [InlineData("ask")]
    [InlineData("colours")]
    [InlineData("tide")]
    [InlineData("retrieve")]
    [InlineData("card")]
    public async Task Every_answer_ends_with_what_to_watch_out_for(string command, params string[] more)
    {
        CliRun run = await CliRun.Of([command, valid, .. more, "--out", Out]);
        Assert.True(run.Code == 0, run.Error);
        int wrote = run.Output.LastIndexOf("Wrote ", StringComparison.Ordinal), watch = run.Output.LastIndexOf("Watch out: ", StringComparison.Ordinal);
        Assert.True(wrote >= 0 && watch > wrote, run.Output);
        Assert.Contains("a model, not a promise", run.Output[watch..].ReplaceLineEndings(" "), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Plan_writes_the_sheet_and_its_data()
    {
        var pipeline = new FakePipeline();
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, "plan", valid, "--out", Out, "--pdf", "--units", "metric");
        Assert.Equal(0, run.Code);
        Assert.Equal(new PlanRequest(UnitSystem.Metric, true), pipeline.LastRequest);
        Assert.StartsWith("Unweighted, 89 mm paddle tail, ", run.Output, StringComparison.Ordinal);
        Assert.Contains("WATCH OUT", run.Output, StringComparison.Ordinal);
        Assert.StartsWith("Watch out: ", run.Output.TrimEnd('\n').Split('\n').Last(line => line.StartsWith("Watch", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Contains("! It is on shell 10% of the retrieve: expect snags, and check the leader often.", run.Output, StringComparison.Ordinal);
        Assert.Contains("10% (bottom 30)", run.Output, StringComparison.Ordinal);
        Assert.Equal(
            ["invalid.yaml", "results", "results/colours.csv", "results/coverage.csv", "results/fall.csv", "results/figures", "results/figures/side.svg", "results/plan.json", "results/sheet.html", "valid.yaml"],
            folder.Content());
        JsonElement result = JsonDocument.Parse(await File.ReadAllTextAsync(Path.Combine(Out, "plan.json"))).RootElement.GetProperty("result");
        Assert.Equal(0.2, result.GetProperty("coverage").GetProperty("zone_share")[1][1].GetDouble());
        Assert.Equal(JsonValueKind.Null, result.GetProperty("coverage").GetProperty("median_depth_m")[0][1].ValueKind);
        Assert.StartsWith("presentation,head,head_mass_kg,speed_m_s,zone_share,bottom_share,grass_share,median_depth_m\nslow and steady,unweighted,0,0.3048,0,0,0,0\n", await File.ReadAllTextAsync(Path.Combine(Out, "coverage.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Action_prints_verdicts_and_writes_its_figures_on_request()
    {
        var pipeline = new FakePipeline();
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, "action", valid, "--weight", "1/8 oz", "--presentation", "hop", "--out", Out, "--json", "--units", "metric");
        Assert.Equal(0, run.Code);
        Assert.Equal(("1/8 oz", "hop"), (pipeline.LastRig!.Head.Label, pipeline.LastRig.Presentation.Name));
        Assert.Equal(["invalid.yaml", "results", "results/action.csv", "results/action.json", "results/twitch-path.svg", "valid.yaml"], folder.Content());
        Assert.Contains("Rig check: 3.5 g, 89 mm paddle tail, hop", run.Error, StringComparison.Ordinal);
        Assert.Contains("on the fall", run.Error, StringComparison.Ordinal);
        JsonElement result = JsonDocument.Parse(run.Output).RootElement.GetProperty("result");
        Assert.Equal(6, result.GetProperty("rigs").GetArrayLength());
        Assert.True(result.GetProperty("rig_check").GetProperty("by_speed").GetProperty("speeds_m_s").GetArrayLength() > 5);
        Assert.StartsWith("head,body,presentation,speed_m_s,", await File.ReadAllTextAsync(Path.Combine(Out, "action.csv")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Teach_writes_the_plates_and_gives_the_depths_at_which_red_goes_dark()
    {
        var pipeline = new FakePipeline();
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, "teach", valid, "--out", Out, "--pdf", "--json", "--units", "metric");
        Assert.Equal(0, run.Code);
        Assert.Equal(new PlanRequest(UnitSystem.Metric, true), pipeline.LastRequest);
        Assert.Equal(["invalid.yaml", "results", "results/lesson.json", "results/red-turns-black.svg", "valid.yaml"], folder.Content());
        Assert.Equal(run.Output, await File.ReadAllTextAsync(Path.Combine(Out, "lesson.json")));
        Assert.Contains("depth at which red goes dark (m)", run.Error, StringComparison.Ordinal);
        JsonElement root = JsonDocument.Parse(run.Output).RootElement;
        Assert.Equal("teach", root.GetProperty("command").GetString());
        JsonElement result = root.GetProperty("result");
        Assert.Equal(["red-turns-black.svg", "lesson.json"], result.GetProperty("files").EnumerateArray().Select(file => file.GetString()));
        JsonElement clear = result.GetProperty("red_goes_dark")[0];
        Assert.Equal("clear water", clear.GetProperty("name").GetString());
        Assert.Equal(
            ["luminance_against_white", "chroma", "contrast_to_water", "fish_cones"],
            clear.GetProperty("criteria").EnumerateArray().Select(item => item.GetProperty("criterion").GetString()));
        // Documented for these waters and this sun: 26 ft and 98 ft.
        Assert.Equal(26 * 0.3048, clear.GetProperty("criteria")[0].GetProperty("depth_m").GetDouble(), 0.16);
        Assert.Equal(98 * 0.3048, result.GetProperty("red_goes_dark")[1].GetProperty("criteria")[0].GetProperty("depth_m").GetDouble(), 0.16);
        JsonElement sight = result.GetProperty("sighting_distance");
        int depths = sight.GetProperty("depths_m").GetArrayLength();
        Assert.All(sight.GetProperty("colours").EnumerateArray(), colour => Assert.Equal(depths, colour.GetProperty("seen_from_m").GetArrayLength()));
    }

    [Fact]
    public void Teach_goes_to_a_folder_named_after_the_scenario() =>
        Assert.Equal(Path.Combine("out", "grass-flat-plates"), new TeachSettings { File = "scenarios/grass-flat.yaml" }.Folder);

    [Fact]
    public void Plan_goes_to_a_folder_named_after_the_scenario() =>
        Assert.Equal(Path.Combine("out", "grass-flat"), new PlanSettings { File = "scenarios/grass-flat.yaml" }.Folder);

    [Fact]
    public async Task A_cancelled_run_exits_with_130_and_writes_nothing()
    {
        using var source = new CancellationTokenSource();
        var pipeline = new FakePipeline
        {
            OnPlan = (token, outcome) =>
            {
                source.Cancel();
                token.ThrowIfCancellationRequested();
                return outcome;
            },
        };
        CliRun run = await CliRun.Of(pipeline, source.Token, "plan", valid, "--out", Out, "--json");
        Assert.Equal(130, run.Code);
        Assert.Contains("Stopped.", run.Error, StringComparison.Ordinal);
        Assert.Equal("cancelled", JsonDocument.Parse(run.Output).RootElement.GetProperty("status").GetString());
        Assert.False(Directory.Exists(Out));
    }

    [Fact]
    public async Task A_computation_that_ignores_the_cancellation_still_writes_nothing()
    {
        using var source = new CancellationTokenSource();
        var pipeline = new FakePipeline
        {
            OnPlan = (_, outcome) =>
            {
                source.Cancel();
                return outcome;
            },
        };
        Assert.Equal(130, (await CliRun.Of(pipeline, source.Token, "plan", valid, "--out", Out)).Code);
        Assert.False(Directory.Exists(Out));
    }

    [Fact]
    public async Task An_unexpected_exception_exits_with_1()
    {
        var pipeline = new FakePipeline { OnPlan = (_, _) => throw new InvalidCastException("[oops]") };
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, "plan", valid, "--out", Out);
        Assert.Equal(1, run.Code);
        Assert.Contains("InvalidCastException: [oops]", run.Error, StringComparison.Ordinal);
        Assert.Empty(run.Output);
        Assert.False(Directory.Exists(Out));
    }

    [Theory]
    [InlineData("plan")]
    [InlineData("teach")]
    [InlineData("fall")]
    public async Task A_file_in_place_of_the_folder_is_found_before_the_work(string command)
    {
        var pipeline = new FakePipeline();
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, command, valid, "--out", Path.Combine(valid, "inside"));
        Assert.Equal(1, run.Code);
        Assert.Contains("is a file, not a folder", run.Error, StringComparison.Ordinal);
        Assert.Null(pipeline.LastRequest);
        Assert.Null(pipeline.LastUnits);
    }

    [Fact]
    public async Task A_folder_that_cannot_be_is_found_before_the_work_and_leaves_no_trace()
    {
        var pipeline = new FakePipeline();
        string[] before = folder.Content();
        CliRun run = await CliRun.Of(pipeline, CancellationToken.None, "plan", valid, "--out", Path.Combine(Out, new string('x', 300)));
        Assert.Equal(1, run.Code);
        Assert.StartsWith("Cannot write into ", run.Error, StringComparison.Ordinal);
        Assert.EndsWith("Name another folder with --out.\n", run.Error, StringComparison.Ordinal);
        Assert.Null(pipeline.LastRequest);
        Assert.Equal(before, folder.Content());
    }

    [Fact]
    public async Task Schema_and_reference_are_printed_or_written()
    {
        Assert.Equal(ScenarioSchema.ToJson(), (await CliRun.Of("schema")).Output);
        Assert.Equal(ScenarioFormat.ToMarkdown(), (await CliRun.Of("schema", "--reference")).Output);
        Assert.Equal(0, (await CliRun.Of("schema", "--out", Out)).Code);
        Assert.Equal(ScenarioSchema.ToJson(), await File.ReadAllTextAsync(Path.Combine(Out, ScenarioSchema.FileName)));
    }

    [Theory]
    [InlineData("bash")]
    [InlineData("zsh")]
    [InlineData("fish")]
    public async Task A_completion_script_knows_every_command_and_option(string shell)
    {
        CliRun run = await CliRun.Of("completion", shell);
        Assert.Equal(0, run.Code);
        foreach (CommandEntry command in CommandCatalogue.All)
        {
            Assert.Contains(command.Name, run.Output, StringComparison.Ordinal);
            foreach (CompletionScript.Option option in CompletionScript.OptionsOf(command))
                Assert.Contains(shell == "fish" ? $"-l {option.Name[2..]}" : option.Name, run.Output, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Every_command_shows_its_options_in_help() =>
        Assert.All(CommandCatalogue.All, command => Assert.NotEmpty(CompletionScript.OptionsOf(command)));

    [Theory]
    [InlineData(true, true)]
    [InlineData(false, false)]
    public async Task Colour_and_progress_go_to_terminals_only(bool terminal, bool expectEscapes)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        CliHost host = CliHost.Create(output, error, terminal, terminal, colour: true, new FakePipeline());
        host.ErrorConsole.Profile.Capabilities.Ansi = terminal;
        host.OutputConsole.Profile.Capabilities.Ansi = terminal;
        if (terminal)
            host.OutputConsole.Profile.Capabilities.ColorSystem = Spectre.Console.ColorSystem.TrueColor;
        Assert.Equal(0, await LureSimApp.RunAsync(["colours", valid], host, CancellationToken.None));
        Assert.Equal(expectEscapes, output.ToString().Contains('\u001b'));
    }

    [Fact]
    public async Task Without_colour_no_colour_codes_are_written()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        CliHost host = CliHost.Create(output, error, true, true, colour: false, new FakePipeline());
        host.OutputConsole.Profile.Capabilities.Ansi = true;
        Assert.Equal(0, await LureSimApp.RunAsync(["colours", valid], host, CancellationToken.None));
        Assert.DoesNotContain("\u001b[38", output.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Markup_and_escapes_in_file_names_do_no_harm()
    {
        CliRun run = await CliRun.Of("check", "[red]\u001b[2J.yaml");
        Assert.Equal(2, run.Code);
        Assert.Contains("[red]", run.Error, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', run.Error);
    }
}
