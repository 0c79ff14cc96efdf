namespace LureSim.Workbench.Server;

/// <summary>The pages that are open: a few at a time, and when the last is gone the program waits a while and ends. Thread-safe.</summary>
internal sealed class SessionList
{
    /// <summary>Most pages at a time.</summary>
    public const int Most = 4;

    private readonly Lock gate = new();
    private readonly List<PageSession> open = [];
    private readonly TaskCompletionSource deserted = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly TimeSpan? patience;
    private int turn;

    /// <summary>Begins to wait for a page.</summary>
    /// <param name="patience">How long the program waits without a page; null for ever.</param>
    public SessionList(TimeSpan? patience)
    {
        this.patience = patience;
        _ = WaitAsync(turn);
    }

    /// <summary>Completes when no page was open for as long as the program waits.</summary>
    public Task Deserted => deserted.Task;

    /// <summary>Runs a page until it is closed. The oldest is told to go where there are too many.</summary>
    /// <param name="session">The page.</param>
    public async Task RunAsync(PageSession session)
    {
        PageSession? oldest = null;
        lock (gate)
        {
            turn++;
            if (open.Count >= Most)
            {
                oldest = open[0];
                open.RemoveAt(0);
            }

            open.Add(session);
        }

        if (oldest is not null) await oldest.LeaveAsync("Another page was opened in place of this one. Reload to come back; your settings are in the address bar.").ConfigureAwait(false);
        try
        {
            await session.RunAsync().ConfigureAwait(false);
        }
        finally
        {
            int now;
            bool last;
            lock (gate)
            {
                open.Remove(session);
                last = open.Count == 0;
                now = ++turn;
            }

            if (last) _ = WaitAsync(now);
        }
    }

    /// <summary>Tells all pages that the program ends.</summary>
    public async Task CloseAsync()
    {
        PageSession[] all;
        lock (gate) all = [.. open];
        await Task.WhenAll(all.Select(session => session.LeaveAsync("LureSim has stopped. Your settings are in the address bar."))).ConfigureAwait(false);
    }

    private async Task WaitAsync(int since)
    {
        if (patience is not { } time) return;
        await Task.Delay(time).ConfigureAwait(false);
        lock (gate)
        {
            if (open.Count == 0 && turn == since) deserted.TrySetResult();
        }
    }
}
