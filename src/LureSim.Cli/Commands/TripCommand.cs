using System.ComponentModel;
using System.Globalization;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision.Search;
using LureSim.Decision.Trips;
using LureSim.Model;
using LureSim.Report.Words;
using LureSim.Scenarios;
using Spectre.Console;
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

    /// <summary>First hour; null for the first of any tide.</summary>
    [CommandOption("--from <TIME>")]
    [Description("First hour of the day by the clock, such as 06:00 (default: the first of any tide)")]
    public string? From { get; init; }

    /// <summary>Last hour; null for the last of any tide.</summary>
    [CommandOption("--to <TIME>")]
    [Description("Last hour of the day by the clock, such as 14:00 (default: the last of any tide)")]
    public string? To { get; init; }

    /// <summary>Time between any two places; null for what is assumed.</summary>
    [CommandOption("--travel <TIME>")]
    [Description("Time between any two spots and the ramp, such as \"15 min\" (default: 20 min; a trip file takes each way apart)")]
    public string? Travel { get; init; }

    /// <inheritdoc/>
    protected override string Suffix => "-trip";

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(base.Validate(), Hour("--from", From), Hour("--to", To), CheckQuantity("--travel", QuantityKind.Duration, Travel, 0, 6 * 3600));

    private static ValidationResult Hour(string option, string? text) => text is null || TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out _)
        ? ValidationResult.Success()
        : ValidationResult.Error($"{option}: \"{text}\" is not a time of the 24-hour clock; write for example 06:00.");

    /// <summary>The trip: a trip file, or scenarios with the hours of the options.</summary>
    /// <exception cref="CommandFailedException">A file is not valid, or the hours are too few.</exception>
    public (IReadOnlyList<Scenario> Scenarios, TripClock? Clock, string? Title) ReadTrip()
    {
        if (Further.Length == 0 && TripReader.IsTrip(File))
        {
            if ((From ?? To ?? Travel) is not null)
                throw new CommandFailedException(ExitCode.Usage, $"{File}: a trip file has its own hours and ways; change them there, or name the scenarios instead.");
            TripReading reading = TripReader.Read(File);
            return reading.Trip is { } trip ? (trip.Scenarios, trip.Clock, trip.Title) : throw new CommandFailedException(ExitCode.Usage, ProblemView.Heading(File, reading.Problems.Count), reading.Problems);
        }

        IReadOnlyList<Scenario> scenarios = ReadAll();
        if (scenarios.Count > TripProblem.MostSpots && (From ?? To ?? Travel) is not null)
            throw new CommandFailedException(ExitCode.Usage, $"A day by the clock takes up to {TripProblem.MostSpots} spots; leave some out, or leave out --from, --to and --travel.");
        var clock = TripClock.Of(scenarios, Hours(From), Hours(To), Travel is null ? TripClock.UsualTravel : QuantityReader.Read(QuantityKind.Duration, Travel).Value / 3600);
        if (clock is null && (From ?? To) is not null)
            throw new CommandFailedException(ExitCode.Usage, "No spot has a tide: give both --from and --to.");
        return clock is { } day && day.End - day.Start < 1 ? throw new CommandFailedException(ExitCode.Usage, "The day is shorter than an hour: give a later --to.") : (scenarios, clock, null);
    }

    private static double? Hours(string? text) => text is null ? null : TimeOnly.ParseExact(text, "HH:mm", CultureInfo.InvariantCulture).ToTimeSpan().TotalHours;

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
        (IReadOnlyList<Scenario> scenarios, TripClock? clock, string? title) = settings.ReadTrip();
        ChoiceLimits[] limits = [.. scenarios.Select(scenario => RigChoice.Limits(scenario, settings))];
        TripOutcome outcome = run.Compute("Planning", (pipeline, progress) => pipeline.Trip(scenarios, limits, settings.Request with { Clock = clock, Title = title }, progress, run.Cancellation));
        foreach (PlanOutcome spot in outcome.Spots)
            CommandRun.Require(spot.Plan.Choice.First.Track, spot.Plan.Scenario.Title);
        return new(JsonOutput.Of("trip", TripJson.Of(outcome), ChoiceJson.Of(outcome.Spots[0].Plan.Choice, outcome.Spots[0].Plan.Colours)), "trip", human => TripView.Write(human, outcome), outcome.Trip.Sheets[0].Card().Line, Cautions.Line(scenarios[0], outcome.Spots[0].Plan.Choice.First.Rig.Head)) { Pages = outcome.Pages, Tables = TripView.Tables(outcome) };
    }
}
