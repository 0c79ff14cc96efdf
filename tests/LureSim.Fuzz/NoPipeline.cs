using LureSim.Cli.Hosting;
using LureSim.Decision;
using LureSim.Decision.Inverse;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Fuzz;

/// <summary>Computes nothing: command lines are tried for how they are read, up to where the work would begin.</summary>
internal sealed class NoPipeline : IPipeline
{
    /// <summary>What a command says that got so far.</summary>
    public const string Word = "The work would begin here.";

    /// <inheritdoc/>
    public ChosenRig Choose(Scenario scenario, ChoiceLimits limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public FallTable Fall(Scenario scenario, Rig rig, UnitSystem units, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public ColourTable Colours(Scenario scenario, ChosenRig chosen, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public LessonOutcome Teach(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public ActionOutcome Action(Scenario scenario, Rig? focus, bool faults, PlanRequest request, bool draw, IProgress<double> progress, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public PlanOutcome Plan(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public IReadOnlyList<PlanOutcome> Plans(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public TripOutcome Trip(IReadOnlyList<Scenario> scenarios, IReadOnlyList<ChoiceLimits> limits, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public CompareOutcome Compare(Scenario scenario, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public IReadOnlyList<InverseAnswer> Ask(Scenario scenario, Rig rig, IReadOnlyList<JigHead> heads, double? depth, IProgress<double> progress, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public SearchOutcome Search(Scenario scenario, Rig rig, int runs, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => throw Begins();

    /// <inheritdoc/>
    public TideOutcome Tide(Scenario scenario, Rig rig, PlanRequest request, IProgress<double> progress, CancellationToken cancellation) => throw Begins();

    private static CommandFailedException Begins() => new(ExitCode.Numerical, Word);
}
