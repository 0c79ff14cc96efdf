using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Tests.Decision;

/// <summary>The score against the formula of docs/decision.md, worked by hand factor by factor.</summary>
public class RankingTests
{
    private const double Cast = 20;

    private static readonly Coverage Best = new(1, 0, 0, 0, 0, 0, null, 1.5, 2, 30, 0);

    private static readonly Presentation Steady = new() { Name = "steady", CastLength = Cast, RetrieveSpeed = 0.4 };

    private static Spot Flat(BottomKind bottom = BottomKind.Sand) => new()
    {
        Depth = 3,
        Salinity = 20,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.7),
        StrikeZone = new StrikeZone(1, 2),
        Bottom = bottom,
        TargetFish = "red drum",
    };

    private static Rig Rig(double mass = 0.007, string kind = "paddle tail", Presentation? way = null) =>
        new(new JigHead(mass, HeadMetal.Lead, 0.001, "head"), LureKinds.Named(kind).Body(0.1, kind), way ?? Steady);

    // 1 - t / 90 s.
    [Theory]
    [InlineData(9, 0.9)]
    [InlineData(45, 0.5)]
    [InlineData(81, 0.1)]
    [InlineData(90, 0)]
    [InlineData(200, 0)]
    public void Waiting_costs_in_proportion_to_a_minute_and_a_half(double wait, double expected) =>
        Assert.Equal(expected, Ranking.Score(Best with { TimeToZone = wait }, Flat(), Rig()), 12);

    // Half of the retrieve in contact, a fifth of it dragged, over 3 m in 4 touches: 1 - rest x 0.3 - drag x 0.2, times e^-(metre x 3 + touch x 4).
    [Theory]
    [InlineData(BottomKind.Sand, 1 - (0.12 * 0.3) - (0.25 * 0.2))]
    [InlineData(BottomKind.Mud, 1 - (0.3 * 0.3) - (0.9 * 0.875 * 0.2))]
    [InlineData(BottomKind.Shell, (1 - (0.35 * 0.3) - (0.5 * 0.2)) * 0.80251879796247848)]
    [InlineData(BottomKind.Hard, (1 - (0.25 * 0.3) - (0.3 * 0.2)) * 0.85214378896621136)]
    public void The_bottom_costs_by_what_it_is(BottomKind bottom, double expected) =>
        Assert.Equal(expected, Ranking.Score(Best with { BottomShare = 0.5, DragShare = 0.2, DraggedLength = 3, Touches = 4 }, Flat(bottom), Rig()), 12);

    [Fact]
    public void A_light_head_ploughs_mud_less_than_a_heavy_one()
    {
        Coverage drags = Best with { BottomShare = 0.8, DragShare = 0.8 };
        double light = Ranking.Score(drags, Flat(BottomKind.Mud), Rig(0.002)), heavy = Ranking.Score(drags, Flat(BottomKind.Mud), Rig(0.02));
        Assert.Equal(1 - (0.9 * 0.25 * 0.8), light, 12);
        Assert.Equal(1 - (0.9 * 0.8), heavy, 12);
    }

    [Fact]
    public void Time_with_the_action_off_counts_by_what_the_bait_is_worth_at_rest()
    {
        // A paddle tail at rest is worth 0.35, a shrimp 0.65; the steady retrieve becomes a shrimp by 0.75.
        Coverage half = Best with { LiveZoneShare = 0.5 };
        Assert.Equal(0.5 + (0.35 * 0.5), Ranking.Score(half, Flat(), Rig()), 12);
        Assert.Equal((0.5 + (0.65 * 0.5)) * 0.75, Ranking.Score(half, Flat(), Rig(kind: "shrimp imitation")), 12);
    }

    [Fact]
    public void A_slack_line_costs_feel() => Assert.Equal(1 - (0.3 * 0.6), Ranking.Score(Best with { FeltShare = 0.4 }, Flat(), Rig()), 12);

    [Fact]
    public void A_shrimp_that_swims_faster_than_a_shrimp_looks_less_natural() =>
        Assert.Equal(0.75 * 0.6 / 1.2, Ranking.Score(Best, Flat(), Rig(kind: "shrimp imitation", way: Steady with { RetrieveSpeed = 1.2 })), 12);

    [Fact]
    public void Factors_multiply()
    {
        // 0.8 (1 - 0.25) (1 - 18/90) (1 - 0.25 x 5/20).
        Coverage coverage = Best with { ZoneShare = 0.8, LiveZoneShare = 0.8, GrassShare = 0.25, TimeToZone = 18, DriftAcross = 5 };
        Assert.Equal(0.8 * 0.75 * 0.8 * 0.9375, Ranking.Score(coverage, Flat(), Rig()), 12);
        Assert.Equal(0.75, Ranking.Score(Best with { DriftAcross = 90 }, Flat(), Rig()), 12);
        Assert.Equal(0, Ranking.Score(Best with { TimeToZone = null }, Flat(), Rig()));
    }

    [Fact]
    public void The_lighter_of_two_heads_that_are_as_good_is_taken_and_the_simpler_of_two_retrieves()
    {
        Presentation lift = Steady with { Name = "lift", Moves = RetrieveStyle.Find("lift and drop")!.Moves };
        (Rig Rig, double Score)[] rigs = [(Rig(0.014), 0.60), (Rig(way: lift), 0.58), (Rig(), 0.57), (Rig(0.0035), 0.40)];
        Assert.Equal(rigs[2], Preference.Of(rigs, item => item.Rig, item => item.Score));
        Assert.Equal(rigs[0], Preference.Of([rigs[0], rigs[3]], item => item.Rig, item => item.Score));
    }

    [Fact]
    public void Every_profile_has_a_row_and_every_weight_a_basis()
    {
        Assert.All(Enum.GetValues<BodyProfile>(), profile => Assert.InRange(Naturalness.Of(profile).Idle, 0, 1));
        Assert.All(ScoreWeights.Default.All, weight => Assert.True((weight.Value > 0 || weight.Name == "settled_sand") && weight.Value >= 0 && weight.Says.Length > 0, weight.Name));
    }
}
