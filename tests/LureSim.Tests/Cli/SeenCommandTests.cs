using LureSim.Cli;
using LureSim.Scenarios;
using LureSim.Tests.Decision.Observations;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Cli;

public sealed class SeenCommandTests : IDisposable
{
    private readonly TemporaryFolder folder = new();
    private readonly string file;

    public SeenCommandTests() => file = folder.Write("spot.yaml", Truths.Text.Replace("samples: 24", "samples: 6", StringComparison.Ordinal) + "\n");

    public void Dispose() => folder.Dispose();

    private static Task<CliRun> Run(params string[] arguments) => CliRun.Of(new Pipeline(), CancellationToken.None, arguments);

    [Fact]
    public async Task A_note_is_added_a_copy_is_kept_and_one_line_answers()
    {
        string before = await File.ReadAllTextAsync(file);
        CliRun run = await Run("seen", file, "float 30 ft in 17 s");
        Assert.Equal(0, run.Code);
        Assert.Equal(before, await File.ReadAllTextAsync(file + ".bak"));
        Assert.Single(ScenarioReader.Read(file).Scenario!.Seen);
        string text = string.Join(' ', run.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("Float: 30 ft in 17 s. Current:", text, StringComparison.Ordinal);
        Assert.Contains("The choice", text, StringComparison.Ordinal);
        Assert.Equal(0, (await Run("seen", file, "plate gone at 4 ft")).Code);
        Assert.Equal(before, await File.ReadAllTextAsync(file + ".bak"));
        Assert.True(File.Exists(file + ".bak2"));
        Assert.Equal(2, ScenarioReader.Read(file).Scenario!.Seen.Count);
    }

    [Theory]
    [InlineData("1/4 oz did something")]
    [InlineData("5/8 oz bottom at 9")]
    [InlineData("1/4 oz bottom in 0.4 s")]
    public async Task What_cannot_be_changes_nothing(string note)
    {
        string before = await File.ReadAllTextAsync(file);
        CliRun run = await Run("seen", file, note);
        Assert.Equal(2, run.Code);
        Assert.NotEmpty(run.Error);
        Assert.Equal(before, await File.ReadAllTextAsync(file));
        Assert.False(File.Exists(file + ".bak"));
    }

    [Fact]
    public async Task Timed_falls_become_a_tackle_file_that_a_scenario_takes()
    {
        Assert.Equal(2, (await Run("calibrate", file)).Code);
        string text = await File.ReadAllTextAsync(file);
        await File.WriteAllTextAsync(file, text + "seen:\n  - {jig_head: 1/4 oz, pool: {depth: 6 ft, time: 2.9 s}, date: 2026-06-13}\n  - {jig_head: 1/4 oz, pool: {depth: 6 ft, time: 3.1 s}, date: 2026-06-14}\n");
        CliRun run = await Run("calibrate", file);
        Assert.Equal(0, run.Code);
        string box = Path.Combine(folder.Path, "my-box.yaml");
        LureNumbers own = Assert.Single(TackleFile.Read(box).Lures);
        Assert.Equal(("4 in paddle tail", new DateOnly(2026, 6, 14)), (own.Bait, own.Drag.Date!.Value));
        Assert.Contains("2 timed falls in still water", own.Drag.How, StringComparison.Ordinal);
        Assert.InRange(own.Drag.Margin, 0.05, 0.4);
        Assert.Equal(0, (await Run("calibrate", file)).Code);
        Assert.True(File.Exists(box + ".bak"));
        await File.WriteAllTextAsync(file, text.Replace("tackle:\n", "tackle:\n  include: my-box.yaml\n", StringComparison.Ordinal));
        Assert.Equal(own.Drag.Factor, ScenarioReader.Read(file).Scenario!.Tackle.Bodies[0].Drag!.Factor);
    }
}
