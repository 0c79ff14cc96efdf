using System.Globalization;
using LureSim.Decision.Observations;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using Xunit.Abstractions;

namespace LureSim.Tests.Decision.Observations;

/// <summary>Water drawn at random, observed with errors, and whether what is learned holds it. LURESIM_FULL_TRUTHS=1 takes 200 truths in place of a few.</summary>
public class SyntheticTruthTests(ITestOutputHelper output)
{
    private static readonly bool Full = Environment.GetEnvironmentVariable("LURESIM_FULL_TRUTHS") == "1";

    [Fact]
    public void Eight_in_ten_intervals_hold_the_truth_about_eight_times_in_ten()
    {
        int truths = Full ? 200 : 40;
        var inside = new Dictionary<LearnedInputKind, int>();
        var narrowed = new Dictionary<LearnedInputKind, double>();
        int total = 0, conflicts = 0;
        foreach (int number in Enumerable.Range(0, truths))
        {
            (InputState state, _, _, Observation[] seen) = Truths.Of(number);
            ObservationUpdate update = ObservationUpdate.Of(Truths.Scenario with { Seen = seen })!;
            conflicts += update.Conflicts.Count();
            foreach (LearnedInput input in update.Inputs)
            {
                double truth = input.Kind switch
                {
                    LearnedInputKind.Current => state.Current,
                    LearnedInputKind.Depth => state.Depth,
                    LearnedInputKind.LineDrag => state.LineDrag,
                    LearnedInputKind.LureDrag => state.LureDrags[0],
                    _ => state.Secchi,
                };
                bool holds = truth >= input.After.Low && truth <= input.After.High;
                inside[input.Kind] = inside.GetValueOrDefault(input.Kind) + (holds ? 1 : 0);
                narrowed[input.Kind] = narrowed.GetValueOrDefault(input.Kind) + (input.Narrowed / truths);
                total += holds ? 1 : 0;
            }
        }

        double share = total / (5.0 * truths);
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{truths} truths: {share:P1} inside; {conflicts} of {4 * truths} observations left out"));
        foreach ((LearnedInputKind kind, int count) in inside)
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{kind}: {(double)count / truths:P1} inside, width {narrowed[kind]:F2} of that before"));
        Assert.InRange(share, 0.72, 0.88);

        // Each by itself, as far as so many truths can tell: three standard errors of a share of 0.8.
        double error = 3 * Math.Sqrt(0.16 / truths);
        Assert.All(inside, pair => Assert.InRange((double)pair.Value / truths, Full ? 0.72 : 0.8 - error, Full ? 0.88 : 0.8 + error));
        Assert.True(narrowed[LearnedInputKind.Current] < 0.6);
    }

    [Fact]
    public void A_calibrated_plan_takes_the_best_head_of_the_truth_more_often()
    {
        int truths = Full ? 200 : 24, before = 0, after = 0, asGoodBefore = 0, asGoodAfter = 0, reused = 0, runs = 0;
        double lostBefore = 0, lostAfter = 0;
        var parallel = new ParallelOptions();
        ChoiceSearch search = ChoiceSearch.Find(Truths.Scenario, null, parallel);
        foreach (int number in Enumerable.Range(0, truths))
        {
            (_, Scenario world, SimulationOptions drags, Observation[] seen) = Truths.Of(number);
            CalibratedChoice choice = CalibratedChoice.Of(search, ObservationUpdate.Of(Truths.Scenario with { Seen = seen }, parallel)!, new SimulationOptions(), parallel);
            double[] scores = [.. search.Heads.Select(rig => Trial.Run(world, rig, Trial.ForSearch(drags)).Score)];
            double best = scores.Max();
            Rig wanted = Preference.Of(search.Heads, rig => rig, rig => scores[search.Heads.ToList().IndexOf(rig)]);
            double ScoreOf(JigHead head) => scores[search.Heads.ToList().FindIndex(rig => rig.Head == head)];
            double own = ScoreOf(search.First.Rig.Head), now = ScoreOf(choice.After.First.Rig.Head);
            before += search.First.Rig.Head == wanted.Head ? 1 : 0;
            after += choice.After.First.Rig.Head == wanted.Head ? 1 : 0;
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{number}: {string.Join(" ", scores.Select(score => score.ToString("F3", CultureInfo.InvariantCulture)))}, best {wanted.Head.Label}, before {search.First.Rig.Head.Label}, after {choice.After.First.Rig.Head.Label}, {choice.EffectiveTries:F1} tries"));
            asGoodBefore += own >= best - ScoreWeights.Default.Tie(best) ? 1 : 0;
            asGoodAfter += now >= best - ScoreWeights.Default.Tie(best) ? 1 : 0;
            lostBefore += (best - own) / truths;
            lostAfter += (best - now) / truths;
            reused += choice.Reused ? 1 : 0;
            runs += choice.Runs + choice.Update.Runs;
        }

        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{truths} truths: best head {before} before, {after} after; as good as the best {asGoodBefore} before, {asGoodAfter} after; score lost {lostBefore:F4} before, {lostAfter:F4} after; tries reused {reused} times, {runs / truths} runs an update"));
        Assert.True(after > before, $"best {before} before, {after} after");
        Assert.True(asGoodAfter > asGoodBefore, $"as good {asGoodBefore} before, {asGoodAfter} after");
        Assert.True(lostAfter < 0.8 * lostBefore);
    }
}
