using LureSim.Decision;
using LureSim.Scenarios;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows a plan in a screenful: the choice, the candidates and the grids.</summary>
internal static class PlanView
{
    /// <summary>Prints the plan.</summary>
    public static void Write(IAnsiConsole console, Scenario scenario, PlanOutcome outcome, MeasureFormatter units)
    {
        console.MarkupLineInterpolated($"[bold]{scenario.Title}[/]");
        console.MarkupLineInterpolated($"First choice: [green]{Name(outcome.Choice.First, units)}[/]. {outcome.Choice.First.Verdict}");
        if (outcome.Choice.Fallback is { } fallback)
            console.MarkupLineInterpolated($"Fallback: {Name(fallback, units)}. {fallback.Verdict}");
        foreach (string reason in outcome.Choice.Reasons)
            console.MarkupLineInterpolated($"- {reason}");
        foreach (string warning in outcome.Choice.Warnings)
            console.MarkupLineInterpolated($"[yellow]! {warning}[/]");

        Table view = Views.NewTable("candidates");
        view.AddColumns("jig head", "presentation");
        foreach (string heading in (string[])["in zone", "bottom", "grass", $"median depth ({units.Length.Symbol})", "to zone (s)", "score"])
            view.AddColumn(new TableColumn(Views.Escape(heading)).RightAligned());
        foreach (Candidate candidate in outcome.Candidates)
        {
            Coverage coverage = candidate.Coverage;
            view.AddRow(
                Views.Escape(units.HeadLabel(candidate.Rig.Head)),
                Views.Escape(candidate.Rig.Presentation.Name),
                units.Share.Text(coverage.ZoneShare),
                units.Share.Text(coverage.BottomShare),
                units.Share.Text(coverage.GrassShare),
                units.Length.Number(coverage.MedianDepth),
                Views.Optional(units.Seconds, coverage.TimeToZone),
                units.Share.Number(candidate.Score));
        }

        console.Write(view);
        foreach (CoverageGrid grid in outcome.Grids)
            CoverageView.Write(console, grid, units);
    }

    private static string Name(Candidate candidate, MeasureFormatter units) =>
        $"{units.HeadLabel(candidate.Rig.Head)} with {candidate.Rig.Body.Label}, {candidate.Rig.Presentation.Name}";
}
