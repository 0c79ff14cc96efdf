using LureSim.Decision;
using LureSim.Scenarios;

namespace LureSim.Cli;

/// <summary>The calls into the model and the sheet: the only place of the program that knows them.</summary>
internal sealed class Pipeline : IPipeline
{
    /// <inheritdoc/>
    public FallTable Fall(Scenario scenario, double depthStep, IProgress<double> progress, CancellationToken cancellation) =>
        throw new NotSupportedException("The fall is not connected to the model yet.");

    /// <inheritdoc/>
    public Candidate Path(Scenario scenario, Rig rig, CancellationToken cancellation) =>
        throw new NotSupportedException("The path is not connected to the model yet.");

    /// <inheritdoc/>
    public ColourTable Colours(Scenario scenario, double depthStep, CancellationToken cancellation) =>
        throw new NotSupportedException("The colours are not connected to the model yet.");

    /// <inheritdoc/>
    public PlanOutcome Plan(Scenario scenario, PlanOptions options, IProgress<double> progress, CancellationToken cancellation) =>
        throw new NotSupportedException("The plan is not connected to the model yet.");
}
