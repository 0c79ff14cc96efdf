using LureSim.Cli;
using LureSim.Cli.Hosting;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Cli;

/// <summary>A terminal of 80 columns shows every word whole.</summary>
public sealed class WidthTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData("plan")]
    [InlineData("trip")]
    [InlineData("fall")]
    [InlineData("path", "--weight", "1/8 oz")]
    [InlineData("ask")]
    [InlineData("retrieve")]
    [InlineData("tide")]
    [InlineData("action")]
    [InlineData("colours")]
    [InlineData("teach")]
    [InlineData("compare")]
    public async Task No_word_is_split_and_no_line_is_longer(string command, params string[] more)
    {
        const string Rigs = "\ncompare:\n  - {name: mine, jig_head: 1/4 oz, colour: red}\n  - {name: theirs, jig_head: 1/8 oz, colour: white}\n";
        string file = folder.Write("s.yaml", TestScenario.Text + Rigs);
        string[] options = command is "plan" or "trip" or "tide" or "retrieve" or "teach" or "compare" ? ["--out", Path.Combine(folder.Path, "o")] : [];
        string wide = await Shown(400, [command, file, .. more, .. options]), narrow = await Shown(80, [command, file, .. more, .. options]);
        HashSet<string> words = [.. Words(wide)];
        string[] split = [.. Words(narrow).Where(word => !words.Contains(word) && word != "(continued)")];
        Assert.True(split.Length == 0, string.Join(" | ", split.Take(20)) + "\n" + narrow);
        Assert.All(narrow.Split('\n').Where(line => !line.Contains(folder.Path, StringComparison.Ordinal)), line => Assert.True(line.TrimEnd().Length <= 80, line));
    }

    private static IEnumerable<string> Words(string text) => text.Split([' ', '\n', '\r'], StringSplitOptions.RemoveEmptyEntries).Where(word => word.Any(char.IsLetterOrDigit) && !word.Contains(Path.DirectorySeparatorChar, StringComparison.Ordinal));

    private static async Task<string> Shown(int width, string[] arguments)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        CliHost host = CliHost.Create(output, error, false, false, true, new FakePipeline());
        host.OutputConsole.Profile.Width = width;
        int code = await LureSimApp.RunAsync(arguments, host, CancellationToken.None);
        Assert.True(code == 0, error.ToString());
        return output.ToString();
    }
}
