using System.Globalization;
using System.Reflection;
using System.Text;
using System.Text.RegularExpressions;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Conventions;

/// <summary>Data flows one way; this holds the arrows of every folder.</summary>
public partial class ArchitectureTests
{
    // Floors of the house from the ground up: a room may use those below its own floor and no others.
    private static readonly string[][] Floors =
    [
        ["LureSim"],
        ["LureSim.Data", "LureSim.Hydrodynamics", "LureSim.Stepping"],
        ["LureSim.Model"],
        ["LureSim.Water", "LureSim.Lures", "LureSim.Light", "LureSim.Tides"],
        ["LureSim.Tackle", "LureSim.Sight"],
        ["LureSim.Motion", "LureSim.Swimming", "LureSim.Casting"],
        ["LureSim.Coupling"],
        ["LureSim.Decision"],
        ["LureSim.Scenarios", "LureSim.Report"],
        ["LureSim.Workbench"],
        ["LureSim.Cli"],
    ];

    public static TheoryData<string> Assemblies => new("LureSim", "LureSim.Scenarios", "LureSim.Report", "LureSim.Workbench", "LureSim.Cli");

    [Fact]
    public void Arrows_run_down()
    {
        List<string> wrong = [];
        foreach ((string from, string to, int count) in HouseGraph.Read().Arrows)
        {
            int upper = FloorOf(from), lower = FloorOf(to);
            if (Room(from) != Room(to) && lower >= upper) wrong.Add($"{from} -> {to} ({count}: {HouseGraph.Read().Example(from, to)})");
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    [Theory]
    [MemberData(nameof(Assemblies))]
    public void No_folders_use_each_other_in_a_circle(string assembly)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        HouseGraph graph = HouseGraph.Read();
        List<string> found = [];
        foreach (string[] circle in graph.Cycles(assembly))
        {
            IEnumerable<string> arrows = graph.Arrows.Where(a => circle.Contains(a.From) && circle.Contains(a.To)).Select(a => $"  {a.From} -> {a.To} {a.Count}: {graph.Example(a.From, a.To)}");
            found.Add($"{string.Join(" <-> ", circle)}\n{string.Join("\n", arrows)}");
        }

        Assert.True(found.Count == 0, string.Join("\n", found));
    }

    [Fact]
    public void The_model_knows_numbers_alone()
    {
        string[] allowed = ["LureSim", "MathNet.Numerics"];
        IEnumerable<string> others = typeof(LureSim.Decision.Planner).Assembly.GetReferencedAssemblies().Select(a => a.Name!)
            .Where(name => !name.StartsWith("System", StringComparison.Ordinal) && !allowed.Contains(name) && name is not ("netstandard" or "mscorlib"));
        Assert.Empty(others);
    }

    [Fact]
    public void Model_scenarios_and_report_know_no_web_server() =>
        Assert.All((Assembly[])[typeof(LureSim.Decision.Planner).Assembly, typeof(LureSim.Scenarios.ScenarioReader).Assembly, typeof(LureSim.Report.Figures.Figure).Assembly], assembly =>
            Assert.DoesNotContain(assembly.GetReferencedAssemblies(), reference => reference.Name!.StartsWith("Microsoft.AspNetCore", StringComparison.Ordinal)));

    [Fact]
    public void Every_folder_has_a_row_in_the_map_of_the_contributor_guide()
    {
        string guide = File.ReadAllText(Repository.File("DEVELOPERS.md"));
        IEnumerable<string> missing = HouseGraph.Read().Rooms.Select(FolderOf).Where(folder => !guide.Contains($"`{folder}`", StringComparison.Ordinal));
        Assert.True(!missing.Any(), "No row for " + string.Join(", ", missing));
    }

    [Fact]
    public void Every_namespace_is_a_folder() =>
        Assert.All(HouseGraph.Read().Rooms, room => Assert.True(Directory.Exists(Repository.File(FolderOf(room).Split('/'))), $"{room}: no folder {FolderOf(room)}"));

    [Fact]
    public void The_drawing_of_the_house_is_true()
    {
        string file = Repository.File("docs", "images", "house.svg");
        string drawing = HouseDrawing.Of(HouseGraph.Read(), Floors);
        if (Environment.GetEnvironmentVariable("LURESIM_UPDATE_DOCS") == "1") File.WriteAllText(file, drawing, new UTF8Encoding(false));
        Assert.True(File.Exists(file) && File.ReadAllText(file) == drawing, "docs/images/house.svg is not that of the compiled types; write it anew with LURESIM_UPDATE_DOCS=1.");
    }

    [Fact]
    public void Every_stop_on_the_way_of_a_value_is_there()
    {
        string page = File.ReadAllText(Repository.File("docs", "architecture.md"));
        string[] stops = [.. Stop().Matches(page).Select(match => match.Groups[1].Value).Distinct()];
        Assert.True(stops.Length >= 12, "The way of a value has lost its stops.");
        Assert.All(stops, stop =>
        {
            Type? type = HouseGraph.TypeNamed(stop);
            string outer = stop[..stop.LastIndexOf('.')], member = stop[(stop.LastIndexOf('.') + 1)..];
            const BindingFlags Any = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance;
            Assert.True(type is not null || HouseGraph.TypeNamed(outer)?.GetMember(member, Any).Length > 0, stop);
        });
    }

    [GeneratedRegex("`(LureSim\\.[A-Za-z.]+)`")]
    private static partial Regex Stop();

    private static string FolderOf(string room)
    {
        string assembly = room.Split('.') is [_, "Scenarios" or "Report" or "Cli" or "Workbench", ..] parts ? $"LureSim.{parts[1]}" : "LureSim";
        string rest = room.Length > assembly.Length ? room[(assembly.Length + 1)..].Replace('.', '/') : "";
        return rest.Length > 0 ? $"src/{assembly}/{rest}" : $"src/{assembly}";
    }

    private static string Room(string space) => Floors.SelectMany(f => f).Where(r => space == r || space.StartsWith(r + ".", StringComparison.Ordinal)).MaxBy(r => r.Length)!;

    private static int FloorOf(string space)
    {
        string room = Room(space);
        return Array.FindIndex(Floors, f => f.Contains(room)) is var floor and >= 0 ? floor : throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"{space} stands on no floor."));
    }
}
