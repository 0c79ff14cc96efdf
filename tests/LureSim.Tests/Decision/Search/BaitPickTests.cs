using LureSim.Decision.Baits;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Tests.Report;

namespace LureSim.Tests.Decision.Search;

public class BaitPickTests
{
    private static readonly LureBody Paddle = new(BodyProfile.PaddleTail, 0.09, 0.017, 0.013, 1050, "paddle tail");
    private static readonly LureBody Shrimp = new(BodyProfile.ShrimpImitation, 0.09, 0.017, 0.013, 1050, "shrimp");

    private static BodyChoice Rules(params ForageSighting[] forage)
    {
        Scenario bridge = Samples.Bridge(["1/4"]);
        return BodyChoice.Of(bridge with
        {
            Spot = bridge.Spot with { TargetFish = "red drum", TargetLength = null, TemperatureCelsius = 20, Sky = new SkyByElevation(0.8) },
            Tackle = bridge.Tackle with { Bodies = [Paddle, Shrimp] },
            Forage = forage,
            Season = null,
        });
    }

    private static SearchedRig Rig(LureBody body, BodyChoice rules, params double[] scores)
    {
        var way = new Presentation { Name = "steady", CastLength = 20, RetrieveSpeed = 0.5 };
        return new SearchedRig(new Rig(new JigHead(0.007, HeadMetal.Lead, 0.001, "1/4 oz"), body, way), way, [], scores, rules.Fits.First(fit => fit.Body == body).Appeal);
    }

    private static LureBody Picked(BodyChoice rules, double[] paddle, double[] shrimp) =>
        BaitPick.Of([Rig(Paddle, rules, paddle), Rig(Shrimp, rules, shrimp)], rules, ScoreWeights.Default).Rig.Body;

    [Fact]
    public void A_habit_of_the_fish_decides_only_what_the_runs_leave_open()
    {
        BodyChoice rules = Rules();
        Assert.Equal(Shrimp, rules.First);
        Assert.All(rules.Fits, fit => Assert.Equal(1, fit.Appeal));
        Assert.Equal(Paddle, Picked(rules, [0.4, 0.42, 0.44, 0.41], [0.2, 0.21, 0.22, 0.2]));

        // Within 8 %, and within the standard error of the lead.
        Assert.Equal(Shrimp, Picked(rules, [0.41, 0.42, 0.43, 0.41], [0.4, 0.4, 0.41, 0.4]));
        Assert.Equal(Shrimp, Picked(rules, [0.9, 0.1, 0.9, 0.1], [0.2, 0.5, 0.2, 0.9]));
    }

    [Fact]
    public void What_is_being_attacked_outweighs_twice_the_score()
    {
        BodyChoice rules = Rules(new ForageSighting(ForageKind.Shrimp, null, ForageSeen.BeingAttacked));
        Assert.InRange(rules.Fits.First(fit => fit.Body == Paddle).Appeal, 0.2, 0.4);
        Assert.Equal(Shrimp, Picked(rules, [0.4, 0.42, 0.44, 0.41], [0.2, 0.21, 0.22, 0.2]));
        Assert.Equal(Paddle, Picked(rules, [0.4, 0.42, 0.44, 0.41], [0.05, 0.05, 0.06, 0.05]));
    }

    [Fact]
    public void A_rig_must_stand_against_every_other()
    {
        // Whether the best beats the lightest its tries leave open; the second best beats it in every one.
        BodyChoice rules = Rules();
        SearchedRig With(double mass, params double[] scores) => Rig(Paddle, rules, scores) is var rig ? rig with { Rig = rig.Rig with { Head = rig.Rig.Head with { Mass = mass } } } : rig;
        SearchedRig light = With(0.003, 0.45, 0.45, 0.45, 0.45), second = With(0.005, 0.505, 0.505, 0.505, 0.505), best = With(0.007, 0.9, 0.15, 0.9, 0.11);
        Assert.Equal(second, BaitPick.Of([light, second, best], rules, ScoreWeights.Default));
        Assert.Equal(light, BaitPick.Of([light, best], rules, ScoreWeights.Default));
    }
}
