using LureSim.Swimming.Bodies;

namespace LureSim.Swimming;

/// <summary>The speeds at which a lure swims on a steady pull.</summary>
/// <param name="Speeds">Speeds tried (m/s), rising.</param>
/// <param name="Verdicts">What it does at each.</param>
/// <param name="From">Lowest speed of the widest stretch in which it swims (m/s); 0 if it never does.</param>
/// <param name="To">Highest speed of that stretch (m/s).</param>
/// <param name="Above">What it does above that stretch; null if it swims up to the fastest speed tried, or never.</param>
public sealed record SwimRange(IReadOnlyList<double> Speeds, IReadOnlyList<ActionVerdict> Verdicts, double From, double To, ActionVerdict? Above)
{
    // Window of each run and the part that is not judged (s).
    private const double Window = 4, Settling = 2;

    /// <summary>Tries each speed.</summary>
    /// <param name="body">The lure.</param>
    /// <param name="knot">Its knot.</param>
    /// <param name="tow">The water and the line; speed is set.</param>
    /// <param name="speeds">Speeds (m/s), rising, above 0 to 5.</param>
    /// <param name="tries">Tries at each, 1 to 12.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A member of the input is out of its range, or there is no speed.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SwimRange Of(ActionBody body, Knot knot, TowInput tow, IReadOnlyList<double> speeds, int tries = 3, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(tow);
        ArgumentNullException.ThrowIfNull(speeds);
        Guard.InRange(speeds.Count, 1, 100);
        ActionVerdict[] verdicts = [.. speeds.Select(speed =>
            ActionEnsemble.Assess(body, knot, tow with { Speed = speed }, new ActionOptions { Duration = Window, SettlingTime = Settling }, tries, cancellation).Verdict)];
        int first = -1, last = -2;
        for (int i = 0; i < verdicts.Length; i++)
        {
            if (verdicts[i] != ActionVerdict.Swims) continue;
            int end = i;
            while (end + 1 < verdicts.Length && verdicts[end + 1] == ActionVerdict.Swims) end++;
            if (end - i > last - first) (first, last) = (i, end);
            i = end;
        }

        return first < 0
            ? new(speeds, verdicts, 0, 0, null)
            : new(speeds, verdicts, speeds[first], speeds[last], last + 1 < verdicts.Length ? verdicts[last + 1] : null);
    }
}
