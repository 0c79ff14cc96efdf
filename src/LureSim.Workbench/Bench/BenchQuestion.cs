using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Workbench.Bench;

/// <summary>A lure of the box, fished as the knobs have it.</summary>
/// <param name="Name">Its name, unlike that of any other.</param>
/// <param name="Rig">The rig.</param>
internal sealed record BenchLure(string Name, Rig Rig);

/// <summary>What the knobs ask together.</summary>
/// <param name="Settings">The settings on the steps of their knobs.</param>
/// <param name="Scenario">The scenario with them.</param>
/// <param name="Lures">The lures, light to heavy.</param>
/// <param name="Focus">The one that is looked at.</param>
/// <param name="Retrieve">Place of the presentation in the file.</param>
/// <param name="Knobs">The knobs.</param>
/// <param name="Soft">The soft bait; null for none.</param>
/// <param name="Notes">What was noted on the page and stands in the scenario under "seen", the oldest first.</param>
/// <param name="Problems">Why the settings do not go together, and the file itself is shown; empty where they do.</param>
internal sealed record BenchQuestion(
    BenchSettings Settings, Scenario Scenario, IReadOnlyList<BenchLure> Lures, int Focus, int Retrieve, IReadOnlyList<Knob> Knobs, LureBody? Soft, IReadOnlyList<string> Notes, IReadOnlyList<ScenarioProblem> Problems)
{
    /// <summary>The lure that is looked at.</summary>
    public BenchLure First => Lures[Focus];
}
