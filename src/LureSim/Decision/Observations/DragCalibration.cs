using LureSim.Model;

namespace LureSim.Decision.Observations;

/// <summary>A timed fall and the drag that it tells.</summary>
/// <param name="Timing">The timing.</param>
/// <param name="Factor">Drag over the computed one.</param>
/// <param name="Deviation">Standard deviation of the logarithm of the factor, from the timing's own error.</param>
/// <param name="Off">How far it lies from all of them together, in its own standard deviations.</param>
public sealed record TimedDrag(Observation Timing, double Factor, double Deviation, double Off);

/// <summary>The drag of a bait from timed falls in still water: what a pool tells for good.</summary>
/// <param name="Body">The bait.</param>
/// <param name="Drag">Its factor with the margin in which nine in ten lie.</param>
/// <param name="Low">One in ten lies below this factor.</param>
/// <param name="High">One in ten lies above this factor.</param>
/// <param name="Timings">The timings that were used.</param>
/// <param name="Impossible">Timings that no drag from a tenth to ten times the computed one gives.</param>
/// <param name="Scatter">Scatter of the timings over what their own errors say (Birge ratio); 1 where it is no more.</param>
public sealed record DragCalibration(
    LureBody Body, MeasuredDrag Drag, double Low, double High, IReadOnlyList<TimedDrag> Timings, IReadOnlyList<Observation> Impossible, double Scatter)
{
    private const double NineInTen = 1.6448536269514722;
    private const double EightInTen = 1.2815515655446004;

    // A timing so many standard deviations off is pointed at.
    private const double FarOff = 3;

    /// <summary>Timings that do not go with the others.</summary>
    public IEnumerable<TimedDrag> Odd => Timings.Where(timing => Math.Abs(timing.Off) > FarOff);

    /// <summary>
    /// Each bait's factor from its timed falls. A timing gives a factor (<see cref="PoolFall"/>) and, by the slope of the time, an error of its logarithm; several are weighed by
    /// the inverse squares of their errors, and where they scatter more than those say the error grows in proportion (Birge 1932, birge1932calculation).
    /// </summary>
    /// <param name="tackle">The tackle, for rigging and leader.</param>
    /// <param name="seen">Observations; those that are no timed falls are passed over.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<DragCalibration> Of(Outfit tackle, IReadOnlyList<Observation> seen)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        ArgumentNullException.ThrowIfNull(seen);
        return
        [
            .. seen.Where(item => item is { Kind: ObservationKind.PoolFall, Happened: true, Body: not null })
                .GroupBy(item => item.Body! with { Drag = null }).Select(group => Of(tackle, group.Key, [.. group])).OfType<DragCalibration>(),
        ];
    }

    private static DragCalibration? Of(Outfit tackle, LureBody body, Observation[] timings)
    {
        (Observation Timing, double? Factor)[] found = [.. timings.Select(timing => (timing, PoolFall.Factor(tackle, timing)))];
        Observation[] impossible = [.. found.Where(item => item.Factor is null).Select(item => item.Timing)];
        (Observation Timing, double Log, double Deviation)[] used =
        [
            .. found.Where(item => item.Factor is not null).Select(item =>
            {
                double factor = item.Factor!.Value, step = 1e-3;

                // d ln(factor) / dt, by the time at factors to either side.
                double slope = (PoolFall.Seconds(tackle, item.Timing, factor * Math.Exp(step)) - PoolFall.Seconds(tackle, item.Timing, factor * Math.Exp(-step))) / (2 * step);
                return (item.Timing, Math.Log(factor), ObservationErrors.Of(item.Timing) / slope);
            }),
        ];
        if (used.Length == 0) return null;
        double weight = used.Sum(item => 1 / (item.Deviation * item.Deviation));
        double mean = used.Sum(item => item.Log / (item.Deviation * item.Deviation)) / weight;
        double square = used.Sum(item => (item.Log - mean) * (item.Log - mean) / (item.Deviation * item.Deviation));
        double scatter = used.Length > 1 ? Math.Max(1, Math.Sqrt(square / (used.Length - 1))) : 1;
        double deviation = scatter / Math.Sqrt(weight);
        var drag = new MeasuredDrag(Math.Clamp(Math.Exp(mean), Limits.DragFactor.Least, Limits.DragFactor.Most), Math.Min(1, Math.Exp(NineInTen * deviation) - 1))
        {
            Date = used.Max(item => item.Timing.Date),
        };
        return new DragCalibration(
            body,
            drag,
            Math.Exp(mean - (EightInTen * deviation)),
            Math.Exp(mean + (EightInTen * deviation)),
            [.. used.Select(item => new TimedDrag(item.Timing, Math.Exp(item.Log), item.Deviation, (item.Log - mean) / item.Deviation))],
            impossible,
            scatter);
    }
}
