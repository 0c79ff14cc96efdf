using System.Text.Json;
using LureSim.Cli;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Cli;

/// <summary>Every command answers for the same choice: the common part of their documents is compared. LURESIM_ALL_STORIES=1 takes all demo scenarios.</summary>
public class OneStoryTests
{
    private static readonly string[] Shared =
        ["weight", "mass_kg", "lure", "presentation", "color", "sink_count_s", "reel_speed_m_s", "cast_m", "aim_rad", "tries", "best_in", "as_good_in", "zone_share", "typical_depth_m", "time_to_zone_s", "bottom_share", "score", "margin", "runner_up", "bait", "hands", "assumptions"];

    public static TheoryData<string> Scenarios => Environment.GetEnvironmentVariable("LURESIM_ALL_STORIES") == "1"
        ? new(Repository.Scenarios().Select(path => Path.GetFileNameWithoutExtension(path)!))
        : new("grass-flat", "two-rigs");

    [Theory]
    [MemberData(nameof(Scenarios))]
    public async Task Every_command_tells_the_same_choice(string scenario)
    {
        string file = Repository.File("scenarios", scenario + ".yaml");
        List<string> commands = ["plan", "trip", "fall", "path", "ask", "colours"];
        if (Environment.GetEnvironmentVariable("LURESIM_ALL_STORIES") == "1") commands.AddRange(["action", "retrieve", "tide", "card"]);
        if (scenario == "two-rigs") commands.Add("compare");
        string? first = null;
        using var folder = new TemporaryFolder();
        foreach (string command in commands)
        {
            string[] more = command is "plan" or "trip" or "tide" or "retrieve" or "card" or "compare" ? ["--out", Path.Combine(folder.Path, command)] : [];
            CliRun run = await CliRun.Of(new Pipeline(), CancellationToken.None, [command, file, "--samples", "3", "--json", .. more]);
            Assert.True(run.Code == 0, $"{command}: {run.Error}");
            JsonElement choice = JsonDocument.Parse(run.Output).RootElement.GetProperty("choice");
            string told = string.Join("\n", Shared.Select(name => $"{name}: {choice.GetProperty(name).GetRawText()}"));
            first ??= told;
            Assert.True(first == told, $"{command} tells\n{told}\nand plan\n{first}");
        }
    }

    [Fact]
    public async Task Overrides_hold_everywhere()
    {
        string file = Repository.File("scenarios", "grass-flat.yaml");
        foreach (string command in (string[])["fall", "path", "colours"])
        {
            CliRun run = await CliRun.Of(new Pipeline(), CancellationToken.None, command, file, "--samples", "2", "--json", "--weight", "1/8 oz", "--lure", "5 in soft jerkbait", "--presentation", "stop and go", "--color", "black");
            Assert.True(run.Code == 0, run.Error);
            JsonElement choice = JsonDocument.Parse(run.Output).RootElement.GetProperty("choice");
            Assert.Equal(["1/8 oz", "5 in soft jerkbait", "stop and go", "black"], new[] { "weight", "lure", "presentation", "color" }.Select(name => choice.GetProperty(name).GetString()));
        }
    }
}
