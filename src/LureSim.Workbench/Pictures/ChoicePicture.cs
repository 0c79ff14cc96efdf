using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Report.Words;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Pictures;

/// <summary>What the program would tie on: the plan's own choice, in the plan's own words.</summary>
internal static class ChoicePicture
{
    /// <summary>Works the choice out; takes seconds.</summary>
    /// <param name="pictures">The pictures of the scenario.</param>
    /// <param name="question">The question.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static ChoiceView Of(PicturePart pictures, BenchQuestion question, CancellationToken cancellation)
    {
        var options = new PlanOptions { Scale = pictures.Format.LengthScale, Threads = Math.Max(1, Environment.ProcessorCount - 1) };
        Plan plan = Planner.Plan(question.Scenario, options, null, cancellation);
        Candidate first = plan.Choice.First;
        int retrieve = Math.Max(0, pictures.Bench.Scenario.Presentations.ToList().FindIndex(way => way.Name == first.Rig.Presentation.Name));
        pictures.Bench.Mark(retrieve, first.Rig.Presentation);
        Dictionary<string, string> state = new(question.Settings.Values, StringComparer.Ordinal)
        {
            [KnobIds.Retrieve] = first.Rig.Presentation.Name,
        };
        foreach ((string id, string value) in WorkBench.HandsOf(first.Rig.Presentation)) state[id] = value;
        if (first.Rig.Body.NeedsHead) state[KnobIds.Bait] = first.Rig.Body.Label;
        BenchQuestion shown = pictures.Bench.Ask(BenchSettings.Of(state));
        state[KnobIds.Head] = shown.Lures.FirstOrDefault(lure => lure.Rig.Head == first.Rig.Head && lure.Rig.Body.Label == first.Rig.Body.Label)?.Name ?? shown.First.Name;
        return new ChoiceView(
            $"{Grammar.Capital(ChoiceWords.Name(first, pictures.Format))}: {TrackWords.Verdict(first)}.", state, [.. ChoiceWords.Why(plan, pictures.Format.System), .. ChoiceWords.Warnings(plan, pictures.Format.System)]);
    }
}
