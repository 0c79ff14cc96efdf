using System.Text.RegularExpressions;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Tests.Cli;

namespace LureSim.Tests.Report;

/// <summary>Where the computation gives up, the reader hears what it means on the water and what to change.</summary>
public partial class TrackWordsTests
{
    public static TheoryData<SimulationEndReason, int, double> Ends
    {
        get
        {
            TheoryData<SimulationEndReason, int, double> ends = [];
            foreach (SimulationEndReason reason in Enum.GetValues<SimulationEndReason>())
            {
                ends.Add(reason, 0, 0.5);
                ends.Add(reason, 5, 0.5);
                ends.Add(reason, 33, 0.5);
                ends.Add(reason, 33, -1);
            }

            return ends;
        }
    }

    [Theory]
    [MemberData(nameof(Ends))]
    public void The_end_of_a_run_is_said_without_the_words_of_the_computation(SimulationEndReason reason, int node, double depth)
    {
        string text = TrackWords.End(new SimulationEnd(reason, 125.25) { Step = 1.2e-7, Node = node, Nodes = 40, NodeDepth = depth, Steps = 100_000, Energy = (0.034, 0.02) });
        Assert.DoesNotMatch(OfTheComputation(), text);
        Assert.EndsWith(".", text, StringComparison.Ordinal);
        if (reason != SimulationEndReason.Cancelled)
            Assert.Matches(ToDo(), text);
    }

    [Fact]
    public void Place_time_and_amount_are_in_the_sentence()
    {
        Assert.StartsWith("The lure could not be followed past 2.1 s after it hits the water:", TrackWords.End(new SimulationEnd(SimulationEndReason.StepTooSmall, 2.1)), StringComparison.Ordinal);
        Assert.Contains(": above the water it goes slack and snaps tight", TrackWords.End(new SimulationEnd(SimulationEndReason.StepTooSmall, 2.1) { Node = 33, Nodes = 40, NodeDepth = -0.4 }), StringComparison.Ordinal);
        Assert.Contains(": near the lure it goes slack", TrackWords.End(new SimulationEnd(SimulationEndReason.StepTooSmall, 2.1) { Node = 3, Nodes = 40, NodeDepth = 0.4 }), StringComparison.Ordinal);
        Assert.Contains("its energy is 3.4% off, where up to 2% is fine", TrackWords.End(new SimulationEnd(SimulationEndReason.EnergyOpen, 9) { Energy = (0.034, 0.02) }), StringComparison.Ordinal);
        Assert.Equal("", TrackWords.End(null));
    }

    [Fact]
    public void A_run_without_a_reason_is_said_by_its_status()
    {
        foreach (SimulationStatus status in Enum.GetValues<SimulationStatus>())
        {
            string text = TrackWords.EndOrStatus(HandMade.Track(status));
            Assert.NotEqual(status.ToString(), text.TrimEnd('.'));
            Assert.EndsWith(".", text, StringComparison.Ordinal);
            Assert.DoesNotMatch(OfTheComputation(), text);
        }
    }

    [Theory]
    [InlineData(ActionFindingKind.OutOfSteps)]
    [InlineData(ActionFindingKind.Lost)]
    [InlineData(ActionFindingKind.WindowTooShort)]
    [InlineData(ActionFindingKind.Cancelled)]
    public void Swimming_that_cannot_be_computed_is_said_the_same_way(ActionFindingKind kind)
    {
        string text = Assert.Single(SwimmingWords.Reasons(new ActionReport { Verdict = ActionVerdict.Unknown, Findings = [new(kind, 1.234, 6)] }, UnitSystem.Metric));
        Assert.DoesNotMatch(OfTheComputation(), text);
        if (kind != ActionFindingKind.Cancelled)
            Assert.Matches(ToDo(), text);
    }

    [GeneratedRegex("tolerance|step size|steps|node|simulated|residual|sample|window|[0-9]E[-+]?[0-9]", RegexOptions.IgnoreCase)]
    private static partial Regex OfTheComputation();

    [GeneratedRegex("Take|[Rr]eel |gentler|Gentler|let the ")]
    private static partial Regex ToDo();
}
