using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>completion</c>.</summary>
internal sealed class CompletionSettings : CommandSettings
{
    /// <summary>The shell.</summary>
    [CommandArgument(0, "<SHELL>")]
    [Description("bash, zsh or fish")]
    [Words("bash", "zsh", "fish")]
    public required string Shell { get; init; }

    /// <inheritdoc/>
    public override ValidationResult Validate()
    {
        if (Shell is "bash" or "zsh" or "fish")
            return ValidationResult.Success();
        string suggestion = GrammarReader.Nearest(Shell, ["bash", "zsh", "fish"]) is { } nearest ? $"; did you mean {nearest}?" : ";";
        return ValidationResult.Error($"There is no completion for \"{Shell}\"{suggestion} Write bash, zsh or fish.");
    }
}

/// <summary>Prints a completion script.</summary>
internal sealed class CompletionCommand : Command<CompletionSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, CompletionSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        host.Output.Write(CompletionScript.For(settings.Shell));
        return ExitCode.Ok;
    }
}
