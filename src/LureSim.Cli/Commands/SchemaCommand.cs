using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>schema</c>.</summary>
internal sealed class SchemaSettings : CommandSettings
{
    /// <summary>True for the reference.</summary>
    [CommandOption("--reference")]
    [Description("The reference of all keys (Markdown) instead of the schema")]
    public bool Reference { get; init; }

    /// <summary>True for the schema of trips.</summary>
    [CommandOption("--trip")]
    [Description("The schema of trips by the clock instead of that of scenarios")]
    public bool Trip { get; init; }

    /// <summary>Folder to write into; null to print.</summary>
    [CommandOption("--out <DIR>")]
    [Description("Write the file into this folder instead of printing it")]
    [PathKind(folder: true)]
    public string? Out { get; init; }

    /// <inheritdoc/>
    public override ValidationResult Validate() =>
        Reference && Trip ? ValidationResult.Error("--reference and --trip exclude each other.")
        : Out is { Length: 0 } ? ValidationResult.Error("--out: name a folder.") : ValidationResult.Success();
}

/// <summary>Prints or writes the schema or the reference.</summary>
internal sealed class SchemaCommand : Command<SchemaSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, SchemaSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        (string name, string text) = settings.Reference
            ? (ScenarioFormat.FileName, ScenarioFormat.ToMarkdown())
            : settings.Trip ? (ScenarioSchema.TripFileName, ScenarioSchema.TripToJson())
            : (ScenarioSchema.FileName, ScenarioSchema.ToJson());
        if (settings.Out is null)
        {
            host.Output.Write(text);
            return ExitCode.Ok;
        }

        AtomicFiles.RequireFolder(settings.Out, cancellationToken);
        AtomicFiles.WriteAndTell(host.OutputConsole, settings.Out, [OutputFile.Text(name, text)], cancellationToken);
        return ExitCode.Ok;
    }
}
