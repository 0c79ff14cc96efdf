using LureSim.Cli.Output;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>colours</c>.</summary>
internal sealed class ColoursSettings : TableSettings;

/// <summary>Shows the colours with depth.</summary>
internal sealed class ColoursCommand : Command<ColoursSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, ColoursSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        Scenario scenario = settings.ReadScenario();
        AtomicFiles.RequireFolder(settings.Out);
        ColourTable table = host.Pipeline.Colours(scenario, settings.Formatter.System, cancellationToken);
        cancellationToken.ThrowIfCancellationRequested();

        IAnsiConsole human = host.Human(settings.OutputIsDocument);
        ColourView.Write(human, scenario, table, settings.Formatter);
        JsonOutput document = JsonOutput.Of("colours", ColourJson.Of(scenario, table));
        string csv = ColourView.ToCsv(table);
        if (settings.Out is not null)
            AtomicFiles.WriteAndTell(human, settings.Out, [OutputFile.Text("colours.json", document.Text), OutputFile.Text("colours.csv", csv)], cancellationToken);
        if (settings.Json)
            host.Output.Write(document.Text);
        if (settings.Csv)
            host.Output.Write(csv);
        return ExitCode.Ok;
    }
}
