using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Tests.Cli;
using LureSim.Tests.Report;

namespace LureSim.Tests.Decision.Search;

/// <summary>What a search goes by, without a search.</summary>
public class RetrieveWorthTests
{
    // Still water 3 m deep, fish from 2 to 2.5 m.
    private static readonly Scenario Pond = Still();

    private static readonly Rig Lure = new(Pond.Tackle.JigHeads[0], Pond.Tackle.Bodies[0], Pond.Presentations[0]);

    private static Scenario Still()
    {
        Scenario bridge = Samples.Bridge(["1/4"]);
        return bridge with
        {
            Spot = bridge.Spot with { Depth = 3, Bottom = BottomKind.Sand, CurrentSpeed = 0, WindSpeed = 0, StrikeZone = new StrikeZone(2, 2.5) },
            Presentations = [new Presentation { Name = "own", CastLength = 18, CountDown = 3, RetrieveSpeed = 0.5 }],
        };
    }

    [Fact]
    public void Nobody_counts_longer_than_a_minute()
    {
        // A lure that sinks half a metre a second is not down in 59 m by then.
        Scenario deep = Pond with { Spot = Pond.Spot with { Depth = 59 } };
        FallTime fall = RetrieveSearch.FallOf(deep, Lure.Head, Lure.Body, new SimulationOptions { Segments = 12 }, CancellationToken.None);
        Assert.Equal(new FallTime(60, false), fall);
        Assert.All(RetrieveFamily.All, family => Assert.True(family.Build(deep.Presentations[0], [.. family.Parameters.Select(p => p.High)], fall).CountDown <= 60));
    }

    [Fact]
    public void Of_two_retrieves_that_never_score_the_nearer_to_the_zone_and_the_livelier_lead_on()
    {
        static double Worth(double depth, double action, double score = 0) =>
            RetrieveSearch.Worth(new RetrieveTrial(null, Lure.Presentation, HandMade.Candidate(Lure).Coverage with { MedianDepth = depth }, action, 0, score), Pond.Spot);
        Assert.True(Worth(1.5, 0) > Worth(0.5, 0));
        Assert.True(Worth(2.7, 0) > Worth(2.9, 0));
        Assert.True(Worth(1, 0.8) > Worth(1, 0.2));

        // In the zone and alive all the time is worth a hundredth of the score, and nothing is worth more.
        Assert.Equal(0.01, Worth(2.2, 1), 1e-15);
        Assert.Equal(Worth(2, 0), Worth(2.5, 0));
        Assert.True(Worth(0.1, 0, score: 0.011) > Worth(2.2, 1));
    }

    [Fact]
    public void Strokes_are_counted_by_the_minute()
    {
        // Two flicks and a lift in a cycle of 8 s: 22.5 a minute. Reeling until the line is in has no cycle.
        Presentation worked = Lure.Presentation with
        {
            Moves =
            [
                new Move { Kind = MoveKind.Twitch, Duration = 1, Beats = 2, Up = 0.2 },
                new Move { Kind = MoveKind.Lift, Duration = 2, Up = 0.5 },
                new Move { Kind = MoveKind.Lower, Duration = 2, Up = -0.5 },
                new Move { Kind = MoveKind.Pause, Duration = 3 },
            ],
        };
        Assert.Equal(22.5, Strokes(worked), 1e-12);
        Assert.Equal(0, Strokes(Lure.Presentation));

        static double Strokes(Presentation presentation) => new RetrieveTrial(null, presentation, HandMade.Candidate(Lure).Coverage, 0, 0, 0).StrokesPerMinute;
    }
}
