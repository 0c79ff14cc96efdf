using System.Text;
using LureSim.Tests.Cli;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Golden;

/// <summary>
/// What the commands print for the demo scenarios, to the last digit. A change that should change no number changes nothing here; one that should is read in the
/// difference of these files. They are written anew with LURESIM_UPDATE_GOLDEN=1.
/// </summary>
public sealed class GoldenNumbersTests : IDisposable
{
    private static readonly string[] Commands = ["check", "plan", "fall", "ask", "colours", "action", "tide", "compare", "path"];

    // fall, ask, colours and action of a scenario answer for one choice.
    private static readonly RememberingPipeline Remembered = new();

    private readonly TemporaryFolder folder = new();

    public static TheoryData<string, string> Runs
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (string scenario in Repository.Scenarios().Select(path => Path.GetFileNameWithoutExtension(path)!))
            {
                foreach (string command in Commands.Where(command => Applies(scenario, command))) data.Add(scenario, command);
            }

            return data;
        }
    }

    public void Dispose() => folder.Dispose();

    [Theory]
    [MemberData(nameof(Runs))]
    public async Task Every_command_prints_what_it_printed(string scenario, string command)
    {
        string[] more = command switch
        {
            "plan" => ["--samples", "2", "--units", scenario.Length % 2 == 0 ? "us" : "metric"],
            "path" => ["--weight", "1/4 oz", "--csv"],
            "fall" => ["--samples", "2", "--units", scenario.Length % 2 == 0 ? "metric" : "us"],
            "ask" or "action" or "colours" => ["--samples", "2"],
            _ => [],
        };
        if (command is "plan" or "tide" or "compare") more = [.. more, "--out", Path.Combine(folder.Path, "out")];
        CliRun run = await CliRun.Of(Remembered, CancellationToken.None, [command, Repository.File("scenarios", scenario + ".yaml"), .. more]);
        Assert.Equal(0, run.Code);
        string printed = run.Output.Replace(folder.Path, "FOLDER", StringComparison.Ordinal).Replace(Repository.Root, "ROOT", StringComparison.Ordinal);
        string file = Repository.File("tests", "LureSim.Tests", "Golden", $"{scenario}.{command}.txt");
        if (Environment.GetEnvironmentVariable("LURESIM_UPDATE_GOLDEN") == "1") await File.WriteAllTextAsync(file, printed, new UTF8Encoding(false));
        Assert.True(File.Exists(file), $"{file} is missing; write it with LURESIM_UPDATE_GOLDEN=1.");
        Assert.Equal(await File.ReadAllTextAsync(file), printed);
    }

    // Scenarios that are told by every command: each seeks the whole choice anew.
    private static readonly string[] InFull = ["bridge-channel", "grass-flat", "dock-dusk", "rigging-lesson", "two-rigs"];

    // A tide needs its table, a comparison its rigs, and one track in full is enough.
    private static bool Applies(string scenario, string command) => command switch
    {
        "fall" or "ask" or "colours" or "action" => InFull.Contains(scenario),
        "tide" => scenario == "bridge-channel",
        "compare" => scenario == "two-rigs",
        "path" => scenario == "grass-flat",
        _ => true,
    };
}
