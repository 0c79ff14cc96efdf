using LureSim.Decision;
using LureSim.Units;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows a plan in a screenful: the choice, the candidates and the grids.</summary>
internal static class PlanView
{
    /// <summary>Prints the plan.</summary>
    public static void Write(IAnsiConsole console, Plan plan, MeasureFormatter units)
    {
        console.MarkupLineInterpolated($"[bold]{plan.Scenario.Title}[/]");
        console.MarkupLineInterpolated($"First choice: [green]{Name(plan.Choice.First, units)}[/]. {Views.Sentence(plan.Choice.First.Verdict)}");
        if (plan.Choice.Fallback is { } fallback)
            console.MarkupLineInterpolated($"Fallback: {Name(fallback, units)}. {Views.Sentence(fallback.Verdict)}");
        foreach (string reason in plan.Choice.Reasons)
            console.MarkupLineInterpolated($"- {reason}");
        foreach (string warning in plan.Choice.Warnings)
            console.MarkupLineInterpolated($"[yellow]! {warning}[/]");
        foreach (string note in plan.Notes)
            console.MarkupLineInterpolated($"[yellow]! {note}[/]");

        Table view = Views.NewTable("candidates");
        bool bodies = plan.Candidates.Select(candidate => candidate.Rig.Body).Distinct().Count() > 1;
        view.AddColumns(bodies ? ["jig head", "body", "presentation"] : ["jig head", "presentation"]);
        foreach (string heading in (string[])["in zone", "bottom", "grass", $"median depth ({units.Length.Symbol})", "to zone (s)", "score"])
            view.AddColumn(new TableColumn(Views.Escape(heading)).RightAligned());
        foreach (Candidate candidate in plan.Candidates.OrderByDescending(candidate => candidate == plan.Choice.First).ThenByDescending(candidate => candidate.Score))
        {
            Coverage coverage = candidate.Coverage;
            view.AddRow(
            [
                Views.Escape(units.HeadLabel(candidate.Rig.Head)),
                .. bodies ? [Views.Escape(candidate.Rig.Body.Label)] : (string[])[],
                Views.Escape(candidate.Rig.Presentation.Name),
                units.Share.Text(coverage.ZoneShare),
                units.Share.Text(coverage.BottomShare),
                units.Share.Text(coverage.GrassShare),
                units.Length.Number(coverage.MedianDepth),
                Views.Optional(units.Seconds, coverage.TimeToZone),
                units.Share.Number(candidate.Score),
            ]);
        }

        console.Write(view);
        if (plan.Uncertainty is { IsExact: false } study)
            UncertaintyView.Write(console, study, units);
        CoverageView.Write(console, plan.Grid, units);
    }

    private static string Name(Candidate candidate, MeasureFormatter units) =>
        $"{(candidate.Rig.Head.IsNone ? candidate.Rig.Body.Label : $"{units.HeadLabel(candidate.Rig.Head)} with {candidate.Rig.Body.Label}")}, {candidate.Rig.Presentation.Name}";
}
