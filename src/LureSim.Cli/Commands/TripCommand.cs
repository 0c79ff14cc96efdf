using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision.Search;
using LureSim.Model;
using LureSim.Report.Words;
using LureSim.Scenarios;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>trip</c>.</summary>
internal class TripSettings : PageSettings
{
    /// <summary>The scenarios after the first.</summary>
    [CommandArgument(1, "[FILE]")]
    [Description("Further scenarios, in the order in which they are fished")]
    [PathKind(folder: false)]
    public string[] Further { get; init; } = [];

    /// <inheritdoc/>
    protected override string Suffix => "-trip";

    /// <summary>Reads all scenarios; ends the command with the problems of all that are not valid.</summary>
    /// <exception cref="CommandFailedException">A scenario is not valid.</exception>
    public IReadOnlyList<Scenario> ReadAll()
    {
        ScenarioReading[] readings = [.. new[] { File }.Concat(Further).Select(file => ScenarioReader.Read(file))];
        ScenarioProblem[] problems = [.. readings.SelectMany(reading => reading.Problems)];
        string[] wrong = [.. readings.Where(reading => !reading.IsValid).Select(reading => reading.File)];
        return wrong.Length == 0
            ? [.. readings.Select(reading => reading.Scenario!)]
            : throw new CommandFailedException(ExitCode.Usage, ProblemView.Heading(string.Join(", ", wrong), problems.Length), problems);
    }
}

/// <summary>Plans several spots in one.</summary>
internal sealed class TripCommand : AnswerCommand<TripSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(TripSettings settings, CommandRun run)
    {
        IReadOnlyList<Scenario> scenarios = settings.ReadAll();
        ChoiceLimits[] limits = [.. scenarios.Select(scenario => RigChoice.Limits(scenario, settings))];
        TripOutcome outcome = run.Compute("Planning", (pipeline, progress) => pipeline.Trip(scenarios, limits, settings.Request, progress, run.Cancellation));
        foreach (PlanOutcome spot in outcome.Spots)
            CommandRun.Require(spot.Plan.Choice.First.Track, spot.Plan.Scenario.Title);
        return new(JsonOutput.Of("trip", TripJson.Of(outcome), ChoiceJson.Of(outcome.Spots[0].Plan.Choice, outcome.Spots[0].Plan.Colours)), "trip", human => TripView.Write(human, outcome), outcome.Trip.Sheets[0].Card().Line, Cautions.Line(scenarios[0], outcome.Spots[0].Plan.Choice.First.Rig.Head)) { Pages = outcome.Pages, Tables = TripView.Tables(outcome) };
    }
}
