using System.Diagnostics;
using CsCheck;
using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;

namespace LureSim.Tests.Swimming;

/// <summary>What holds for every lure, knot and tow that is accepted.</summary>
public class ActionPropertyTests
{
    private static readonly Gen<ActionBody> Bodies =
        from length in Gen.Double[0.02, 0.3]
        from height in Gen.Double[0.003, 0.06]
        from width in Gen.Double[0.002, 0.05]
        from density in Gen.Double[500, 3000]
        from ballast in Gen.Double[0, 0.03]
        from x in Gen.Double[-0.4, 0.5]
        from drop in Gen.Double[-0.02, 0.02]
        from kind in Gen.Int[0, 4]
        from angle in Gen.Double[0, 1]
        from plane in Gen.Double[-3.1, 3.1]
        from side in Gen.Double[-0.01, 0.01]
        select Make(length, height, width, density, ballast, x, drop, kind, angle, plane, side);

    private static readonly Gen<Knot> Knots =
        from kind in Gen.Int[0, 3]
        from length in Gen.Double[0, 0.05]
        from diameter in Gen.Double[5e-5, 2e-3]
        from yaw in Gen.Double[-1.5, 1.5]
        select new Knot { Kind = (KnotKind)kind, Length = length, LeaderDiameter = diameter, SetYaw = yaw };

    private static readonly Gen<TowInput> Tows =
        from mode in Gen.Int[0, 2]
        from speed in Gen.Double[0, 3]
        from elevation in Gen.Double[-1.4, 1.5]
        from line in Gen.Double[0.05, 10]
        from stiffness in Gen.Double[1, 2000]
        from slack in Gen.Double[0, 1]
        from stroke in Gen.Double[0, 1.5]
        from quick in Gen.Double[0.02, 0.5]
        select new TowInput
        {
            Mode = (TowMode)mode,
            Speed = speed,
            LineElevation = elevation,
            LineLength = line,
            LineStiffness = stiffness,
            InitialSlack = slack,
            Strokes = stroke > 0.5 ? [new TowStroke(0.1, stroke, quick)] : [],
            SpeedChanges = stroke > 1 ? [new SpeedChange(0.4, 0)] : [],
        };

    private static readonly ActionOptions Short = new() { Duration = 1, SettlingTime = 0.3, MaximumSteps = 4000 };

    [Fact]
    public void Every_accepted_input_gives_finite_figures_in_bounded_time() =>
        Gen.Select(Bodies, Knots, Tows).HoldsFor(
            (body, knot, tow) =>
            {
                var clock = Stopwatch.StartNew();
                (ActionTrace trace, ActionReport report) = LureActionModel.Assess(body, knot, tow, Short);
                Assert.True(clock.Elapsed < TimeSpan.FromSeconds(5));
                Assert.True(trace.Statistics.Steps + trace.Statistics.RejectedSteps <= Short.MaximumSteps);
                Assert.All(trace.Position, p => Assert.True(p.IsFinite));
                Assert.All(trace.AngularVelocity, p => Assert.True(p.IsFinite));
                Assert.All(trace.Tension, p => Assert.True(p >= 0 && double.IsFinite(p)));
                Assert.All(trace.Attitude, q => Assert.Equal(1, Math.Sqrt((q.W * q.W) + (q.X * q.X) + (q.Y * q.Y) + (q.Z * q.Z)), 9));
                Assert.NotEmpty(report.Findings);
                foreach (System.Reflection.PropertyInfo p in typeof(ActionReport).GetProperties().Where(p => p.PropertyType == typeof(double)))
                    Assert.True(double.IsFinite((double)p.GetValue(report)!), p.Name);
            },
            60);

    [Fact]
    public void A_mirrored_fault_gives_a_mirrored_motion() =>
        Gen.Select(Bodies, Knots, Tows).HoldsFor(
            (body, knot, tow) =>
            {
                ActionOptions one = Short with { Duration = 0.3, Tolerance = 1e-8, MaximumSteps = 20_000 };
                ActionTrace left = Towing.Simulate(body, knot, tow, one);
                ActionTrace right = Towing.Simulate(body.Mirror(), knot.Mirror(), tow, one with { InitialYaw = -one.InitialYaw, InitialRoll = -one.InitialRoll });
                if (left.Status != SimulationStatus.Completed) return;
                for (int i = 0; i < left.Count; i += 10)
                {
                    Assert.Equal(left.Position[i].X, right.Position[i].X, 1e-4);
                    Assert.Equal(left.Position[i].Y, -right.Position[i].Y, 1e-4);
                    Assert.Equal(left.Position[i].Z, right.Position[i].Z, 1e-4);
                    Assert.Equal(left.RollTotal[i], -right.RollTotal[i], 1e-2);
                }
            },
            30);

    [Fact]
    public void The_same_input_gives_the_same_bits()
    {
        ActionBody body = Make(0.1, 0.02, 0.015, 1050, 0.005, 0.4, 0.004, 1, 0.1, 0.5, 0);
        ActionTrace a = Towing.Simulate(body, Knot.Loop(), TowInput.Steady(0.5)), b = Towing.Simulate(body, Knot.Loop(), TowInput.Steady(0.5));
        Assert.Equal(a.Position, b.Position);
        Assert.Equal(a.TailAngle, b.TailAngle);
    }

    [Fact]
    public void A_straight_symmetric_lure_has_no_mean_heading_and_no_spin()
    {
        ActionReport r = LureActionModel.Assess(Make(0.09, 0.018, 0.014, 1050, 0.005, 0.45, 0.004, 1, 0, 0, 0), Knot.Loop(), TowInput.Steady(0.4, 0.8)).Report;
        Assert.Equal(0, r.MeanYaw, 0.02);
        Assert.Equal(0, r.SpinRate, 0.05);
    }

    [Fact]
    public void Nothing_moves_a_neutral_lure_in_still_water()
    {
        ActionBody body = Make(0.09, 0.018, 0.014, 1000, 0, 0, 0, 0, 0, 0, 0);
        body = body with { Volume = body.Mass / 1020, CentreOfBuoyancy = body.CentreOfMass };
        ActionTrace trace = Towing.Simulate(body, Knot.Loop(), new TowInput { Mode = TowMode.Free }, new() { Duration = 2 });
        Assert.True(trace.Position[^1].Length < 1e-9);
        Assert.Equal(trace.Attitude[0].Yaw, trace.Attitude[^1].Yaw, 9);
    }

    [Fact]
    public void Bad_input_is_refused_with_its_name()
    {
        ActionBody body = Make(0.09, 0.018, 0.014, 1050, 0.005, 0.4, 0.004, 1, 0, 0, 0);
        Assert.Equal("Mass", Refused(body with { Mass = double.NaN }));
        Assert.Equal("Volume", Refused(body with { Volume = -1 }));
        Assert.Equal("TowPoint", Refused(body with { TowPoint = new(double.PositiveInfinity, 0, 0) }));
        Assert.Equal("Inertia", Refused(body with { Inertia = new(1e-3, 1e-9, 1e-9) }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Towing.Simulate(body, Knot.Loop(), new TowInput { Speed = 99 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => Towing.Simulate(body, Knot.Loop(0.5), TowInput.Steady(0.5)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Towing.Simulate(body, Knot.Loop(), TowInput.Steady(0.5), new() { Tolerance = 0 }));
    }

    [Fact]
    public void Cancelling_ends_the_run_as_data()
    {
        using var source = new CancellationTokenSource();
        source.Cancel();
        ActionAssessment a = LureActionModel.Assess(Make(0.09, 0.018, 0.014, 1050, 0.005, 0.4, 0.004, 1, 0, 0, 0), Knot.Loop(), TowInput.Steady(0.5), cancellation: source.Token);
        Assert.Equal(SimulationStatus.Cancelled, a.Trace.Status);
        Assert.Equal(ActionVerdict.Unknown, a.Report.Verdict);
    }

    private static string? Refused(ActionBody body) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Towing.Simulate(body, Knot.Loop(), TowInput.Steady(0.5))).ParamName;

    // Kinds: 0 plain, 1 paddle tail, 2 lip and fin, 3 plate, 4 crooked head.
    private static ActionBody Make(double length, double height, double width, double density, double ballast, double x, double drop, int kind, double angle, double plane, double side)
    {
        Vector3d semi = new(length / 2, width / 2, height / 2);
        double volume = 4.0 / 3 * Math.PI * semi.X * semi.Y * semi.Z;
        var parts = new List<MassElement> { new(volume * density, volume, default, new(length, width, height)) };
        if (ballast > 0) parts.Add(new(ballast, ballast / 11340, new(x * length, 0, -drop), new(0.008, 0.008, 0.008)));
        FlexibleTail? tail = kind == 1
            ? new(-0.2 * length, 0.3 * length, Math.Max(1e-3, 0.8 * height), Math.Max(1e-3, 0.7 * height), 0.05 * volume * density, 3e-4 * (length / 0.09), Offset: 0.5 * angle * Math.Sign(side), Drop: 0.1 * height)
            : null;
        ActionBody plain = ActionBody.Spheroid("drawn", parts, semi, new(semi.X, 0, 0.3 * semi.Z));
        return plain with
        {
            Sections = kind == 3 ? [] : plain.Sections,
            TrailingEdges = [TrailingEdge.OfSpheroid(semi), new(new(-semi.X, 0, 0), 0.4 * height, 0.1 * width)],
            Appendages = [new(new(0, side, -0.5 * height), 2e-5)],
            Lip = kind == 2 ? new(new(0.9 * semi.X, 0, -0.5 * semi.Z), 0.5 * width * width, 1.2, 0.6, 0.2 * angle * Math.Sign(side)) : null,
            Tail = tail,
            Plate = kind == 3 ? new(Math.Max(5e-3, length), Math.Max(2e-3, width), 0.02 * length) : null,
            Bend = angle > 0 ? new(0.5 * angle, plane) : null,
            Head = kind == 4 ? new(new(0.9 * semi.X, 0, 0), Math.PI * semi.Y * semi.Z, 0.4 * angle * Math.Sign(side)) : null,
        };
    }
}
