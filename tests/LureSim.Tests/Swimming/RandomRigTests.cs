using CsCheck;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;
using MathNet.Numerics.LinearAlgebra;
using Xunit.Abstractions;

namespace LureSim.Tests.Swimming;

/// <summary>Every lure and every rigging that a scenario may name, to the ends of the ranges, is a body that can be put in motion.</summary>
public class RandomRigTests(ITestOutputHelper output)
{
    private const double Water = 1020;

    private static Gen<(JigHead Head, LureBody Body)> Lures { get; } =
        from profile in Gen.Enum<BodyProfile>()
        from length in Gen.Double[0.02, 0.3]
        from common in Gen.Bool
        from tall in Gen.Double[0, 1]
        from wide in Gen.Double[0, 1]
        from density in Gen.Double[800, 1400]
        from weight in Gen.Double[-0.05, 0.2]
        from hook in Gen.Double[5e-5, 0.02]
        from shank in Gen.Bool
        from buoyancy in Gen.Enum<HardFloat>()
        from lip in Gen.Double[0.002, 0.08]
        select Make(profile, length, common, tall, wide, density, weight < 5e-4 ? 0 : weight, hook, shank, buoyancy, lip);

    private static Gen<Rigging> Riggings { get; } =
        from sideways in Gen.Double[-0.015, 0.015]
        from above in Gen.Double[-0.015, 0.015]
        from bend in Gen.Double[-Math.PI / 4, Math.PI / 4]
        from lean in Gen.Double[-Math.PI / 4, Math.PI / 4]
        from turn in Gen.Double[-Math.PI / 6, Math.PI / 6]
        from pulled in Gen.Double[0, 0.015]
        from share in Gen.Double[0.05, 0.95]
        from gape in Gen.Double[0.002, 0.06]
        from station in Gen.Double[0, 1]
        from lost in Gen.Double[0, 0.75]
        from faults in Gen.Int[0, 255]
        select new Rigging
        {
            ExitSideways = (faults & 1) != 0 ? sideways : 0,
            ExitAbove = (faults & 2) != 0 ? above : 0,
            Bend = (faults & 4) != 0 ? bend : 0,
            PointLean = lean,
            HeadTurn = (faults & 8) != 0 ? turn : 0,
            PulledUp = (faults & 16) != 0 ? pulled : 0,
            ShankShare = share,
            HookGape = (faults & 32) != 0 ? gape : null,
            WeightStation = (faults & 64) != 0 ? station : null,
            TailLost = (faults & 128) != 0 ? lost : 0,
        };

    [Fact]
    public void Mass_matrices_are_symmetric_and_positive() => Gen.Select(Lures, Riggings).HoldsFor(
        (lure, rigging) =>
        {
            ActionBody body = ActionBodyBuilder.Of(lure.Head, lure.Body, rigging);
            body.Validate();
            if (body.Rear is null)
            {
                Positive(7, new RigidBody(body, new BentAxis(body.Bend), Water, true).MassMatrix.ToArray());
                return;
            }

            // A flexible body at rest and bent either way.
            var jointed = new JointedBody(body, Water, true);
            double[] matrix = new double[81];
            foreach ((double sideways, double upright) in new[] { JointedBody.Rest(body), (0.9, -0.7), (-1.2, 1.2) })
            {
                jointed.MassMatrix(new BodyState { Sideways = sideways, Upright = upright }, matrix);
                Positive(9, matrix);
            }
        },
        Math.Max(5000, Rigs));

    private static void Positive(int n, double[] matrix)
    {
        Matrix<double> m = Matrix<double>.Build.DenseOfRowMajor(n, n, matrix);
        for (int i = 0; i < n; i++)
        {
            for (int j = 0; j < i; j++) Assert.Equal(m[i, j], m[j, i], 1e-12 * Math.Sqrt(m[i, i] * m[j, j]));
        }

        // Scaled to a unit diagonal, the least eigenvalue says how far it is from making energy out of nothing: seen 0.01 and more for a stiff body. A thread 2 mm thick and 281 mm long,
        // bent by its joint, can turn about its length with next to no inertia: less than 1e-4, but a number and not rounding.
        Matrix<double> scaled = Matrix<double>.Build.Dense(n, n, (i, j) => m[i, j] / Math.Sqrt(m[i, i] * m[j, j]));
        Assert.True(scaled.Evd(Symmetricity.Symmetric).EigenValues.Min(e => e.Real) > (n == 7 ? 1e-4 : 1e-8));
    }

    // LURESIM_FUZZ_RIGS=10000 is the whole of it; the sample in between is bounded, and seeded as all property tests are.
    private static int Rigs => int.TryParse(Environment.GetEnvironmentVariable("LURESIM_FUZZ_RIGS"), out int rigs) ? rigs : 300;

    [Fact]
    public void Short_runs_end_with_finite_figures()
    {
        int runs = 0, outOfSteps = 0, mostSteps = 0;
        int unknown = 0, lost = 0;
        TimeSpan longest = TimeSpan.Zero;
        Gen.Select(Lures, Riggings, Gen.Int[0, 3], Gen.Double[0.1, 1.2]).HoldsFor(
        (lure, rigging, towing, speed) =>
        {
            var watch = System.Diagnostics.Stopwatch.StartNew();
            ActionBody body = ActionBodyBuilder.Of(lure.Head, lure.Body, rigging);
            TowInput tow = towing switch
            {
                0 => TowInput.Steady(speed),
                1 => TowInput.Twitching(0.3 * speed),
                2 => TowInput.SlackFall(),
                _ => new TowInput { Mode = TowMode.Free },
            };
            Knot knot = towing == 0 ? Knot.Snug() : Knot.Loop();
            (ActionTrace trace, ActionReport report) = LureActionModel.Assess(body, knot, tow, new() { Duration = 0.25, SettlingTime = 0.1, MaximumSteps = 20_000 });
            Assert.True(trace.Statistics.Steps + trace.Statistics.RejectedSteps <= 20_000);
            foreach (System.Reflection.PropertyInfo p in typeof(ActionReport).GetProperties().Where(p => p.PropertyType == typeof(double)))
                Assert.True(double.IsFinite((double)p.GetValue(report)!), p.Name);
            Assert.NotEqual(SimulationStatus.Cancelled, trace.Status);
            Assert.All(trace.Position, p => Assert.True(p.IsFinite));
            Assert.All(trace.AngularVelocity, p => Assert.True(p.IsFinite));
            Assert.All(trace.TailAngle, a => Assert.True(double.IsFinite(a)));
            Assert.All(trace.BendSideways.Concat(trace.BendUpright), a => Assert.True(double.IsFinite(a)));
            runs++;
            if (trace.Status == SimulationStatus.StepLimit) outOfSteps++;
            if (trace.Status == SimulationStatus.Failed) lost++;
            if (report.Verdict == ActionVerdict.Unknown) unknown++;
            mostSteps = Math.Max(mostSteps, trace.Statistics.Steps + trace.Statistics.RejectedSteps);
            if (watch.Elapsed > longest) longest = watch.Elapsed;
        },
        Rigs);
        output.WriteLine(FormattableString.Invariant($"{runs} rigs; {lost} lost, {outOfSteps} out of steps, {unknown} not judged; most steps {mostSteps}, longest {longest.TotalMilliseconds:0} ms with its checks"));
        Assert.True(lost == 0, FormattableString.Invariant($"{lost} of {runs} rigs were lost by the integrator."));
    }

    // The two faults with which every paddle tail used to end in an exception.
    [Theory]
    [InlineData(0.003, 0)]
    [InlineData(0, 0.001)]
    public void A_paddle_tail_pulled_up_or_out_above_swims_on(double pulled, double above)
    {
        var body = new LureBody(BodyProfile.PaddleTail, 0.1, 0.02, 0.014, 1050, "paddle");
        var head = new JigHead(0.0070874, HeadMetal.Lead, 1.4e-3, "1/4 oz");
        ActionAssessment run = LureActionModel.Assess(ActionBodyBuilder.Of(head, body, new Rigging { PulledUp = pulled, ExitAbove = above }), Knot.Loop(), TowInput.Steady(0.5, 0.5));
        Assert.Equal(SimulationStatus.Completed, run.Trace.Status);
        Assert.NotEqual(ActionVerdict.Unknown, run.Report.Verdict);
    }

    // A head turned to the left deflects the water to the right: it goes to the left, and mirrored to the right.
    [Fact]
    public void A_head_turned_to_the_left_takes_the_bait_to_the_left()
    {
        var body = new LureBody(BodyProfile.PaddleTail, 0.1, 0.02, 0.014, 1050, "paddle");
        var head = new JigHead(0.0070874, HeadMetal.Lead, 1.4e-3, "1/4 oz");
        double Side(double turn)
        {
            ActionBody made = ActionBodyBuilder.Of(head, body, new Rigging { HeadTurn = turn });
            ActionOptions still = new() { Duration = 6, SettlingTime = 3, InitialYaw = 0, InitialRoll = 0 };
            return LureActionModel.Assess(made, Knot.Loop(), TowInput.Steady(0.5, 0.5), still).Report.SideOffset;
        }

        double left = Side(0.3), right = Side(-0.3);
        Assert.True(left > 0.003, FormattableString.Invariant($"{1000 * left:0.0} mm"));
        Assert.Equal(-left, right, 0.002);
    }

    // Lamb 1932, art. 92: a sphere carries half of the water that it displaces. Heads so heavy that both jigs fall nose first differ by their heads' water alone.
    [Fact]
    public void A_heavier_head_adds_half_of_the_water_that_it_displaces()
    {
        var body = new LureBody(BodyProfile.PaddleTail, 0.08, 0.016, 0.012, 1020, "bait");
        PathLure light = body.Kind.OnPath(new JigHead(0.02, HeadMetal.Lead, 1e-3, "20 g"), body), heavy = body.Kind.OnPath(new JigHead(0.04, HeadMetal.Lead, 1e-3, "40 g"), body);
        Assert.Equal((0.0, 0.0), (light.FallIncidence, heavy.FallIncidence));
        double carried = (heavy.AddedMassCoefficient * heavy.Volume) - (light.AddedMassCoefficient * light.Volume);
        Assert.Equal(0.5, carried / (heavy.Volume - light.Volume), 1e-9);
    }

    private static (JigHead Head, LureBody Body) Make(
        BodyProfile profile, double length, bool common, double tall, double wide, double density, double weight, double hook, bool shank, HardFloat buoyancy, double lip)
    {
        BodyProportions p = LureKinds.Of(profile).Proportions;
        bool spoon = profile == BodyProfile.Spoon, hard = profile == BodyProfile.HardTwitchbait;
        double least = spoon ? 0.0003 : 0.002;
        double height = Math.Max(least, common ? p.HeightShare * length : least + (tall * (length - least)));
        double width = Math.Max(0.002, common ? p.WidthShare * length : 0.002 + (wide * (length - 0.002)));
        var body = new LureBody(profile, length, height, width, spoon ? Math.Max(800, 9000 * wide) : density, "drawn")
        {
            Buoyancy = hard ? buoyancy : null,
            Lip = hard && shank ? new LipShape(lip, 0.082 - lip, 0.1 + (1.3 * tall)) : null,
            Metal = spoon ? HeadMetal.Steel : null,
        };
        return (body.NeedsHead ? new JigHead(weight, HeadMetal.Lead, hook, "drawn") { Place = shank && weight > 0 ? WeightPlace.Shank : WeightPlace.Nose } : JigHead.None(body), body);
    }
}
