using CsCheck;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Workbench.Bench;
using LureSim.Workbench.Pictures;

namespace LureSim.Workbench.Tests;

/// <summary>Knobs, the question that they ask, and the file that it becomes.</summary>
public class BenchTests
{
    public static TheoryData<string> Scenarios => [.. Directory.GetFiles(Folder, "*.yaml").Select(file => Path.GetFileName(file)!)];

    private static string Folder => Path.Combine(Root, "scenarios");

    private static string Root
    {
        get
        {
            DirectoryInfo? folder = new(AppContext.BaseDirectory);
            while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LureSim.sln"))) folder = folder.Parent;
            return folder!.FullName;
        }
    }

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void Untouched_knobs_ask_what_the_file_asks(string name)
    {
        WorkBench bench = Read(name);
        BenchQuestion question = bench.Ask(BenchSettings.None);
        Assert.Empty(question.Problems);
        Assert.Equal(Told(bench.Scenario), Told(question.Scenario));
        Assert.All(question.Knobs, knob => Assert.InRange(knob.FromFile, 0, knob.Stops.Count - 1));
    }

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void Both_ends_of_every_knob_are_a_valid_scenario(string name)
    {
        WorkBench bench = Read(name);
        foreach (Knob knob in bench.Ask(BenchSettings.None).Knobs)
        {
            foreach (KnobStop stop in (KnobStop[])[knob.Stops[0], knob.Stops[^1]])
            {
                BenchQuestion question = bench.Ask(BenchSettings.None.With(knob.Id, stop.Value));
                Assert.True(question.Problems.Count == 0, $"{knob.Name}, {stop.Value}: {string.Join("; ", question.Problems.Select(p => p.Message))}");
                Assert.NotEmpty(stop.Label);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void A_saved_file_is_read_again_as_what_was_shown(string name)
    {
        WorkBench bench = Read(name);
        IReadOnlyList<Knob> knobs = bench.Ask(BenchSettings.None).Knobs;
        Gen.Int[0, 1000].List[knobs.Count].Sample(picks =>
        {
            BenchSettings settings = BenchSettings.None;
            for (int i = 0; i < knobs.Count; i++)
            {
                // About half of the knobs are turned, the retrieve among them.
                if (picks[i] % 2 == 0) settings = settings.With(knobs[i].Id, knobs[i].Stops[picks[i] % knobs[i].Stops.Count].Value);
            }

            BenchQuestion question = bench.Ask(settings);
            string file = bench.FileOf(question, "saved");
            ScenarioReading reading = ScenarioReader.ReadText(file, bench.Path);
            Assert.True(reading.IsValid == (question.Problems.Count == 0), string.Join("; ", reading.Problems.Select(p => p.Message)));
            if (!reading.IsValid) return;
            Assert.Equal(Told(question.Scenario), Told(reading.Scenario!));
            BenchQuestion again = new WorkBench(file, bench.Path, reading.Scenario!, UnitSystem.Us) is var opened ? opened.Ask(opened.Opened) : throw new InvalidOperationException();
            Assert.Equal(question.First.Rig.ToString(), again.First.Rig.ToString());
            Assert.Equal(question.First.Name, again.First.Name);
        }, iter: 12, threads: 1);
    }

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void The_page_computes_what_the_commands_compute(string name)
    {
        WorkBench bench = Read(name);
        var pictures = new PicturePart(bench);
        pictures.Begin(CancellationToken.None);
        BenchQuestion question = bench.Ask(BenchSettings.None);
        Candidate page = pictures.FineRun(question, question.Focus, CancellationToken.None);
        Candidate command = Trial.Run(ScenarioReader.Read(Path.Combine(Folder, name)).Scenario!, question.First.Rig, new Motion.SimulationOptions(), CancellationToken.None);
        Assert.Equal(command.Coverage, page.Coverage);
        Assert.Equal(command.Track.Z, page.Track.Z);
    }

    // In proportion to the first rest the other would last for hours, and to the first lift the other would take them.
    [Fact]
    public void Moves_of_very_unlike_size_have_knobs_that_a_scenario_can_say()
    {
        string text = File.ReadAllText(Path.Combine(Folder, "bridge-channel.yaml"));
        text = text[..text.IndexOf("presentations:", StringComparison.Ordinal)] + """
            presentations:
              - name: short and long
                cast: 20 m
                fall: tight line
                count_down: 4 s
                retrieve: {speed: 0.5 m/s}
                moves:
                  - lift: {height: 1 cm, time: 0.1 s}
                  - pause: 0.1 s
                  - lower: {height: 1 cm, time: 0.1 s}
                  - lift: {height: 1 m, time: 60 s}
                  - lower: {height: 1 m, time: 60 s}
                  - pause: 60 s
                  - reel: {for: 10 s}

            """;
        ScenarioReading reading = ScenarioReader.ReadText(text, "unlike.yaml");
        Assert.True(reading.IsValid, string.Join("; ", reading.Problems.Select(p => p.Message)));
        var bench = new WorkBench(text, "unlike.yaml", reading.Scenario!, UnitSystem.Us);
        foreach (Knob knob in bench.Ask(BenchSettings.None).Knobs.Where(knob => knob.Id is KnobIds.Lift or KnobIds.Rest))
        {
            foreach (KnobStop stop in knob.Stops)
                Assert.Empty(bench.Ask(BenchSettings.None.With(knob.Id, stop.Value)).Problems);
        }
    }

    [Fact]
    public void What_the_file_has_is_no_setting()
    {
        WorkBench bench = Read("bridge-channel.yaml");
        BenchQuestion question = bench.Ask(BenchSettings.None.With(KnobIds.Current, "1 kn").With(KnobIds.Depth, "18 ft").With(KnobIds.Cast, "70 ft"));
        Assert.Null(question.Settings[KnobIds.Current]);
        Assert.Null(question.Settings[KnobIds.Depth]);
        Assert.Null(question.Settings[KnobIds.Cast]);
    }

    [Fact]
    public void A_zone_above_the_bottom_moves_with_it_and_one_by_depth_stays()
    {
        Spot moved = Read("bridge-channel.yaml").Ask(BenchSettings.None.With(KnobIds.Depth, "30 ft")).Scenario.Spot;
        Assert.Equal(27 * 0.3048, moved.StrikeZone.Top, 3);
        Assert.Equal(30 * 0.3048, moved.StrikeZone.Bottom, 3);
        Spot stays = Read("rigging-lesson.yaml").Ask(BenchSettings.None.With(KnobIds.Depth, "3 ft")).Scenario.Spot;
        Assert.Equal(0.3048, stays.StrikeZone.Top, 3);
        Assert.Equal(3 * 0.3048, stays.StrikeZone.Bottom, 3);
    }

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void Lift_rest_and_angle_change_what_they_say_and_no_more(string name)
    {
        WorkBench bench = Read(name);
        foreach (Presentation own in bench.Scenario.Presentations)
        {
            BenchSettings way = BenchSettings.None.With(KnobIds.Retrieve, own.Name);
            Presentation now = bench.Ask(way.With(KnobIds.Aim, "-20 deg")).First.Rig.Presentation;
            Assert.Equal(-20 * Math.PI / 180, KnobCatalogue.Turned(now.Aim), 6);
            Assert.Equal(own with { Aim = now.Aim }, now);
            if (MovesText.LiftOf(own) is { } lift)
            {
                now = bench.Ask(way.With(KnobIds.Lift, "18 in")).First.Rig.Presentation;
                Assert.Equal(0.4572, MovesText.LiftOf(now)!.Value, 4);
                Assert.Equal(own.Moves.Select(move => move.Kind), now.Moves.Select(move => move.Kind));
                Assert.All(own.Moves.Zip(now.Moves), pair => Assert.Equal(pair.First.Up * 0.4572 / lift, pair.Second.Up, 3));
                Assert.All(own.Moves.Zip(now.Moves).Where(pair => pair.First.Up == 0 && double.IsFinite(pair.First.Duration)), pair => Assert.Equal(pair.First.Duration, pair.Second.Duration, 3));
                Assert.Equal(own with { Moves = now.Moves, RetrieveSpeed = now.RetrieveSpeed, Style = null }, now with { Style = null });
            }

            if (MovesText.RestOf(own) is not null)
            {
                now = bench.Ask(way.With(KnobIds.Rest, "4 s")).First.Rig.Presentation;
                Assert.Equal(4, MovesText.RestOf(now)!.Value, 4);
                Assert.All(own.Moves.Zip(now.Moves), pair => Assert.Equal(pair.First.ReelShare * own.RetrieveSpeed, pair.Second.ReelShare * now.RetrieveSpeed, 3));
            }
        }
    }

    // Every ready-made retrieve written out as moves is the same retrieve.
    [Theory]
    [MemberData(nameof(Styles))]
    public void A_style_written_as_moves_is_the_same_retrieve(string style)
    {
        string text = File.ReadAllText(Path.Combine(Folder, "creek-mouth.yaml"));
        text = text[..text.IndexOf("presentations:", StringComparison.Ordinal)] + $"presentations:\n  - name: one\n    cast: 60 ft\n    count_down: 3 s\n    retrieve: {{speed: 0.4 m/s}}\n    style: \"{style}\"\n";
        Presentation own = ScenarioReader.ReadText(text, "one.yaml").Scenario!.Presentations[0];
        var file = new ScenarioText(text);
        MovesText.Write(file.Presentation(0), own);
        ScenarioReading reading = ScenarioReader.ReadText(file.Text, "one.yaml");
        Assert.True(reading.IsValid, string.Join("; ", reading.Problems.Select(p => p.Message)));
        Presentation again = reading.Scenario!.Presentations[0];
        Assert.Equal(own.RetrieveSpeed, again.RetrieveSpeed, 4);
        Assert.Equal(own with { Moves = again.Moves, Style = null }, again);
        Assert.All(own.Moves.Zip(again.Moves), pair =>
        {
            Assert.Equal(pair.First.Kind, pair.Second.Kind);
            Assert.Equal(pair.First.ReelShare, pair.Second.ReelShare, 3);
            Assert.Equal(pair.First.Up, pair.Second.Up, 4);
            Assert.Equal(pair.First.Duration, pair.Second.Duration, 4);
            Assert.Equal(pair.First.Beats, pair.Second.Beats);
        });
    }

    public static TheoryData<string> Styles => [.. RetrieveStyle.All.Select(style => style.Name)];

    [Fact]
    public void The_address_is_read_as_it_is_written()
    {
        BenchSettings settings = BenchSettings.None.With("cur", "0.8 kn").With("way", "a & b = c, 100 %").With("w", "3/8 oz");
        Assert.Equal(settings.ToString(), BenchSettings.Parse(settings.ToString()).ToString());
        Assert.Equal(settings.Values, BenchSettings.Parse(settings.ToString()).Values);
    }

    // What was noted on the page is in the file, read as the same, and the choice says the same of it.
    [Theory]
    [InlineData("creek-mouth.yaml", "1/4 oz bottom at 6; 1/8 oz no bottom by 12")]
    [InlineData("bridge-channel.yaml", "3/4 oz bottom at 9")]
    [InlineData("pass-edge.yaml", "float 30 ft in 18 s")]
    public void Notes_are_saved_and_opened_as_what_was_seen(string name, string notes)
    {
        WorkBench bench = Read(name);
        foreach (Presentation way in bench.Scenario.Presentations)
        {
            BenchSettings settings = BenchSettings.None.With(KnobIds.Retrieve, way.Name).With(KnobIds.Current, "0.6 kn").With(KnobIds.Seen, notes);
            if (bench.Ask(BenchSettings.None).Knobs.FirstOrDefault(knob => knob.Id == KnobIds.Bait) is { } baits) settings = settings.With(KnobIds.Bait, baits.Stops[^1].Value);
            BenchQuestion question = bench.Ask(settings);
            Assert.Equal(settings.Notes, question.Notes);
            Assert.Equal(bench.Scenario.Seen.Count + settings.Notes.Count, question.Scenario.Seen.Count);
            Assert.All(question.Scenario.Seen.TakeLast(settings.Notes.Count).Where(seen => seen.Body?.NeedsHead == true), seen => Assert.Equal(question.Soft!.Label, seen.Body!.Label));
            string file = bench.FileOf(question, "saved");
            ScenarioReading reading = ScenarioReader.ReadText(file, bench.Path);
            Assert.True(reading.IsValid, string.Join("; ", reading.Problems.Select(p => p.Message)));
            WorkBench opened = new(file, bench.Path, reading.Scenario!, UnitSystem.Us);
            BenchQuestion again = opened.Ask(opened.Opened);
            Assert.Equal(question.Scenario.Seen.Select(seen => seen.ToString()), again.Scenario.Seen.Select(seen => seen.ToString()));
            Assert.Equal(SeenPicture.Noted(new PicturePart(bench), question), SeenPicture.Noted(new PicturePart(opened), again));
            Assert.Empty(again.Notes);
        }
    }

    [Fact]
    public void A_note_that_the_spot_cannot_have_is_left_out_alone()
    {
        WorkBench bench = Read("creek-mouth.yaml");
        BenchQuestion question = bench.Ask(BenchSettings.None.With(KnobIds.Seen, "1/4 oz bottom at 6; 7 oz bottom at 2; nonsense; 1/8 oz bottom at 9"));
        Assert.Equal(["1/4 oz bottom at 6", "1/8 oz bottom at 9"], question.Notes);
        Assert.Empty(question.Problems);
        SeenView view = SeenPicture.Of(new PicturePart(bench), BenchSettings.None.Noting("1/4 oz bottom at 6"), "7 oz bottom at 2", CancellationToken.None);
        Assert.False(view.Taken);
        Assert.NotEmpty(view.Words);
        Assert.Single(view.Noted);
    }

    [Fact]
    public void A_thinned_path_stays_within_its_error() => Gen.Double[0, 100].Array[3, 200].Sample(y =>
    {
        double[] x = [.. Enumerable.Range(0, y.Length).Select(i => (double)i)];
        List<int> kept = PathThinner.Keep(x, y, 0, y.Length - 1, 5);
        for (int i = 0; i < y.Length; i++)
        {
            int k = Math.Max(1, kept.FindIndex(at => at >= i));
            double t = (x[i] - x[kept[k - 1]]) / (x[kept[k]] - x[kept[k - 1]]), there = y[kept[k - 1]] + (t * (y[kept[k]] - y[kept[k - 1]]));

            // The nearest point of the stretch is no farther than the one straight below.
            double slope = (y[kept[k]] - y[kept[k - 1]]) / (x[kept[k]] - x[kept[k - 1]]);
            Assert.True(Math.Abs(y[i] - there) / Math.Sqrt(1 + (slope * slope)) <= 5 + 1e-6 || kept.Contains(i));
        }
    }, iter: 60);

    internal static WorkBench Read(string name) => WorkBench.Read(Path.Combine(Folder, name), UnitSystem.Us, out _)!;

    // Lists are compared item by item in a text: records hold them by reference. A title is not part of the question.
    private static string Told(Scenario scenario) => System.Text.Json.JsonSerializer.Serialize(
        new { scenario.Spot.Depth, scenario.Spot.GrassHeight, scenario.Spot.CurrentSpeed, scenario.Spot.CurrentDirection, scenario.Spot.WindSpeed, scenario.Spot.TemperatureCelsius, Zone = (Math.Round(scenario.Spot.StrikeZone.Top, 9), Math.Round(scenario.Spot.StrikeZone.Bottom, 9)).ToString(), Clarity = scenario.Spot.Clarity.ToString(), Sky = scenario.Spot.Sky.ToString(), Line = scenario.Tackle.Line.ToString(), Rigging = scenario.Tackle.Rigging.ToString(), Heads = scenario.Tackle.JigHeads.Select(head => head.ToString()), Bodies = scenario.Tackle.Bodies.Select(body => body.ToString()), Ways = scenario.Presentations.Select(way => way.ToString() + string.Join(";", way.Moves)), Tide = scenario.Tide.Select(point => point.ToString()) });
}
