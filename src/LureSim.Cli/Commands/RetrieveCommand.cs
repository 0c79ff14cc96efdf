using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision.Baits;
using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Trips;
using LureSim.Report.Words;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>retrieve</c>.</summary>
internal sealed class RetrieveSettings : PageSettings
{
    /// <summary>The jig head; null for the best with the scenario's presentations.</summary>
    [CommandOption("--weight <WEIGHT>")]
    [Description("The jig head (default: the one that does best with your own retrieves)")]
    public string? Weight { get; init; }

    /// <summary>The body; null for the one of the rules.</summary>
    [CommandOption("--body <NAME>")]
    [Description("The lure by its name (default: the one that suits season and bait)")]
    public string? Body { get; init; }

    /// <summary>Casts tried for each kind of retrieve.</summary>
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
        string body = settings.Body ?? BodyChoice.Of(scenario).First.Label;
        Rig? named = settings.Weight is { } weight ? RigChoice.Of(scenario, weight, null, settings.Body is null && scenario.Tackle.Bodies.Any(b => !b.NeedsHead && b.Label == weight.Trim()) ? null : body) : null;
        LureBody chosen = named?.Body ?? RigChoice.Body(scenario, body);
        SearchOutcome outcome = run.Compute("Searching", (pipeline, progress) => pipeline.Search(scenario, named?.Head, chosen, settings.Runs, settings.Request, progress, run.Cancellation));
        RetrieveSearch search = outcome.Search;
        CommandRun.Require(search.Best.Candidate.Track);
        return new(JsonOutput.Of("retrieve", SearchJson.Of(outcome)), "retrieve", human => SearchView.Write(human, search, settings.Formatter), RetrieveWriter.CardOf(search, settings.Formatter.System).Line, Cautions.Line(scenario, search.Head))
        {
            Csv = SearchView.ToCsv(search),
            Pages = outcome.Pages,
        };
    }
}
