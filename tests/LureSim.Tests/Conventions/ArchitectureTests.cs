using LureSim.Decision;
using NetArchTest.Rules;

namespace LureSim.Tests.Conventions;

/// <summary>Data flows one way; this holds the arrows.</summary>
public class ArchitectureTests
{
    public static TheoryData<string, string[]> Forbidden => new()
    {
        { "LureSim.Data", ["LureSim.Scenarios", "LureSim.Water", "LureSim.Hydrodynamics", "LureSim.Tackle", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Scenarios", ["LureSim.Water", "LureSim.Hydrodynamics", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Water", ["LureSim.Hydrodynamics", "LureSim.Tackle", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Hydrodynamics", ["LureSim.Scenarios", "LureSim.Model", "LureSim.Data", "LureSim.Water", "LureSim.Lures", "LureSim.Tackle", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Lures", ["LureSim.Scenarios", "LureSim.Water", "LureSim.Tackle", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
        { "LureSim.Model", ["LureSim.Lures", "LureSim.Hydrodynamics", "LureSim.Tackle", "LureSim.Motion", "LureSim.Swimming", "LureSim.Light", "LureSim.Sight", "LureSim.Decision"] },
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
}
