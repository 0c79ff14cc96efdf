using LureSim.Cli.Hosting;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Runs long work with a progress bar on standard error, or without one where no person looks.</summary>
internal static class ProgressRunner
{
    /// <summary>Runs the work.</summary>
    /// <param name="host">Streams.</param>
    /// <param name="title">What is being done.</param>
    /// <param name="work">The work; it reports the share done, 0 to 1, from any thread.</param>
    public static T Run<T>(CliHost host, string title, Func<IProgress<double>, T> work)
    {
        if (!host.ErrorIsTerminal)
            return work(new Silent());
        return host.ErrorConsole.Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .Start(context => work(new Bar(context.AddTask(title, maxValue: 1.0))));
    }

    private sealed class Silent : IProgress<double>
    {
        public void Report(double value)
        {
        }
    }

    private sealed class Bar(ProgressTask task) : IProgress<double>
    {
        public void Report(double value) => task.Value = double.IsFinite(value) ? Math.Clamp(value, 0.0, 1.0) : task.Value;
    }
}
