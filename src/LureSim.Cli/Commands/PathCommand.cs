using System.ComponentModel;
using LureSim.Cli.Output;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Words;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>path</c>.</summary>
internal sealed class PathSettings : RigSettings
{
    /// <summary>The jig head, by weight or label.</summary>
    [CommandOption("--weight <WEIGHT>", isRequired: true)]
    [Description("The jig head: a weight of your box, such as \"1/4 oz\", or unweighted; none with a hard lure")]
    public required string Weight { get; init; }

    /// <summary>Time between two lines of the table.</summary>
    [CommandOption("--every <TIME>")]
    [Description("Time between two lines of the table, such as \"2 s\" (default 1 s); CSV and JSON hold every sample")]
    public string Every { get; init; } = "1 s";

    /// <summary>Time between two lines of the table (s).</summary>
    public double EverySeconds => QuantityReader.Read(QuantityKind.Duration, Every).Value;

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        CheckQuantity("--every", QuantityKind.Duration, Every, 0.05, 60.0),
        Weight is RigChoice.Unweighted or RigChoice.NoHead || QuantityReader.Read(QuantityKind.Mass, Weight).IsValid || Weight.Contains(' ', StringComparison.Ordinal)
            ? ValidationResult.Success()
            : CheckQuantity("--weight", QuantityKind.Mass, Weight, 0.0, 1.0));
}

/// <summary>Shows the path of one rig.</summary>
internal sealed class PathCommand : AnswerCommand<PathSettings>
{
    /// <inheritdoc/>
    protected override Answer Answer(PathSettings settings, CommandRun run)
    {
        Scenario scenario = settings.ReadScenario();
        Rig rig = RigChoice.Of(scenario, settings.Weight, settings.Presentation, settings.Body);
        Candidate candidate = run.Compute(pipeline => pipeline.Path(scenario, rig, run.Cancellation));
        CommandRun.Require(candidate.Track);
        return new(JsonOutput.Of("path", CandidateJson.Of(candidate, withTrack: true)), "path", human => TrackView.Write(human, candidate, settings.Formatter, settings.EverySeconds), Card.Of(new CardFacts(scenario, candidate), settings.Formatter.System).Line, Cautions.Line(scenario, rig.Head))
        {
            Csv = TrackView.ToCsv(candidate.Track),
        };
    }
}
