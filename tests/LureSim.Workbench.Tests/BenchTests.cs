using CsCheck;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
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
        Candidate command = new LureSim.Cli.Pipeline().Path(ScenarioReader.Read(Path.Combine(Folder, name)).Scenario!, question.First.Rig, CancellationToken.None);
        Assert.Equal(command.Coverage, page.Coverage);
        Assert.Equal(command.Track.Z, page.Track.Z);
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

    [Fact]
    public void The_address_is_read_as_it_is_written()
    {
        BenchSettings settings = BenchSettings.None.With("cur", "0.8 kn").With("way", "a & b = c, 100 %").With("w", "3/8 oz");
        Assert.Equal(settings.ToString(), BenchSettings.Parse(settings.ToString()).ToString());
        Assert.Equal(settings.Values, BenchSettings.Parse(settings.ToString()).Values);
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
