using System.Text.Json;
using LureSim.Cli;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Cli;

/// <summary>The commands on the real model, once each, on a demo scenario.</summary>
public class PipelineTests
{
    private static readonly string Flat = Repository.File("scenarios", "grass-flat.yaml");

    [Fact]
    public async Task Fall_counts_down_faster_with_weight()
    {
        JsonElement columns = (await Result("fall", Flat)).GetProperty("columns");
        double[] terminal = [.. columns.EnumerateArray().Select(column => column.GetProperty("terminal_speed_m_s").GetDouble())];
        Assert.Equal(6, terminal.Length);
        Assert.Equal(terminal.Order(), terminal);
        Assert.True(terminal[^1] > 2.0 * terminal[0]);
    }

    [Fact]
    public async Task Path_runs_from_the_splash_down_to_the_angler()
    {
        JsonElement track = (await Result("path", Flat, "--weight", "1/8 oz")).GetProperty("track");
        Assert.Equal("completed", track.GetProperty("status").GetString());
        double[] x = [.. track.GetProperty("x_m").EnumerateArray().Select(value => value.GetDouble())];
        Assert.Equal(50 * 0.3048, x[0], 0.5);
        Assert.InRange(x[^1], 0.0, 4.0);
    }

    [Fact]
    public async Task Colours_are_those_of_the_scenario()
    {
        JsonElement columns = (await Result("colours", Flat)).GetProperty("columns");
        Assert.Equal(["white", "chartreuse", "red", "natural green back", "natural silver side", "tan", "dark purple", "black"], columns.EnumerateArray().Select(column => column.GetProperty("name").GetString()));
        Assert.All(columns.EnumerateArray(), column => Assert.Matches("^#[0-9a-f]{6}$", column.GetProperty("srgb")[0].GetString()!));
    }

    [Fact]
    public async Task Teach_draws_all_plates()
    {
        using var folder = new TemporaryFolder();
        CliRun run = await CliRun.Of(new Pipeline(), CancellationToken.None, "teach", Flat, "--out", folder.Path);
        Assert.True(run.Code == 0, run.Error);
        Assert.Equal(
            ["colours-camera.png", "colours-camera.svg", "colours-eye.png", "colours-eye.svg", "four-ways-to-black.png", "four-ways-to-black.svg", "grey-card.png", "grey-card.svg", "lesson.json", "red-turns-black.png", "red-turns-black.svg", "sighting-distance.png", "sighting-distance.svg", "silhouette.png", "silhouette.svg"],
            folder.Content());
    }

    [Fact]
    public async Task A_plan_tells_its_first_look_and_a_card_of_several_spots_does_not()
    {
        using var folder = new TemporaryFolder();
        CliRun one = await CliRun.Of(new Pipeline(), CancellationToken.None, "card", Flat, "--samples", "0");
        Assert.True(one.Code == 0, one.Error);
        Assert.Matches("^First look: [0-9/]+ oz with the .+, .+$", one.Error.Split(Environment.NewLine).Single(line => line.StartsWith("First look", StringComparison.Ordinal)));
        CliRun two = await CliRun.Of(new Pipeline(), CancellationToken.None, "card", Flat, Repository.File("scenarios", "creek-mouth.yaml"), "--samples", "0");
        Assert.True(two.Code == 0, two.Error);
        Assert.DoesNotContain("First look", two.Error, StringComparison.Ordinal);
    }

    private static async Task<JsonElement> Result(params string[] arguments)
    {
        CliRun run = await CliRun.Of(new Pipeline(), CancellationToken.None, [.. arguments, "--json"]);
        Assert.True(run.Code == 0, run.Error);
        return JsonDocument.Parse(run.Output).RootElement.GetProperty("result");
    }
}
