using System.Text;
using LureSim.Cli.Hosting;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Tests.Report;
using LureSim.Tests.Scenarios;
using Spectre.Console;

namespace LureSim.Tests.Cli;

/// <summary>No text of a scenario steers a terminal, shows in another order than it is written, or hides.</summary>
public sealed class VisibleTextTests : IDisposable
{
    // A mark that turns the direction, a closed isolate, one without width, a byte order mark, and markup of the console.
    private const string Trick = "A\u202eB\u2066C\u2069D\u200bE\u200fF\ufeffG [red]H[/] [link=x]I";

    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    public static TheoryData<int> Hidden => [.. (int[])[0x00, 0x07, 0x08, 0x0b, 0x1b, 0x7f, 0x80, 0x85, 0x9b, 0x9f, 0x200b, 0x200c, 0x200d, 0x200e, 0x200f, 0x2028, 0x202a, 0x202b, 0x202c, 0x202d, 0x202e, 0x2066, 0x2067, 0x2068, 0x2069, 0xfeff, 0xe0041]];

    [Theory]
    [MemberData(nameof(Hidden))]
    public void What_cannot_be_seen_is_shown_or_taken_out(int rune)
    {
        string text = $"a{char.ConvertFromUtf32(rune)}b";
        Assert.Equal("a\ufffdb", VisibleText.Shown(text));
        Assert.Equal("ab", VisibleText.Without(text));
    }

    [Theory]
    [InlineData("Jetty, north side")]
    [InlineData("\u00e9t\u00e9 \u05e9\u05dc\u05d5\u05dd \u0645\u0631\u062d\u0628\u0627 \u4f60\u597d \ud83d\udc1f 3\u00bd in")]
    public void Letters_of_every_script_stay(string text)
    {
        Assert.Same(text, VisibleText.Shown(text));
        Assert.Same(text, VisibleText.Without(text));
    }

    [Fact]
    public void Lines_stay_on_a_page_and_not_on_a_terminal()
    {
        Assert.Equal("a\n\tb", VisibleText.Without("a\n\tb"));
        Assert.Equal("a\ufffdb", VisibleText.Shown("a\nb"));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_console_lets_its_own_colours_pass_and_no_others(bool terminal)
    {
        using var output = new StringWriter { NewLine = "\n" };
        IAnsiConsole console = CliHost.Create(output, TextWriter.Null, terminal, false, true, new FakePipeline()).OutputConsole;
        console.Profile.Capabilities.Ansi = terminal;
        console.Profile.Capabilities.ColorSystem = terminal ? ColorSystem.Standard : ColorSystem.NoColors;
        console.MarkupLineInterpolated($"[red]{"a\u001b[2Jb\u009b31mc\u202ed"}[/]");
        console.WriteLine("e\u001b]0;title\u0007f");
        console.Write(new Text("g\rh"));
        string red = terminal ? "\u001b[38;5;9m" : "", end = terminal ? "\u001b[0m" : "";
        string printed = output.ToString();
        if (terminal)
            printed = printed.Replace("\u001b[91m", red, StringComparison.Ordinal);
        Assert.Equal($"{red}a\ufffd[2Jb\ufffd31mc\ufffdd{end}\ne\ufffd]0;title\ufffdf\ng\nh", printed);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("plan", "--out", "OUT")]
    [InlineData("trip", "--out", "OUT")]
    [InlineData("fall")]
    [InlineData("path", "--weight", "1/8 oz")]
    [InlineData("ask")]
    [InlineData("tide", "--out", "OUT")]
    [InlineData("retrieve")]
    [InlineData("colours")]
    public async Task Every_command_prints_a_title_and_names_as_they_are(string command, params string[] more)
    {
        string text = TestScenario.Text
            .Replace("title: Test channel", $"title: \"{Trick}\"", StringComparison.Ordinal)
            .Replace("name: slow and steady", $"name: \"{Trick}\"", StringComparison.Ordinal)
            .Replace("name: plain stick", $"name: \"{Trick}\"", StringComparison.Ordinal);
        string file = folder.Write("trick.yaml", text);
        CliRun run = await CliRun.Of([command, file, .. more.Select(a => a == "OUT" ? Path.Combine(folder.Path, "out") : a)]);
        Assert.True(run.Code == 0, run.Error);
        Assert.DoesNotMatch(HiddenOnes, run.Output + run.Error);
        if (command is not "trip")
            Assert.Contains("A\ufffdB\ufffdC\ufffdD\ufffdE\ufffdF\ufffdG [red]H[/] [link=x]I", run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_of_a_file_and_an_option_are_shown_as_they_are()
    {
        CliRun run = await CliRun.Of("check", Path.Combine(folder.Path, "a\u001b[2J\u202eb[red].yaml"));
        Assert.Contains("a\ufffd[2J\ufffdb[red].yaml: 1 problem; nothing was run.", run.Error, StringComparison.Ordinal);
        Assert.DoesNotMatch(HiddenOnes, run.Error);
        run = await CliRun.Of("fall", folder.Write("valid.yaml", TestScenario.Text), "--\u202enope[red]");
        Assert.Equal(2, run.Code);
        Assert.DoesNotMatch(HiddenOnes, run.Error);
    }

    [Fact]
    public void Pages_and_figures_are_without_hidden_marks()
    {
        Sheet sheet = Samples.Sheet(Samples.Bridge());
        sheet = sheet with { Scenario = sheet.Scenario with { Title = Trick, Notes = "n\u202ex\nsecond" } };
        string page = SheetWriter.Html(sheet);
        Assert.Contains("ABCDEFG [red]H[/] [link=x]I", page, StringComparison.Ordinal);
        Assert.DoesNotMatch(HiddenOnes, page);
        Assert.DoesNotMatch("&#x(20[0-6][0-9a-fA-F]|[fF][eE][fF][fF]);", page);
        Assert.DoesNotMatch(HiddenOnes, Encoding.UTF8.GetString(FigureWriter.Svg(SheetWriter.Figures(sheet)[0])));
    }

    // Controls but the end of a line, marks of direction, marks without width.
    private const string HiddenOnes = "[\\x00-\\x09\\x0b-\\x1f\\x7f-\\x9f\\u200b-\\u200f\\u202a-\\u202e\\u2066-\\u2069\\ufeff]";
}
