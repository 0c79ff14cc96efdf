using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Validation.Swimming;

/// <summary>What bends, what leans and what goes over, against closed forms and measurements made elsewhere.</summary>
public class CrookedBodyTests
{
    private const string Area = "Action: crooked bodies";
    private const double Rho = 1020;

    // Two like rods on an elastic hinge in empty space swing against each other about their own middles: omega^2 = 24 k/(m l^2), m and l those of one rod.
    [Fact]
    public void Two_rods_on_an_elastic_joint_swing_at_their_own_rate()
    {
        const double Mass = 0.01, Length = 0.05, Spring = 4e-3;
        double across = Mass * Length * Length / 12, along = 1e-3 * across;
        var one = new InertiaTensor(along, across, across);
        var whole = MassProperties.Of([new MassElement(Mass, 1e-5, new(Length / 2, 0, 0), default), new MassElement(Mass, 1e-5, new(-Length / 2, 0, 0), default)]);
        ActionBody body = ActionBodies.Spheroid(Length, 0.005, 1000) with
        {
            Mass = 2 * Mass,
            Volume = 2e-5,
            Inertia = new(2 * along, whole.Inertia.Yy + (2 * across), whole.Inertia.Zz + (2 * across)),
            Rear = new FlexibleRear(0, Mass, 1e-5, new(-Length / 2, 0, 0), new(-Length / 2, 0, 0), one, Spring, Spring, 0),
        };
        var equations = new TowedBodyEquations(body, Knot.Loop(), new TowInput { Mode = TowMode.Free }, new() { Terms = ActionTerms.None, InitialYaw = 0, InitialRoll = 0 });
        double rate = Math.Sqrt(24 * Spring / (Mass * Length * Length)), last = 0.01, crossing = double.NaN;
        double step = 2 * Math.PI / rate / 400;
        ActionBodies.Follow(equations, 1e-10, Enumerable.Range(1, 200).Select(i => i * step), (t, y) =>
        {
            double now = BodyState.Of(y).Sideways;
            if (double.IsNaN(crossing) && now < 0) crossing = t - (step * now / (now - last));
            last = now;
        }, y => BodyState.In(y).Sideways = 0.01);
        ValidationLog.Relative(CheckClass.SameEquations, Area, "two rods on an elastic joint: quarter period", "24 k/(m l^2), by hand", Math.PI / 2 / rate, crossing, 1e-3, "s");
    }

    // Towed by an eye beside the axis, a body turns until fin and eye balance the Munk moment: about the eye, D e = (F_fin arm - Munk) with F_fin = rho pi/4 s^2 U^2 sin cos.
    [Fact]
    public void A_body_towed_by_an_eye_beside_its_axis_trims_where_the_moments_balance()
    {
        const double Speed = 0.8, Beside = 0.004, Fin = 0.022;
        ActionBody plain = ActionBodies.Spheroid(0.05, 0.008, Rho);
        ActionBody body = plain with
        {
            TowPoint = new(0.05, Beside, 0),
            TrailingEdges = [new TrailingEdge(new(-0.05, 0, 0), Fin, Fin)],
            Appendages = [new AppendageDrag(Vector3d.Zero, 6e-5)],
        };
        ActionReport report = LureActionModel.Assess(body, Knot.Loop(), TowInput.Steady(Speed, 0) with { WaterDensity = Rho, LineLength = 3 }, new() { Duration = 40, SettlingTime = 20, InitialYaw = 0, InitialRoll = 0, Terms = ActionTerms.All & ~ActionTerms.AxialDrag }).Report;

        // All forces in the level plane, about the eye, by bisection over the incidence: fin, drag of the appendage, Munk.
        Span<double> k = stackalloc double[6];
        EllipsoidAddedMass.Coefficients(0.05, 0.008, 0.008, k);
        double displaced = Rho * 4 / 3 * Math.PI * 0.05 * 0.008 * 0.008, munk = displaced * (k[1] - k[0]);
        double Moment(double angle)
        {
            (double s, double c) = Math.SinCos(angle);
            double fin = Rho * Math.PI / 4 * Fin * Fin * Speed * Speed * s * c, drag = 0.5 * Rho * 6e-5 * Speed * Speed;
            return (drag * ((Beside * c) + (0.05 * s))) - (munk * Speed * Speed * s * c) + (fin * 0.1);
        }

        double low = -1, high = 0;
        for (int i = 0; i < 60; i++)
        {
            double middle = (low + high) / 2;
            if (Moment(middle) > 0) high = middle;
            else low = middle;
        }

        ValidationLog.Relative(CheckClass.SameEquations, Area, "eye 4 mm to the left of the axis: heading of the towed body", "balance of moments about the eye, by hand", -low, Math.Abs(report.MeanYaw), 0.02, "rad");
    }

    // A neutral body hangs its ballast W a distance h + d under the eye; a side force F fixed to it on its axis, h under the eye, leans it until W (h + d) sin(phi) = F h, and from
    // F h = W (h + d) on no lean is enough: it goes over.
    [Theory]
    [InlineData(0.8, false)]
    [InlineData(1.15, true)]
    public void A_side_force_fixed_to_the_body_leans_it_like_a_pendulum_and_turns_it_over_from_a_speed_on(double share, bool over)
    {
        const double Under = 0.006, Deep = 0.006, Ballast = 1e-3, Turn = 0.3, Front = 6e-5;
        double weight = Ballast * (1 - (Rho / 11340)) * PhysicalConstants.StandardGravity;
        double onset = Math.Sqrt(weight * (Under + Deep) / Under / (Rho * Front * Math.Sin(Turn) * Math.Cos(Turn)));
        ActionBody bare = ActionBodies.Spheroid(0.04, 0.006, Rho);
        Vector3d place = new(0.04, 0, -Deep);
        var total = MassProperties.Of([new MassElement(bare.Mass, bare.Volume, default, new(0.08, 0.012, 0.012)), new MassElement(Ballast, Ballast / 11340, place, new(0.004, 0.004, 0.004))]);
        ActionBody body = bare with
        {
            Mass = total.Mass,
            Volume = total.Volume,
            CentreOfMass = total.CentreOfMass,
            CentreOfBuoyancy = total.CentreOfBuoyancy,
            Inertia = total.Inertia,
            TowPoint = new(0.04, 0, Under),
            Head = new HeadSet(new(0.04, 0, 0), Front, Turn),
            Sections = BodySection.Spheroid(bare.SemiAxes),
            TrailingEdges = [new TrailingEdge(new(-0.04, 0, 0), 0.03, 0.03)],
            Appendages = [new AppendageDrag(new(0.04, 0, Under), 2e-4)],
        };
        TowInput tow = TowInput.Steady(share * onset, 0.02) with { WaterDensity = Rho, LineLength = 20 };
        ActionReport report = LureActionModel.Assess(body, Knot.Loop(), tow, new() { Duration = 30, SettlingTime = 15, InitialYaw = 0, InitialRoll = 0 }).Report;
        string name = FormattableString.Invariant($"side force fixed to the body, {share} of the speed at which it beats the weight ({onset:F2} m/s)");
        if (over)
            ValidationLog.Says(CheckClass.SameEquations, Area, name, "pendulum, by hand", "spins", report.Verdict.ToString().ToLowerInvariant(), report.Verdict == ActionVerdict.Spins);
        else
            ValidationLog.Relative(CheckClass.SameEquations, Area, name + ": lean", "asin(F h/(W (h + d))), by hand", Math.Asin(share * share), Math.Abs(report.MeanRoll), 0.15, "rad");
    }

    // Peak amplitude of bodies free to swing across the flow without damping: A/D = log10(0.41 Re^0.36), Re 500 to 33,000 (Govardhan & Williamson 2006, J. Fluid Mech. 561:147, abstract).
    [Theory]
    [InlineData(0.6)]
    [InlineData(1.0)]
    public void A_paddle_swings_as_far_as_other_bluff_bodies_that_are_free_to(double speed)
    {
        (ActionReport report, double width, double arm) = Paddle(speed);
        double reynolds = speed * width / 1.1e-6, published = Math.Log10(0.41 * Math.Pow(reynolds, 0.36));
        ValidationLog.Relative(
            CheckClass.Measured, Area, FormattableString.Invariant($"paddle of a straight paddle tail at {speed} m/s: amplitude over its width"), "log10(0.41 Re^0.36), cylinders without damping (Govardhan & Williamson 2006)",
            published, arm * Math.Sin(report.TailAmplitude) / width, 0.25, "");
    }

    [Fact]
    public void A_paddle_beats_at_the_rate_at_which_plates_shed()
    {
        // Flat plates across the flow: St 0.145 to 0.15 by the width (Fage & Johansen 1927; Roshko 1955; from memory).
        (ActionReport report, double width, _) = Paddle(1);
        ValidationLog.Relative(CheckClass.Measured, Area, "paddle of a straight paddle tail at 1 m/s: Strouhal number by its width", "flat plate across the flow, 0.145 (Fage & Johansen 1927; from memory)", 0.145, report.Frequency * width / 1.0, 0.2, "");
    }

    // A body that hangs by a snug knot swings about its centre of mass against weight and clamp: omega^2 = (W d + sqrt(E I W))/I, with the line long and the body small.
    [Fact]
    public void A_body_that_hangs_by_a_snug_knot_swings_faster_by_the_clamp()
    {
        const double Down = 0.03, Mass = 0.02, Inertia = 4e-6;
        var knot = Knot.Snug(0.6e-3);
        ActionBody body = ActionBodies.Spheroid(0.04, 0.01, 1100) with { Mass = Mass, Inertia = new(Inertia / 3, Inertia, Inertia), TowPoint = new(Down, 0, 0) };
        double weight = Mass * PhysicalConstants.StandardGravity, clamp = Math.Sqrt(knot.BendingStiffness * weight);
        foreach ((Knot tied, double moment) in new[] { (Knot.Loop(), 0.0), (knot, clamp) })
        {
            // Hung straight down, stretched by its weight.
            var tow = new TowInput { LineElevation = 1.5, LineLength = 20, LineStiffness = 2000 };
            ActionOptions options = new() { Terms = ActionTerms.Weight | ActionTerms.Line | ActionTerms.Knot, InitialYaw = 0, InitialRoll = 0, Duration = 3, SettlingTime = 0, OutputInterval = 1e-3, Tolerance = 1e-8, InitialPitch = -0.05 };
            ActionTrace trace = Towing.Simulate(body, tied, tow, options);
            double expected = Math.Sqrt(((weight * Down) + moment) / Inertia) / (2 * Math.PI);
            ValidationLog.Relative(CheckClass.SameEquations, Area, $"hung by a {(moment > 0 ? "snug knot on 0.6 mm leader" : "loop")}: beats a second", "(W d + sqrt(E I W))/I, by hand", expected, Beats(trace), 0.03, "Hz");
        }
    }

    private static double Beats(ActionTrace trace)
    {
        double[] lean = [.. trace.Attitude.Select(a => a.ToWater(new(1, 0, 0)).X)];
        double mean = lean.Average(), first = double.NaN, last = double.NaN;
        int count = 0;
        for (int i = 1; i < trace.Count; i++)
        {
            if (lean[i - 1] < mean && lean[i] >= mean)
            {
                last = trace.Time[i];
                if (count++ == 0) first = last;
            }
        }

        return (count - 1) / (last - first);
    }

    private static (ActionReport Report, double Width, double Arm) Paddle(double speed)
    {
        LureBody lure = LureKinds.Of(BodyProfile.PaddleTail).Body(0.1, "paddle tail");
        ActionBody body = ActionBodyBuilder.Of(new JigHead(7.09e-3, HeadMetal.Lead, 1.1e-3, "1/4 oz"), lure, new Rigging());
        return (LureActionModel.Assess(body, Knot.Loop(), TowInput.Steady(speed, 0.5)).Report, body.Tail!.PaddleWidth, body.Tail.Length);
    }
}
