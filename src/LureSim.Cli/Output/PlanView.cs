using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Report.Sheets;
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
        CardView.Write(console, Sheet.Of(plan, units.System).Card());
        console.WriteLine();
        foreach (string reason in ChoiceWords.Why(plan, units.System))
            console.MarkupLineInterpolated($"- {reason}");
        foreach (string warning in ChoiceWords.Warnings(plan, units.System))
            console.MarkupLineInterpolated($"[yellow]! {warning}[/]");
        foreach (string note in ChoiceWords.Notes(plan, units.System))
            console.MarkupLineInterpolated($"[yellow]! {note}[/]");

        Table view = Views.NewTable("everything compared");
        bool bodies = plan.Candidates.Select(candidate => candidate.Rig.Body).Distinct().Count() > 1;
        view.AddColumns(bodies ? ["jig head", "lure", "retrieve"] : ["jig head", "retrieve"]);
        foreach (string heading in (string[])["in zone", "on bottom", "in grass", $"typical depth ({units.Length.Symbol})", "to zone (s)", "score"])
            view.AddColumn(new TableColumn(Views.Escape(heading)).RightAligned());
        foreach (Candidate candidate in plan.Candidates.OrderByDescending(candidate => candidate == plan.Choice.First).ThenByDescending(candidate => candidate.Score))
        {
            Coverage coverage = candidate.Coverage;
            view.AddRow(
            [
                Views.Escape(units.HeadText(candidate.Rig.Head)),
                .. bodies ? [Views.Escape(units.LureText(candidate.Rig.Body))] : (string[])[],
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
}
