using LureSim.Swimming.Bodies;

namespace LureSim.Swimming;

/// <summary>What a lure does over a seeded handful of tries that differ in the start and in what nobody measures.</summary>
/// <param name="Typical">The try that stands for them: among those of the commonest verdict the one nearest to their medians.</param>
/// <param name="Members">The reports of all tries.</param>
public sealed record EnsembleAssessment(ActionAssessment Typical, IReadOnlyList<ActionReport> Members)
{
    /// <summary>The commonest verdict; of two as common the worse.</summary>
    public ActionVerdict Verdict => Typical.Report.Verdict;

    /// <summary>Figures of the try that stands for them.</summary>
    public ActionReport Report => Typical.Report;

    /// <summary>Motion of the try that stands for them.</summary>
    public ActionTrace Trace => Typical.Trace;

    /// <summary>How many tries have it.</summary>
    public int Agreeing => CountOf(Verdict);

    /// <summary>True if three in four of the tries that have the verdict have a signed figure to the same side: what is left of a straight lure has no side of its own.</summary>
    /// <param name="figure">The figure, such as the lean or the slope of the course.</param>
    /// <exception cref="ArgumentNullException"><paramref name="figure"/> is null.</exception>
    public bool HasSide(Func<ActionReport, double> figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ActionReport[] alike = [.. Members.Where(m => m.Verdict == Verdict)];
        double own = figure(Report);
        return 4 * alike.Count(m => figure(m) * own > 0) >= 3 * alike.Length;
    }

    /// <summary>How many tries have a verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    public int CountOf(ActionVerdict verdict) => Members.Count(m => m.Verdict == verdict);

    /// <summary>Median of a figure over the tries, with the second lowest and the second highest of a dozen: eight tries in ten lie between.</summary>
    /// <param name="figure">The figure.</param>
    /// <exception cref="ArgumentNullException"><paramref name="figure"/> is null.</exception>
    public TrySpread Of(Func<ActionReport, double> figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        double[] values = [.. Members.Select(figure)];
        Array.Sort(values);
        return new(Quantile(values, 0.1), Quantile(values, 0.5), Quantile(values, 0.9));
    }

    internal static double Quantile(double[] sorted, double share)
    {
        double at = share * (sorted.Length - 1);
        int low = (int)at;
        return low + 1 < sorted.Length ? sorted[low] + ((at - low) * (sorted[low + 1] - sorted[low])) : sorted[low];
    }
}

/// <summary>A figure over some tries.</summary>
/// <param name="Low">Eight tries in ten lie above or below it by no more than the two ends: lower end.</param>
/// <param name="Median">Half of the tries lie below.</param>
/// <param name="High">Upper end.</param>
public readonly record struct TrySpread(double Low, double Median, double High);

/// <summary>Runs a lure some times, each with another start and other values of what nobody measures, so that no verdict hangs on them.</summary>
/// <remarks>
/// Drawn evenly by a Latin hypercube (McKay, Beckman &amp; Conover 1979) from a fixed seed. Ranges, all assumed: heading at the start within 10 degrees, roll within 20, pitch within 5;
/// centre of buoyancy off by 0.5 % of the width and the height (salt or bubbles that make one side 6 % denser than the other move the centre by 6 %/12); soft material half to twice as stiff (plastisol 0.05 to 0.2 MPa, from memory);
/// leader 0.7 to 1.4 times as stiff; lift of the tail's vortices 0.2 to 0.45; drag along its face 0.3 to 0.7; a soft body bent by up to 1.5 degrees each way, which no eye sees.
/// </remarks>
public static class ActionEnsemble
{
    /// <summary>Number of tries.</summary>
    public const int Tries = 12;

    private const int Seed = 20231;
    private const double Degree = Math.PI / 180;
    private const double Heading = 10 * Degree, Roll = 20 * Degree, Pitch = 5 * Degree, UnseenBend = 1.5 * Degree;
    private const double CentreShift = 0.005;
    private const double SoftFactor = 2, LeaderFactor = 1.4;
    private const double LeastWake = 0.2, GreatestWake = 0.45, LeastFace = 0.3, GreatestFace = 0.7;
    private const double LargestBend = Math.PI / 3;

    private enum Detail
    {
        Heading, Roll, Pitch, BuoyancySide, BuoyancyUp, Soft, Leader, Wake, Face, BendSide, BendUp,
    }

    private static readonly double[][] Draws = Hypercube();

    /// <summary>Runs the tries and judges each.</summary>
    /// <param name="body">The lure.</param>
    /// <param name="knot">Its knot.</param>
    /// <param name="tow">What the line does.</param>
    /// <param name="options">Settings of each try; start and wake are drawn.</param>
    /// <param name="tries">Number of tries, 1 to 12, evenly out of the dozen.</param>
    /// <param name="cancellation">Ends the runs early.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A member of the input is out of its range.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static EnsembleAssessment Assess(ActionBody body, Knot knot, TowInput tow, ActionOptions options, int tries = Tries, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(knot);
        ArgumentNullException.ThrowIfNull(tow);
        ArgumentNullException.ThrowIfNull(options);
        Guard.InRange(tries, 1, Tries);
        var runs = new ActionAssessment[tries];
        for (int i = 0; i < tries; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            int draw = i * Tries / tries;
            runs[i] = LureActionModel.Assess(Drawn(body, draw), Drawn(knot, draw), tow, Drawn(options, draw), cancellation);
        }

        cancellation.ThrowIfCancellationRequested();
        return Of(runs);
    }

    /// <summary>A verdict's rank when two are as common: the worse is told.</summary>
    internal static int Badness(ActionVerdict verdict) => verdict switch
    {
        ActionVerdict.Unknown => 9,
        ActionVerdict.Spins => 8,
        ActionVerdict.Tumbles => 7,
        ActionVerdict.Rolls => 6,
        ActionVerdict.Leans => 5,
        ActionVerdict.RunsOff => 4,
        ActionVerdict.Muted => 3,
        ActionVerdict.Still => 2,
        ActionVerdict.Glides or ActionVerdict.Flutters => 1,
        ActionVerdict.Swims or ActionVerdict.Darts => 0,
        _ => throw new ArgumentOutOfRangeException(nameof(verdict), verdict, "Not a verdict."),
    };

    internal static EnsembleAssessment Of(ActionAssessment[] runs)
    {
        ActionVerdict verdict = runs.GroupBy(r => r.Report.Verdict).OrderByDescending(g => g.Count()).ThenByDescending(g => Badness(g.Key)).First().Key;
        ActionAssessment[] alike = [.. runs.Where(r => r.Report.Verdict == verdict)];
        Func<ActionReport, double>[] figures = [r => Math.Abs(r.SpinRate), r => Math.Abs(r.MeanRoll), r => Math.Abs(r.CourseSlope), r => r.TailAmplitude, r => r.RollAmplitude, r => r.DartAngle, r => r.DragFactor];
        double[] distance = new double[alike.Length];
        foreach (Func<ActionReport, double> figure in figures)
        {
            double[] values = [.. alike.Select(r => figure(r.Report))];
            double[] sorted = [.. values];
            Array.Sort(sorted);
            double median = EnsembleAssessment.Quantile(sorted, 0.5), spread = sorted[^1] - sorted[0];
            for (int i = 0; i < alike.Length && spread > 0; i++) distance[i] += Math.Abs(values[i] - median) / spread;
        }

        int nearest = 0;
        for (int i = 1; i < alike.Length; i++)
        {
            if (distance[i] < distance[nearest]) nearest = i;
        }

        return new(alike[nearest], [.. runs.Select(r => r.Report)]);
    }

    private static ActionBody Drawn(ActionBody body, int i)
    {
        double soft = Math.Pow(SoftFactor, At(i, Detail.Soft));
        Vector3d shift = new(0, 2 * CentreShift * body.SemiAxes.Y * At(i, Detail.BuoyancySide), 2 * CentreShift * body.SemiAxes.Z * At(i, Detail.BuoyancyUp));
        return body with
        {
            CentreOfBuoyancy = body.CentreOfBuoyancy + shift,
            Tail = body.Tail is { } tail ? tail with { RootStiffness = Math.Min(1e4, soft * tail.RootStiffness), FaceDrag = Between(LeastFace, GreatestFace, At(i, Detail.Face)) } : null,
            Rear = body.Rear is { } rear
                ? rear with
                {
                    CentreOfBuoyancy = rear.CentreOfBuoyancy + shift,
                    StiffnessSideways = Math.Min(1e4, soft * rear.StiffnessSideways),
                    StiffnessUpright = Math.Min(1e4, soft * rear.StiffnessUpright),
                }
                : null,
            Bend = body.Rear is null ? body.Bend : Bent(body, UnseenBend * At(i, Detail.BendSide), UnseenBend * At(i, Detail.BendUp)),
        };
    }

    private static BodyBend Bent(ActionBody body, double sideways, double up)
    {
        BodyBend own = body.Bend ?? new BodyBend(0, 0, body.Rear!.JointPosition);
        double left = (own.Angle * Math.Cos(own.Roll)) + sideways, above = (own.Angle * Math.Sin(own.Roll)) + up;
        return own with { Angle = Math.Min(LargestBend, Math.Sqrt((left * left) + (above * above))), Roll = Math.Atan2(above, left) };
    }

    private static Knot Drawn(Knot knot, int i) => knot with { LeaderModulus = Math.Clamp(knot.LeaderModulus * Math.Pow(LeaderFactor, At(i, Detail.Leader)), 1e7, 2e11) };

    private static ActionOptions Drawn(ActionOptions options, int i) => options with
    {
        InitialYaw = Heading * At(i, Detail.Heading),
        InitialRoll = Roll * At(i, Detail.Roll),
        InitialPitch = Pitch * At(i, Detail.Pitch),
        WakeLift = Between(LeastWake, GreatestWake, At(i, Detail.Wake)),
    };

    private static double At(int member, Detail detail) => Draws[member][(int)detail];

    private static double Between(double low, double high, double at) => low + ((high - low) * 0.5 * (1 + at));

    // The middles of a dozen equal strata from -1 to 1 in each dimension, shuffled apart.
    private static double[][] Hypercube()
    {
        var random = new SplitMix(Seed);
        int dimensions = Enum.GetValues<Detail>().Length;
        double[][] draws = [.. Enumerable.Range(0, Tries).Select(_ => new double[dimensions])];
        for (int d = 0; d < dimensions; d++)
        {
            int[] order = [.. Enumerable.Range(0, Tries)];
            for (int i = Tries - 1; i > 0; i--)
            {
                int j = random.Below(i + 1);
                (order[i], order[j]) = (order[j], order[i]);
            }

            for (int i = 0; i < Tries; i++) draws[i][d] = (((2 * order[i]) + 1.0) / Tries) - 1;
        }

        return draws;
    }

    // The same numbers on every platform and version (Steele, Lea & Flood 2014).
    private sealed class SplitMix(ulong state)
    {
        private ulong state = state;

        public int Below(int bound)
        {
            state += 0x9E3779B97F4A7C15;
            ulong z = state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            z ^= z >> 31;
            return (int)(z % (ulong)bound);
        }
    }
}
