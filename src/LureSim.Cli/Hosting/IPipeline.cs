using LureSim.Decision;
using LureSim.Decision.Inverse;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Cli.Hosting;

/// <summary>The computations that the commands show. One interface, so that the commands can be tested on made-up results.</summary>
internal interface IPipeline
{
    /// <summary>Seeks the choice with its numbers and its colour: the same for every command.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="limits">What the choice is held to.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    ChosenRig Choose(Scenario scenario, ChoiceLimits limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Computes the count-down table of every jig head with the bait of a rig.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig.</param>
    /// <param name="units">Units in which the depths of the table are round.</param>
    /// <param name="cancellation">Stops the work.</param>
    FallTable Fall(Scenario scenario, Rig rig, UnitSystem units, CancellationToken cancellation);

    /// <summary>Computes the colours shown at depths below the surface.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="chosen">The choice.</param>
    /// <param name="cancellation">Stops the work.</param>
    ColourTable Colours(Scenario scenario, ChosenRig chosen, CancellationToken cancellation);

    /// <summary>Computes a lesson in light and sight and draws its plates.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    LessonOutcome Teach(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Computes how the rigs swim and draws the figures of one.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="focus">The rig to look at closely; null for the first.</param>
    /// <param name="faults">True for the maps of faults.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="draw">True to draw the figures.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    ActionOutcome Action(Scenario scenario, Rig? focus, bool faults, PlanRequest request, bool draw, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Computes the whole plan and draws its sheet.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    PlanOutcome Plan(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Plans every spot, without drawing.</summary>
    /// <param name="scenarios">Validated scenarios; at least one.</param>
    /// <param name="limits">What each choice is held to.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    IReadOnlyList<PlanOutcome> Plans(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Plans every spot of a trip and draws its pages.</summary>
    /// <param name="scenarios">Validated scenarios in the order of the trip; at least one.</param>
    /// <param name="limits">What each choice is held to.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    TripOutcome Trip(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Compares the two rigs of a scenario and draws the page.</summary>
    /// <param name="scenario">A validated scenario with two rigs to compare.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    CompareOutcome Compare(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Answers questions asked backwards: the head that holds the bottom, and speed and count-down for each head.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig; its head is not used.</param>
    /// <param name="heads">Heads that speed and count-down are asked for.</param>
    /// <param name="depth">Depth that the retrieve should hold (m); null for the middle of the strike zone.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    IReadOnlyList<InverseAnswer> Ask(Scenario scenario, Rig rig, IReadOnlyList<JigHead> heads, double? depth, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Searches the best retrieve of a lure and draws its page.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig; its retrieve does not matter.</param>
    /// <param name="runs">Simulated casts for each kind of retrieve.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    SearchOutcome Search(Scenario scenario, Rig rig, int runs, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);

    /// <summary>Computes weights for the tide and draws their page.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig; its head does not matter.</param>
    /// <param name="request">What was asked for.</param>
    /// <param name="progress">Takes the share of the work done, 0 to 1.</param>
    /// <param name="cancellation">Stops the work.</param>
    TideOutcome Tide(Scenario scenario, Rig rig, PlanRequest request, IProgress<double> progress, CancellationToken cancellation);
}
