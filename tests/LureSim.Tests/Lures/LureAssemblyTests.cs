using CsCheck;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Tackle;

namespace LureSim.Tests.Lures;

public class LureAssemblyTests
{
    private static readonly LureBody Paddle = new(BodyProfile.PaddleTail, 0.1, 0.02, 0.014, 1050, "paddle");
    private static readonly LureBody Jerk = new(BodyProfile.SoftJerkbait, 0.125, 0.016, 0.0125, 1100, "jerk");
    private static readonly LureBody Hard = new(BodyProfile.HardTwitchbait, 0.09, 0.018, 0.012, 1015, "hard") { Buoyancy = HardFloat.Suspending };
    private static readonly LureBody Spoon = new(BodyProfile.Spoon, 0.06, 0.0013, 0.022, 1000, "spoon") { Metal = HeadMetal.Brass };
    private static readonly JigHead Quarter = new(0.0070874, HeadMetal.Lead, 1.4e-3, "1/4 oz");
    private static readonly JigHead Bare = new(0, HeadMetal.Lead, 1.4e-3, "unweighted");

    private static Gen<Rigging> Riggings { get; } = Gen.Select(Gen.Double[-0.004, 0.004], Gen.Double[-0.6, 0.6], Gen.Double[0, 0.006], Gen.Double[-0.5, 0.5], Gen.Double[0.1, 0.9])
        .Select((exit, bend, pulled, lean, share) => new Rigging { ExitSideways = exit, Bend = bend, PulledUp = pulled, PointLean = lean, ShankShare = share });

    [Fact]
    public void A_torn_tail_is_shorter_lighter_and_stiffer()
    {
        LureAssembly whole = LureAssembly.Of(Quarter, Paddle, new Rigging()), torn = LureAssembly.Of(Quarter, Paddle, new Rigging { TailLost = 0.5 });

        // The tail of a paddle tail begins where its stem does, at 65 % of the length.
        Assert.Equal(Paddle.Length * (1 - (0.5 * 0.35)), torn.Length, 1e-12);
        Assert.True(torn.Mass < whole.Mass);
        Assert.Equal(whole.Engagement, torn.Engagement);
        Assert.True(torn.Tail!.Height < whole.Tail!.Height && torn.Tail.Stiffness > whole.Tail.Stiffness && torn.Tail.Mass < whole.Tail.Mass);
        Assert.All(LureKinds.All.Where(kind => kind.NeedsHead), kind =>
        {
            LureBody body = kind.Body(0.09, "bait");
            LureAssembly most = LureAssembly.Of(Quarter, body, new Rigging { TailLost = Limits.TailLost.Most });
            Assert.Equal(LureAssembly.Of(Quarter, body, new Rigging()).Tail is null, most.Tail is null);
            Assert.All(kind.Outline(Quarter, body, most, 0.2).Rings.SelectMany(ring => ring.Points), at => Assert.True(at.Aft < most.Length + (0.1 * body.Length)));
        });
    }

    [Fact]
    public void Metal_farther_back_on_the_shank_lies_farther_back_in_the_lure()
    {
        JigHead head = Quarter with { Place = WeightPlace.Shank };
        LureAssembly fore = LureAssembly.Of(head, Jerk, new Rigging { WeightStation = 0.1 }), aft = LureAssembly.Of(head, Jerk, new Rigging { WeightStation = 0.9 });
        Assert.Equal(0.8 * fore.Engagement * head.Mass / fore.Mass, aft.MassCentre.Aft - fore.MassCentre.Aft, 1e-9);
        Assert.Equal(LureAssembly.Of(head, Jerk, new Rigging()).MassCentre, LureAssembly.Of(head, Jerk, new Rigging { WeightStation = SoftBait.CommonWeightStation }).MassCentre);
    }

    [Fact]
    public void A_wider_hook_stands_higher_and_drags_more()
    {
        double common = SoftBait.CommonGape(Quarter, Paddle, new Rigging());
        Rigging wide = new() { HookGape = 2 * common };
        LureAssembly fits = LureAssembly.Of(Quarter, Paddle, new Rigging()), over = LureAssembly.Of(Quarter, Paddle, wide);
        Assert.True(over.MassCentre.Up > fits.MassCentre.Up);
        Assert.Equal(fits.Mass, over.Mass, 1e-12);
        Assert.True(Paddle.Kind.Swimming(Quarter, Paddle, over).Drags.Sum(d => d.Area) > Paddle.Kind.Swimming(Quarter, Paddle, fits).Drags.Sum(d => d.Area));
        Assert.Equal(fits.MassCentre, LureAssembly.Of(Quarter, Paddle, new Rigging { HookGape = common }).MassCentre);
    }

    [Fact]
    public void Mass_and_volume_are_those_of_the_lure_on_its_path()
    {
        foreach (JigHead head in (JigHead[])[Quarter, Bare, Quarter with { Place = WeightPlace.Shank }])
        {
            foreach (LureBody body in (LureBody[])[Paddle, Jerk])
            {
                LureAssembly parts = LureAssembly.Of(head, body, new Rigging());
                LureProperties path = TackleBuilder.Lure(head, body);
                Assert.Equal(path.Mass, parts.Mass, 1e-12);
                Assert.Equal(path.Volume, parts.Volume, 1e-15);
            }
        }

        Assert.Equal(TackleBuilder.Lure(JigHead.None(Hard), Hard).Mass, LureAssembly.Of(JigHead.None(Hard), Hard, new Rigging()).Mass, 1e-12);
    }

    // By hand: the ball of 7.0874 g at the nose, the hook's 60 % at half its shank of 35 mm, 40 % at its end, the body of
    // pi/4 x 20 x 14 x 100 mm3 x 0.62 x 1050 kg/m3 = 14.316 g at the middle of its sections.
    [Fact]
    public void Centre_of_mass_of_a_jig_by_hand()
    {
        LureAssembly parts = LureAssembly.Of(Quarter, Paddle, new Rigging());
        (double From, double To, double Height, double Width)[] rows = [(0, 0.25, 0.85, 0.9), (0.25, 0.65, 1, 1), (0.65, 0.92, 0.35, 0.4), (0.92, 1, 0.8, 0.95)];
        double sum = rows.Sum(r => (r.To - r.From) * r.Height * r.Width);
        double bodyCentre = rows.Sum(r => (r.To - r.From) * r.Height * r.Width * (r.From + r.To) / 2) / sum * 0.1;
        double bodyMass = Math.PI / 4 * 0.02 * 0.014 * 0.1 * 0.62 * 1050;
        double expected = ((0.6 * 1.4e-3 * 0.0175) + (0.4 * 1.4e-3 * 0.035) + (bodyMass * bodyCentre)) / (0.0070874 + 1.4e-3 + bodyMass);
        Assert.Equal(0.014316, bodyMass, 1e-6);
        Assert.Equal(expected, parts.MassCentre.Aft, 1e-12);
        Assert.Equal(0, parts.MassCentre.Left, 1e-15);

        // The point stands 7 mm above the shank's line: half of the gape of 14 mm, 40 % of the shank.
        Assert.Equal(0.4 * 1.4e-3 * 0.007 / parts.Mass, parts.MassCentre.Up, 1e-12);
    }

    [Theory]
    [InlineData(0.003, 0.05, 5.143)]
    [InlineData(-0.002, 0.04, -4.289)]
    public void A_hook_out_on_one_side_bends_the_tail_to_the_other(double offset, double engagement, double degrees) =>
        Assert.Equal(-degrees, BodyBends.BendOfExit(offset, engagement) * 180 / Math.PI, 1e-3);

    [Fact]
    public void Exit_and_bend_are_each_others_inverse() =>
        Gen.Select(Gen.Double[-0.01, 0.01], Gen.Double[0.01, 0.1]).HoldsFor((offset, engagement) =>
            Assert.Equal(offset, BodyBends.ExitOfBend(BodyBends.BendOfExit(offset, engagement), engagement), 1e-12));

    // An arc of half-angle a has the chord 2 r sin a and the length 2 r a; the series a = sqrt(6 s/c) is within 3 % up to 0.5 rad.
    [Theory]
    [InlineData(0.1)]
    [InlineData(0.3)]
    [InlineData(0.5)]
    public void Arch_of_a_bunched_bait(double angle)
    {
        double chord = 2 * Math.Sin(angle), surplus = (2 * angle) - chord;
        Assert.Equal(angle, BodyBends.ArchOfSurplus(surplus, chord), 0.03 * angle);
    }

    [Fact]
    public void A_pulled_up_bait_kinks_at_last() => Assert.Equal(0.6, BodyBends.ArchOfSurplus(0.05, 0.05));

    // An arc of 40 mm ending at a slope of 0.2, then straight: 4 mm aside at its end, 10 sin 0.2 more after 10 mm.
    [Fact]
    public void Centre_line_of_a_bent_body()
    {
        Station at = BodyBends.CentreLine(0.05, 0.04, 0.2, 0);
        Assert.Equal(0.004 + (0.01 * Math.Sin(0.2)), at.Left, 1e-12);
        Assert.Equal(0.04 + (0.01 * Math.Cos(0.2)), at.Aft, 1e-12);
        Assert.Equal(0, at.Up);

        // The same bend upwards lifts as much as one to the left puts aside.
        Station raised = BodyBends.CentreLine(0.05, 0.04, 0, 0.2);
        Assert.Equal((at.Aft, at.Left, 0.0), (raised.Aft, raised.Up, raised.Left));
    }

    [Fact]
    public void A_long_shank_stiffens_and_shortens_the_tail()
    {
        FreeTail free = LureAssembly.Of(Quarter, Paddle, new Rigging { ShankShare = 0.35 }).Tail!;
        FreeTail held = LureAssembly.Of(Quarter, Paddle, new Rigging { ShankShare = 0.75 }).Tail!;
        Assert.Equal(1, free.FreeShare, 1e-12);
        Assert.Equal(0.065, free.Hinge, 1e-12);
        Assert.Equal(0.075, held.Hinge, 1e-12);
        Assert.Equal(25.0 / 35.0, held.FreeShare, 1e-12);

        // k = E I / l with the stem's 7 x 5.6 mm section, over 30 % of the 35 mm or 25 mm that are free.
        Assert.Equal(1e5 * Math.PI / 64 * 0.007 * Math.Pow(0.0056, 3) / (0.3 * 0.035), free.Stiffness, 1e-12);
        // Held 10 of the 27 mm up to the paddle farther aft the stem is 22 % thicker both ways.
        Assert.Equal(1.4 * Math.Pow(1 + (0.6 * 10 / 27), 4), held.Stiffness / free.Stiffness, 1e-9);
        Assert.Null(LureAssembly.Of(Quarter, Jerk, new Rigging()).Tail);
    }

    // A weedless hook by hand: its shank 45 % of the 16 mm under the axis, its gape from there to the back.
    [Fact]
    public void A_weedless_hook_hangs_under_the_body()
    {
        LureAssembly parts = LureAssembly.Of(Bare, Jerk, new Rigging());
        double shank = -0.45 * 0.016, point = shank + ((0.0072 + 0.008) / 2);
        Assert.Equal(((0.6 * 1.4e-3 * shank) + (0.4 * 1.4e-3 * point)) / parts.Mass, parts.MassCentre.Up, 1e-12);
        Assert.True(parts.MassCentre.Up < parts.BuoyancyCentre.Up);
    }

    [Fact]
    public void Weight_on_the_shank_lies_lower_and_farther_aft()
    {
        Station nose = LureAssembly.Of(Quarter, Jerk, new Rigging()).MassCentre;
        Station shank = LureAssembly.Of(Quarter with { Place = WeightPlace.Shank }, Jerk, new Rigging()).MassCentre;
        Assert.True(shank.Aft > nose.Aft + 0.005);
        Assert.True(shank.Up < nose.Up - 0.001);
    }

    [Theory]
    [InlineData(HardFloat.Floating, 940, -1)]
    [InlineData(HardFloat.Sinking, 1100, 1)]
    public void A_hard_bait_has_its_density_and_its_ballast_below(HardFloat kind, double density, int sinks)
    {
        LureBody body = Hard with { Buoyancy = kind, Density = density, Lip = new LipShape(0.012, 0.01, Math.PI / 4) };
        LureAssembly parts = LureAssembly.Of(JigHead.None(body), body, new Rigging());
        Assert.Equal(density, parts.Mass / parts.Volume, 1e-9);
        Assert.Equal(sinks, Math.Sign(parts.Mass - (1020 * parts.Volume)));
        Assert.True(parts.MassCentre.Up < parts.BuoyancyCentre.Up);
    }

    // An elliptic plate of brass: pi/4 x 60 x 22 x 1.3 mm3 x 8500 kg/m3 = 11.456 g; about its own centre m W^2/16 and m L^2/16.
    [Fact]
    public void A_spoon_by_hand()
    {
        LureAssembly parts = LureAssembly.Of(JigHead.None(Spoon), Spoon, new Rigging());
        LurePart plate = parts.Parts[0];
        Assert.Equal(0.011456, plate.Mass, 1e-6);
        Assert.Equal(plate.Mass * 0.022 * 0.022 / 16, plate.Own.Roll, 1e-15);
        Assert.Equal(plate.Mass * 0.06 * 0.06 / 16, plate.Own.Pitch, 1e-15);
        Assert.Equal(plate.Own.Roll + plate.Own.Pitch, plate.Own.Yaw, 1e-15);
    }

    [Fact]
    public void A_mirrored_fault_mirrors_the_lure() => Riggings.HoldsFor(rigging =>
    {
        LureAssembly one = LureAssembly.Of(Quarter, Jerk, rigging);
        LureAssembly other = LureAssembly.Of(Quarter, Jerk, rigging with { ExitSideways = -rigging.ExitSideways, Bend = -rigging.Bend, PointLean = -rigging.PointLean });
        Assert.Equal(one.MassCentre.Left, -other.MassCentre.Left, 1e-12);
        Assert.Equal(one.MassCentre.Up, other.MassCentre.Up, 1e-12);
        Assert.Equal(one.InertiaAboutMassCentre.ForwardLeft, -other.InertiaAboutMassCentre.ForwardLeft, 1e-12);
        Assert.Equal(one.InertiaAboutMassCentre.ForwardUp, other.InertiaAboutMassCentre.ForwardUp, 1e-12);
    });

    [Fact]
    public void Inertia_is_that_of_a_real_body() => Riggings.HoldsFor(rigging =>
    {
        foreach (LureBody body in (LureBody[])[Paddle, Jerk])
        {
            Inertia i = LureAssembly.Of(Bare, body, rigging).InertiaAboutMassCentre;
            Assert.True(i.Roll > 0 && i.Pitch > i.Roll && i.Yaw > i.Roll);
            Assert.True(i.Roll + i.Pitch >= i.Yaw * (1 - 1e-9) && i.Roll + i.Yaw >= i.Pitch * (1 - 1e-9));
        }
    });
}
