using LureSim.Decision.Observations;
using LureSim.Decision.Search;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Tests.Decision.Observations;

public class ObservationUpdateTests
{
    private static readonly Scenario Spot = Truths.Scenario;

    private static Observation Bottom(int head, double seconds, bool happened = true) => new()
    {
        Kind = ObservationKind.BottomTime,
        Value = seconds,
        Happened = happened,
        Head = Spot.Tackle.JigHeads[head],
        Body = Spot.Tackle.Bodies[0],
        Way = Spot.Presentations[0],
    };

    private static Observation Float(double seconds) => new() { Kind = ObservationKind.FloatDrift, Value = seconds, Length = 9 };

    private static ObservationUpdate Of(params Observation[] seen) => ObservationUpdate.Of(Spot with { Seen = seen }, new ParallelOptions { MaxDegreeOfParallelism = 2 })!;

    private static LearnedInput Input(ObservationUpdate update, LearnedInputKind kind) => update.Inputs.First(input => input.Kind == kind);

    [Fact]
    public void A_float_tells_the_current_as_the_closed_form_has_it()
    {
        // 9 m in 22 s: 0.409 m/s before, 60 % either way nine times in ten. A Gaussian time error of 10 % and 0.3 s; the posterior by quadrature over the current.
        ObservationUpdate update = Of(Float(22));
        double own = Spot.Spot.CurrentSpeed, spread = 0.6 * own / 1.6448536269514722, error = Math.Sqrt(0.09 + (2.2 * 2.2)), sum = 0, mean = 0, square = 0;
        for (double u = 0.01; u < 1.5; u += 1e-4)
        {
            double weight = Math.Exp(-0.5 * Math.Pow((u - own) / spread, 2)) * Math.Exp(-0.5 * Math.Pow(((9 / u) - 22) / error, 2));
            sum += weight;
            mean += weight * u;
            square += weight * u * u;
        }

        mean /= sum;
        double deviation = Math.Sqrt((square / sum) - (mean * mean));
        LearnedInput current = Input(update, LearnedInputKind.Current);
        Assert.Equal(mean, current.AfterValues.Average(), 0.15 * deviation);
        Assert.InRange((current.After.High - current.After.Low) / (2 * 1.2816 * deviation), 0.88, 1.12);
        Assert.True(current.Learned);
        Assert.False(Input(update, LearnedInputKind.Depth).Learned);
        Assert.Equal(current.After.Median, update.Calibrated.Spot.CurrentSpeed);
        Assert.Equal(Spot.Spot.Depth, update.Calibrated.Spot.Depth);
        Assert.Empty(update.Calibrated.Seen);
    }

    [Fact]
    public void The_tries_are_drawn_from_what_is_left()
    {
        ObservationUpdate update = Of(Float(22));
        double[] currents = [.. UncertainDraw.Draw(update.Calibrated, Spot.Presentations[0], 24).Select(draw => draw.Scenario.Spot.CurrentSpeed)];
        LearnedInput current = Input(update, LearnedInputKind.Current);
        Assert.Equal(current.AfterValues.Average(), currents.Average(), 0.5 * (current.After.High - current.After.Low) / 2.56);
        Assert.All(currents, value => Assert.Contains(value, current.AfterValues));
    }

    [Fact]
    public void The_result_is_the_same_for_any_number_of_threads()
    {
        Scenario scenario = Spot with { Seen = [Bottom(4, 7), Float(20)] };
        ObservationUpdate one = ObservationUpdate.Of(scenario, new ParallelOptions { MaxDegreeOfParallelism = 1 })!, four = ObservationUpdate.Of(scenario, new ParallelOptions { MaxDegreeOfParallelism = 4 })!;
        Assert.Equal(one.Inputs.Select(input => input.After), four.Inputs.Select(input => input.After));
        Assert.Equal(one.Calibrated.Uncertainty.Learned.Select(item => (item.Current, item.Depth, item.LineDrag)), four.Calibrated.Uncertainty.Learned.Select(item => (item.Current, item.Depth, item.LineDrag)));
        Assert.Null(ObservationUpdate.Of(Spot));
    }

    [Fact]
    public void A_fall_that_cannot_be_is_found_named_and_left_out()
    {
        ObservationUpdate update = Of(Bottom(2, 3.2));
        ObservationFit fit = Assert.Single(update.Conflicts);
        Assert.Equal(ConflictKind.WithScenario, fit.Conflict!.Kind);
        Assert.Contains(fit.Conflict.Suspects, suspect => suspect is ConflictSuspect.Depth or ConflictSuspect.Weight);
        Assert.DoesNotContain(update.Inputs, input => input.Learned);
        string said = ObservationWords.Conflict(fit, Spot, new UnitFormat(UnitSystem.Us));
        Assert.Contains("cannot be true at 14 ft with this head", said, StringComparison.Ordinal);
        Assert.Contains("Check the", said, StringComparison.Ordinal);
        Assert.Contains("left out", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_that_contradict_each_other_are_found()
    {
        // Each float alone may be true of a current that is little known; both together cannot.
        ObservationUpdate update = Of(Float(15), Float(15.5), Float(52));
        ObservationFit fit = Assert.Single(update.Conflicts);
        Assert.Equal((ConflictKind.WithOthers, 52.0), (fit.Conflict!.Kind, fit.Observation.Value));
        Assert.True(Input(update, LearnedInputKind.Current).Learned);
    }

    [Fact]
    public void What_did_not_happen_tells_too()
    {
        ObservationUpdate update = Of(Bottom(0, 12, happened: false));
        Assert.Empty(update.Conflicts);
        Assert.True(Input(update, LearnedInputKind.Current).After.Median > Input(update, LearnedInputKind.Current).Before.Median);
    }

    [Fact]
    public void Weak_observations_reuse_the_tries_and_strong_ones_run_new_ones()
    {
        ChoiceSearch search = ChoiceSearch.Find(Spot with { Uncertainty = Spot.Uncertainty with { Samples = 8 } });
        Observation weak = Float(22) with { Error = 14 };
        Scenario few = Spot with { Uncertainty = Spot.Uncertainty with { Samples = 8 } };
        CalibratedChoice mild = CalibratedChoice.Of(search, ObservationUpdate.Of(few with { Seen = [weak] })!, new SimulationOptions(), new ParallelOptions());
        Assert.True(mild is { Reused: true, Runs: 0 });
        Assert.All(mild.After.First.Scores, score => Assert.Contains(score, mild.Before.Finalists.SelectMany(rig => rig.Scores)));
        CalibratedChoice strong = CalibratedChoice.Of(search, ObservationUpdate.Of(few with { Seen = [Float(40) with { Error = 1 }] })!, new SimulationOptions(), new ParallelOptions());
        Assert.True(strong is { Reused: false, Runs: > 0 });
        Assert.Equal(8, strong.After.Tries);
    }

    [Fact]
    public void What_to_look_at_next_lessens_the_chance_of_a_wrong_choice()
    {
        ChoiceSearch search = ChoiceSearch.Find(Spot);
        IReadOnlyList<NextLook> looks = NextLook.Of(search, new SimulationOptions(), new ParallelOptions());
        Assert.NotEmpty(looks);
        Assert.All(looks, look => Assert.True(look.Gain > NextLook.Worth && look.WrongThen >= 0 && look.WrongNow <= 1));
        Assert.Equal(looks.Select(look => look.Gain).OrderDescending(), looks.Select(look => look.Gain));
        string said = ObservationWords.Next(looks[0], new UnitFormat(UnitSystem.Us));
        Assert.Contains("wrong lure now", said, StringComparison.Ordinal);
    }
}
