using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
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

    private T Checked<T>(Func<T> work)
    {
        AtomicFiles.RequireFolder(Folder);
        T outcome = work();
        Cancellation.ThrowIfCancellationRequested();
        return outcome;
    }
}
