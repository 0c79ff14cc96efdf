using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Pictures;

/// <summary>How the lure that is looked at swims, as the page draws it.</summary>
internal static class SwimPicture
{
    private const int Frames = 16;

    // An outline is drawn as true as a screen shows (m). Corners are never left out: where body and tail meet they would part.
    private const double Truth = 2e-4;

    // Time shown where nothing beats (s), and longest and shortest loop.
    private const double Plain = 1;
    private const double Shortest = 0.05;
    private const double Longest = 3;
    private const double Slowest = 0.2;

    // Differences of these are not told apart: beats a second, and a tail's swing (radians, 2 degrees).
    private const double AlikeBeat = 0.3;
    private const double AlikeTail = 0.035;

    /// <summary>The picture.</summary>
    /// <param name="question">The question.</param>
    /// <param name="run">Run of the lure that is looked at.</param>
    /// <param name="format">Units.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SwimView Of(BenchQuestion question, Candidate run, UnitFormat format, CancellationToken cancellation)
    {
        Scenario scenario = question.Scenario;
        RigAction action = RigChecker.OnRetrieve(scenario, run.Rig, run.Track, cancellation);
        ActionAssessment shown = (action.Twitch ?? action.Retrieve).Typical;
        ActionReport report = shown.Report;
        Rigging own = scenario.Tackle.Rigging, straight = own.Straightened();
        IReadOnlyList<SwimFrame> ghost = [];
        string note = "";
        if (own != straight && run.Rig.Body.NeedsHead)
        {
            Scenario clean = scenario with { Tackle = scenario.Tackle with { Rigging = straight } };
            RigAction other = RigChecker.OnRetrieve(clean, run.Rig, run.Track, cancellation);
            ActionAssessment beside = (other.Twitch ?? other.Retrieve).Typical;
            ghost = FramesOf(beside, run.Rig, straight, 1);
            note = Alike(report, beside.Report)
                ? "Put on straight it does about the same here: the model sees no real difference."
                : $"Put on straight it {Sentence(beside.Report, format)}";
        }

        double period = Period(report);
        return new SwimView(
            Grammar.Sentence(SwimmingWords.Line(report, format.System)),
            action.Twitch is null ? $"at {format.SpeedText(action.Speed)} through the water" : "through one twitch and the pause after it",
            SwimmingWords.Word(report.Verdict),
            report.IsFault,
            (int)Math.Round(run.Rig.Body.Length * 1e4),
            FramesOf(shown, run.Rig, own, Frames),
            ghost,
            period < 0.999 ? "drawn at ¼ speed" : "drawn at real speed",
            note,
            period < 0.999 ? 4 * period : period);
    }

    private static string Sentence(ActionReport report, UnitFormat format) => SwimmingWords.Line(report, format.System) + ".";

    private static bool Alike(ActionReport a, ActionReport b) =>
        a.Verdict == b.Verdict && Math.Abs(a.Frequency - b.Frequency) < AlikeBeat && Math.Abs(a.TailAmplitude - b.TailAmplitude) < AlikeTail && Math.Abs(a.SpinRate - b.SpinRate) < AlikeBeat / 2;

    private static double Period(ActionReport report)
    {
        if (report.Darts.Count > 0) return Longest;
        double rate = Math.Abs(report.SpinRate) > Slowest ? Math.Abs(report.SpinRate) : report.Beats ? report.Frequency : 0;
        return rate > Slowest ? Math.Clamp(1 / rate, Shortest, Longest) : Plain;
    }

    private static List<SwimFrame> FramesOf(ActionAssessment run, Rig rig, Rigging rigging, int count)
    {
        ActionTrace trace = run.Trace;
        if (trace.Count < 2) return [];
        LureAssembly parts = LureAssembly.Of(rig.Head, rig.Body, rigging);
        double period = Math.Min(Period(run.Report), trace.Time[^1]);
        double start = run.Report.Darts.Count > 0 ? 0 : trace.Time[^1] - period;
        List<SwimFrame> frames = [];
        for (int f = 0; f < count; f++)
        {
            double time = start + (period * f / count);
            int k = Array.FindIndex(trace.Time, t => t >= time - 1e-9);
            if (k < 0) k = trace.Count - 1;
            Attitude attitude = trace.Attitude[k];
            LureShape shape = rig.Body.Kind.Outline(rig.Head, rig.Body, parts, trace.TailAngle[k]);
            List<SwimPiece> above = [], side = [];
            foreach (ShapeRing ring in shape.Rings) Add(Thinned(ring.Points), Kind(ring.Piece));
            foreach (IReadOnlyList<Station> wire in shape.Wires) Add(wire, "w");
            if (shape.Ball is { } ball) Add(Round(ball), "m");
            frames.Add(new SwimFrame(above, side));

            void Add(IReadOnlyList<Station> points, string kind)
            {
                List<int> a = [], s = [];
                foreach (Station point in points)
                {
                    Vector3d at = attitude.ToWater(new Vector3d((parts.Length / 2) - point.Aft, point.Left, point.Up));
                    a.Add(Tenths(at.X));
                    a.Add(Tenths(-at.Y));
                    s.Add(Tenths(at.X));
                    s.Add(Tenths(-at.Z));
                }

                above.Add(new SwimPiece(kind, a));
                side.Add(new SwimPiece(kind, s));
            }
        }

        return frames;
    }

    // Points that show from the side or from above.
    private static List<Station> Thinned(IReadOnlyList<Station> ring)
    {
        if (ring.Count < 4) return [.. ring];
        double[] aft = [.. ring.Select(point => point.Aft)], up = [.. ring.Select(point => point.Up)], left = [.. ring.Select(point => point.Left)];
        int half = ring.Count / 2, last = ring.Count - 1;
        SortedSet<int> kept = [];
        foreach (double[] across in (double[][])[up, left])
        {
            kept.UnionWith(PathThinner.Keep(aft, across, 0, half, Truth));
            kept.UnionWith(PathThinner.Keep(aft, across, half, last, Truth));
        }

        return [.. kept.Select(i => ring[i])];
    }

    private static Station[] Round(ShapeBall ball) =>
        [.. Enumerable.Range(0, 14).Select(i => Math.SinCos(2 * Math.PI * i / 14)).Select(p => new Station(ball.Centre.Aft + (ball.Radius * p.Cos), ball.Centre.Left + (ball.Radius * p.Sin * 0.7), ball.Centre.Up + (ball.Radius * p.Sin)))];

    private static string Kind(ShapePiece piece) => piece switch
    {
        ShapePiece.Body => "b",
        ShapePiece.Tail => "t",
        ShapePiece.Metal => "m",
        _ => throw new ArgumentOutOfRangeException(nameof(piece), piece, "Not a piece."),
    };

    private static int Tenths(double metres) => double.IsFinite(metres) ? (int)Math.Round(1e4 * metres) : 0;
}
