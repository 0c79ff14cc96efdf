using CsCheck;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Tackle;

namespace LureSim.Tests.Swimming;

public class ActionBodyBuilderTests
{
    private static readonly JigHead Quarter = new(0.0070874, HeadMetal.Lead, 1.4e-3, "1/4 oz");

    private static Gen<(JigHead Head, LureBody Body)> Lures { get; } =
        Gen.Select(Gen.Enum<BodyProfile>(), Gen.Double[0.02, 0.3], Gen.Double[0, 0.05], Gen.Bool).Select((profile, length, weight, shank) =>
        {
            LureKind kind = LureKinds.Of(profile);
            LureBody body = kind.Body(length, "test") with { Lip = kind.TakesLip && shank ? new LipShape(0.15 * length, 0.12 * length, 0.7) : null };
            double mass = weight < 5e-4 ? 0 : weight;
            return (body.NeedsHead ? new JigHead(mass, HeadMetal.Lead, HookWire.CommonMass(length), "test") { Place = shank && mass > 0 ? WeightPlace.Shank : WeightPlace.Nose } : JigHead.None(body), body);
        });

    private static Gen<Rigging> Riggings { get; } =
        Gen.Select(Gen.Double[-0.006, 0.006], Gen.Double[-0.006, 0.006], Gen.Double[-0.7, 0.7], Gen.Double[-0.7, 0.7], Gen.Double[-0.5, 0.5], Gen.Double[0, 0.015], Gen.Double[0.05, 0.95])
            .Select((sideways, above, bend, lean, turn, pulled, share) => new Rigging
            {
                ExitSideways = sideways,
                ExitAbove = above,
                Bend = bend,
                PointLean = lean,
                HeadTurn = turn,
                PulledUp = pulled,
                ShankShare = share,
            });

    [Fact]
    public void Every_lure_that_a_scenario_can_describe_is_a_body_that_the_model_takes() =>
        Gen.Select(Lures, Riggings).HoldsFor((lure, rigging) => ActionBodyBuilder.Of(lure.Head, lure.Body, rigging).Validate());

    [Fact]
    public void A_mirrored_fault_is_a_mirrored_body() => Gen.Select(Lures, Riggings).HoldsFor((lure, rigging) =>
    {
        ActionBody one = ActionBodyBuilder.Of(lure.Head, lure.Body, rigging).Mirror();
        ActionBody other = ActionBodyBuilder.Of(lure.Head, lure.Body, rigging with
        {
            ExitSideways = -rigging.ExitSideways,
            Bend = -rigging.Bend,
            PointLean = -rigging.PointLean,
            HeadTurn = -rigging.HeadTurn,
        });
        Assert.True((one.CentreOfMass - other.CentreOfMass).Length < 1e-12);
        Assert.Equal(one.Inertia.Xy, other.Inertia.Xy, 1e-12);
        Assert.Equal(one.Inertia.Xz, other.Inertia.Xz, 1e-12);
        if (one.Bend is { } bend)
        {
            Assert.Equal(bend.Angle, other.Bend!.Angle, 1e-12);
            Assert.Equal(Math.Cos(bend.Roll), Math.Cos(other.Bend.Roll), 1e-9);
            Assert.Equal(Math.Sin(bend.Roll), Math.Sin(other.Bend.Roll), 1e-9);
        }
    });

    // Hook out on the left by 3 mm at 35 mm: the tail goes to the right by atan(4.5/35) = 7.33 degrees, and the kink stands where the hook comes out.
    [Fact]
    public void A_hook_out_on_the_left_bends_the_tail_to_the_right()
    {
        var body = new LureBody(BodyProfile.PaddleTail, 0.1, 0.02, 0.014, 1050, "paddle");
        ActionBody found = ActionBodyBuilder.Of(Quarter, body, new Rigging { ExitSideways = 0.003 });
        Assert.Equal(7.326, found.Bend!.Angle * 180 / Math.PI, 1e-3);
        Assert.Equal(Math.PI, Math.Abs(found.Bend.Roll), 1e-9);
        Assert.Equal(0.05 - 0.035, found.Bend.Position, 1e-12);
        Assert.Equal(0.05 - 0.035, found.Rear!.JointPosition, 1e-12);

        // Masses are those of the bait laid straight.
        Assert.Equal(0, found.CentreOfMass.Y, 1e-12);
        Assert.Null(ActionBodyBuilder.Of(Quarter, body, new Rigging()).Bend);
        Assert.NotNull(ActionBodyBuilder.Of(Quarter, body, new Rigging { HeadTurn = 0.1 }).Head);
    }

    [Fact]
    public void The_nose_is_half_a_length_ahead_and_the_eye_over_the_head()
    {
        var body = new LureBody(BodyProfile.PaddleTail, 0.1, 0.02, 0.014, 1050, "paddle");
        ActionBody found = ActionBodyBuilder.Of(Quarter, body, new Rigging());
        LureAssembly parts = LureAssembly.Of(Quarter, body, new Rigging());
        Assert.Equal(0.05 - parts.MassCentre.Aft, found.CentreOfMass.X, 1e-12);
        Assert.Equal((0.05, 0.0), (found.TowPoint.X, found.TowPoint.Y));

        // Ball of 7.0874 g of lead: diameter 10.61 mm; the eye stands 60 % of it above the middle.
        Assert.Equal(0.006365, found.TowPoint.Z, 1e-5);
        Assert.All(found.Sections, s => Assert.True(s.Position - (s.Length / 2) >= found.Tail!.HingePosition - 1e-9));
    }

    [Fact]
    public void A_snug_knot_on_a_heavier_leader_is_stiffer()
    {
        TackleBox box = Scenarios.TestScenario.Read(Scenarios.TestScenario.Text).Tackle with { Rigging = new Rigging { Knot = KnotStyle.Snug, LoopLength = 0 } };
        Knot light = ActionBodyBuilder.KnotOf(box);
        Knot heavy = ActionBodyBuilder.KnotOf(box with { Leader = box.Leader! with { Diameter = 0.6e-3 } });
        Assert.Equal(KnotKind.Snug, light.Kind);
        Assert.Equal(TackleBuilder.BendingStiffness(box), light.BendingStiffness, 1e-12);
        Assert.Equal(Math.Pow(1.5, 4), heavy.BendingStiffness / light.BendingStiffness, 1e-9);
        ActionBodyBuilder.KnotOf(box with { Leader = null }).Validate();
    }

    // Ball of 7.0874 g of lead: diameter 10.61 mm, seen from the front 0.884 cm2; it sits at the nose, turned to the side that was asked for.
    [Theory]
    [InlineData(0.1)]
    [InlineData(-0.3)]
    public void A_turned_head_is_its_ball_at_the_nose_turned_to_its_side(double turn)
    {
        var body = new LureBody(BodyProfile.PaddleTail, 0.1, 0.02, 0.014, 1050, "paddle");
        HeadSet head = ActionBodyBuilder.Of(Quarter, body, new Rigging { HeadTurn = turn }).Head!;
        Assert.Equal(new Vector3d(0.05, 0, 0), head.Position);
        Assert.Equal(Math.PI / 4 * Math.Pow(6 * 0.0070874 / 11340 / Math.PI, 2.0 / 3), head.FrontalArea, 1e-12);
        Assert.Equal((turn, 0.0), (head.Yaw, head.Pitch));
    }
}
