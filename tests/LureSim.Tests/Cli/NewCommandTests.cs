using LureSim.Cli;
using LureSim.Cli.Commands;
using LureSim.Cli.Hosting;
using LureSim.Scenarios;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Cli;

/// <summary>The current folder is one for the whole process, so these tests run alone.</summary>
[CollectionDefinition(nameof(CurrentFolder), DisableParallelization = true)]
public sealed class CurrentFolder;

[Collection(nameof(CurrentFolder))]
public sealed class NewCommandTests : IDisposable
{
    private readonly string before = Directory.GetCurrentDirectory();
    private readonly TemporaryFolder folder = new();

    public NewCommandTests() => Directory.SetCurrentDirectory(folder.Path);

    public void Dispose()
    {
        Directory.SetCurrentDirectory(before);
        folder.Dispose();
    }

    private static async Task<CliRun> Run(string typed, bool terminal, params string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        using var input = new StringReader(typed);
        CliHost host = CliHost.Create(output, error, false, false, true, new FakePipeline(), input, terminal, new Noon());
        int code = await LureSimApp.RunAsync(arguments, host, CancellationToken.None);
        return new CliRun { Code = code, Output = output.ToString(), Error = error.ToString() };
    }

    private sealed class Noon : TimeProvider
    {
        public override DateTimeOffset GetUtcNow() => new(2026, 6, 14, 12, 0, 0, TimeSpan.Zero);
    }

    [Fact]
    public async Task The_short_route_writes_a_scenario_in_eight_answers()
    {
        CliRun run = await Run("Oyster bar\nabout 6 feet\n1 knot\nto the right\n2 feet, tea colored\nspecks\n\n1/8, 1/4\nn\n\n", true, "new");
        Assert.True(run.Code == 0, run.Output + run.Error);
        Assert.Equal(["oyster-bar.yaml"], folder.Content());
        ScenarioReading reading = ScenarioReader.Read("oyster-bar.yaml");
        Assert.True(reading.IsValid);
        Assert.Equal("spotted seatrout", reading.Scenario!.Spot.TargetFish);
        Assert.Equal(1.5 * Math.PI, reading.Scenario.Spot.CurrentDirection, 1e-9);
        Assert.Contains("8 of 8:", run.Output, StringComparison.Ordinal);
        Assert.Contains("Wrote oyster-bar.yaml\nNow: luresim plan oyster-bar.yaml\n", run.Output, StringComparison.Ordinal);
        Assert.Contains("no wind", run.Output, StringComparison.Ordinal);
        Assert.Contains("you said \"about 6 feet\"", await File.ReadAllTextAsync("oyster-bar.yaml"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_questions_can_be_answered_with_enter()
    {
        CliRun run = await Run(new string('\n', 60), true, "new", "--all", "mine.yaml");
        Assert.True(run.Code == 0, run.Output + run.Error);
        Assert.True(ScenarioReader.Read("mine.yaml").IsValid);
        Assert.Contains("17 of 17:", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_answer_is_asked_again_and_back_and_help_work()
    {
        CliRun run = await Run("A\n600 ft\n?\n5 ft\nback\n7 ft\nstill\n4 ft\n\nsnok\nsnook\n\n\nn\n1\nB\n\n", true, "new");
        Assert.True(run.Code == 0, run.Output + run.Error);
        Assert.Contains("600 ft is too much", run.Output, StringComparison.Ordinal);
        Assert.Contains("did you mean snook?", run.Output, StringComparison.Ordinal);
        Assert.Contains("Depth decides", run.Output, StringComparison.Ordinal);
        Assert.Equal(["b.yaml"], folder.Content());
        Assert.Equal(7 * 0.3048, ScenarioReader.Read("b.yaml").Scenario!.Spot.Depth, 1e-9);
        Assert.Equal(0.0, ScenarioReader.Read("b.yaml").Scenario!.Spot.CurrentSpeed);
    }

    [Theory]
    [InlineData("Creek\n5 ft\nquit\n")]
    [InlineData("Creek\n5 ft\n")]
    public async Task Who_leaves_goes_on_later(string typed)
    {
        CliRun left = await Run(typed, true, "new");
        Assert.Equal(0, left.Code);
        Assert.Equal([TerminalInterview.StateFile], folder.Content());
        Assert.Contains("luresim new goes on from there", left.Output, StringComparison.Ordinal);
        CliRun again = await Run("y\nstill\n\n\n\n\n\nn\n\n", true, "new");
        Assert.True(again.Code == 0, again.Output + again.Error);
        Assert.DoesNotContain("How deep is it", again.Output[..again.Output.IndexOf("Your answers\n", StringComparison.Ordinal)], StringComparison.Ordinal);
        Assert.Equal(["creek.yaml"], folder.Content());
    }

    [Fact]
    public async Task Nothing_is_written_over_without_a_yes()
    {
        await File.WriteAllTextAsync("my-spot.yaml", "mine");
        Assert.Equal(0, (await Run(new string('\n', 30), true, "new")).Code);
        Assert.Equal("mine", await File.ReadAllTextAsync("my-spot.yaml"));
        Assert.Contains("my-spot-2.yaml", folder.Content());
        await File.WriteAllTextAsync("a.yaml", "depth: 5 ft\n");
        CliRun refused = await Run("", false, "new", "--answers", "a.yaml");
        Assert.Equal(2, refused.Code);
        Assert.Contains("my-spot.yaml is there already", refused.Error, StringComparison.Ordinal);
        Assert.Equal("mine", await File.ReadAllTextAsync("my-spot.yaml"));
        Assert.Equal(0, (await Run("", false, "new", "--answers", "a.yaml", "--force")).Code);
        Assert.Equal(5 * 0.3048, ScenarioReader.Read("my-spot.yaml").Scenario!.Spot.Depth, 1e-9);
    }

    [Fact]
    public async Task A_file_of_answers_with_mistakes_writes_nothing_and_names_them()
    {
        await File.WriteAllTextAsync("a.yaml", "dpth: 5 ft\nfish: snok\n");
        CliRun run = await Run("", false, "new", "--answers", "a.yaml");
        Assert.Equal(2, run.Code);
        Assert.Contains("a.yaml:1:1: dpth: there is no question of this id", run.Error, StringComparison.Ordinal);
        Assert.Contains("did you mean snook?", run.Error, StringComparison.Ordinal);
        Assert.Equal(["a.yaml"], folder.Content());
        Assert.Equal(2, (await Run("", false, "new", "--answers", "none.yaml")).Code);
    }

    [Fact]
    public async Task Ctrl_C_leaves_the_answers_so_far_and_nothing_else()
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        using var source = new CancellationTokenSource();
        using var input = new Interrupted(source);
        CliHost host = CliHost.Create(output, error, false, false, true, new FakePipeline(), input, true);
        Assert.Equal(130, await LureSimApp.RunAsync(["new"], host, source.Token));
        Assert.Equal([TerminalInterview.StateFile], folder.Content());
    }

    // Two answers, then Ctrl-C while it waits.
    private sealed class Interrupted(CancellationTokenSource source) : TextReader
    {
        private int lines;

        public override string? ReadLine()
        {
            if (++lines <= 2)
                return lines == 1 ? "Creek" : "5 ft";
            source.Cancel();
            Thread.Sleep(200);
            return null;
        }
    }

    [Fact]
    public async Task The_name_alone_offers_the_questions_to_a_person_and_the_help_to_a_pipe()
    {
        Assert.Contains("Start with a few questions", (await Run("\nquit\n", true)).Output, StringComparison.Ordinal);
        Assert.Contains("What do you call this spot?", (await Run("\nquit\n", true)).Output, StringComparison.Ordinal);
        Assert.Contains("USAGE:", (await Run("n\n", true)).Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Start with a few questions", (await Run("", false)).Output, StringComparison.Ordinal);
    }
}
