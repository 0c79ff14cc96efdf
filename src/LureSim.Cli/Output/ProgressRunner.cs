using System.Globalization;
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
    /// <param name="counted">False for work that does not tell the share done.</param>
    public static T Run<T>(CliHost host, string title, Func<IProgress<double>, T> work, bool counted = true)
    {
        if (!host.ErrorIsTerminal)
        {
            using var lines = new Lines(host.Error, title);
            return work(lines);
        }

        if (!counted)
            return host.ErrorConsole.Status().Start(title, _ => work(new Progress<double>()));
        return host.ErrorConsole.Progress()
            .AutoClear(true)
            .Columns(new TaskDescriptionColumn(), new ProgressBarColumn(), new PercentageColumn(), new RemainingTimeColumn())
            .Start(context => work(new Bar(context.AddTask(title, maxValue: 1.0))));
    }

    // A line every two seconds where there is no bar, so that nobody thinks it hangs; nothing for quick work.
    private sealed class Lines : IProgress<double>, ITeller, IDisposable
    {
        private static readonly TimeSpan Every = TimeSpan.FromSeconds(1.9);

        private readonly TextWriter writer;
        private readonly string title;

        // A thread of its own: the threads of the pool are busy with the work that it tells of.
        private readonly Thread thread;
        private readonly ManualResetEventSlim stop = new();
        private readonly Lock writing = new();
        private double share;
        private volatile string? part;
        private bool ended;

        public Lines(TextWriter writer, string title)
        {
            this.writer = writer;
            this.title = title;
            thread = new Thread(() =>
            {
                while (!ended && !stop.Wait(Every)) Write();
            })
            { IsBackground = true };
            thread.Start();
        }

        // Never less than before: work that turns out to be more is said by going slower.
        public void Report(double value)
        {
            if (!double.IsFinite(value)) return;
            double next = Math.Clamp(value, 0.0, 1.0), now = Volatile.Read(ref share);
            while (next > now)
            {
                double seen = Interlocked.CompareExchange(ref share, next, now);
                if (seen == now) return;
                now = seen;
            }
        }

        public void Dispose()
        {
            stop.Set();
            thread.Join();
            stop.Dispose();
        }

        public void Tell(string sentence) => Write(sentence);

        public void Name(string now) => part = now;

        private void Write()
        {
            double done = Volatile.Read(ref share);
            string named = part is null ? title : $"{title} ({part})";
            Write(done >= 1.0 ? $"{title}: finishing ..." : done > 0.0 ? string.Create(CultureInfo.InvariantCulture, $"{named}: {Math.Floor(100.0 * done):0}% done") : $"{named} ...");
        }

        private void Write(string line)
        {
            try
            {
                lock (writing)
                {
                    writer.WriteLine(line);
                    writer.Flush();
                }
            }
            catch (Exception exception) when (exception is IOException or ObjectDisposedException)
            {
                // Nobody reads it: the work goes on.
                ended = true;
            }
        }
    }

    private sealed class Bar(ProgressTask task) : IProgress<double>, ITeller
    {
        // There is one line: what is being done stays behind what is known.
        public void Tell(string sentence) => task.Description = Markup.Escape(sentence);

        public void Name(string part)
        {
        }

        public void Report(double value) => task.Value = double.IsFinite(value) ? Math.Max(task.Value, Math.Clamp(value, 0.0, 1.0)) : task.Value;
    }
}
