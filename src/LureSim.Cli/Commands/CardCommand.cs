using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Report.Sheets;
using LureSim.Report.Words;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>card</c>.</summary>
internal sealed class CardSettings : TripSettings
{
    /// <inheritdoc/>
    protected override string Suffix => "-card";
}

/// <summary>Writes the cards of some spots.</summary>
internal sealed class CardCommand : AnswerCommand<CardSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(CardSettings settings, CommandRun run)
    {
        IReadOnlyList<Scenario> scenarios = settings.ReadAll();
        ChoiceLimits[] limits = [.. scenarios.Select(scenario => RigChoice.Limits(scenario, settings))];
        IReadOnlyList<PlanOutcome> spots = run.Compute("Planning", (pipeline, progress) => pipeline.Plans(scenarios, limits, settings.Request, progress, run.Cancellation));
        foreach (PlanOutcome spot in spots)
            CommandRun.Require(spot.Plan.Choice.First.Track, spot.Plan.Scenario.Title);
        Card[] cards = [.. spots.Select(spot => Sheet.Of(spot.Plan, settings.Formatter.System).Card())];
        return new(
            JsonOutput.Of("card", CardsJson.Of(cards), ChoiceJson.Of(spots[0].Plan.Choice, spots[0].Plan.Colours)),
            "cards",
            human => CardView.Write(human, cards),
            cards[0].Line,
            Cautions.Line(scenarios[0], spots[0].Plan.Choice.First.Rig.Head))
        {
            Pages = [.. CardWriter.Files(cards).Select(file => new OutputFile(file.Name, file.Bytes))],
        };
    }
}
