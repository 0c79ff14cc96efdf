using LureSim.Cli.Hosting;
using LureSim.Decision;
using LureSim.Report.Figures;
using NetArchTest.Rules;

namespace LureSim.Tests.Conventions;

/// <summary>Data flows one way; this holds the arrows.</summary>
public class ArchitectureTests
{
    public static TheoryData<string, string[]> Forbidden => new()
    {
        { "LureSim.Data", ["LureSim.Scenarios", "LureSim.Water", "LureSim.Hydrodynamics", "LureSim.Tackle", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Scenarios", ["LureSim.Water", "LureSim.Hydrodynamics", "LureSim.Tackle", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Water", ["LureSim.Hydrodynamics", "LureSim.Tackle", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Hydrodynamics", ["LureSim.Scenarios", "LureSim.Water", "LureSim.Tackle", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Tackle", ["LureSim.Water", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Motion", ["LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Swimming", ["LureSim.Water", "LureSim.Motion", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Light", ["LureSim.Water", "LureSim.Tackle", "LureSim.Motion", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Sight", ["LureSim.Water", "LureSim.Tackle", "LureSim.Motion", "LureSim.Decision"] },
    };

    [Theory]
    [MemberData(nameof(Forbidden))]
    public void Arrows_run_one_way(string from, string[] to)
    {
        ArgumentNullException.ThrowIfNull(to);
        PredicateList types = Types.InAssembly(typeof(Planner).Assembly).That().ResideInNamespace(from);
        Assert.NotEmpty(types.GetTypes());
        TestResult result = types.ShouldNot().HaveDependencyOnAny(to).GetResult();
        Assert.True(result.IsSuccessful, string.Join(", ", result.FailingTypeNames ?? []));
    }

    [Fact]
    public void The_model_neither_draws_nor_prints()
    {
        TestResult result = Types.InAssembly(typeof(Planner).Assembly).ShouldNot()
            .HaveDependencyOnAny("OxyPlot", "SkiaSharp", "Spectre.Console", "System.Console", "LureSim.Report", "LureSim.Cli").GetResult();
        Assert.True(result.IsSuccessful, string.Join(", ", result.FailingTypeNames ?? []));
    }

    [Fact]
    public void The_parts_of_decision_use_one_another_one_way()
    {
        // The path of a trial takes the swimming drag of its lure from the rig checks, which stand above it.
        (string, string) left = ("LureSim.Decision.Trials", "LureSim.Decision");
        IReadOnlyDictionary<(string From, string To), string> arrows = NamespaceGraph.Of(typeof(Planner).Assembly);
        (string From, string To)[] decision = [.. arrows.Keys.Where(arrow => Inside(arrow.From) && Inside(arrow.To) && arrow != left)];
        Assert.NotEmpty(decision);
        Assert.Null(NamespaceGraph.Cycle(decision));

        static bool Inside(string name) => name.StartsWith("LureSim.Decision", StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(typeof(Figure))]
    [InlineData(typeof(CliHost))]
    public void Report_and_program_have_no_cycle(Type inside)
    {
        ArgumentNullException.ThrowIfNull(inside);
        (string From, string To)[] arrows = [.. NamespaceGraph.Of(inside.Assembly).Keys];
        Assert.NotEmpty(arrows);
        Assert.Null(NamespaceGraph.Cycle(arrows));
    }

    [Fact]
    public void A_cycle_is_found()
    {
        Assert.Equal("a -> b -> c -> a", NamespaceGraph.Cycle([("a", "b"), ("b", "c"), ("c", "a"), ("c", "d")]));
        Assert.Null(NamespaceGraph.Cycle([("a", "b"), ("b", "c"), ("a", "c")]));
    }

    [Fact]
    public void The_model_says_nothing_in_units_of_its_own()
    {
        // The reader of scenarios is at the edge.
        TestResult result = Types.InAssembly(typeof(Planner).Assembly).That().DoNotResideInNamespace("LureSim.Scenarios").ShouldNot().HaveDependencyOn("UnitsNet").GetResult();
        Assert.True(result.IsSuccessful, string.Join(", ", result.FailingTypeNames ?? []));
        Assert.Null(typeof(Planner).Assembly.GetType("LureSim.Scenarios.UnitSystem"));
    }
}
