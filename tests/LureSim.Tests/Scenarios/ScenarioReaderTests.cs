using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

public class ScenarioReaderTests
{
    private const double Foot = 0.3048;

    [Theory]
    [InlineData("moves: [[1 s]]", "such as \"reel: {for: 4 s}\"")]
    [InlineData("moves: [{reel: [1 s]}]", "such as \"for: 4 s\"")]
    public void What_is_no_mapping_is_shown_its_first_key(string moves, string shown)
    {
        string text = TestScenario.With("    count_down: to bottom\n", "    count_down: to bottom\n    " + moves + "\n");
        Assert.Contains(TestScenario.Problems(text), problem => problem.Fix.Contains(shown, StringComparison.Ordinal));
    }

    [Fact]
    public void A_full_scenario_becomes_records_in_SI()
    {
        Scenario scenario = TestScenario.Read(TestScenario.Text);
        Assert.Equal("Test channel", scenario.Title);
        Assert.Equal("Two lines\nof notes.", scenario.Notes);

        Spot spot = scenario.Spot;
        Assert.Equal(12 * Foot, spot.Depth, 1e-12);
        Assert.Equal(BottomKind.Shell, spot.Bottom);
        Assert.Equal(Foot, spot.GrassHeight, 1e-12);
        Assert.Equal(1852.0 / 3600.0, spot.CurrentSpeed, 1e-12);
        Assert.Equal(Math.PI / 2.0, spot.CurrentDirection, 1e-12);
        Assert.Equal(CurrentProfileKind.Logarithmic, spot.CurrentProfile);
        Assert.Equal(8 * 1852.0 / 3600.0, spot.WindSpeed, 1e-12);
        Assert.Equal(1.25 * Math.PI, spot.WindDirection, 1e-12);
        Assert.Equal(24.0, spot.Salinity);
        Assert.Equal(20.0, spot.TemperatureCelsius, 1e-12);
        SecchiClarity clarity = Assert.IsType<SecchiClarity>(spot.Clarity);
        Assert.Equal(6 * Foot, clarity.Depth, 1e-12);
        Assert.Equal(WaterKind.CoastalGreen, clarity.Kind);
        Assert.Equal(40.0 * Math.PI / 180.0, Assert.IsType<SkyByElevation>(spot.Sky).SunElevation, 1e-12);
        Assert.Equal(0.3, spot.CloudCover, 1e-12);
        Assert.Equal(8 * Foot, spot.StrikeZone.Top, 1e-12);
        Assert.Equal(11 * Foot, spot.StrikeZone.Bottom, 1e-12);
        Assert.Equal("red drum", spot.TargetFish);

        TackleBox tackle = scenario.Tackle;
        Assert.Equal(4 * Foot, tackle.RodTipHeight, 1e-12);
        Assert.Equal(6.2 * Math.PI * 0.045, tackle.Reel.LinePerTurn, 1e-12);
        Assert.Equal(LineKind.Braid, tackle.Line.Kind);
        Assert.Equal(44.482216152605, tackle.Line.Strength, 1e-9);
        Assert.Equal(0.00018, tackle.Line.Diameter, 1e-12); // The table's row for 10 lb.
        Assert.Equal(0.0004, tackle.Leader!.Diameter, 1e-12);
        Assert.Equal(30 * 0.0254, tackle.Leader.Length, 1e-12);
        Assert.Equal(["unweighted", "1/8 oz", "1/4 oz tungsten"], tackle.JigHeads.Select(head => head.Label));
        Assert.Equal([0.0, 0.45359237 / 128.0, 0.45359237 / 64.0], tackle.JigHeads.Select(head => head.Mass), (a, b) => Math.Abs(a - b) < 1e-15);
        Assert.Equal(HeadMetal.Tungsten, tackle.JigHeads[2].Metal);
        Assert.Equal(0.0012, tackle.JigHeads[2].HookMass, 1e-15);
        Assert.Equal(HookWire.CommonMass(0.0889), tackle.JigHeads[0].HookMass, 1e-15);
        Assert.Equal("3.5 in paddle tail", tackle.Bodies[0].Label);
        Assert.Equal(0.2 * 0.0889, tackle.Bodies[0].Height, 1e-12);
        Assert.Equal(0.14 * 0.0889, tackle.Bodies[0].Width, 1e-12);
        Assert.Equal((BodyProfile.SoftJerkbait, "plain stick"), (tackle.Bodies[1].Profile, tackle.Bodies[1].Label));
        Assert.Equal([0.127, 0.016, 0.013, 1100.0], [tackle.Bodies[1].Length, tackle.Bodies[1].Height, tackle.Bodies[1].Width, tackle.Bodies[1].Density], (a, b) => Math.Abs(a - b) < 1e-12);
        Assert.Equal(["white", "dark purple", "#7fff00"], tackle.Colours);

        Presentation steady = scenario.Presentations[0];
        Assert.Null(steady.CountDown);
        Assert.Equal(FallMode.SlackLine, steady.Fall);
        Assert.Equal(0.4, steady.RetrieveSpeed);
        Assert.Equal([Move.ReelIn], steady.Moves);
        Assert.Equal(3.0, steady.LineLeftAtEnd);
        Presentation hop = scenario.Presentations[1];
        Assert.Equal(FallMode.TightLine, hop.Fall);
        Assert.Equal(4.0, hop.CountDown);
        Assert.Equal(0.5 * 6.2 * Math.PI * 0.045, hop.RetrieveSpeed, 1e-12);
        Assert.Equal(Move.StopAndGo(3.0, 2.0, 2, Foot, 0.6), hop.Moves);
        Assert.Equal([MoveKind.Reel, MoveKind.Twitch, MoveKind.Pause], hop.Moves.Select(move => move.Kind));
        Assert.Equal([3.0, 1.2, 0.8], hop.Moves.Select(move => Math.Round(move.Duration, 12)));
        Assert.Equal(4.0, hop.LineLeftAtEnd);
    }

    [Fact]
    public void What_is_left_out_takes_its_documented_default()
    {
        string text = TestScenario.Text;
        foreach (string line in (string[])["notes: |", "  Two lines", "  of notes.", "  bottom: shell", "  grass_height: 1 ft", "  wind: {speed: 8 kn, direction: 225 deg}", "  current: {speed: 1 kn, direction: left, profile: log}", "  leader: {kind: fluorocarbon, strength: 20 lb, length: 30 in, diameter: 0.4 mm}"])
            text = text.Replace(line + "\n", "", StringComparison.Ordinal);
        Scenario scenario = TestScenario.Read(text.Replace(", cloud: 30 %", "", StringComparison.Ordinal));
        Assert.Equal("", scenario.Notes);
        Assert.Equal(BottomKind.Sand, scenario.Spot.Bottom);
        Assert.Equal(0.0, scenario.Spot.GrassHeight);
        Assert.Equal(0.0, scenario.Spot.CurrentSpeed);
        Assert.Equal(0.0, scenario.Spot.WindSpeed);
        Assert.Equal(0.0, scenario.Spot.CloudCover);
        Assert.Null(scenario.Tackle.Leader);
    }

    [Theory]
    [InlineData("away", 0.0)]
    [InlineData("left", 90.0)]
    [InlineData("towards", 180.0)]
    [InlineData("right", 270.0)]
    [InlineData("0 deg", 0.0)]
    [InlineData("360 deg", 360.0)]
    public void A_direction_is_a_word_or_an_angle(string text, double degrees) =>
        Assert.Equal(degrees * Math.PI / 180.0, TestScenario.Read(TestScenario.With("direction: left", "direction: " + text)).Spot.CurrentDirection, 1e-12);

    [Fact]
    public void A_gear_ratio_may_be_written_as_a_ratio() =>
        Assert.Equal(6.2, TestScenario.Read(TestScenario.With("gear_ratio: 6.2", "gear_ratio: 6.2:1")).Tackle.Reel.GearRatio);

    [Fact]
    public void A_high_rod_tip_leaves_more_line_at_the_end() =>
        Assert.Equal(5.5, TestScenario.Read(TestScenario.With("rod_tip_height: 4 ft", "rod_tip_height: 5 m").Replace("line_left: 4 m", "line_left: 6 m", StringComparison.Ordinal)).Presentations[0].LineLeftAtEnd);

    [Fact]
    public void A_strike_zone_may_be_given_by_depth()
    {
        StrikeZone zone = TestScenario.Read(TestScenario.With("above_bottom: [1 ft, 4 ft]", "depth: [2 ft, 12 ft]")).Spot.StrikeZone;
        Assert.Equal(2 * Foot, zone.Top, 1e-12);
        Assert.Equal(12 * Foot, zone.Bottom, 1e-12);
    }

    [Theory]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Other_line_ends_read_the_same(string lineEnd) =>
        Assert.Equal(TestScenario.Read(TestScenario.Text).Spot, TestScenario.Read(TestScenario.Text.Replace("\n", lineEnd, StringComparison.Ordinal)).Spot);

    [Fact]
    public void Every_problem_is_reported_in_one_go_sorted_by_line()
    {
        string text = TestScenario.Text
            .Replace("depth: 12 ft", "depth: 12", StringComparison.Ordinal)
            .Replace("salinity: 24 ppt", "salinty: 24 ppt", StringComparison.Ordinal)
            .Replace("kind: braid", "kind: brade", StringComparison.Ordinal)
            .Replace("count: 2", "count: two", StringComparison.Ordinal);
        IReadOnlyList<ScenarioProblem> problems = TestScenario.Problems(text);
        Assert.Equal(
            [
                (6, "spot.depth"),
                (11, "spot.salinty"),
                (21, "tackle.line.kind"),
                (42, "presentations[1].twitch.count"),
            ],
            problems.Select(problem => (problem.Line, problem.Key)));
        Assert.Equal(10, problems[0].Column);
        Assert.Equal("write \"salinity\"", problems[1].Fix);
        Assert.Equal("write \"braid\"", problems[2].Fix);
    }

    [Fact]
    public void A_problem_prints_as_file_line_column_key()
    {
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(TestScenario.With("depth: 12 ft", "depth: -12 ft")));
        Assert.Equal(
            "test.yaml:6:10: spot.depth: the value is too small (-12 ft); allowed: a length with a unit (m, cm, mm, ft, in, yd), 0.2 m to 60 m (about 8 in to 200 ft); fix: write a value of 0.2 m to 60 m (about 8 in to 200 ft)",
            problem.ToString());
    }

    [Fact]
    public void Terminal_escapes_do_not_reach_the_problem()
    {
        ScenarioProblem problem = TestScenario.Problems(TestScenario.With("bottom: shell", "\"bot\\e[31mtom\": \"\\e[2J\""))[0];
        Assert.DoesNotContain('\u001b', problem.ToString());
    }

    [Fact]
    public void A_file_with_a_byte_order_mark_is_read()
    {
        using var folder = new TemporaryFolder();
        string path = folder.Write("a.yaml", [0xef, 0xbb, 0xbf, .. System.Text.Encoding.UTF8.GetBytes(TestScenario.Text)]);
        Assert.True(ScenarioReader.Read(path).IsValid);
    }

    [Fact]
    public void Files_that_are_no_scenarios_are_problems()
    {
        using var folder = new TemporaryFolder();
        var random = new Random(1);
        byte[] binary = new byte[4096];
        random.NextBytes(binary);
        (string Path, string Message)[] cases =
        [
            (Path.Combine(folder.Path, "missing.yaml"), "no such file"),
            (Path.Combine(folder.Path, "missing", "a.yaml"), "no such file"),
            (folder.Path, "directory"),
            ("", "cannot be read"),
            ("a\0b", "cannot be read"),
            (folder.Write("binary.yaml", binary), "not UTF-8"),
            (folder.Write("latin.yaml", [.. "title: a\nnotes: "u8, 0xe9, (byte)'\n']), "not UTF-8"),
            (folder.Write("zero.yaml", new byte[100]), "control character 0"),
            (folder.Write("huge.yaml", new byte[1_000_001]), "larger than 1 MB"),
            (folder.Write("empty.yaml", []), "empty"),
        ];
        foreach ((string path, string message) in cases)
        {
            ScenarioReading reading = ScenarioReader.Read(path);
            Assert.Null(reading.Scenario);
            ScenarioProblem problem = Assert.Single(reading.Problems);
            Assert.Contains(message, problem.Message, StringComparison.Ordinal);
            Assert.True(problem.Line >= 1 && problem.Fix.Length > 0);
            Assert.Equal(path, problem.File);
        }

        Assert.Equal(2, ScenarioReader.Read(Path.Combine(folder.Path, "latin.yaml")).Problems[0].Line);
    }

    [Fact]
    public void A_device_without_end_is_refused() =>
        Assert.True(!File.Exists("/dev/zero") || ScenarioReader.Read("/dev/zero").Problems.Single().Message.Contains("1 MB", StringComparison.Ordinal));

    [Fact]
    public void A_file_that_may_not_be_read_is_a_problem()
    {
        // The superuser may read everything, and Windows has no such mode.
        if (OperatingSystem.IsWindows() || Environment.UserName == "root")
            return;
        using var folder = new TemporaryFolder();
        string path = folder.Write("secret.yaml", "title: a"u8.ToArray());
        File.SetUnixFileMode(path, UnixFileMode.None);
        Assert.Contains("cannot be read", ScenarioReader.Read(path).Problems.Single().Message, StringComparison.Ordinal);
    }
}
