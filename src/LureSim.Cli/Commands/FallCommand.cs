using System.ComponentModel;
using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>fall</c>.</summary>
internal sealed class FallSettings : TableSettings
{
    /// <summary>Distance between depths.</summary>
    [CommandOption("--step <LENGTH>")]
    [Description("Distance between two depths of the table, such as \"1 ft\" (the default) or \"50 cm\"")]
    public string? Step { get; init; }

    /// <summary>Distance between depths (m): as given, or 1 ft or 0.25 m by the units.</summary>
    public double StepMetres => Step is null ? (Units == "metric" ? 0.25 : 0.3048) : QuantityReader.Read(QuantityKind.Length, Step).Value;

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(base.Validate(), CheckQuantity("--step", QuantityKind.Length, Step, 0.05, 20.0));
}

/// <summary>Shows the count-down table.</summary>
internal sealed class FallCommand : Command<FallSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, FallSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        Scenario scenario = settings.ReadScenario();
        AtomicFiles.RequireFolder(settings.Out);
        FallTable table = ProgressRunner.Run(host, "Falling", progress => host.Pipeline.Fall(scenario, settings.StepMetres, progress, cancellationToken));
        cancellationToken.ThrowIfCancellationRequested();

        IAnsiConsole human = host.Human(settings.OutputIsDocument);
        FallView.Write(human, scenario, table, settings.Formatter);
        JsonOutput document = JsonOutput.Of("fall", FallJson.Of(scenario, table));
        if (settings.Out is not null)
            AtomicFiles.WriteAndTell(human, settings.Out, [OutputFile.Text("fall.json", document.Text), OutputFile.Text("fall.csv", FallView.ToCsv(table))], cancellationToken);
        if (settings.Json)
            host.Output.Write(document.Text);
        if (settings.Csv)
            host.Output.Write(FallView.ToCsv(table));
        return ExitCode.Ok;
    }
}
