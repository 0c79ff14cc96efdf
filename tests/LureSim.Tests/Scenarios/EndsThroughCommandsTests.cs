using System.Globalization;
using LureSim.Cli;
using LureSim.Cli.Hosting;
using LureSim.Fuzz;
using Xunit.Abstractions;

namespace LureSim.Tests.Scenarios;

/// <summary>
/// Both ends of every key through the commands, as a user calls them: an answer, or a sentence about the water; no exception, no number that is none,
/// no file half written. A seeded choice; all of them in ranges by the program of the fuzzing (docs/robustness.md).
/// </summary>
public sealed class EndsThroughCommandsTests(ITestOutputHelper log) : IDisposable
{
    private const int Seed = 20260712;
    private const int Chosen = 12;

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Every_command_is_at_one_with_the_reader_at_both_ends()
    {
        (EndsOfRanges.End End, string[] Command)[] pairs = [.. EndsOfRanges.Pairs];
        Assert.True(Computing().SetEquals(pairs.Select(pair => pair.Command[0])), "A command that computes is not tried.");
        int all = pairs.Length;
        new Random(Seed).Shuffle(pairs);
        pairs = [.. pairs.Take(Chosen)];

        List<string> wrong = [];
        (double Seconds, string What) slowest = (0, "");
        int gaveUp = 0, refused = 0;
        foreach ((EndsOfRanges.End end, string[] command) in pairs)
        {
            string file = folder.Write("end.yaml", end.Small(command[0])), written = Path.Combine(folder.Path, "out");
            CommandOutcome outcome = CommandCheck.Run([command[0], file, .. command[1..], "--out", written], new Pipeline(), written);
            string what = $"{command[0]} at {end.Name}";
            wrong.AddRange(outcome.Complaints.Select(complaint => $"{what}: {complaint}"));
            if (outcome.Code == ExitCode.Failed)
                wrong.Add($"{what}: {outcome.Told}");
            gaveUp += outcome.Code == ExitCode.Numerical ? 1 : 0;
            refused += outcome.Code == ExitCode.Usage ? 1 : 0;
            if (outcome.Code is ExitCode.Numerical or ExitCode.Usage)
                log.WriteLine($"{what}: {outcome.Told.Split('\n')[0]}");
            if (outcome.Time.TotalSeconds > slowest.Seconds)
                slowest = (outcome.Time.TotalSeconds, what);
            if (Directory.Exists(written))
                Directory.Delete(written, recursive: true);
        }

        log.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{pairs.Length} of {all} pairs; {gaveUp} gave up in words, {refused} do not fit the command; the slowest {slowest.Seconds:0.0} s: {slowest.What}"));
        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    // The page for the phone computes as long as it may, and the live page waits for a browser.
    private static HashSet<string> Computing() =>
        [.. LureSim.Cli.Commands.CommandCatalogue.All.Select(entry => entry.Name).Except(["new", "open", "pocket", "seen", "calibrate", "check", "schema", "completion"])];
}
