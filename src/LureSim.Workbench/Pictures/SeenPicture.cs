using LureSim.Decision;
using LureSim.Model;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Pictures;

/// <summary>What the angler saw, taken in two taps, and what it changes.</summary>
internal static class SeenPicture
{
    /// <summary>What was seen at this spot, of the file and of the page, a line each, the oldest first.</summary>
    /// <param name="pictures">The pictures of the scenario.</param>
    /// <param name="question">The question.</param>
    public static IReadOnlyList<string> Noted(PicturePart pictures, BenchQuestion question) =>
        [.. question.Scenario.Seen.Select(seen => Grammar.Capital(ObservationWords.Line(seen, pictures.Format)))];

    /// <summary>Learns from a note; takes seconds.</summary>
    /// <param name="pictures">The pictures of the scenario.</param>
    /// <param name="settings">The knobs and the notes before.</param>
    /// <param name="note">The note.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static SeenView Of(PicturePart pictures, BenchSettings settings, string note, CancellationToken cancellation)
    {
        BenchQuestion before = pictures.Bench.Ask(settings);
        QuickReading read = QuickObservation.Read(note);
        if (!read.IsValid) return new SeenView(Grammar.Sentence(read.Message), [], false, null, Noted(pictures, before));
        BenchSettings longer = settings.Noting(note);
        BenchQuestion question = pictures.Bench.Ask(longer);
        if (question.Notes.Count == 0 || question.Notes[^1] != note) return new SeenView(WhyNot(pictures, before, read.Item), [], false, null, Noted(pictures, before));
        ChosenRig chosen = Planner.Choose(question.Scenario, new PlanOptions { Scale = pictures.Format.LengthScale, Threads = Math.Max(1, Environment.ProcessorCount - 1) }, null, cancellation);
        Observation newest = question.Scenario.Seen[^1];
        string line = Grammar.Capital(ObservationWords.Line(newest, pictures.Format)), all = longer[KnobIds.Seen]!;
        if (chosen.Seen is not { } seen) return new SeenView($"{line}: its number is in the tackle file already.", [], true, all, Noted(pictures, question));
        return new SeenView(
            $"{line}. {ObservationWords.Outcome(seen, chosen.Choice, pictures.Format)}",
            [
                .. seen.Update.Learned.Select(input => Grammar.Sentence(ObservationWords.Learned(input, pictures.Format))),
                .. seen.Update.Conflicts.Select(fit => ObservationWords.Conflict(fit, question.Scenario, pictures.Format)),
            ],
            true,
            all,
            Noted(pictures, question));
    }

    // What the reader says of the scenario with the note in it.
    private static string WhyNot(PicturePart pictures, BenchQuestion question, string item)
    {
        if (question.Problems.Count > 0) return $"These settings do not go together: {question.Problems[0].Message}.";
        ScenarioText text = new(pictures.Bench.FileOf(question, question.Scenario.Title));
        text.AddSeen(item, null, null);
        return ScenarioReader.ReadText(text.Text, pictures.Bench.Path).Problems is { Count: > 0 } problems
            ? $"{Grammar.Capital(problems[0].Message)}: {problems[0].Fix}."
            : "There are too many notes already.";
    }
}
