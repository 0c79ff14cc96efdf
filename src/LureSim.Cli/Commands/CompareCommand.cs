using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Decision.Comparison;
using LureSim.Model;
using LureSim.Report.Trips;
using LureSim.Report.Words;
using Spectre.Console;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>compare</c>.</summary>
internal sealed class CompareSettings : PageSettings
{
    /// <inheritdoc/>
    protected override string Suffix => "-compare";
}

/// <summary>Compares the two rigs of a scenario.</summary>
internal sealed class CompareCommand : AnswerCommand<CompareSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(CompareSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        if (scenario.Compare.Count != 2)
            throw new CommandFailedException(ExitCode.Usage, $"{settings.File}: there are no two rigs to compare; add \"compare:\" with two rigs, see docs/scenario-format.md.");
        (ChosenRig chosen, CompareOutcome outcome) = run.Choose("Comparing", scenario, RigChoice.Limits(scenario, settings), settings, (pipeline, _, progress) =>
            pipeline.Compare(scenario, settings.Request, progress, run.Cancellation));
        RigComparison comparison = outcome.Comparison;
        CommandRun.Require(comparison.FirstOutcome.Candidate.Track);
        CommandRun.Require(comparison.SecondOutcome.Candidate.Track);
        return new(JsonOutput.Of("compare", CompareJson.Of(outcome), ChoiceJson.Of(chosen)), "compare", Show, SpotWords.Brief(scenario, settings.Formatter), Cautions.Line(scenario, comparison.FirstOutcome.Candidate.Rig.Head)) { Choice = ChoiceWords.Line(chosen.Choice, chosen.Colour, settings.Formatter.System), Csv = ToCsv(comparison), Pages = outcome.Pages };

        void Show(IAnsiConsole human)
        {
            human.MarkupLineInterpolated($"[bold]{scenario.Title}[/]");
            foreach ((string name, Card card) in ComparisonWriter.Cards(comparison, settings.Formatter.System).Zip((string[])[comparison.First.Name, comparison.Second.Name], (card, name) => (name, card)))
                human.MarkupLineInterpolated($"{Grammar.Capital(name)}: {card.Line}");
            foreach (string sentence in ComparisonWords.Sentences(comparison, settings.Formatter.System))
                human.MarkupLineInterpolated($"- {sentence}");
        }
    }

    private static string ToCsv(RigComparison comparison)
    {
        var csv = new Csv("measure", "first", "second", "difference", "effect", "share", "alone", "as_the_last");
        foreach (MeasureComparison item in comparison.Measures)
        {
            foreach (FeatureEffect effect in item.Effects)
                csv.Row(item.Measure.Id, item.First, item.Second, effect.Feature.Id, effect.Effect, effect.Share, effect.ChangedFirst, effect.ChangedLast);
        }

        return csv.ToString();
    }
}
