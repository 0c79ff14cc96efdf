using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Report.Units;
using LureSim.Report.Words;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>Shows a plan in a screenful: the choice, the candidates and the grids.</summary>
internal static class PlanView
{
    /// <summary>Prints the plan.</summary>
    public static void Write(IAnsiConsole console, Plan plan, UnitFormat units)
    {
        console.MarkupLineInterpolated($"[bold]{plan.Scenario.Title}[/]");
        console.MarkupLineInterpolated($"First choice: [green]{Name(plan.Choice.First, units)}[/]. {Grammar.Sentence(TrackWords.Verdict(plan.Choice.First))}");
        if (plan.Choice.Fallback is { } fallback)
            console.MarkupLineInterpolated($"Fallback: {Name(fallback, units)}. {Grammar.Sentence(TrackWords.Verdict(fallback))}");
        foreach (string reason in ChoiceWords.Reasons(plan, units.System))
            console.MarkupLineInterpolated($"- {reason}");
        foreach (string warning in ChoiceWords.Warnings(plan, units.System))
            console.MarkupLineInterpolated($"[yellow]! {warning}[/]");
        foreach (string note in ChoiceWords.Notes(plan))
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
                Views.Escape(units.HeadText(candidate.Rig.Head)),
                .. bodies ? [Views.Escape(candidate.Rig.Body.Label)] : (string[])[],
                Views.Escape(candidate.Rig.Presentation.Name),
                UnitFormat.Share.Text(coverage.ZoneShare),
                UnitFormat.Share.Text(coverage.BottomShare),
                UnitFormat.Share.Text(coverage.GrassShare),
                units.Length.Number(coverage.MedianDepth),
                Views.Optional(UnitFormat.Seconds, coverage.TimeToZone),
                UnitFormat.Share.Number(candidate.Score),
            ]);
        }

        Views.WriteFitted(console, view);
        if (plan.Uncertainty is { IsExact: false } study)
            UncertaintyView.Write(console, study, units);
        CoverageView.Write(console, plan.Grid, units);
    }

    private static string Name(Candidate candidate, UnitFormat units) =>
        $"{(candidate.Rig.Head.IsNone ? candidate.Rig.Body.Label : $"{units.HeadText(candidate.Rig.Head)} with {candidate.Rig.Body.Label}")}, {candidate.Rig.Presentation.Name}";
}
