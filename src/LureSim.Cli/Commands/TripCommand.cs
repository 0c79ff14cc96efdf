using System.ComponentModel;
using LureSim.Cli.Output;
using LureSim.Motion;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>trip</c>.</summary>
internal sealed class TripSettings : PageSettings
{
    /// <summary>The scenarios after the first.</summary>
    [CommandArgument(1, "[FILE]")]
    [Description("Further scenarios, in the order in which they are fished")]
    [PathKind(folder: false)]
    public string[] Further { get; init; } = [];

    /// <summary>Draws of the uncertain inputs for each head; null for the usual number of a trip.</summary>
    [CommandOption("--samples <NUMBER>")]
    [Description("Draws of what is not known well for each jig head, 0 for none (default: what each scenario says, but no more than 12)")]
    public int? Samples { get; init; }

    /// <inheritdoc/>
    public override PlanRequest Request => base.Request with { Samples = Samples };

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Samples is < 0 or > ScenarioUncertainty.MostSamples ? ValidationResult.Error($"--samples: write 0 to {ScenarioUncertainty.MostSamples}.") : ValidationResult.Success());

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
internal sealed class TripCommand : Command<TripSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, TripSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        IReadOnlyList<Scenario> scenarios = settings.ReadAll();
        AtomicFiles.RequireFolder(settings.Folder);
        TripOutcome outcome = ProgressRunner.Run(host, "Planning", progress => host.Pipeline.Trip(scenarios, settings.Request, progress, cancellationToken));
        cancellationToken.ThrowIfCancellationRequested();
        if (outcome.Spots.Select(spot => spot.Plan).FirstOrDefault(plan => plan.Choice.First.Track.Status == SimulationStatus.Failed) is { } failed)
            throw new CommandFailedException(ExitCode.Numerical, $"{failed.Scenario.Title}: the computation failed: {failed.Choice.First.Track.Message}");

        IAnsiConsole human = host.Human(settings.Json);
        TripView.Write(human, outcome);
        JsonOutput document = JsonOutput.Of("trip", TripJson.Of(outcome));
        AtomicFiles.WriteAndTell(human, settings.Folder, [.. outcome.Pages, OutputFile.Text("trip.json", document.Text), .. TripView.Tables(outcome)], cancellationToken);
        if (settings.Json)
            host.Output.Write(document.Text);
        return ExitCode.Ok;
    }
}
