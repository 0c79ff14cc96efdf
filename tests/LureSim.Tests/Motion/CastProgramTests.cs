using CsCheck;
using LureSim.Model;
using LureSim.Motion;

namespace LureSim.Tests.Motion;

/// <summary>The schedule of rod tip and line: smooth between breaks, breaks where formulas change, and the moves do what they say.</summary>
public class CastProgramTests
{
    private const double TipHeight = 1.5;
    private const double Line = 25;

    private static readonly Gen<Move> AnyMove = Gen.Select(Gen.Int[0, 8], Gen.Double[0.1, 4], Gen.Double[0, 1.5], Gen.Double[-1, 1], Gen.Double[-1, 1], Gen.Int[1, 3]).Select((kind, time, share, a, b, beats) => (MoveKind)kind switch
    {
        MoveKind.Reel => new Move { Kind = MoveKind.Reel, Duration = time, ReelShare = share },
        MoveKind.Pause => new Move { Kind = MoveKind.Pause, Duration = time },
        MoveKind.Twitch => new Move { Kind = MoveKind.Twitch, Duration = time, Up = a, Left = b, Beats = beats },
        MoveKind.Feed => new Move { Kind = MoveKind.Feed, Duration = time, FeedSpeed = share },
        _ => new Move { Kind = MoveKind.Sweep, Duration = time, ReelShare = share, Up = 0.3 * a, Left = b, Out = a },
    });

    private static readonly Gen<Presentation> AnyRetrieve = Gen.Select(AnyMove.Array[1, 6], Gen.Double[0.05, 2], Gen.Double[3, 20]).Select((moves, speed, left) =>
        new Presentation { Name = "any", CastLength = 24, RetrieveSpeed = speed, Moves = moves, LineLeftAtEnd = left, TimeLimit = 60 });

    private static CastProgram Planned(Presentation presentation, double capacity = 40)
    {
        var program = new CastProgram(TipHeight, Line, 0.3, -0.2, capacity);
        program.PlanRetrieve(5, Line, 0.4, presentation);
        return program;
    }

    [Fact]
    public void Velocities_are_derivatives_and_second_derivatives_are_continuous_between_breaks() =>
        AnyRetrieve.HoldsFor(presentation =>
        {
            CastProgram program = Planned(presentation);
            for (double from = 5; from < program.End - 1e-6;)
            {
                double to = Math.Min(program.NextBreak(from), program.End);
                Assert.True(to > from);
                if (to - from > 1e-3) Smooth(program, from, to);
                from = to;
            }
        }, iterations: 60);

    private static void Smooth(CastProgram program, double from, double to)
    {
        const int Parts = 8;
        double h = (to - from) * 1e-4;
        double[] Values(double t)
        {
            Span<double> position = stackalloc double[3], velocity = stackalloc double[3];
            program.Tip(t, position, velocity);
            program.Line(t, out double length, out double rate, out double acceleration);
            return [position[0], position[1], position[2], length, velocity[0], velocity[1], velocity[2], rate, acceleration];
        }

        for (int i = 0; i < Parts; i++)
        {
            double t = from + ((i + 0.5) / Parts * (to - from));
            double[] before = Values(t - h), at = Values(t), after = Values(t + h);
            for (int c = 0; c < 4; c++)
            {
                double scale = 1 + Math.Abs(at[4 + c]);
                Assert.Equal(at[4 + c], (after[c] - before[c]) / (2 * h), 2e-5 * scale / Math.Min(1, to - from));

                // No jump in the second derivative: first differences of the velocity on the two sides agree.
                double left = (at[4 + c] - before[4 + c]) / h, right = (after[4 + c] - at[4 + c]) / h;
                Assert.Equal(left, right, 5e-3 * (1 + Math.Abs(left)) / Math.Min(1, to - from));
            }

            Assert.Equal(at[8], (after[7] - before[7]) / (2 * h), 1e-3 * (1 + Math.Abs(at[8])));
        }
    }

    [Fact]
    public void Position_velocity_line_and_its_rate_are_continuous_everywhere() =>
        AnyRetrieve.HoldsFor(presentation =>
        {
            CastProgram program = Planned(presentation);
            Span<double> p0 = stackalloc double[3], p1 = stackalloc double[3], v0 = stackalloc double[3], v1 = stackalloc double[3];
            const double Step = 1e-7;
            for (double at = program.NextBreak(5); at < program.End; at = program.NextBreak(at))
            {
                program.Tip(at - Step, p0, v0);
                program.Line(at - Step, out double l0, out double r0, out _);
                program.Tip(at + Step, p1, v1);
                program.Line(at + Step, out double l1, out double r1, out _);
                for (int c = 0; c < 3; c++)
                {
                    Assert.Equal(p0[c], p1[c], 1e-5);
                    Assert.Equal(v0[c], v1[c], 1e-3);
                }

                Assert.Equal(l0, l1, 1e-5);
                Assert.Equal(r0, r1, 1e-3);
            }
        }, iterations: 60);

    [Fact]
    public void The_line_stays_between_the_line_left_and_the_spool() =>
        AnyRetrieve.HoldsFor(presentation =>
        {
            CastProgram program = Planned(presentation, 30);
            Assert.True(program.End < 66);
            for (int i = 0; i <= 400; i++)
            {
                program.Line(5 + ((program.End - 5) * i / 400), out double length, out _, out _);
                Assert.InRange(length, presentation.LineLeftAtEnd - 1e-9, 30 + 1e-9);
            }

            program.Line(program.End, out double last, out double rate, out _);
            if (program.LineComesIn)
            {
                Assert.Equal(presentation.LineLeftAtEnd, last, 1e-6);
                Assert.Equal(0, rate, 1e-9);
            }
        }, iterations: 100);

    [Fact]
    public void Keys_and_moves_say_the_same()
    {
        var keys = new Presentation { Name = "keys", CastLength = 24, RetrieveSpeed = 0.5, Moves = Move.StopAndGo(2, 3, 2, 0.6) };
        var moves = new Presentation
        {
            Name = "moves",
            CastLength = 24,
            RetrieveSpeed = 0.5,
            Moves =
            [
                new Move { Kind = MoveKind.Reel, Duration = 2, ReelShare = 1 },
                new Move { Kind = MoveKind.Twitch, Duration = 1, Up = 0.6, Beats = 2 },
                new Move { Kind = MoveKind.Pause, Duration = 2 },
            ],
        };
        CastProgram a = Planned(keys), b = Planned(moves);
        Assert.Equal(a.End, b.End, 1e-12);
        Assert.True(a.LineComesIn);

        // The closing bail lets 3 cm out; each stretch of reeling takes in 2 s of line at 0.5 m/s: 22 of them, and a last pull of half a second for the 3 cm.
        Assert.Equal(5.15 + (22 * (2.25 + 3)) + 0.5, a.End, 1e-9);
        Span<double> p = stackalloc double[3], q = stackalloc double[3], v = stackalloc double[3];
        for (double t = 5; t < a.End; t += 0.037)
        {
            a.Tip(t, p, v);
            b.Tip(t, q, v);
            Assert.Equal(p[2], q[2], 1e-12);
            a.Line(t, out double l, out _, out _);
            b.Line(t, out double m, out _, out _);
            Assert.Equal(l, m, 1e-12);
        }
    }

    [Fact]
    public void The_rod_tip_goes_where_the_moves_say()
    {
        var presentation = new Presentation
        {
            Name = "lift and sweep",
            CastLength = 24,
            RetrieveSpeed = 0.5,
            Moves =
            [
                new Move { Kind = MoveKind.Lift, Duration = 1, Up = 0.9 },
                new Move { Kind = MoveKind.Sweep, Duration = 1, Left = 0.5, Out = -0.25, ReelShare = 0.5 },
                new Move { Kind = MoveKind.Return, Duration = 2, Up = -0.9, Left = -0.5, Out = 0.25 },
                new Move { Kind = MoveKind.Reel, Duration = 1, ReelShare = 1 },
            ],
        };
        var program = new CastProgram(TipHeight, Line);
        program.PlanRetrieve(0, Line, 0, presentation);
        Assert.Equal((0, 0, TipHeight), At(0.15));
        Assert.Equal((0, 0, TipHeight + 0.9), At(1.15));
        Assert.Equal((-0.25, 0.5, TipHeight + 0.9), At(2.15));

        // The reel stops before the rod comes back.
        Assert.Equal((-0.25, 0.5, TipHeight + 0.9), At(2.40));
        Assert.Equal((0, 0, TipHeight), At(4.40));
        program.Line(2.40, out double line, out double rate, out _);
        Assert.Equal(Line - 0.25, line, 1e-12);
        Assert.Equal(0, rate, 1e-12);

        (double, double, double) At(double time)
        {
            Span<double> p = stackalloc double[3], v = stackalloc double[3];
            program.Tip(time, p, v);
            return (Math.Round(p[0], 12), Math.Round(p[1], 12), Math.Round(p[2], 12));
        }
    }

    [Fact]
    public void A_drift_carries_the_rod_tip_from_the_splash_on()
    {
        var program = new CastProgram(TipHeight, Line, 0.3, -0.2);
        Span<double> p = stackalloc double[3], v = stackalloc double[3];
        program.Tip(10, p, v);
        Assert.Equal([3, -2, TipHeight], p.ToArray());
        Assert.Equal([0.3, -0.2, 0], v.ToArray());
    }

    [Fact]
    public void A_retrieve_that_never_ends_is_given_up()
    {
        var program = new CastProgram(TipHeight, Line);
        program.PlanRetrieve(0, Line, 0, new Presentation { Name = "crawl", CastLength = 24, RetrieveSpeed = 0.02, Moves = Move.StopAndGo(0.1, 60) });
        Assert.InRange(program.End, CastProgram.LongestRetrieve, CastProgram.LongestRetrieve + 1);
        Assert.NotNull(program.CutShort);
        Assert.False(program.LineComesIn);
    }
}
