using System.ComponentModel;
using LureSim.Cli.Hosting;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>The words an option or argument takes, for checks and shell completions.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class WordsAttribute(params string[] words) : Attribute
{
    /// <summary>The words.</summary>
    public IReadOnlyList<string> Words { get; } = words;
}

/// <summary>Marks an argument or option that takes a file or a folder, for shell completions.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class PathKindAttribute(bool folder) : Attribute
{
    /// <summary>True for a folder.</summary>
    public bool Folder { get; } = folder;
}

/// <summary>Options of every command that speaks of sizes to people.</summary>
internal abstract class UnitSettings : CommandSettings
{
    /// <summary>Units of text for people.</summary>
    [CommandOption("--units <SYSTEM>")]
    [Description("Units of text and pages: us or metric (default us)")]
    [Words("us", "metric")]
    public string Units { get; init; } = "us";

    /// <summary>Formatter for the chosen units.</summary>
    public UnitFormat Formatter => new(Units == "metric" ? UnitSystem.Metric : UnitSystem.Us);

    /// <inheritdoc/>
    public override ValidationResult Validate() => Units is "us" or "metric"
        ? ValidationResult.Success()
        : ValidationResult.Error($"--units: \"{Units}\" is not a system of units; write us or metric.");

    /// <summary>The first of some results that is an error, or success.</summary>
    protected static ValidationResult First(params ValidationResult[] results) =>
        results.FirstOrDefault(result => !result.Successful) ?? ValidationResult.Success();
}

/// <summary>Options of every command that answers with sizes, for people or as data.</summary>
internal abstract class JsonSettings : UnitSettings
{
    /// <summary>True to answer with one JSON document.</summary>
    [CommandOption("--json")]
    [Description("Print one JSON document (SI units) on standard output; text for people goes to standard error")]
    public bool Json { get; init; }
}

/// <summary>Options of the commands that run a scenario.</summary>
internal abstract class ScenarioSettings : JsonSettings
{
    /// <summary>The scenario file.</summary>
    [CommandArgument(0, "<FILE>")]
    [Description("The scenario (YAML)")]
    [PathKind(folder: false)]
    public required string File { get; init; }

    /// <summary>The jig head that the choice is held to; null to leave it free.</summary>
    [CommandOption("--weight <WEIGHT>")]
    [Description("Hold the choice to this jig head: a weight of the tackle box, unweighted, or the name of a lure without a head (default: the best)")]
    public string? Weight { get; init; }

    /// <summary>The lure that the choice is held to; null to leave it free.</summary>
    [CommandOption("--lure <NAME>")]
    [Description("Hold the choice to this soft bait or lure, by its name (default: the best)")]
    public string? Lure { get; init; }

    /// <summary>The presentation that the choice is held to; null to leave it free.</summary>
    [CommandOption("--presentation <NAME>")]
    [Description("Hold the choice to this presentation, by its name (default: the best)")]
    public string? Presentation { get; init; }

    /// <summary>The colour that the choice is held to; null to leave it free.</summary>
    [CommandOption("--color|--colour <NAME>")]
    [Description("Hold the choice to this color of the box (default: the advised one)")]
    public string? Color { get; init; }

    /// <summary>Tries of the uncertain inputs; null for what the scenario says.</summary>
    [CommandOption("--samples <NUMBER>")]
    [Description("What-if tries (current, cast, speed, depth varied), 0 for none (default: what the scenario says, or 24)")]
    public int? Samples { get; init; }

    /// <summary>Folder to write into; null to write nothing.</summary>
    public abstract string? Folder { get; }

    /// <summary>True if standard output carries a document and not text for people.</summary>
    public virtual bool OutputIsDocument => Json;

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Samples is < 0 or > ScenarioUncertainty.MostSamples
            ? ValidationResult.Error($"--samples: {Samples} is outside the range, 0 to {ScenarioUncertainty.MostSamples}.")
            : ValidationResult.Success());

    /// <summary>Reads the scenario; ends the command with all its problems if it is not valid.</summary>
    /// <exception cref="CommandFailedException">The scenario is not valid.</exception>
    public Scenario ReadScenario() => Read(File);

    /// <summary>Reads a scenario; ends the command with all its problems if it is not valid.</summary>
    /// <param name="file">The file.</param>
    /// <exception cref="CommandFailedException">The scenario is not valid.</exception>
    protected static Scenario Read(string file)
    {
        ScenarioReading reading = ScenarioReader.Read(file);
        return reading.Scenario ?? throw new CommandFailedException(ExitCode.Usage, Output.ProblemView.Heading(file, reading.Problems.Count), reading.Problems);
    }

    /// <summary>Ends the command if it is about jig heads and the scenario has none.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="command">Name of the command.</param>
    /// <exception cref="CommandFailedException">There is no jig head.</exception>
    public void RequireJigHeads(Scenario scenario, string command)
    {
        if (scenario.Tackle.JigHeads.Count == 0)
            throw new CommandFailedException(ExitCode.Usage, $"{File}: your box has no jig head, and {command} is about jig heads; add \"jig_heads:\" and a soft bait under tackle, or use plan or retrieve.");
    }

    /// <summary>Checks an option that takes a quantity.</summary>
    /// <param name="option">Name for messages.</param>
    /// <param name="kind">What it measures.</param>
    /// <param name="text">Text given; null for not given.</param>
    /// <param name="minimum">Least value (SI).</param>
    /// <param name="maximum">Greatest value (SI).</param>
    protected static ValidationResult CheckQuantity(string option, QuantityKind kind, string? text, double minimum, double maximum)
    {
        if (text is null)
            return ValidationResult.Success();
        QuantityReading reading = QuantityReader.Read(kind, text);
        if (!reading.IsValid)
            return ValidationResult.Error($"{option}: {reading.Message} (\"{text}\"); {reading.Fix}.");
        return reading.Value >= minimum && reading.Value <= maximum
            ? ValidationResult.Success()
            : ValidationResult.Error($"{option}: \"{text}\" is outside the range, {QuantityText.Range(kind, minimum, maximum)}.");
    }
}

/// <summary>Options of the commands that write pages and figures into a folder.</summary>
internal abstract class PageSettings : ScenarioSettings
{
    /// <summary>The folder named; null for the default.</summary>
    [CommandOption("--out <DIR>")]
    [Description("Folder for the pages and their files (default: a folder in out/ named after the scenario)")]
    [PathKind(folder: true)]
    public string? Out { get; init; }

    /// <summary>True to write PDF as well.</summary>
    [CommandOption("--pdf")]
    [Description("Write PDF as well, to print")]
    public bool Pdf { get; init; }

    /// <inheritdoc/>
    public override string Folder => Out ?? Path.Combine("out", Path.GetFileNameWithoutExtension(File) + Suffix);

    /// <summary>What the pages are asked for.</summary>
    public PlanRequest Request => new(Formatter.System, Pdf, Samples);

    /// <summary>End of the default folder's name, which keeps the commands apart.</summary>
    protected virtual string Suffix => "";

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Out is { Length: 0 } ? ValidationResult.Error("--out: name a folder.") : ValidationResult.Success());
}

/// <summary>Options of the commands that can also write their answer into files.</summary>
internal abstract class TableSettings : ScenarioSettings
{
    /// <summary>True to print CSV.</summary>
    [CommandOption("--csv")]
    [Description("Print CSV (SI units) on standard output; text for people goes to standard error")]
    public bool Csv { get; init; }

    /// <summary>The folder named; null to write nothing.</summary>
    [CommandOption("--out <DIR>")]
    [Description("Also write JSON and CSV files into this folder, and the figures of action")]
    [PathKind(folder: true)]
    public string? Out { get; init; }

    /// <inheritdoc/>
    public override string? Folder => Out;

    /// <inheritdoc/>
    public override bool OutputIsDocument => Json || Csv;

    /// <inheritdoc/>
    public override ValidationResult Validate() => First(
        base.Validate(),
        Json && Csv ? ValidationResult.Error("--json and --csv exclude each other.") : ValidationResult.Success(),
        Out is { Length: 0 } ? ValidationResult.Error("--out: name a folder.") : ValidationResult.Success());
}
