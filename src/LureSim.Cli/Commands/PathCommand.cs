using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Words;
using LureSim.Scenarios;
using LureSim.Stepping;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>path</c>.</summary>
internal sealed class PathSettings : TableSettings
{
    /// <summary>Time between two lines of the table.</summary>
    [CommandOption("--every <TIME>")]
    [Description("Time between two lines of the table, such as \"2 s\" (default 1 s); CSV and JSON hold every sample")]
    public string Every { get; init; } = "1 s";

    /// <summary>Time between two lines of the table (s).</summary>
    public double EverySeconds => QuantityReader.Read(QuantityKind.Duration, Every).Value;

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        CheckQuantity("--every", QuantityKind.Duration, Every, 0.05, 60.0));
}

/// <summary>Shows the path of one rig.</summary>
internal sealed class PathCommand : AnswerCommand<PathSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(PathSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        ChosenRig chosen = run.Choose("Running", scenario, RigChoice.Limits(scenario, settings), settings);
        Candidate candidate = chosen.Choice.First;

        // A run that gave up has a part to look at, up to where it did.
        bool gaveUp = candidate.Track.Status == SimulationStatus.Failed && candidate.Track.Count > 1;
        if (!gaveUp)
            CommandRun.Require(candidate.Track);
        string? why = gaveUp ? CommandRun.Failure($"{TrackWords.End(candidate.Track.End)} {TrackWords.PartBefore}").Message : null;
        JsonOutput document = why is null
            ? JsonOutput.Of("path", CandidateJson.Of(candidate, withTrack: true), ChoiceJson.Of(chosen))
            : JsonOutput.Of("path", CandidateJson.Of(candidate, withTrack: true), ChoiceJson.Of(chosen), ExitCode.Word(ExitCode.Numerical), ExitCode.Numerical, why);
        return new(document, "path", human => TrackView.Write(human, candidate, settings.Formatter, settings.EverySeconds), SpotWords.Brief(scenario, settings.Formatter), Cautions.Line(scenario, chosen.Rig.Head))
        {
            Choice = ChoiceWords.Line(chosen.Choice, chosen.Colour, settings.Formatter.System),
            Csv = TrackView.ToCsv(candidate.Track),
            GaveUp = why,
        };
    }
}
