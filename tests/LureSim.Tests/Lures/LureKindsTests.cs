using LureSim.Decision;
using LureSim.Decision.Baits;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Scenarios;
using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Lures;

/// <summary>What holds for every kind of lure, the next one included.</summary>
public class LureKindsTests
{
    private const double Density = 1020, Viscosity = 1.1e-6, Length = 0.08;

    private static readonly JigHead Quarter = new(0.0070874, HeadMetal.Lead, 1e-3, "1/4 oz");

    public static TheoryData<BodyProfile> Profiles => [.. Enum.GetValues<BodyProfile>()];

    private static string Lure(LureKind kind) => $$"""{profile: {{kind.Word}}, length: 80 mm}""";

    private static Scenario Box(LureKind kind, params string[] more) => TestScenario.Read(TestScenario.Text
        .Replace("    - {profile: paddle tail, length: 3.5 in}\n    - {profile: soft jerkbait, length: 5 in, height: 16 mm, width: 13 mm, density: 1.1 g/cm3, name: plain stick}", string.Join('\n', ((string[])[Lure(kind), .. more]).Select(l => "    - " + l)), StringComparison.Ordinal)
        .Replace("    - unweighted\n    - 1/8 oz\n    - {weight: 1/4 oz, metal: tungsten, hook: 1.2 g}", "    - 1/4 oz", StringComparison.Ordinal)
        .Replace("cast: 60 ft", "cast: 8 m", StringComparison.Ordinal)
        .Replace("cast: 20 m", "cast: 8 m", StringComparison.Ordinal));

    private static (JigHead Head, LureBody Body) Whole(LureKind kind)
    {
        LureBody body = kind.Body(Length, kind.Word);
        return (kind.NeedsHead ? Quarter : JigHead.None(body), body);
    }

    private static double Fall(LureKind kind)
    {
        (JigHead head, LureBody body) = Whole(kind);
        return FreeFall.TerminalSpeed(kind.OnPath(head, body), Density, Viscosity);
    }

    [Fact]
    public void Every_profile_has_one_kind_and_every_kind_its_own_word()
    {
        Assert.Equal(Enum.GetValues<BodyProfile>(), LureKinds.All.Select(kind => kind.Profile));
        Assert.Equal(LureKinds.All.Count, LureKinds.All.Select(kind => kind.Word).Distinct().Count());
        Assert.All(LureKinds.All, kind => Assert.Equal(kind.Word, kind.Word.ToLowerInvariant().Trim()));
        Assert.Throws<ArgumentOutOfRangeException>(() => LureKinds.Of((BodyProfile)99));
    }

    [Fact]
    public void Every_kind_has_its_rows_and_every_row_its_kind()
    {
        Assert.All(LureKinds.All, kind =>
        {
            BodyProportions p = kind.Proportions;
            Assert.InRange(p.HeightShare, 0.005, 1);
            Assert.InRange(p.WidthShare, 0.05, 1);
            Assert.InRange(p.Density, 800, kind.IsPlate ? 9000 : 1400);
            Assert.Equal(kind.NeedsHead, !double.IsNaN(p.ShankShare));
            Assert.Equal(kind.IsPlate, kind.Sections.Count == 0);
            if (kind.IsPlate) return;

            // Box of the sections against the fill: the sections' own volumes are scaled to it, and should not need much of that.
            Assert.InRange(kind.Sections.Sum(s => s.Weight) / p.Fill, 0.8, 1.35);
            OutlineSection[] axis = [.. kind.Sections.Where(s => s.Aside == 0)];
            Assert.Equal(0, axis[0].From);
            Assert.Equal(1, kind.Sections.Max(s => s.To));
            Assert.All(axis.Zip(axis.Skip(1)), pair => Assert.Equal(pair.First.To, pair.Second.From));
        });
        Assert.All(LureTables.Words, row => Assert.Contains(row.Word, LureKinds.All.Select(kind => kind.Word)));
    }

    [Fact]
    public void The_ribbon_of_a_grub_is_drawn_to_a_tip_a_seventh_as_broad_as_its_root()
    {
        var kind = new CurlTailGrub();
        (JigHead head, LureBody body) = Whole(kind);
        IReadOnlyList<Station> ring = kind.Outline(head, body, kind.Assemble(head, body, new Rigging()), 0).Rings.Last(r => r.Piece == ShapePiece.Tail).Points;
        double Breadth(int i) => Math.Sqrt(Math.Pow(ring[i].Aft - ring[^(i + 1)].Aft, 2) + Math.Pow(ring[i].Up - ring[^(i + 1)].Up, 2));
        int tip = (ring.Count / 2) - 1;
        Assert.Equal(1 / 7.0, Breadth(tip) / Breadth(0), 0.003);
        for (int i = 1; i <= tip; i++) Assert.True(Breadth(i) < Breadth(i - 1));
    }

    [Fact]
    public void A_missing_row_names_its_table()
    {
        Assert.Contains("body_proportions.csv has no row for 'wooden spoon'", Assert.Throws<InvalidOperationException>(() => LureTables.Proportions("wooden spoon")).Message, StringComparison.Ordinal);
        Assert.Contains("lure_parts.csv has no row for 'wooden spoon'", Assert.Throws<InvalidOperationException>(() => LureTables.Sections("wooden spoon")).Message, StringComparison.Ordinal);
        Assert.Contains("rig_proportions.csv has no row for 'spoon_handle'", Assert.Throws<InvalidOperationException>(() => LureTables.Figure("spoon_handle")).Message, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Profiles))]
    public void Path_and_swimming_body_are_one_lure(BodyProfile profile)
    {
        LureKind kind = LureKinds.Of(profile);
        (JigHead head, LureBody body) = Whole(kind);
        LureAssembly parts = LureAssembly.Of(head, body, new Rigging());
        PathLure path = kind.OnPath(head, body);
        ActionBody swimming = ActionBodyBuilder.Of(head, body, new Rigging());
        Assert.Equal((parts.Mass, parts.Volume), (path.Mass, path.Volume));
        Assert.Equal((parts.Mass, parts.Volume), (swimming.Mass, swimming.Volume));

        // What the scenario gave: metal of the head, its hook, and a body of the material's density; a hard bait all in all.
        double own = kind.IsPlate ? path.Mass : kind.NeedsHead ? head.Mass + head.HookMass + (body.Density * parts.SectionVolume) : body.Density * parts.Volume;
        Assert.Equal(own, path.Mass, 1e-12);
        Assert.Equal(kind.Mass(body), path.Mass - (kind.NeedsHead ? head.Mass + head.HookMass : 0), 1e-12);
        if (!kind.IsPlate)
            Assert.Equal(Math.PI / 4 * body.Length * body.Height * body.Width * kind.Proportions.Fill, parts.SectionVolume, 1e-15);
    }

    [Theory]
    [MemberData(nameof(Profiles))]
    public void Slope_of_the_drag_is_its_derivative(BodyProfile profile)
    {
        LureKind kind = LureKinds.Of(profile);
        (JigHead head, LureBody body) = Whole(kind);
        PathLure lure = kind.OnPath(head, body);
        foreach (double speed in (double[])[0.01, 0.2, 0.6, 2.5])
        {
            double step = 1e-6 * speed;
            double below = lure.DragAreaTimesSpeed(speed - step, Viscosity, out _), above = lure.DragAreaTimesSpeed(speed + step, Viscosity, out _);
            lure.DragAreaTimesSpeed(speed, Viscosity, out double slope);
            Assert.Equal((above - below) / (2 * step), slope, 1e-7 * Math.Abs(slope));
        }
    }

    [Theory]
    [MemberData(nameof(Profiles))]
    public void Its_outline_lies_about_its_body_and_is_mirrored_with_its_tail(BodyProfile profile)
    {
        LureKind kind = LureKinds.Of(profile);
        (JigHead head, LureBody body) = Whole(kind);
        LureAssembly parts = LureAssembly.Of(head, body, new Rigging());
        LureShape still = kind.Outline(head, body, parts, 0), left = kind.Outline(head, body, parts, 0.3), right = kind.Outline(head, body, parts, -0.3);
        Assert.All(still.Rings, ring => Assert.True(ring.Points.Count >= 4));

        // A tail may hang lower than the body is high; a plate is dished deeper than it is thick.
        double room = kind.IsPlate ? 0.1 * body.Length : body.Height;
        Assert.All(still.Rings.SelectMany(ring => ring.Points), p =>
        {
            Assert.InRange(p.Aft, -0.05 * body.Length, 1.05 * body.Length);
            Assert.InRange(p.Left, -0.55 * body.Width, 0.55 * body.Width);
            Assert.InRange(p.Up, -room, 0.6 * room);
        });

        // It fills its length, and what swings to the left swings as far to the right.
        Assert.InRange(still.Rings.SelectMany(ring => ring.Points).Max(p => p.Aft), 0.97 * body.Length, 1.05 * body.Length);
        double Reach(LureShape shape) => shape.Rings.SelectMany(ring => ring.Points).Average(p => p.Left);
        Assert.Equal(Reach(left), -Reach(right), 1e-9);
        Assert.Equal(parts.Tail is not null, Reach(left) > 1e-4);
        Assert.Equal(kind.NeedsHead ? 1 : 0, still.Ball is null ? 0 : 1);
        Assert.NotEmpty(still.Wires);
    }

    [Theory]
    [MemberData(nameof(Profiles))]
    public void Every_kind_goes_through_check_fall_path_action_and_plan(BodyProfile profile)
    {
        LureKind kind = LureKinds.Of(profile);
        Scenario scenario = Box(kind);
        scenario = scenario with { Presentations = [scenario.Presentations[1]] };
        (JigHead head, LureBody body) = Assert.Single(scenario.Tackle.Lures);
        Assert.Equal((profile, kind.NeedsHead), (body.Profile, !head.IsNone));
        Assert.True(body.ApparentSize > 0);

        var rig = new Rig(head, body, scenario.Presentations[0]);
        FallTable fall = Planner.FallTable(scenario, rig);
        Assert.Single(fall.Columns);
        Candidate tried = Trial.Run(scenario, rig, new SimulationOptions());
        Assert.Equal(SimulationStatus.Completed, tried.Track.Status);
        RigAction action = RigChecker.OnRetrieve(scenario, rig, tried.Track);
        Assert.Equal(SimulationStatus.Completed, action.Retrieve.Trace.Status);
        Assert.NotEqual(ActionVerdict.Unknown, action.Retrieve.Report.Verdict);
        Assert.True(double.IsFinite(action.ExtraDrag) && action.Twitch is not null && action.Twitch.Report.Verdict != ActionVerdict.Unknown);
        Plan plan = Planner.Plan(scenario, new PlanOptions { Samples = 0 });
        Assert.Equal(body, plan.Choice.First.Rig.Body);
    }

    // The words of the scenario are those of the kinds, and the rules speak of soft kinds only.
    [Fact]
    public void Grammar_and_rules_know_the_kinds()
    {
        Assert.Equal(LureKinds.All.Select(kind => kind.Word), ScenarioGrammar.ProfileWord.Words.Select(word => word.Text));
        Assert.All(ForageRule.All.SelectMany(rule => rule.Profiles), profile => Assert.True(LureKinds.Of(profile).NeedsHead));
        Assert.Contains("curl-tail grub", Assert.Single(TestScenario.Problems(TestScenario.With("profile: paddle tail", "profile: curl-tail grubb"))).Message + Assert.Single(TestScenario.Problems(TestScenario.With("profile: paddle tail", "profile: curl-tail grubb"))).Fix, StringComparison.Ordinal);
    }

    // On one head and of one length a flat crab sinks more slowly than a shrimp, and a shrimp on a light head and a line more slowly than a grub (common practice); a walker rises.
    [Fact]
    public void Fall_rates_are_in_the_order_of_practice()
    {
        Assert.True(Fall(new CrabImitation()) < 0.9 * Fall(new ShrimpImitation()));
        Assert.True(OnALine(new ShrimpImitation()) < 0.95 * OnALine(new CurlTailGrub()), $"{OnALine(new ShrimpImitation())} {OnALine(new CurlTailGrub())}");
        Assert.InRange(Fall(new TopwaterWalker()), -0.6, -0.1);
    }

    // Speed (m/s) at which a 1/8 oz head sinks where the line carries two fifths of the weight, as braid off an open spool does in a few metres of water.
    private static double OnALine(LureKind kind)
    {
        PathLure lure = kind.OnPath(new JigHead(0.00354, HeadMetal.Lead, 1e-3, "1/8 oz"), kind.Body(Length, "line"));
        return lure.Fall!.Held.MinBy(held => Math.Abs(held.Pull - (0.42 * (lure.Mass - (1015 * lure.Volume)) * 9.80665))).Fall.SinkRate;
    }

    // By hand: 80 x 24 x 60 mm, pi/4 x 0.50 of the box, 1100 kg/m3: 45.24 cm3 and 49.76 g. The shell is flat: it turns broadside more than a jerkbait does.
    [Fact]
    public void A_crab_is_squat_and_falls_flatter_than_a_jerkbait()
    {
        var crab = new CrabImitation();
        LureBody body = crab.Body(Length, "crab");
        Assert.Equal(Math.PI / 4 * 0.5 * 0.08 * 0.024 * 0.06 * 1100, crab.Mass(body), 1e-9);
        PathLure falling = crab.OnPath(Quarter, body), straight = new SoftJerkbait().OnPath(Quarter, new SoftJerkbait().Body(Length, "straight"));
        Assert.True(falling.FallIncidence > straight.FallIncidence + 0.1, $"{falling.FallIncidence} against {straight.FallIncidence}");
        Assert.True(LureAssembly.Of(Quarter, body, new Rigging()).Parts.Count(p => p.Role == PartRole.Claw) == 2);
    }

    // A ribbon of 2.9 x 0.9 shares of the body is far softer than the stem of a paddle tail, so that the tail works at a crawl.
    [Fact]
    public void A_grub_s_tail_is_soft_and_swims_at_a_crawl()
    {
        var grub = new CurlTailGrub();
        LureBody body = grub.Body(Length, "grub");
        FreeTail ribbon = LureAssembly.Of(Quarter, body, new Rigging()).Tail!;
        FreeTail stem = LureAssembly.Of(Quarter, new PaddleTail().Body(Length, "paddle"), new Rigging()).Tail!;
        Assert.True(ribbon.Stiffness < 0.1 * stem.Stiffness);
        ActionReport crawl = LureActionModel.Assess(ActionBodyBuilder.Of(Quarter, body, new Rigging()), Knot.Loop(), TowInput.Steady(0.15, 0.6)).Report;
        Assert.Equal(ActionVerdict.Swims, crawl.Verdict);
    }

    // It floats with 15 % of its volume dry in fresh water and hangs by its tail; taps of the rod tip throw its nose to each side in turn, from the fourth on by 10 degrees and more.
    [Fact]
    public void A_walker_floats_tail_down_and_walks_under_taps()
    {
        var walker = new TopwaterWalker();
        LureBody body = walker.Body(0.1, "walker");
        LureAssembly parts = LureAssembly.Of(JigHead.None(body), body, new Rigging());
        Assert.Equal(0.85, parts.Mass / (1000 * parts.Volume), 1e-9);
        Assert.True(parts.MassCentre.Aft > parts.BuoyancyCentre.Aft + (0.15 * body.Length));
        Assert.True(parts.MassCentre.Up < parts.BuoyancyCentre.Up);
        ActionReport walk = LureActionModel.Assess(ActionBodyBuilder.Of(JigHead.None(body), body, new Rigging()), Knot.Loop(), TowInput.Tapping()).Report;
        Assert.All(walk.Darts.Skip(3), d => Assert.InRange(Math.Abs(d.Heading), 0.17, 1.6));
        Assert.All(walk.Darts.Skip(3).Zip(walk.Darts.Skip(4)), pair => Assert.True(pair.First.Heading * pair.Second.Heading < 0));
    }
}
