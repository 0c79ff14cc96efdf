using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>fall</c>.</summary>
internal sealed class FallSettings : TableSettings;

/// <summary>Shows the count-down table.</summary>
internal sealed class FallCommand : Command<FallSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, FallSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        Scenario scenario = settings.ReadScenario();
        AtomicFiles.RequireFolder(settings.Out);
        FallTable table = ProgressRunner.Run(host, "Falling", progress => host.Pipeline.Fall(scenario, settings.Formatter.System, progress, cancellationToken));
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
