using System.Diagnostics;

namespace LureSim.Workbench.Server;

/// <summary>
/// The work on the other heads while a knob moves, beside the work on the head that is looked at, which never waits for it. One at a time: work that a newer wish has
/// overtaken is given up, unless it is nearly free or the others have not been shown for a while; then it is finished and shown late. What was begun last is always done
/// in the end. Thread-safe.
/// </summary>
internal sealed class OtherHeads
{
    private readonly Lock gate = new();
    private readonly TimeSpan atLeast;
    private readonly TimeSpan light;
    private CancellationTokenSource? running;
    private Func<CancellationToken, Task<bool>>? proposed;
    private Func<CancellationToken, Task<bool>>? waiting;
    private long begun;
    private long shown;
    private bool isLight;
    private Task last = Task.CompletedTask;

    /// <summary>Begins with nothing to do.</summary>
    /// <param name="atLeast">While the hand moves on, the others are shown at least this often.</param>
    /// <param name="light">Work that takes less is never given up, and never waited with.</param>
    public OtherHeads(TimeSpan atLeast, TimeSpan light)
    {
        this.atLeast = atLeast;
        this.light = light;
    }

    /// <summary>Whether the others are to be begun although the hand may go on: they take no time worth speaking of, or they have not been shown for too long.</summary>
    public bool IsDue
    {
        get
        {
            lock (gate) return isLight || Due;
        }
    }

    /// <summary>How many pieces of work were begun, given up, and finished.</summary>
    public (int Begun, int GivenUp, int Finished) Count { get; private set; }

    // Under the gate.
    private bool Due => Stopwatch.GetElapsedTime(shown) >= atLeast;

    /// <summary>A newer wish is there.</summary>
    public void Overtake()
    {
        lock (gate)
        {
            proposed = null;
            GiveUp();
        }
    }

    /// <summary>There is other water now: nothing of what was before is shown any more, however long ago the others were shown.</summary>
    public void Leave()
    {
        lock (gate)
        {
            proposed = null;
            waiting = null;
            running?.Cancel();
        }
    }

    /// <summary>Lays work ready in the place of any that lies there.</summary>
    /// <param name="work">The work: whether it was shown. It ends soon after its token says so.</param>
    public void Propose(Func<CancellationToken, Task<bool>> work)
    {
        lock (gate) proposed = work;
    }

    /// <summary>Begins the work that lies ready, if any does, or lets it wait for work that is due, in the place of any that waits.</summary>
    /// <param name="stopped">Whether the hand has stopped: then nothing is due that is not the newest.</param>
    public void Begin(bool stopped)
    {
        lock (gate)
        {
            if (proposed is not { } work) return;
            proposed = null;
            if (running is null)
            {
                Run(work);
                return;
            }

            waiting = work;
            if (stopped) running.Cancel();
            else GiveUp();
        }
    }

    /// <summary>Completes when nothing that was begun is left to do.</summary>
    public async Task WhenDoneAsync()
    {
        while (true)
        {
            Task now;
            lock (gate)
            {
                if (running is null) return;
                now = last;
            }

            await now.ConfigureAwait(false);
        }
    }

    // Under the gate.
    private void GiveUp()
    {
        if (running is null || Due) return;
        TimeSpan left = light - Stopwatch.GetElapsedTime(begun);
        if (left <= TimeSpan.Zero) running.Cancel();
        else running.CancelAfter(left);
    }

    // Under the gate.
    private void Run(Func<CancellationToken, Task<bool>> work)
    {
        var source = new CancellationTokenSource();
        running = source;
        begun = Stopwatch.GetTimestamp();
        Count = Count with { Begun = Count.Begun + 1 };
        last = Task.Run(() => RunAsync(work, source));
    }

    private async Task RunAsync(Func<CancellationToken, Task<bool>> work, CancellationTokenSource source)
    {
        bool finished = false;
        try
        {
            finished = await work(source.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            // A newer wish is there.
        }
        finally
        {
            lock (gate)
            {
                if (finished)
                {
                    shown = Stopwatch.GetTimestamp();
                    isLight = Stopwatch.GetElapsedTime(begun) < light;
                }

                Count = finished ? Count with { Finished = Count.Finished + 1 } : Count with { GivenUp = Count.GivenUp + 1 };
                running = null;
                source.Dispose();
                if (waiting is { } next)
                {
                    waiting = null;
                    Run(next);
                }
            }
        }
    }
}
