using LureSim.Cli;
using LureSim.Decision;
using LureSim.Decision.Inverse;
using LureSim.Decision.Trials;
using LureSim.Fuzz;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Stepping;
using Xunit.Abstractions;

namespace LureSim.Tests.Scenarios;

/// <summary>
/// The least and the greatest value of every key: what the reader takes, the model computes. The scenarios that use every key, on a short cast, have one value
/// changed at a time.
/// </summary>
public class EndsOfRangesTests(ITestOutputHelper log)
{
    // The questions take many runs each: a seeded choice of the ends is asked about with the other tests, all where LURESIM_ALL_ENDS is 1.
    private const int Seed = 20260614;
    private const int ChosenQuestions = 3;

    // No other key can make room for these: grass is lower than the water is deep, and the greatest depth is that of the grammar.
    // What begins at the farthest end of the cast has no room behind it, what ends at the rod none before it, and a bottom above the water is told so by the whole profile.
    private static readonly string[] Never =
    [
        "spot.grass_height, most", "spot.bottom_stretches[].grass_height, most", "spot.bottom_profile.at, most", "spot.bottom_profile.width, least", "spot.bottom_stretches[].from, most", "spot.bottom_stretches[].to, least",
        "spot.bottom_profile.near_depth, least", "spot.bottom_profile.far_depth, least", "spot.bottom_profile.middle_depth, least",
    ];

    [Fact]
    public void The_reader_takes_both_ends_of_every_quantity()
    {
        Dictionary<string, string> refused = [];
        HashSet<string> taken = [];
        foreach (EndsOfRanges.End end in EndsOfRanges.All)
        {
            ScenarioReading reading = ScenarioReader.ReadText(end.Text, "end.yaml");
            if (reading.IsValid)
                taken.Add(end.Key);
            else
                refused[end.Key] = $"{end.Name}: {reading.Problems[0]}";
        }

        IEnumerable<string> missing = QuantitiesOfGrammar().SelectMany(path => (string[])[$"{path}, least", $"{path}, most"]).Where(key => !taken.Contains(key)).Except(Never);
        Assert.True(!missing.Any(), string.Join("\n", missing.Select(key => refused.GetValueOrDefault(key, $"{key} is in no scenario"))));
    }

    [Fact]
    public void A_path_is_computed_for_what_the_reader_takes()
    {
        List<string> wrong = [];
        foreach (EndsOfRanges.End end in EndsOfRanges.All.Where(end => end.IsOfRig))
        {
            if (ScenarioReader.ReadText(end.Text, "end.yaml").Scenario is not { } scenario)
                continue;
            long start = TimeProvider.System.GetTimestamp();
            try
            {
                Candidate candidate = Trial.Run(scenario, end.RigOf(scenario), new SimulationOptions());
                if (!candidate.Track.X.Concat(candidate.Track.Z).All(double.IsFinite))
                    wrong.Add($"{end.Name}: the track holds numbers that are none");
                if (candidate.Track.Status != SimulationStatus.Completed)
                    log.WriteLine($"  {TrackWords.EndOrStatus(candidate.Track)}");
            }
            catch (Exception exception)
            {
                wrong.Add($"{end.Name}: path: {exception.GetType().Name}: {exception.Message} {exception.StackTrace?.Split('\n')[0]}");
            }

            log.WriteLine($"{end.Name}: {TimeProvider.System.GetElapsedTime(start).TotalSeconds:0.00} s");
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    [Fact]
    public void The_count_down_and_the_questions_answer_what_the_reader_takes()
    {
        var random = new Random(Seed);
        EndsOfRanges.End[] ends = [.. EndsOfRanges.All.Where(end => end.IsOfRig)];
        if (Environment.GetEnvironmentVariable("LURESIM_ALL_ENDS") != "1")
        {
            random.Shuffle(ends);
            ends = [.. ends.Take(ChosenQuestions)];
        }

        List<string> wrong = [];
        foreach (EndsOfRanges.End end in ends)
        {
            if (ScenarioReader.ReadText(end.Text, "end.yaml").Scenario is not { } scenario)
                continue;
            long start = TimeProvider.System.GetTimestamp();
            JigHead[] one = [scenario.Tackle.JigHeads[1]];
            Scenario small = scenario with { Tackle = scenario.Tackle with { JigHeads = one } };
            try
            {
                FallTable table = new Pipeline().Fall(small, new Rig(one[0], small.Tackle.Bodies.First(body => body.NeedsHead), small.Presentations[end.Presentation]), UnitSystem.Us, CancellationToken.None);
                if (table.Columns.Any(column => !double.IsFinite(column.TerminalSpeed)))
                    wrong.Add($"{end.Name}: fall: a speed that is none");
                IReadOnlyList<InverseAnswer> answers = new Pipeline().Ask(small, new Rig(one[0], small.Tackle.Bodies.First(body => body.NeedsHead), small.Presentations[end.Presentation]), one, null, new Progress<double>(), CancellationToken.None);
                Assert.All(answers, answer => Assert.NotEmpty(InverseWords.Answer(answer, scenario.Tackle.Reel, new UnitFormat(UnitSystem.Us))));
            }
            catch (Exception exception)
            {
                wrong.Add($"{end.Name}: {exception.GetType().Name}: {exception.Message} {exception.StackTrace?.Split('\n')[0]}");
            }

            log.WriteLine($"{end.Name}: {TimeProvider.System.GetElapsedTime(start).TotalSeconds:0.00} s");
        }

        Assert.True(wrong.Count == 0, string.Join("\n", wrong));
    }

    // The two rigs to compare have the keys of the tackle box; what was seen must fit box, cast and water, whose checks are narrower (ObservationInputTests).
    private static IEnumerable<string> QuantitiesOfGrammar() => ScenarioGrammar.Root.WithParts()
        .Where(part => part.Value is QuantityValue or NumberValue or IntegerValue or ShareOrAmountValue && part.Path.Split('.', '[')[0] is not ("compare" or "seen"))
        .Select(part => part.Path).Distinct();
}
