using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Words;
using LureSim.Stepping;

namespace LureSim.Cli.Commands;

/// <summary>One run of a command: where its computations and its checks go.</summary>
/// <param name="Host">Streams and computations.</param>
/// <param name="Folder">Folder that will be written into; null for none.</param>
/// <param name="Cancellation">Stops the work.</param>
internal sealed record CommandRun(CliHost Host, string? Folder, CancellationToken Cancellation)
{
    /// <summary>Does the long work, once it is known that its result can be written.</summary>
    /// <param name="title">What is being done, for the progress bar.</param>
    /// <param name="work">The work.</param>
    public T Compute<T>(string title, Func<IPipeline, IProgress<double>, T> work) =>
        Checked(() => ProgressRunner.Run(Host, title, progress => work(Host.Pipeline, progress)));

    /// <summary>Seeks the choice that a command answers for.</summary>
    /// <param name="title">What is being done, for the progress bar.</param>
    /// <param name="scenario">The scenario.</param>
    /// <param name="limits">What the choice is held to.</param>
    /// <param name="settings">Options, for the units and the tries.</param>
    public ChosenRig Choose(string title, Scenario scenario, ChoiceLimits limits, ScenarioSettings settings) =>
        Compute(title, (pipeline, progress) => pipeline.Choose(scenario, limits, new PlanRequest(settings.Formatter.System, false, settings.Samples), progress, Cancellation));

    /// <summary>Seeks the choice that a command answers for, and does its work for it.</summary>
    /// <param name="title">What is being done, for the progress bar.</param>
    /// <param name="scenario">The scenario.</param>
    /// <param name="limits">What the choice is held to.</param>
    /// <param name="settings">Options, for the units and the tries.</param>
    /// <param name="work">The work for the choice.</param>
    public (ChosenRig Chosen, T Result) Choose<T>(string title, Scenario scenario, ChoiceLimits limits, ScenarioSettings settings, Func<IPipeline, ChosenRig, IProgress<double>, T> work) =>
        Compute(title, (pipeline, progress) =>
        {
            ChosenRig chosen = pipeline.Choose(scenario, limits, new PlanRequest(settings.Formatter.System, false, settings.Samples), new Part(progress, 0, 0.5), Cancellation);
            return (chosen, work(pipeline, chosen, new Part(progress, 0.5, 0.5)));
        });

    /// <summary>Does work of which no share can be told.</summary>
    /// <param name="work">The work.</param>
    public T Compute<T>(Func<IPipeline, T> work) => Checked(() => ProgressRunner.Run(Host, "Computing", _ => work(Host.Pipeline), counted: false));

    /// <summary>Ends the command if a track that its answer rests on is none.</summary>
    /// <exception cref="CommandFailedException">The computation failed.</exception>
    /// <exception cref="OperationCanceledException">The computation was stopped.</exception>
    public static void Require(Track track, string where = "")
    {
        if (track.Status == SimulationStatus.Failed)
            throw Failure(TrackWords.End(track.End), where);
        if (track.Status == SimulationStatus.Cancelled)
            throw new OperationCanceledException();
    }

    /// <summary>The end of a command whose computation failed.</summary>
    /// <param name="message">Why.</param>
    /// <param name="where">What it was about, where the command is about several things.</param>
    public static CommandFailedException Failure(string message, string where = "") =>
        new(ExitCode.Numerical, where.Length == 0 ? $"The computation failed: {message}" : $"{where}: the computation failed: {message}");

    // A part of the work as a share of all of it.
    private sealed class Part(IProgress<double> progress, double start, double size) : IProgress<double>
    {
        public void Report(double value) => progress.Report(start + (size * value));
    }

    private T Checked<T>(Func<T> work)
    {
        AtomicFiles.RequireFolder(Folder, Cancellation);
        T outcome = work();
        Cancellation.ThrowIfCancellationRequested();
        return outcome;
    }
}
