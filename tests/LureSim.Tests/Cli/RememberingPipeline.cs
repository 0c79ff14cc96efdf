using System.Collections.Concurrent;
using LureSim.Cli;
using LureSim.Cli.Hosting;
using LureSim.Decision;
using LureSim.Decision.Inverse;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Tests.Cli;

/// <summary>
/// A pipeline that seeks the choice of a spot once for all commands that ask for the same with the same settings: that they would all find the same is another
/// test's business (<see cref="OneStoryTests"/>).
/// </summary>
internal sealed class RememberingPipeline : IPipeline
{
    private readonly Pipeline inner = new();

    private readonly ConcurrentDictionary<(string Title, ChoiceLimits Limits, UnitSystem Units, int? Samples), Lazy<ChosenRig>> chosen = new();

    /// <inheritdoc/>
    public ChosenRig Choose(Scenario scenario, ChoiceLimits limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) =>
        chosen.GetOrAdd((scenario.Title, limits, request.Units, request.Samples), _ => new(() => inner.Choose(scenario, limits, request, progress, cancellation))).Value;

    /// <inheritdoc/>
    public FallTable Fall(Scenario scenario, Rig rig, UnitSystem units, CancellationToken cancellation) => inner.Fall(scenario, rig, units, cancellation);

    /// <inheritdoc/>
    public ColourTable Colours(Scenario scenario, ChosenRig chosen, CancellationToken cancellation) => inner.Colours(scenario, chosen, cancellation);

    /// <inheritdoc/>
    public LessonOutcome Teach(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => inner.Teach(scenario, request, progress, cancellation);

    /// <inheritdoc/>
    public ActionOutcome Action(Scenario scenario, Rig? focus, bool faults, PlanRequest request, bool draw, IProgress<double> progress, CancellationToken cancellation) =>
        inner.Action(scenario, focus, faults, request, draw, progress, cancellation);

    /// <inheritdoc/>
    public PlanOutcome Plan(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => inner.Plan(scenario, request, progress, cancellation);

    /// <inheritdoc/>
    public IReadOnlyList<PlanOutcome> Plans(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) =>
        inner.Plans(scenarios, limits, request, progress, cancellation);

    /// <inheritdoc/>
    public TripOutcome Trip(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) =>
        inner.Trip(scenarios, limits, request, progress, cancellation);

    /// <inheritdoc/>
    public CompareOutcome Compare(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => inner.Compare(scenario, request, progress, cancellation);

    /// <inheritdoc/>
    public IReadOnlyList<InverseAnswer> Ask(Scenario scenario, Rig rig, IReadOnlyList<JigHead> heads, double? depth, IProgress<double> progress, CancellationToken cancellation) =>
        inner.Ask(scenario, rig, heads, depth, progress, cancellation);

    /// <inheritdoc/>
    public SearchOutcome Search(Scenario scenario, Rig rig, int runs, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) =>
        inner.Search(scenario, rig, runs, request, progress, cancellation);

    /// <inheritdoc/>
    public TideOutcome Tide(Scenario scenario, Rig rig, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => inner.Tide(scenario, rig, request, progress, cancellation);
}
