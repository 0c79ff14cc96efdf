using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using LureSim.Decision;
using LureSim.Scenarios;
using LureSim.Tests.Scenarios;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace LureSim.Tests.Conventions;

/// <summary>What the documentation shows as a program is one: it compiles, runs, and prints what stands below it.</summary>
[Collection("console")]
public partial class ExampleTests
{
    private const string Usings = "global using System; global using System.Collections.Generic; global using System.IO; global using System.Linq; global using System.Threading;";

    // Entry points of the packages: each shows how it is called.
    private static readonly string[] EntryPoints =
    [
        "LureSim.Coupling.Cast.Simulate", "LureSim.Motion.FreeFall.TerminalSpeed", "LureSim.Light.ColourChart.Of", "LureSim.Light.SpotLight.Water",
        "LureSim.Coupling.RigWindow", "LureSim.Decision.Planner.Plan", "LureSim.Scenarios.ScenarioReader.ReadText",
    ];

    public static TheoryData<string, string> DocComments
    {
        get
        {
            var data = new TheoryData<string, string>();
            foreach (Assembly assembly in new[] { typeof(Planner).Assembly, typeof(ScenarioReader).Assembly })
            {
                foreach (XElement member in XDocument.Load(Path.ChangeExtension(assembly.Location, "xml")).Descendants("member"))
                {
                    foreach (XElement code in member.Elements("example").Elements("code")) data.Add((string)member.Attribute("name")!, Unindented(code.Value));
                }
            }

            return data;
        }
    }

    [Theory]
    [MemberData(nameof(DocComments))]
    public void An_example_of_a_doc_comment_runs(string member, string code) => Assert.False(string.IsNullOrWhiteSpace(Run(code)), $"{member} prints nothing.");

    [Fact]
    public void Every_entry_point_has_an_example()
    {
        string[] members = [.. DocComments.Select(row => (string)row[0])];
        Assert.All(EntryPoints, entry => Assert.Contains(members, m => m[2..].StartsWith(entry, StringComparison.Ordinal)));
    }

    [Fact]
    public void The_programs_of_the_library_page_print_what_stands_below_them()
    {
        string file = Repository.File("docs", "library.md");
        string page = File.ReadAllText(file);
        string fresh = Program().Replace(page, match => $"```csharp\n{match.Groups["code"].Value}```\n\n```text\n{Run(match.Groups["code"].Value)}```");
        if (Environment.GetEnvironmentVariable("LURESIM_UPDATE_DOCS") == "1") File.WriteAllText(file, fresh, new UTF8Encoding(false));
        Assert.Equal(3, Program().Count(page));
        Assert.Equal(fresh, page);
    }

    private static string Run(string code)
    {
        string references = (string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!;
        var compilation = CSharpCompilation.Create(
            "Example" + Guid.NewGuid().ToString("N"),
            [CSharpSyntaxTree.ParseText(Usings), CSharpSyntaxTree.ParseText(code)],
            references.Split(Path.PathSeparator).Select(path => MetadataReference.CreateFromFile(path)),
            new CSharpCompilationOptions(OutputKind.ConsoleApplication, nullableContextOptions: NullableContextOptions.Enable));
        using var stream = new MemoryStream();
        Microsoft.CodeAnalysis.Emit.EmitResult result = compilation.Emit(stream);
        Assert.True(result.Success, string.Join("\n", result.Diagnostics.Where(d => d.Severity == DiagnosticSeverity.Error)) + "\n" + code);
        MethodInfo entry = Assembly.Load(stream.ToArray()).EntryPoint!;
        TextWriter before = Console.Out;
        using var output = new StringWriter { NewLine = "\n" };
        Console.SetOut(output);
        try
        {
            entry.Invoke(null, entry.GetParameters().Length == 0 ? null : [Array.Empty<string>()]);
        }
        finally
        {
            Console.SetOut(before);
        }

        return output.ToString();
    }

    private static string Unindented(string code)
    {
        string[] lines = code.Trim('\n').TrimEnd().Split('\n');
        int indent = lines.Where(l => l.Trim().Length > 0).Select(l => l.Length - l.TrimStart().Length).DefaultIfEmpty(0).Min();
        return string.Join("\n", lines.Select(l => l.Length >= indent ? l[indent..] : l)) + "\n";
    }

    [GeneratedRegex("```csharp\n(?<code>.*?)```\n\n```text\n.*?```", RegexOptions.Singleline)]
    private static partial Regex Program();
}
