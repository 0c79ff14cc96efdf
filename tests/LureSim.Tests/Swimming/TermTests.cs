using LureSim.Hydrodynamics;
using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Tests.Swimming;

/// <summary>Each force on its own: what its switch takes away, what it is at rest, what a turn and a mirror do to it.</summary>
public class TermTests
{
    private const double Rho = 1020;

    // Switches that only work through another one.
    private static readonly Dictionary<ActionTerms, ActionTerms> Through = new() { [ActionTerms.Line] = ActionTerms.Knot };

    /// <summary>Every switch of the model: a new one is tested without being named here.</summary>
    public static TheoryData<ActionTerms> Switches => [.. Enum.GetValues<ActionTerms>().Where(t => t is not (ActionTerms.None or ActionTerms.All))];

    /// <summary>Those that are a force of their own.</summary>
    public static TheoryData<ActionTerms> Forces => [.. Enum.GetValues<ActionTerms>().Where(t => t is not (ActionTerms.None or ActionTerms.All or ActionTerms.AddedMass or ActionTerms.Wake))];

    [Fact]
    public void All_is_every_switch() =>
        Assert.Equal(ActionTerms.All, Enum.GetValues<ActionTerms>().Where(t => t != ActionTerms.All).Aggregate((a, b) => a | b));

    [Theory]
    [MemberData(nameof(Switches))]
    public void A_term_switched_off_takes_away_its_own_wrench_and_leaves_the_others(ActionTerms term)
    {
        ActionBody body = term == ActionTerms.Plate ? Spoon() : Jig();
        TowedBodyEquations all = Equations(body, ActionTerms.All), rest = Equations(body, ActionTerms.All & ~term);
        double[] y = Moving(all);
        Wrench total = all.WrenchOf(ActionTerms.All, 0.1, y), left = rest.WrenchOf(ActionTerms.All, 0.1, y);
        if (term == ActionTerms.AddedMass)
        {
            // Water that is carried is no force on the list: it acts through the matrix.
            // The damper of the hinge is a share of the critical one, which goes by the inertia with its water.
            const ActionTerms Other = ActionTerms.All & ~ActionTerms.Tail;
            Equal(all.WrenchOf(Other, 0.1, y), rest.WrenchOf(Other, 0.1, y), 0);
        }
        else if (term == ActionTerms.Wake)
        {
            // Vortices push the paddle across its motion and do no work in the plane; the lip, a thin plate, they turn.
            Wrench push = total - left;
            BodyMotion motion = MotionOf(body, y);
            Wrench tail = all.WrenchOf(ActionTerms.Tail, 0, y) - rest.WrenchOf(ActionTerms.Tail, 0, y), lip = all.WrenchOf(ActionTerms.Lip, 0, y) - rest.WrenchOf(ActionTerms.Lip, 0, y);
            Equal(push, new Wrench { Force = tail.Force + lip.Force, Moment = tail.Moment + lip.Moment, Hinge = tail.Hinge + lip.Hinge }, 1e-12);
            Assert.True(tail.Force.Length > 1e-5 && lip.Moment.Length > 1e-7, "the vortices do nothing");
            Assert.Equal(0, Vector3d.Dot(tail.Force, motion.Tail.Velocity), 1e-12);
            Assert.Equal(Vector3d.Dot(tail.Force, motion.Tail.Arm), tail.Hinge, 1e-15);
            Assert.Equal(0, lip.Force.X);
            Assert.Equal(0, lip.Force.Z);
        }
        else
        {
            Wrench own = all.WrenchOf(term | Through.GetValueOrDefault(term), 0.1, y);
            Equal(total - left, own, 1e-12);
            Assert.True(own.Force.Length + (100 * own.Moment.Length) > 1e-6, "the term does nothing");
        }

        foreach (ActionTerms other in Enum.GetValues<ActionTerms>().Where(t => t is not (ActionTerms.None or ActionTerms.All) && t != term && t != Through.GetValueOrDefault(term)))
        {
            if (term == ActionTerms.Wake && other is ActionTerms.Tail or ActionTerms.Lip) continue;
            if (term is ActionTerms.AddedMass && other is ActionTerms.Tail) continue;
            Equal(all.WrenchOf(other, 0.1, y), rest.WrenchOf(other, 0.1, y), 0);
        }
    }

    [Fact]
    public void Added_mass_switched_off_takes_away_the_reaction_of_the_water_and_nothing_else()
    {
        // Kirchhoff (Lamb 1932, art. 124): what the water does is -d(A u)/dt - w x (A u) ..., with A the difference of the two matrices.
        ActionBody body = Jig();
        TowedBodyEquations with = Equations(body, ActionTerms.All), without = Equations(body, ActionTerms.All & ~ActionTerms.AddedMass);
        double[] y = Moving(with), dy = new double[BodyState.Size];
        with.Derivative(0.1, y, dy);
        double[] u = Speeds(y), du = Speeds(dy);
        double[] water = [.. with.MassMatrix.ToArray().Zip(without.MassMatrix.ToArray(), (a, b) => a - b)];
        double[] solid = without.MassMatrix.ToArray();
        Wrench load = with.WrenchOf(ActionTerms.All, 0.1, y);
        double[] forces = [load.Force.X, load.Force.Y, load.Force.Z, load.Moment.X, load.Moment.Y, load.Moment.Z, load.Hinge];
        double[] reaction = Reaction(water, u, du), inertia = Reaction(solid, u, du);
        Assert.True(reaction.Max(Math.Abs) > 1e-3);
        for (int i = 0; i < 7; i++) Assert.Equal(-inertia[i], forces[i] + reaction[i], 1e-12);
    }

    [Fact]
    public void The_water_carried_is_that_of_the_ellipsoid()
    {
        ActionBody body = Jig() with { Bend = null, Tail = null, Lip = null };
        ReadOnlySpan<double> with = Equations(body, ActionTerms.All).MassMatrix, without = Equations(body, ActionTerms.All & ~ActionTerms.AddedMass).MassMatrix;
        double[] k = new double[6];
        EllipsoidAddedMass.Coefficients(body.SemiAxes.X, body.SemiAxes.Y, body.SemiAxes.Z, k);
        double displaced = Rho * 4.0 / 3 * Math.PI * body.SemiAxes.X * body.SemiAxes.Y * body.SemiAxes.Z;
        for (int i = 0; i < 7; i++)
        {
            for (int j = 0; j < 7; j++) Assert.Equal(i == j && i < 6 ? displaced * k[i] : 0, with[(7 * i) + j] - without[(7 * i) + j], 1e-14);
        }
    }

    [Theory]
    [MemberData(nameof(Forces))]
    public void Nothing_but_weight_buoyancy_and_line_acts_at_rest(ActionTerms term)
    {
        foreach (ActionBody body in new[] { Jig(), Spoon() })
        {
            TowedBodyEquations equations = Equations(body, ActionTerms.All);
            double[] y = [.. equations.Initial];
            ref BodyState state = ref BodyState.In(y);
            state.Velocity = default;
            state.Wake = 1.5;
            state.LipWake = -1;
            Wrench w = equations.WrenchOf(term, 0, y);
            double size = w.Force.Length + (100 * w.Moment.Length) + (100 * Math.Abs(w.Hinge));
            if (term is ActionTerms.Weight or ActionTerms.Buoyancy or ActionTerms.Knot) Assert.True(size > 1e-6);
            else Assert.Equal(0, size, 1e-12);
        }
    }

    [Theory]
    [MemberData(nameof(Forces))]
    public void A_turn_about_the_vertical_changes_no_wrench_on_the_body(ActionTerms term)
    {
        foreach (ActionBody body in new[] { Jig(), Spoon() })
        {
            TowedBodyEquations equations = Equations(body, ActionTerms.All, TowInput.SlackFall());
            double[] y = Moving(equations);
            double[] turned = [.. y];
            ref BodyState s = ref BodyState.In(turned);
            s.LineEnd = new(2.2, 0.3, 0.1);
            BodyState.In(y).LineEnd = s.LineEnd;
            var turn = Attitude.Of(1.1, 0, 0);
            s.Attitude = Product(turn, s.Attitude);
            s.Position = turn.ToWater(s.Position);
            s.LineEnd = turn.ToWater(s.LineEnd);
            Equal(equations.WrenchOf(term, 0, y), equations.WrenchOf(term, 0, turned), 1e-12);
        }
    }

    [Theory]
    [MemberData(nameof(Forces))]
    public void A_mirrored_lure_in_mirrored_motion_feels_the_mirrored_wrench(ActionTerms term)
    {
        foreach (ActionBody body in new[] { Jig(), Spoon() })
        {
            TowedBodyEquations one = Equations(body, ActionTerms.All), other = Equations(body.Mirror(), ActionTerms.All, null, Clamp.Mirror());
            double[] y = Moving(one), z = [.. y];
            ref BodyState s = ref BodyState.In(z);
            Attitude q = s.Attitude;
            s.Position = s.Position.Mirrored;
            s.Attitude = new(q.W, -q.X, q.Y, -q.Z);
            s.Velocity = s.Velocity.Mirrored;
            s.TurnRate = new(-s.TurnRate.X, s.TurnRate.Y, -s.TurnRate.Z);
            (s.TailAngle, s.TailRate, s.Wake, s.LipWake) = (-s.TailAngle, -s.TailRate, -s.Wake, -s.LipWake);
            Wrench a = one.WrenchOf(term, 0.1, y), b = other.WrenchOf(term, 0.1, z);
            Equal(new Wrench { Force = a.Force.Mirrored, Moment = new(-a.Moment.X, a.Moment.Y, -a.Moment.Z), Hinge = -a.Hinge }, b, 1e-12);
        }
    }

    [Theory]
    [InlineData(ActionTerms.CrossFlow)]
    [InlineData(ActionTerms.AxialDrag)]
    [InlineData(ActionTerms.Appendages)]
    public void Drag_takes_energy_whatever_the_motion(ActionTerms term)
    {
        TowedBodyEquations equations = Equations(Jig(), ActionTerms.All);
        var random = new Random(5);
        for (int i = 0; i < 200; i++)
        {
            double[] y = Moving(equations);
            ref BodyState s = ref BodyState.In(y);
            s.Velocity = new(random.NextDouble() - 0.5, random.NextDouble() - 0.5, random.NextDouble() - 0.5);
            s.TurnRate = new((20 * random.NextDouble()) - 10, (20 * random.NextDouble()) - 10, (20 * random.NextDouble()) - 10);
            Wrench w = equations.WrenchOf(term, 0, y);
            Assert.True(Vector3d.Dot(w.Force, s.Velocity) + Vector3d.Dot(w.Moment, s.TurnRate) < 0);
        }
    }

    [Fact]
    public void An_answer_does_not_depend_on_what_was_asked_before()
    {
        TowedBodyEquations equations = Equations(Jig(), ActionTerms.All), fresh = Equations(Jig(), ActionTerms.All);
        double[] y = Moving(equations), scratch = new double[BodyState.Size];
        equations.Derivative(0.4, equations.Initial, scratch);
        equations.Project(scratch);
        Assert.Equal(fresh.LineAt(0.1, y), equations.LineAt(0.1, y));
        Equal(fresh.WrenchOf(ActionTerms.All, 0.1, y), equations.WrenchOf(ActionTerms.All, 0.1, y), 0);
    }

    [Fact]
    public void Steps_allocate_nothing()
    {
        TowedBodyEquations equations = Equations(Jig(), ActionTerms.All);
        var stepper = new ExplicitRungeKutta(ExplicitTableau.DormandPrince, equations, 1e-4);
        equations.Initial.AsSpan().CopyTo(stepper.State);
        stepper.Start(0, 1e-3);
        double[] y = new double[BodyState.Size];
        for (int i = 0; i < 200; i++) Assert.True(stepper.Advance(100, 0.05));
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 500; i++)
        {
            stepper.Advance(100, 0.05);
            stepper.Interpolate(stepper.Time, y);
            equations.LineAt(stepper.Time, y);
        }

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    private static Knot Clamp => Knot.Snug(0.6e-3) with { SetYaw = 0.2 };

    // Everything a lure can have, beside the plate.
    private static ActionBody Jig()
    {
        Vector3d semi = new(0.045, 0.007, 0.01);
        double volume = 4.0 / 3 * Math.PI * semi.X * semi.Y * semi.Z;
        ActionBody plain = ActionBody.Spheroid(
            "everything",
            [new(volume * 1050, volume, default, new(0.09, 0.014, 0.02)), new(0.005, 0.005 / 11340, new(0.036, 0, -0.004), new(0.008, 0.008, 0.008))],
            semi,
            new(semi.X, 0, 0.3 * semi.Z));
        return plain with
        {
            TrailingEdges = [TrailingEdge.OfSpheroid(semi), new(new(-semi.X, 0, 0), 0.008, 0.002)],
            Appendages = [new(new(0, 0.002, -0.01), 2e-5)],
            Lip = new(new(0.9 * semi.X, 0, -0.5 * semi.Z), 1e-4, 1.2, 0.6, 0.1),
            Tail = new(-0.018, 0.027, 0.016, 0.012, 0.05 * volume * 1050, 3e-4, Offset: 0.05, Drop: 0.002),
            Bend = new(0.1, 0.7),
            Head = new(new(0.9 * semi.X, 0, 0), Math.PI * semi.Y * semi.Z, 0.15, 0.05),
        };
    }

    private static ActionBody Spoon() => Jig() with { Sections = [], TrailingEdges = [], Tail = null, Lip = null, Head = null, Bend = null, Plate = new(0.09, 0.03, 0.003) };

    private static TowedBodyEquations Equations(ActionBody body, ActionTerms terms, TowInput? tow = null, Knot? knot = null) =>
        new(body, knot ?? Clamp, tow ?? new TowInput { Speed = 0.6, LineStiffness = 30, WaterDensity = Rho }, new() { Terms = terms, InitialYaw = 0, InitialRoll = 0 });

    private static double[] Moving(TowedBodyEquations equations)
    {
        double[] y = [.. equations.Initial];
        ref BodyState s = ref BodyState.In(y);
        s.Position = new(-0.02, 0.01, 0);
        s.Velocity += new Vector3d(0, 0.1, -0.05);
        s.TurnRate = new(1, 0.5, -2);
        s.TailAngle = 0.2;
        s.TailRate = 3;
        s.Wake = 1.5;
        s.LipWake = -1;
        return y;
    }

    private static BodyMotion MotionOf(ActionBody body, double[] y)
    {
        ref readonly BodyState s = ref BodyState.Of(y);
        return new() { Up = default, Velocity = s.Velocity, TurnRate = s.TurnRate, Tail = new TailLinkage(body.Tail!, new BentAxis(body.Bend)).Of(s, s.Velocity, s.TurnRate) };
    }

    private static double[] Speeds(double[] y)
    {
        ref readonly BodyState s = ref BodyState.Of(y);
        return [s.Velocity.X, s.Velocity.Y, s.Velocity.Z, s.TurnRate.X, s.TurnRate.Y, s.TurnRate.Z, s.TailRate];
    }

    // What a mass m does to the body that carries it: -m du - (w x p, w x h + v x p, 0).
    private static double[] Reaction(double[] mass, double[] u, double[] du)
    {
        double Row(int i, double[] x) => Enumerable.Range(0, 7).Sum(j => mass[(7 * i) + j] * x[j]);
        Vector3d v = new(u[0], u[1], u[2]), w = new(u[3], u[4], u[5]);
        Vector3d p = new(Row(0, u), Row(1, u), Row(2, u)), h = new(Row(3, u), Row(4, u), Row(5, u));
        Vector3d a = Vector3d.Cross(w, p), b = Vector3d.Cross(w, h) + Vector3d.Cross(v, p);
        return [-Row(0, du) - a.X, -Row(1, du) - a.Y, -Row(2, du) - a.Z, -Row(3, du) - b.X, -Row(4, du) - b.Y, -Row(5, du) - b.Z, -Row(6, du)];
    }

    private static Attitude Product(Attitude a, Attitude b) => new(
        (a.W * b.W) - (a.X * b.X) - (a.Y * b.Y) - (a.Z * b.Z),
        (a.W * b.X) + (a.X * b.W) + (a.Y * b.Z) - (a.Z * b.Y),
        (a.W * b.Y) - (a.X * b.Z) + (a.Y * b.W) + (a.Z * b.X),
        (a.W * b.Z) + (a.X * b.Y) - (a.Y * b.X) + (a.Z * b.W));

    private static void Equal(Wrench a, Wrench b, double tolerance)
    {
        double[] one = [a.Force.X, a.Force.Y, a.Force.Z, a.Moment.X, a.Moment.Y, a.Moment.Z, a.Hinge], other = [b.Force.X, b.Force.Y, b.Force.Z, b.Moment.X, b.Moment.Y, b.Moment.Z, b.Hinge];
        for (int i = 0; i < one.Length; i++) Assert.True(Math.Abs(one[i] - other[i]) <= tolerance, FormattableString.Invariant($"component {i}: {one[i]:R} and {other[i]:R}"));
    }
}
