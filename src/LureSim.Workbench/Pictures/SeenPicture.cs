using LureSim.Decision;
using LureSim.Model;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Pictures;

/// <summary>What the angler saw, taken in two taps, and what it changes.</summary>
internal static class SeenPicture
{
    /// <summary>Most notes of a page.</summary>
    public const int MostNotes = 20;

    /// <summary>Learns from the notes of a page; takes seconds.</summary>
    /// <param name="pictures">The pictures of the scenario.</param>
    /// <param name="question">The question, with its knobs.</param>
    /// <param name="notes">What was noted, the newest last.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SeenView Of(PicturePart pictures, BenchQuestion question, IReadOnlyList<string> notes, CancellationToken cancellation)
    {
        string text = pictures.Bench.FileOf(question, question.Scenario.Title);
        foreach (string note in notes)
        {
            QuickReading read = QuickObservation.Read(note);
            if (!read.IsValid) return new SeenView(Grammar.Sentence(read.Message), [], false);
            if (QuickObservation.Append(text, read.Item) is not { } longer) return new SeenView("This file writes what was seen in brackets; nothing can be added to it here.", [], false);
            text = longer;
        }

        ScenarioReading reading = ScenarioReader.ReadText(text, pictures.Bench.Path);
        if (reading.Scenario is not { } scenario)
            return new SeenView($"{Grammar.Capital(reading.Problems[0].Message)}: {reading.Problems[0].Fix}.", [], false);
        ChosenRig chosen = Planner.Choose(scenario, new PlanOptions { Scale = pictures.Format.LengthScale, Threads = Math.Max(1, Environment.ProcessorCount - 1) }, null, cancellation);
        Observation newest = scenario.Seen[^1];
        if (chosen.Seen is not { } seen) return new SeenView($"{Grammar.Capital(ObservationWords.Line(newest, pictures.Format))}: its number is in the tackle file already.", [], true);
        return new SeenView(
            $"{Grammar.Capital(ObservationWords.Line(newest, pictures.Format))}. {ObservationWords.Outcome(seen, chosen.Choice, pictures.Format)}",
            [
                .. seen.Update.Learned.Select(input => Grammar.Sentence(ObservationWords.Learned(input, pictures.Format))),
                .. seen.Update.Conflicts.Select(fit => ObservationWords.Conflict(fit, scenario, pictures.Format)),
            ],
            true);
    }
}
