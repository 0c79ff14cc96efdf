using LureSim.Cli;
using LureSim.Cli.Hosting;
using LureSim.Fuzz;
using LureSim.Scenarios;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests;

/// <summary>
/// Past finds: what once crashed, hung, or was said badly. The first line of each file says what it was, the second which commands it goes through
/// besides the reader.
/// </summary>
public sealed class CorpusTests : IDisposable
{
    private const string Through = "# through: ";

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    public static TheoryData<string> Names => [.. Directory.EnumerateFiles(Repository.File("tests", "LureSim.Tests", "Corpus"), "*.yaml").Select(file => Path.GetFileName(file)!).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Names))]
    public void What_was_found_once_is_answered_well(string name)
    {
        string path = Repository.File("tests", "LureSim.Tests", "Corpus", name), text = File.ReadAllText(path);
        string[] head = text.Split('\n', 3);
        Assert.StartsWith("# ", head[0], StringComparison.Ordinal);
        Assert.StartsWith(Through, head[1], StringComparison.Ordinal);
        Assert.Empty(ReadCheck.Complaints(text, out ScenarioReading? reading, out _));
        string[] commands = head[1][Through.Length..].Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
        Assert.True(commands is ["reader"] || reading!.IsValid, $"It is to go through commands, but is refused: {(reading!.Problems.Count > 0 ? reading.Problems[0] : null)}");
        foreach (string command in commands.Where(command => command != "reader"))
        {
            string written = Path.Combine(folder.Path, command);
            string[] tries = command == "teach" ? [] : ["--samples", "0"];
            CommandOutcome outcome = CommandCheck.Run([command, path, .. tries, "--out", written], new Pipeline(), written);
            Assert.Empty(outcome.Complaints);
            Assert.True(outcome.Code is ExitCode.Ok or ExitCode.Numerical, $"{command}: {outcome.Told}");
        }
    }
}
