using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

public sealed class ObservationInputTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    private static string With(string seen) => TestScenario.Text.TrimEnd() + "\nseen:\n  - " + seen + "\n";

    private static Observation Read(string seen) => Assert.Single(TestScenario.Read(With(seen)).Seen);

    [Fact]
    public void What_was_seen_is_read_in_SI_with_its_lure_and_its_cast()
    {
        Scenario plain = TestScenario.Read(TestScenario.Text);
        Observation fall = Read("{jig_head: 1/8 oz, bottom: 6 s, cast: 15 m, fall: tight line, plus_or_minus: 20 %, date: 2026-06-14, note: by a watch}");
        Assert.Equal((ObservationKind.BottomTime, 6.0, true, false), (fall.Kind, fall.Value, fall.Happened, fall.Counted));
        Assert.Equal(plain.Tackle.JigHeads.First(head => head.Label == "1/8 oz"), fall.Head);
        Assert.Equal((15.0, FallMode.TightLine), (fall.Way!.CastLength, fall.Way.Fall));
        Assert.Equal(1.2 / 1.6448536269514722, fall.Error!.Value, 1e-9);
        Assert.Equal((new DateOnly(2026, 6, 14), "by a watch"), (fall.Date!.Value, fall.Note));
        Assert.True(Read("{jig_head: 1/8 oz, bottom_count: 9, happened: no}") is { Counted: true, Happened: false, Value: 9 });
        Assert.Equal(-0.3490658504, Read("{jig_head: 1/8 oz, line_angle: 20 deg, side: right}").Value, 1e-9);
        Observation pool = Read("{jig_head: 1/8 oz, pool: {depth: 6 ft, time: 3.5 s}}");
        Assert.Equal((ObservationKind.PoolFall, 3.5, 1.8288, 20.0, 0.0), (pool.Kind, pool.Value, Math.Round(pool.Length!.Value, 6), pool.TemperatureCelsius, pool.Salinity));
        Observation drift = Read("{float: {distance: 10 m, time: 20 s}}");
        Assert.True(drift is { Kind: ObservationKind.FloatDrift, Value: 20, Length: 10, Head: null, Body: null });
        Assert.Empty(plain.Seen);
    }

    [Theory]
    [InlineData("{jig_head: 5/8 oz, bottom: 6 s}", "no head of this weight in your box", "write a weight of your box")]
    [InlineData("{bottom: 6 s}", "the weight that was fished is missing", "add for example")]
    [InlineData("{jig_head: 1/8 oz, bait: big worm, bottom: 6 s}", "this bait is not in your box", "")]
    [InlineData("{jig_head: 1/8 oz, bottom: 0.4 s}", "so fast", "correct the time or the depth")]
    [InlineData("{jig_head: 1/8 oz, bottom: -3 s}", "the value is too small", "")]
    [InlineData("{jig_head: 1/8 oz, bottom: 6}", "the number has no unit", "")]
    [InlineData("{jig_head: 1/8 oz, bottom: 6 s, bottom_count: 6}", "is given as well", "remove one of the two")]
    [InlineData("{jig_head: 1/8 oz}", "is missing", "")]
    [InlineData("{jig_head: 1/8 oz, bottom: 6 s, spot: Some other place}", "observed at another spot", "move the observation")]
    [InlineData("{jig_head: 1/8 oz, line_angle: 20 deg}", "to which side", "add side")]
    [InlineData("{jig_head: 1/8 oz, line_angle: 120 deg, side: left}", "the value is too large", "")]
    [InlineData("{jig_head: 1/8 oz, bottom: 6 s, side: left}", "no angle that could have a side", "remove side")]
    [InlineData("{jig_head: 1/8 oz, line_angle: 20 deg, side: left, happened: no}", "can have failed to happen", "remove happened")]
    [InlineData("{jig_head: 1/8 oz, plate_gone: 1 m}", "needs no lure", "remove it")]
    [InlineData("{plate_gone: 30 m}", "it would have lain on the bottom", "")]
    [InlineData("{float: {distance: 100 m, time: 2 s}}", "that would be a current of", "correct the distance or the time")]
    [InlineData("{jig_head: 1/8 oz, pool: {depth: 10 m, time: 0.3 s}}", "nothing falls so fast", "")]
    [InlineData("{jig_head: 1/8 oz, turns_to_tick: 400}", "more line than the cast has out", "correct the turns")]
    [InlineData("{jig_head: 1/8 oz, line_out: 1 m}", "more line out than the water is deep", "")]
    [InlineData("{jig_head: 1/8 oz, bottom: 6 s, presentation: nowhere}", "there is no presentation of this name", "")]
    public void What_cannot_be_is_refused_with_its_place_and_a_way_out(string seen, string message, string fix)
    {
        ScenarioReading reading = ScenarioReader.ReadText(With(seen), "spot.yaml");
        Assert.Null(reading.Scenario);
        ScenarioProblem problem = Assert.Single(reading.Problems);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.Contains(fix, problem.Fix, StringComparison.Ordinal);
        Assert.StartsWith("seen[0]", problem.Key, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_example_of_a_note_is_understood_and_read_back()
    {
        foreach (string note in QuickObservation.Examples)
        {
            QuickReading reading = QuickObservation.Read(note);
            Assert.True(reading.IsValid, note);
            string text = QuickObservation.Append(TestScenario.Text, reading.Item.Replace("1/4 oz", "1/8 oz", StringComparison.Ordinal).Replace("3/8 oz", "1/8 oz", StringComparison.Ordinal))!;
            ScenarioReading read = ScenarioReader.ReadText(text, "spot.yaml");
            Assert.True(read.IsValid, $"{note}: {string.Join("; ", read.Problems)}");
            Assert.StartsWith(TestScenario.Text.TrimEnd(), text, StringComparison.Ordinal);
        }

        Assert.Equal("{jig_head: 1/4 oz, bottom_count: 9, date: 2026-06-14}", QuickObservation.Read("  1/4 oz   bottom at 9 ", new DateOnly(2026, 6, 14)).Item);
        foreach (string? wrong in (string?[])[null, "", "hello", "1/4 oz bottom at", "1/4 oz bottom at 9; rm", new string('9', 500), "}{", "bottom: 3"])
        {
            QuickReading reading = QuickObservation.Read(wrong);
            Assert.False(reading.IsValid);
            Assert.NotEmpty(reading.Message);
        }
    }

    [Fact]
    public void A_note_goes_to_the_end_of_the_list_and_nothing_else_changes()
    {
        string before = With("{jig_head: 1/8 oz, bottom: 6 s}   # by a watch") + "season: summer\n";
        string after = QuickObservation.Append(before, "{plate_gone: 1 m}")!;
        Assert.Equal(before.Replace("# by a watch\n", "# by a watch\n  - {plate_gone: 1 m}\n", StringComparison.Ordinal), after);
        Assert.Null(QuickObservation.Append(TestScenario.Text + "\nseen: [{plate_gone: 1 m}]\n", "{plate_gone: 1 m}"));
        Assert.Contains("\r\n  - {plate_gone: 1 m}\r\n", QuickObservation.Append("title: a\r\nseen:\r\n  - {plate_gone: 2 m}\r\n", "{plate_gone: 1 m}"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_tackle_file_is_written_read_and_included()
    {
        var lures = new LureNumbers[] { new("it's a bait: no. 1", new MeasuredDrag(1.25, 0.08) { Date = new DateOnly(2026, 6, 14), How = "three falls" }), new("plain", new MeasuredDrag(0.9, 0.1)) };
        TackleFileReading back = TackleFile.ReadText(TackleFile.Text(lures), "my-box.yaml");
        Assert.Empty(back.Problems);
        Assert.Equal(lures, back.Lures);
        Scenario plain = TestScenario.Read(TestScenario.Text);
        string label = plain.Tackle.Bodies[0].Label;
        folder.Write("my-box.yaml", TackleFile.Text([new LureNumbers(label, new MeasuredDrag(1.4, 0.1))]));
        string scenario = folder.Write("spot.yaml", TestScenario.Text.Replace("tackle:\n", "tackle:\n  include: my-box.yaml\n", StringComparison.Ordinal));
        ScenarioReading reading = ScenarioReader.Read(scenario);
        Assert.True(reading.IsValid, string.Join("; ", reading.Problems));
        Assert.Equal(1.4, reading.Scenario!.Tackle.Bodies[0].Drag!.Factor);
    }

    [Theory]
    [InlineData(null, "there is no such file")]
    [InlineData("lures: []", "the list has 0 items")]
    [InlineData("lures:\n  - {bait: a, drag: 40, plus_or_minus: 5 %}", "too large")]
    [InlineData("lures:\n  - {bait: nobody's, drag: 1.2, plus_or_minus: 5 %}", "holds nothing of the bodies here")]
    [InlineData("lures:\n  - {bait: a, drag: 1, plus_or_minus: 5 %}\n  - {bait: a, drag: 2, plus_or_minus: 5 %}", "in the file already")]
    [InlineData("{{{", "")]
    public void A_tackle_file_that_will_not_do_is_refused_at_the_key_that_names_it(string? text, string message)
    {
        if (text is not null) folder.Write("my-box.yaml", text);
        string scenario = folder.Write("spot.yaml", TestScenario.Text.Replace("tackle:\n", "tackle:\n  include: my-box.yaml\n", StringComparison.Ordinal));
        ScenarioReading reading = ScenarioReader.Read(scenario);
        Assert.Null(reading.Scenario);
        Assert.Contains(reading.Problems, problem => problem.Key == "tackle.include" && problem.Message.Contains(message, StringComparison.Ordinal) && problem.Fix.Length > 0);
    }
}
