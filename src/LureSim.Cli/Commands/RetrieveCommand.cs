using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Report.Words;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>retrieve</c>.</summary>
internal sealed class RetrieveSettings : PageSettings
{
    /// <summary>Simulated casts for each kind of retrieve.</summary>
    [CommandOption("--runs <NUMBER>")]
    [Description("Casts tried for each kind of retrieve, 12 to 400 (default 48)")]
    public int Runs { get; init; } = new RetrieveSearchOptions().RunsPerFamily;

    /// <inheritdoc/>
    protected override string Suffix => "-retrieve";

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Runs is < RetrieveSearchOptions.FewestRuns or > RetrieveSearchOptions.MostRuns
            ? ValidationResult.Error($"--runs: {Runs} is outside the range, {RetrieveSearchOptions.FewestRuns} to {RetrieveSearchOptions.MostRuns}.")
            : ValidationResult.Success());
}

/// <summary>Searches the retrieve that covers the strike zone best with the lure's action on.</summary>
internal sealed class RetrieveCommand : AnswerCommand<RetrieveSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(RetrieveSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        (ChosenRig chosen, SearchOutcome outcome) = run.Choose("Searching", scenario, RigChoice.Limits(scenario, settings), settings, (pipeline, found, progress) =>
            pipeline.Search(found.Search.Scenario, found.Rig, settings.Runs, settings.Request, progress, run.Cancellation));
        RetrieveSearch search = outcome.Search;
        CommandRun.Require(search.Best.Candidate.Track);
        return new(JsonOutput.Of("retrieve", SearchJson.Of(outcome), ChoiceJson.Of(chosen)), "retrieve", human => SearchView.Write(human, search, settings.Formatter), SpotWords.Brief(scenario, settings.Formatter), Cautions.Line(scenario, search.Head))
        {
            Choice = ChoiceWords.Line(chosen.Choice, chosen.Colour, settings.Formatter.System),
            Csv = SearchView.ToCsv(search),
            Pages = outcome.Pages,
        };
    }
}
