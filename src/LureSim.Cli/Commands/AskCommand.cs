using System.ComponentModel;
using LureSim.Cli.Output;
using LureSim.Decision.Inverse;
using LureSim.Report;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>ask</c>.</summary>
internal sealed class AskSettings : RigSettings
{
    /// <summary>The jig head; null for all of the box.</summary>
    [CommandOption("--weight <WEIGHT>")]
    [Description("The jig head that speed and count-down are asked for (default: every head of the box)")]
    public string? Weight { get; init; }

    /// <summary>Depth to hold; null for the middle of the strike zone.</summary>
    [CommandOption("--depth <DEPTH>")]
    [Description("The depth that the retrieve should hold, such as \"6 ft\" (default: the middle of the strike zone)")]
    public string? Depth { get; init; }

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        CheckQuantity("--depth", QuantityKind.Length, Depth, 0.0, 60.0));
}

/// <summary>Answers questions asked backwards: which weight, which reel speed, which count-down.</summary>
internal sealed class AskCommand : Command<AskSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, AskSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        Scenario scenario = settings.ReadScenario();
        AtomicFiles.RequireFolder(settings.Out);
        double? depth = settings.Depth is { } text ? QuantityReader.Read(QuantityKind.Length, text).Value : null;
        if (depth > scenario.Spot.Depth)
            throw new CommandFailedException(ExitCode.Usage, $"--depth: the water is only {settings.Formatter.Length.Text(scenario.Spot.Depth)} deep.");
        if (scenario.Tackle.JigHeads.Count == 0)
            throw new CommandFailedException(ExitCode.Usage, $"{settings.File}: the tackle box has no jig head, and ask is about jig heads; add \"jig_heads:\" and a soft body under tackle, or use plan or retrieve.");
        string first = scenario.Tackle.JigHeads[0].Label;
        Decision.Rig rig = RigChoice.Of(scenario, settings.Weight ?? first, settings.Presentation, settings.Body ?? scenario.Tackle.Bodies.FirstOrDefault(body => body.NeedsHead)?.Label);
        IReadOnlyList<JigHead> heads = settings.Weight is null ? scenario.Tackle.JigHeads : [rig.Head];
        IReadOnlyList<InverseAnswer> answers = ProgressRunner.Run(host, "Searching", progress => host.Pipeline.Ask(scenario, rig, heads, depth, progress, cancellationToken));
        cancellationToken.ThrowIfCancellationRequested();

        IAnsiConsole human = host.Human(settings.OutputIsDocument);
        AnswerView.Write(human, scenario, answers, new UnitFormat(settings.Formatter.System));
        JsonOutput document = JsonOutput.Of("ask", AnswersJson.Of(scenario, answers));
        string csv = AnswerView.ToCsv(answers);
        if (settings.Out is not null)
            AtomicFiles.WriteAndTell(human, settings.Out, [OutputFile.Text("answers.json", document.Text), OutputFile.Text("answers.csv", csv)], cancellationToken);
        if (settings.Json)
            host.Output.Write(document.Text);
        if (settings.Csv)
            host.Output.Write(csv);
        return ExitCode.Ok;
    }
}
