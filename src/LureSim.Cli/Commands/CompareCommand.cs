using LureSim.Cli.Output;
using LureSim.Decision;
using LureSim.Motion;
using LureSim.Scenarios;
using Spectre.Console;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>Options of <c>compare</c>.</summary>
internal sealed class CompareSettings : PageSettings
{
    /// <inheritdoc/>
    protected override string Suffix => "-compare";
}

/// <summary>Compares the two rigs of a scenario.</summary>
internal sealed class CompareCommand : Command<CompareSettings>
{
    /// <inheritdoc/>
    public override int Execute(CommandContext context, CompareSettings settings, CancellationToken cancellationToken)
    {
        var host = (CliHost)context.Data!;
        Scenario scenario = settings.ReadScenario();
        if (scenario.Compare.Count != 2)
            throw new CommandFailedException(ExitCode.Usage, $"{settings.File}: there are no two rigs to compare; add \"compare:\" with two rigs, see docs/scenario-format.md.");
        AtomicFiles.RequireFolder(settings.Folder);
        CompareOutcome outcome = ProgressRunner.Run(host, "Comparing", progress => host.Pipeline.Compare(scenario, settings.Request, progress, cancellationToken));
        cancellationToken.ThrowIfCancellationRequested();
        RigComparison comparison = outcome.Comparison;
        if (new[] { comparison.FirstOutcome, comparison.SecondOutcome }.FirstOrDefault(o => o.Candidate.Track.Status == SimulationStatus.Failed) is { } failed)
            throw new CommandFailedException(ExitCode.Numerical, $"The computation failed: {failed.Candidate.Track.Message}");

        IAnsiConsole human = host.Human(settings.Json);
        human.MarkupLineInterpolated($"[bold]{scenario.Title}[/]");
        foreach (string sentence in comparison.Sentences(settings.Formatter.System))
            human.MarkupLineInterpolated($"- {sentence}");
        JsonOutput document = JsonOutput.Of("compare", CompareJson.Of(outcome));
        AtomicFiles.WriteAndTell(human, settings.Folder, [.. outcome.Pages, OutputFile.Text("compare.json", document.Text), OutputFile.Text("compare.csv", ToCsv(comparison))], cancellationToken);
        if (settings.Json)
            host.Output.Write(document.Text);
        return ExitCode.Ok;
    }

    private static string ToCsv(RigComparison comparison)
    {
        var csv = new Csv("measure", "first", "second", "difference", "effect", "share", "alone", "as_the_last");
        foreach (MeasureComparison item in comparison.Measures)
        {
            foreach (FeatureEffect effect in item.Effects)
                csv.Row(item.Measure.Id, item.First, item.Second, effect.Feature.Id, effect.Effect, effect.Share, effect.ChangedFirst, effect.ChangedLast);
        }

        return csv.ToString();
    }
}
