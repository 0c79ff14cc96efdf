using System.Globalization;
using LureSim.Hydrodynamics;
using LureSim.Motion;
using LureSim.Motion.Line;
using LureSim.Report.Figures;
using LureSim.Report.Units;
using LureSim.Stepping;
using LureSim.Tackle;
using LureSim.Validation.Reference;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.OdeSolvers;

namespace LureSim.Benchmarks;

/// <summary>Error of the depth against work, for the engine and others, and against the number of segments; writes docs/images and docs/data.</summary>
internal static class Precision
{
    private const int Segments = 40;
    private static readonly double[] Times = [5, 20, 21, 22, 23, 24, 28, 32];

    private static readonly CultureInfo Plain = CultureInfo.InvariantCulture;

    private sealed record Result(string Method, string Setting, double Error, double Milliseconds, long Evaluations);

    /// <summary>Runs everything and writes the files under a repository's docs folder.</summary>
    public static void Write(string docs)
    {
        Directory.CreateDirectory(Path.Combine(docs, "data"));
        WriteWork(docs);
        WriteSegments(docs);
    }

    private static void WriteWork(string docs)
    {
        // All solve the same 40 equal segments: towed off from a hanging start, 20 s of tow, eight lifts.
        double[] exact = Engine(Settings(0.0003) with { Method = EsdirkTableau.Kvaerno3 }).Depths;
        var results = new List<Result>();
        foreach (double tolerance in new[] { 30, 10, 3, 1, 0.3, 0.1, 0.03, 0.01 })
        {
            results.Add(Measure("TR-BDF2 (the engine)", $"tolerances x {tolerance.ToString(Plain)}", exact, () => Engine(Settings(tolerance))));
            results.Add(Measure("Kvaerno 3(2)", $"tolerances x {tolerance.ToString(Plain)}", exact, () => Engine(Settings(tolerance) with { Method = EsdirkTableau.Kvaerno3 })));
        }

        // Explicit: beyond some 40 microseconds it explodes on the line's own stiffness, which is a point on the diagram only as far as it stays finite.
        foreach (double step in new[] { 4e-5, 2e-5 })
        {
            Result result = Measure("Runge-Kutta 4 of a library", $"step {step.ToString(Plain)} s", exact, () => Explicit(step));
            if (double.IsFinite(result.Error) && result.Error < 10) results.Add(result);
        }

        // Its own discretisation: against itself at a tenth of the smallest step.
        double[] own = Lumped(2.5e-5).Depths;
        foreach (double step in new[] { 4e-3, 2e-3, 1e-3, 5e-4, 2.5e-4 })
            results.Add(Measure("lumped masses, Euler steps", $"step {step.ToString(Plain)} s", own, () => Lumped(step)));

        File.WriteAllLines(
            Path.Combine(docs, "data", "work-precision.csv"),
            new[] { "# A jig towed off from a hanging start and, from 20 to 32 s, lifted and dropped eight times, 40 equal segments: largest error of the depth at 5, 20, 21, 22, 23, 24, 28 and 32 s against the same equations with far smaller steps.", "method,setting,error_m,processor_time_ms,force_evaluations" }
                .Concat(results.Select(r => string.Create(Plain, $"\"{r.Method}\",\"{r.Setting}\",{r.Error:G4},{r.Milliseconds:G4},{r.Evaluations}"))));
        var figure = new ErrorFigure(
            "work-precision",
            "Error of the depth against work",
            "A jig on 20 m of line, towed off and then lifted and dropped eight times: 32 s, 40 segments",
            "Further down is more exact, further left is cheaper.",
            ["processor time (ms)", "evaluations of the forces"],
            [.. results.GroupBy(r => r.Method).Select(g => new ErrorCurve(g.Key, [.. g.Select(r => ((IReadOnlyList<double>)[r.Milliseconds, r.Evaluations], Math.Max(r.Error, 1e-9)))]))]);
        Save(figure, docs);
    }

    private static EngineSettings Settings(double tolerance) => new() { Segments = Segments, Grading = 1, Tolerance = tolerance };

    private static Result Measure(string method, string setting, double[] exact, Func<(double[] Depths, double Milliseconds, long Evaluations)> run)
    {
        // The processor's clock ticks in milliseconds: short runs are repeated, the first left out as the compiler's.
        (double[] depths, double time, long evaluations) = run();
        if (time < 500)
        {
            int count = 0;
            double sum = 0;
            for (; count < 10 || (sum < 300 && count < 400); count++) sum += run().Milliseconds;
            time = sum / count;
        }

        double error = depths.Zip(exact, (a, b) => Math.Abs(a - b)).Max();
        Console.WriteLine(string.Create(Plain, $"{method}, {setting}: {1e3 * error:G3} mm, {time:F2} ms, {evaluations} evaluations"));
        return new Result(method, setting, error, time, evaluations);
    }

    private static double Processor() => Environment.CpuUsage.UserTime.TotalMilliseconds;

    private static (double[] Depths, double Milliseconds, long Evaluations) Engine(EngineSettings settings)
    {
        EngineRun run = TowedJig.Tow(lift: true, settings);
        double from = Processor();
        double[] depths = [.. Times.Select(t =>
        {
            run.RunTo(t);
            return -run.Z;
        })];
        return (depths, Processor() - from, run.Evaluations);
    }

    private static (double[] Depths, double Milliseconds, long Evaluations) Lumped(double step)
    {
        LumpedMassReference code = TowedJig.TowReference(lift: true, Segments, step);
        double from = Processor();
        double[] depths = [.. Times.Select(t =>
        {
            code.RunTo(t, _ => 0);
            return -code.Body.Z;
        })];
        return (depths, Processor() - from, (long)Math.Round(Times[^1] / step));
    }

    private static (double[] Depths, double Milliseconds, long Evaluations) Explicit(double step)
    {
        const int Size = 3 * Segments;
        const int Chunk = 200;
        var dynamics = new LineDynamics(
            TowedJig.Body, LineProperties.Uniform(TowedJig.Line), TowedJig.Stream(0), LineDragLaw.Constant(1.2, 0.01), new LineMesh(Segments, 1, new EngineSettings().Damping));
        double[] r = new double[Size + 3], w = new double[Size + 3], force = new double[Size];
        Vector<double> state = TowedJig.Tow(lift: true, Settings(1)).State();
        long evaluations = 0;
        Vector<double> Rate(double t, Vector<double> y)
        {
            evaluations++;
            for (int m = 0; m < Size; m++)
            {
                r[m] = y[m];
                w[m] = y[Size + m];
            }

            (r[Size], r[Size + 1], r[Size + 2], w[Size], w[Size + 1], w[Size + 2]) = TowedJig.Tip(t, true);
            dynamics.Evaluate(r, w, TowedJig.Length, 0, 0, force, false);
            double[] rate = new double[2 * Size];
            Array.Copy(w, rate, Size);
            dynamics.Blocks.SolveMass(force, rate.AsSpan(Size));
            return Vector<double>.Build.Dense(rate);
        }

        double from = Processor(), now = 0;
        double[] depths = new double[Times.Length];
        for (int i = 0; i < Times.Length; i++)
        {
            int count = (int)Math.Round((Times[i] - now) / step);
            double h = (Times[i] - now) / count;
            for (int done = 0; done < count; done += Chunk)
            {
                // The solver gives N values, the first at the start: N - 1 steps.
                int steps = Math.Min(Chunk, count - done);
                double t = now + (done * h);
                state = RungeKutta.FourthOrder(state, t, t + (steps * h), steps + 1, Rate)[^1];
                if (!double.IsFinite(state[2])) return ([.. Times.Select(_ => double.NaN)], Processor() - from, evaluations);
            }

            now = Times[i];
            depths[i] = -state[2];
        }

        return (depths, Processor() - from, evaluations);
    }

    private static void WriteSegments(string docs)
    {
        int[] counts = [8, 12, 16, 20, 30, 40, 60, 80];
        (string Name, Func<EngineSettings, EngineRun> Case, double[] Times)[] cases =
        [
            ("tow at 0.3 m/s", s => TowedJig.Tow(false, s), [5, 20, 40, 60]),
            ("lift-drop", s => TowedJig.Tow(true, s), [5, 20, 22, 23, 30]),
            ("tow at 1.2 m/s", Fast, [2, 5, 10, 20, 30]),
        ];
        var rows = new List<string> { "# Largest error of the lure's depth at the listed times against 160 equal segments; the engine's default grading and tolerances.", "case,segments,error_m" };
        var curves = new List<ErrorCurve>();
        foreach ((string name, Func<EngineSettings, EngineRun> make, double[] times) in cases)
        {
            double[] Depths(EngineSettings settings)
            {
                EngineRun run = make(settings);
                return [.. times.Select(t =>
                {
                    run.RunTo(t);
                    return -run.Z;
                })];
            }

            double[] exact = Depths(new EngineSettings { Segments = 160, Grading = 1, Tolerance = 0.1 });
            var points = new List<(IReadOnlyList<double>, double)>();
            foreach (int count in counts)
            {
                double error = Depths(new EngineSettings { Segments = count }).Zip(exact, (a, b) => Math.Abs(a - b)).Max();
                points.Add(([count], error));
                rows.Add(string.Create(Plain, $"{name},{count},{error:G4}"));
                Console.WriteLine(rows[^1]);
            }

            curves.Add(new ErrorCurve(name, points));
        }

        File.WriteAllLines(Path.Combine(docs, "data", "segments.csv"), rows);
        Save(
            new ErrorFigure(
                "segments", "Error of the depth against the number of segments", $"A 7 g jig on 20 m of line; the default is {new SimulationOptions().Segments}",
                "Against 160 equal segments. It falls with the square of their number until the tolerance of the steps shows.", ["segments"], curves),
            docs);
    }

    private static EngineRun Fast(EngineSettings settings)
    {
        const double Speed = 1.2;
        var run = new EngineRun(
            TowedJig.Body, LineProperties.Uniform(TowedJig.Line), TowedJig.Stream(0), LineDragLaw.Constant(1.2, 0.01),
            new GivenBoundary
            {
                TipAt = t =>
                {
                    (double x, _, _, double vx, _, _) = TowedJig.Tip(t, false);
                    return (x * Speed / 0.3, 0, -50, vx * Speed / 0.3, 0, 0);
                },
                LineAt = _ => (TowedJig.Length, 0, 0),
            },
            settings);
        run.Start(0, TowedJig.Hanging);
        return run;
    }

    private static void Save(ErrorFigure content, string docs) =>
        File.WriteAllBytes(Path.Combine(docs, "images", content.Name + ".png"), FigureWriter.Png(ErrorCurves.Create(content, new FigureOptions(UnitSystem.Metric)), 1.5));
}
