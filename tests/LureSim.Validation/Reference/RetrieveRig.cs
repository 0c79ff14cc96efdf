using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Validation.Reference;

/// <summary>What angler and reel do in a retrieve from a settled line, as smooth functions of time written apart from the programme's own.</summary>
/// <param name="Height">Height of the rod tip at first (m).</param>
/// <param name="DriftX">Velocity of boat or walking angler (m/s).</param>
/// <param name="DriftY">Idem.</param>
/// <param name="Speed">Speed of the reel (m/s).</param>
/// <param name="Lift">Height of the lift (m).</param>
/// <param name="Sweep">Travel of the tip sideways (m).</param>
internal sealed record RetrieveMoves(double Height, double DriftX, double DriftY, double Speed, double Lift, double Sweep)
{
    /// <summary>End of the moves (s).</summary>
    public const double End = 5;

    /// <summary>Position and velocity of the rod tip: it is lifted between 0.8 and 2.2 s, comes down again until 5 s, and goes sideways between 1.2 and 3 s.</summary>
    public (double X, double Y, double Z, double Vx, double Vy, double Vz) Tip(double t)
    {
        (double up, double upRate, _) = Rise(t, 0.8, 1.4);
        (double down, double downRate, _) = Rise(t, 2.4, 2.6);
        (double aside, double asideRate, _) = Rise(t, 1.2, 1.8);
        return (DriftX * t, (DriftY * t) + (Sweep * aside), Height + (Lift * (up - down)), DriftX, DriftY + (Sweep * asideRate), Lift * (upRate - downRate));
    }

    /// <summary>Line taken in (m, negative), its rate and acceleration: the reel comes up to speed between 0.3 and 1.3 s and stops between 3.2 and 4.8 s.</summary>
    public (double Length, double Rate, double Acceleration) Line(double t)
    {
        (double start, double startRate, double started) = Rise(t, 0.3, 1);
        (double stop, double stopRate, double stopped) = Rise(t, 3.2, 1.6);
        return (-Speed * (started - stopped), -Speed * (start - stop), -Speed * (startRate - stopRate));
    }

    // Quintic smoothstep from a time on over a duration, with its derivative and its integral.
    private static (double Value, double Rate, double Integral) Rise(double t, double from, double duration)
    {
        double u = (t - from) / duration;
        if (u <= 0) return (0, 0, 0);
        if (u >= 1) return (1, 0, duration * (u - 0.5));
        return (u * u * u * (10 + (u * (-15 + (6 * u)))), 30 * u * u * (1 - u) * (1 - u) / duration, duration * u * u * u * u * (2.5 + (u * (-3 + u))));
    }
}

/// <summary>Depth of the lure and tension at the tip (mean over <see cref="RetrieveRig.Window"/>) at the times of comparison, and what happened on the way.</summary>
internal sealed record RetrieveResult(double[] Depth, double[] Tension)
{
    /// <summary>Lowest height of lure or line above the bottom (m).</summary>
    public double Clearance { get; init; } = double.PositiveInfinity;

    /// <summary>Least depth of the lure (m).</summary>
    public double LeastDepth { get; init; } = double.PositiveInfinity;

    /// <summary>Longest time for which a segment was slack (s).</summary>
    public double LongestSlack { get; init; }
}

/// <summary>A lead ball on a line that has come to rest behind a rod tip in a current, and is retrieved: the same case for the engine and for the independent code.</summary>
internal sealed record RetrieveRig(SphereLure Ball, LineMaterial Line, double Length, WaterColumn Water, RetrieveMoves Moves, SteadyShape Start)
{
    /// <summary>Time over which tensions are averaged (s): a segment's tension carries the noise of its own vibration.</summary>
    public const double Window = 0.2;

    private const int WindowSamples = 10;

    // Equal segments do not resolve the bend that a light lure's drag leaves at the end of the line: 120 of them are still 1 to 2 % off in tension.
    private const double ReferenceGrading = 1.5;

    // Steps of the first look at whether there is an equilibrium in the water, and of the shape itself.
    private const int TriesForDepth = 200;
    private const int FirstSteps = 60;
    private const int ShapeSteps = 600;

    /// <summary>Times of comparison (s).</summary>
    public static double[] Times { get; } = [1, 2, 3, 4, 5];

    private static readonly DragFormula Formula = DragFormula.ChooCasarella(re =>
    {
        double printed = CylinderDrag.TangentialChooCasarella1971(re);
        return Math.Sqrt((LineDragLaw.AxialFrictionNumber * LineDragLaw.AxialFrictionNumber) + (printed * printed));
    });

    /// <summary>
    /// Draws a rig: lead balls of 1/32 to 2 oz on 5 to 50 m of 0.1 to 0.5 mm line in 0.3 to 20 m of water, current to 1.5 m/s, drift to 0.8 m/s. For a depth of water the rest is drawn
    /// until at rest the lure is off the bottom and under water and the line above it.
    /// </summary>
    public static RetrieveRig Draw(Random random)
    {
        while (true)
        {
            double depth = 0.3 * Math.Pow(20 / 0.3, random.NextDouble());
            for (int i = 0; i < TriesForDepth; i++)
                if (Draw(random, depth) is { } rig) return rig;
        }
    }

    private static RetrieveRig? Draw(Random random, double depth)
    {
        double Range(double low, double high) => low + ((high - low) * random.NextDouble());
        SphereLure ball = SphereLure.Of(28.349523125e-3 * Math.Pow(2, Range(-5, 1)), 11340);
        LineMaterial line = TackleBuilder.Material((LineKind)random.Next(3), Range(0.1e-3, 0.5e-3));
        double length = Range(5, 50);
        var profile = new CurrentProfile((CurrentProfileKind)random.Next(3), Range(0, 1.5), Range(-3, 3), depth, Math.Min(4e-4, depth / 25));
        var water = new WaterColumn(depth, 1020, 1.05e-3, profile, BottomProperties.Of(BottomKind.Sand));
        double drift = Range(0, 0.8), course = Range(-3, 3);
        var moves = new RetrieveMoves(Range(0.5, 2.5), drift * Math.Cos(course), drift * Math.Sin(course), Range(0.1, 1), Range(0.1, 0.5), Range(-0.5, 0.5));
        if (!Hangs(FirstSteps, out _) || !Hangs(ShapeSteps, out SteadyShape? start)) return null;
        return new RetrieveRig(ball, line, length, water, moves, start);

        bool Hangs(int steps, [NotNullWhen(true)] out SteadyShape? shape)
        {
            shape = null;
            SteadyShape found;
            try
            {
                found = SteadyLine.Solve(ball, line, Formula, water, length, moves.Height, steps, (moves.DriftX, moves.DriftY));
            }
            catch (MathNet.Numerics.NonConvergenceException)
            {
                // No equilibrium off the bottom.
                return false;
            }

            // Where shooting meets a jump (line that lies in the surface) and not a root, the line misses the rod tip by far; by millimetres it may, as a step jumps over the surface.
            double clear = Math.Min(0.3, 0.1 * depth);
            if (Math.Abs(found.Z[^1] - moves.Height) > 5e-3 * ShapeSteps / steps || found.Z[0] < -depth + clear || found.Z[0] > -0.1 || found.Z.Min() < found.Z[0] - 1e-9) return false;
            shape = found;
            return true;
        }
    }

    /// <summary>The engine.</summary>
    public RetrieveResult Engine(EngineSettings settings)
    {
        var boundary = new GivenBoundary
        {
            TipAt = Moves.Tip,
            LineAt = t =>
            {
                (double taken, double rate, double acceleration) = Moves.Line(t);
                return (Length + taken, rate, acceleration);
            },
        };
        var run = new EngineRun(Ball, LineProperties.Uniform(Line), Water, LineDragLaw.ChooCasarella, boundary, settings);
        (double X, double Y, double Z)[] start = Nodes(settings.Segments, settings.Grading);
        run.Start(0, f => start[(int)Math.Round(settings.Segments * Math.Pow(f, 1 / settings.Grading))], _ => (Moves.DriftX, Moves.DriftY, 0));
        return Observe(t => run.RunTo(t), () => run.TipTensionExtrapolated, () => run.Z, () => 0);
    }

    /// <summary>The independent lumped-mass code.</summary>
    public RetrieveResult Reference(int segments, double step)
    {
        (double X, double Y, double Z)[] start = Nodes(segments, ReferenceGrading);
        var code = new LumpedMassReference(
            Ball, LineProperties.Uniform(Line), Water, Formula, Moves.Tip, LumpedMassReference.Lengths(Length, 0, segments, ReferenceGrading), f => start[(int)Math.Round(segments * Math.Pow(f, 1 / ReferenceGrading))], step);
        code.Move(Moves.DriftX, Moves.DriftY, 0);
        return Observe(t => code.RunTo(t, u => Moves.Line(u).Rate), () => code.TipTensionExtrapolated, () => code.Body.Z, () => code.LongestSlack);
    }

    public override string ToString() => string.Create(
        CultureInfo.InvariantCulture,
        $"{Ball.Mass * 1e3:F1} g on {Length:F1} m of {Line.Diameter * 1e3:F2} mm (EA {Line.AxialStiffness:F0} N), {Water.Depth:F2} m deep, lure at {-Start.Z[0]:F2} m, current {Water.Current.SurfaceSpeed:F2} m/s, drift {Math.Sqrt((Moves.DriftX * Moves.DriftX) + (Moves.DriftY * Moves.DriftY)):F2} m/s, reel {Moves.Speed:F2} m/s");

    private RetrieveResult Observe(Action<double> runTo, Func<double> tension, Func<double> height, Func<double> slack)
    {
        double[] depths = new double[Times.Length];
        double[] tensions = new double[Times.Length];
        double lowest = double.PositiveInfinity, highest = double.NegativeInfinity;
        for (int i = 0; i < Times.Length; i++)
        {
            double sum = 0;
            for (double t = i == 0 ? 0.1 : Times[i - 1] + 0.1; t < Times[i] - Window - 0.05; t += 0.1)
            {
                runTo(t);
                lowest = Math.Min(lowest, height());
                highest = Math.Max(highest, height());
            }

            for (int j = 0; j <= WindowSamples; j++)
            {
                runTo(Times[i] - Window + (Window * j / WindowSamples));
                sum += tension() * (j is 0 or WindowSamples ? 0.5 : 1);
            }

            tensions[i] = sum / WindowSamples;
            depths[i] = -height();
            lowest = Math.Min(lowest, height());
            highest = Math.Max(highest, height());
        }

        return new RetrieveResult(depths, tensions) { Clearance = lowest + Water.Depth - Ball.ContactRadius, LeastDepth = -highest, LongestSlack = slack() };
    }

    // Nodes of the start, every segment as long as its tension stretches it: chords of the shape would be a little slack, and the line would snatch at once.
    private (double X, double Y, double Z)[] Nodes(int segments, double grading)
    {
        var nodes = new (double X, double Y, double Z)[segments + 1];
        nodes[segments] = Along(1) with { Z = Moves.Height };
        for (int j = segments - 1; j >= 0; j--)
        {
            double low = Math.Pow((double)j / segments, grading), high = Math.Pow((j + 1.0) / segments, grading);
            (double X, double Y, double Z) a = Along(low), b = Along(high);
            double dx = b.X - a.X, dy = b.Y - a.Y, dz = b.Z - a.Z;
            double tension = Start.Tension[(int)Math.Round(0.5 * (low + high) * (Start.Tension.Length - 1))];
            double scale = (high - low) * Length * (1 + (tension / Line.AxialStiffness)) / Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz));
            (double X, double Y, double Z) upper = nodes[j + 1];
            nodes[j] = (upper.X - (scale * dx), upper.Y - (scale * dy), upper.Z - (scale * dz));
        }

        return nodes;
    }

    private (double X, double Y, double Z) Along(double fraction)
    {
        double at = fraction * (Start.X.Length - 1);
        int i = Math.Min((int)at, Start.X.Length - 2);
        double u = at - i;
        double Mix(double[] a) => a[i] + (u * (a[i + 1] - a[i]));
        return (Mix(Start.X), Mix(Start.Y), Mix(Start.Z));
    }
}
