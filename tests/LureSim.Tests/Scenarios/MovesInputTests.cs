using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

/// <summary>Moves, styles, aim and drift as input.</summary>
public class MovesInputTests
{
    private static readonly string Head = TestScenario.Text[..TestScenario.Text.IndexOf("presentations:", StringComparison.Ordinal)] + "presentations:\n  - name: test\n    cast: 20 m\n";

    private static Presentation Read(string keys) => TestScenario.Read(Head + keys).Presentations[0];

    [Fact]
    public void Every_move_becomes_figures()
    {
        Presentation p = Read(
            """
                count_down: 1 s
                aim: 30 deg
                drift: {speed: 0.5 kn, direction: left}
                time_limit: 2 min
                retrieve: {speed: 0.4 m/s}
                moves:
                  - reel: {for: 2 s}
                  - reel: {for: 1 s, speed: 0.8 m/s}
                  - pause: 1.5 s
                  - lift: {height: 1 m, time: 2 s, reel: 0.2 m/s}
                  - sweep: {to: right, distance: 0.5 m, time: 1 s}
                  - sweep: {to: towards, distance: 0.4 m, time: 1 s}
                  - lower: {height: 0.25 m, time: 1 s}
                  - twitch: {count: 3, height: 0.2 m, period: 0.4 s, to: left}
                  - feed: {speed: 0.3 m/s, for: 3 s}
                  - lower: {time: 1 s}
                  - return: {time: 2 s}
            """);
        Assert.Equal(0.4, p.RetrieveSpeed);
        Assert.Equal(Math.PI / 6, p.Aim, 1e-12);
        Assert.Equal(120, p.TimeLimit);
        Assert.Equal(0.5 * 0.514444444, p.DriftSpeed, 1e-6);
        Assert.Equal(p.DriftSpeed * Math.Cos(Math.PI / 3), p.DriftAlong, 1e-12);
        Assert.Equal(p.DriftSpeed * Math.Sin(Math.PI / 3), p.DriftLeft, 1e-12);
        Assert.True(p.Repeats);
        Move[] expected =
        [
            new() { Kind = MoveKind.Reel, Duration = 2, ReelShare = 1 },
            new() { Kind = MoveKind.Reel, Duration = 1, ReelShare = 2 },
            new() { Kind = MoveKind.Pause, Duration = 1.5 },
            new() { Kind = MoveKind.Lift, Duration = 2, ReelShare = 0.5, Up = 1 },
            new() { Kind = MoveKind.Sweep, Duration = 1, Left = -0.5 },
            new() { Kind = MoveKind.Sweep, Duration = 1, Out = -0.4 },
            new() { Kind = MoveKind.Lower, Duration = 1, Up = -0.25 },
            new() { Kind = MoveKind.Twitch, Duration = 3 * 0.4, Left = 0.2, Beats = 3 },
            new() { Kind = MoveKind.Feed, Duration = 3, FeedSpeed = 0.3 },
            new() { Kind = MoveKind.Lower, Duration = 1, Up = -0.75 },
            new() { Kind = MoveKind.Return, Duration = 2, Left = 0.5, Out = 0.4, Up = -0.0 },
        ];
        Assert.Equal(expected.Length, p.Moves.Count);
        for (int i = 0; i < expected.Length; i++)
            Assert.Equal(expected[i], p.Moves[i]);
    }

    [Fact]
    public void Every_style_can_be_named_alone_but_for_its_count_down()
    {
        foreach (RetrieveStyle style in RetrieveStyle.All)
        {
            Presentation p = Read($"    style: \"{style.Name}\"\n" + (style.CountDown is null ? "    count_down: 1 s\n" : ""));
            Assert.Equal(style.Name, p.Style);
            Assert.NotEmpty(p.Moves);
            Assert.Equal(style.Name == "swing", p.RetrieveSpeed == 0);
        }
    }

    [Fact]
    public void A_style_takes_the_scenarios_own_figures()
    {
        Presentation p = Read("    style: \"twitch, twitch, pause\"\n    count_down: 2 s\n    fall: tight line\n    retrieve: {speed: 1.2 m/s}\n    pause: {every: 2 s, for: 3 s}\n    twitch: {count: 3, height: 0.4 m, period: 0.6 s}\n");
        Assert.Equal(FallMode.TightLine, p.Fall);
        Assert.Equal(1.2, p.RetrieveSpeed);
        Assert.Equal([2, 1.8, 3], p.Moves.Select(move => Math.Round(move.Duration, 12)));
        Assert.Equal(3, p.Moves[1].Beats);
        Assert.Equal(0.4, p.Moves[1].Up);

        // Speeds of single moves go with the one of the retrieve.
        Presentation usual = Read("    style: slow lift\n"), fast = Read("    style: slow lift\n    retrieve: {speed: 1 m/s}\n");
        Assert.Equal(usual.Moves.Select(move => move.ReelShare), fast.Moves.Select(move => move.ReelShare));
        Assert.Equal(2, fast.RetrieveSpeed / usual.RetrieveSpeed, 1e-12);
    }

    [Fact]
    public void A_swing_reels_only_when_asked()
    {
        Assert.Equal(0, Read("    style: swing\n").RetrieveSpeed);
        Presentation slow = Read("    style: swing\n    retrieve: {speed: 0.1 m/s}\n");
        Assert.Equal(0.1, slow.Moves[0].ReelShare * slow.RetrieveSpeed, 1e-12);
        Presentation after = Read("    count_down: 0 s\n    moves:\n      - swing: 60 s\n      - reel: {speed: 0.5 m/s}\n");
        Assert.Equal(0, after.Moves[0].ReelShare);
        Assert.Equal(0.5, after.Moves[1].ReelShare * after.RetrieveSpeed);
        Assert.False(after.Repeats);
    }

    [Theory]
    [InlineData("    count_down: 1 s\n", "presentations[0].retrieve", "missing")]
    [InlineData("    retrieve: {speed: 1 m/s}\n", "presentations[0].count_down", "missing")]
    [InlineData("    style: stedy\n    count_down: 1 s\n", "presentations[0].style", "unknown word")]
    [InlineData("    style: steady\n", "presentations[0].count_down", "missing")]
    [InlineData("    style: swing\n    moves:\n      - pause: 1 s\n", "presentations[0].moves", "own moves")]
    [InlineData("    style: swing\n    pause: {every: 1 s, for: 1 s}\n", "presentations[0].pause", "no rests")]
    [InlineData("    style: stop and go\n    count_down: 1 s\n    twitch: {count: 1, height: 1 ft}\n", "presentations[0].twitch", "no twitches")]
    [InlineData("    count_down: 1 s\n    moves:\n      - reel: {for: 1 s}\n", "presentations[0].retrieve", "missing")]
    [InlineData("    count_down: 1 s\n    moves:\n      - reel: {speed: 1 m/s}\n      - pause: 1 s\n", "presentations[0].moves[0].reel", "nothing can follow")]
    [InlineData("    count_down: 1 s\n    moves:\n      - reel: {for: 1 s, speed: 1 m/s, handle_turns: 1 turns/s}\n", "presentations[0].moves[0].reel.handle_turns", "given as well")]
    [InlineData("    count_down: 1 s\n    moves:\n      - reel: {for: 1 s, handle_turns: 5 turns/s}\n", "presentations[0].moves[0].reel.handle_turns", "with this reel")]
    [InlineData("    count_down: 1 s\n    moves:\n      - pause: 1 s\n", "presentations[0].moves", "no end")]
    [InlineData("    count_down: 1 s\n    moves:\n      - reel: {for: 1 s, speed: 1 m/s}\n      - lift: {height: 1 m, time: 1 s}\n", "presentations[0].moves[1].lift", "repeat")]
    [InlineData("    count_down: 1 s\n    moves:\n      - lower: {height: 2 m, time: 1 s, reel: 1 m/s}\n      - return: {time: 1 s}\n", "presentations[0].moves[0].lower", "dip into the water")]
    [InlineData("    count_down: 1 s\n    moves:\n      - lift: {height: 2.5 m, time: 0.1 s, reel: 1 m/s}\n      - return: {time: 1 s}\n", "presentations[0].moves[0].lift", "would move at")]
    [InlineData(
        "    count_down: 1 s\n    moves:\n      - lift: {height: 2.5 m, time: 2 s, reel: 1 m/s}\n      - lift: {height: 2.5 m, time: 2 s}\n      - return: {time: 1 s}\n",
        "presentations[0].moves[1].lift", "from where it was")]
    [InlineData("    count_down: 1 s\n    moves:\n      - {pause: 1 s, reel: {}}\n", "presentations[0].moves[0]", "given as well")]
    [InlineData("    count_down: 1 s\n    retrieve: {speed: 1 m/s}\n    moves:\n      - reel: {for: 1 s}\n    twitch: {count: 1, height: 1 ft}\n", "presentations[0].twitch", "moves are given")]
    [InlineData("    count_down: 1 s\n    retrieve: {speed: 1 m/s}\n    drift: {speed: 1 m/s}\n", "presentations[0].drift.direction", "missing")]
    public void A_mistake_has_one_problem(string keys, string key, string message)
    {
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(Head + keys));
        Assert.StartsWith(key, problem.Key, StringComparison.Ordinal);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_cast_fits_on_the_spool()
    {
        string text = TestScenario.With("spool_diameter: 45 mm", "spool_diameter: 45 mm, line_capacity: 20 m").Replace("cast: 60 ft", "cast: 40 m", StringComparison.Ordinal);
        Assert.All(TestScenario.Problems(text), problem => Assert.Equal("tackle.reel.line_capacity", problem.Key));
        Assert.Equal(80, TestScenario.Read(TestScenario.With("spool_diameter: 45 mm", "spool_diameter: 45 mm, line_capacity: 80 m")).Tackle.Reel.LineCapacity);
    }

    [Fact]
    public void Directions_seen_along_a_cast_turn_with_it()
    {
        Spot spot = TestScenario.Read(TestScenario.Text).Spot;
        Spot seen = spot.SeenAlong(Math.PI / 2);
        Assert.Equal(0, seen.CurrentDirection, 1e-12);
        Assert.Equal(0.75 * Math.PI, seen.WindDirection, 1e-12);
        Assert.InRange(spot.SeenAlong(5).CurrentDirection, 0, 2 * Math.PI);
    }
}
