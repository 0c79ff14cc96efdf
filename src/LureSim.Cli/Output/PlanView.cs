using LureSim.Decision;
using LureSim.Decision.Search;
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

        Compared(console, plan, units);
        if (plan.Uncertainty is { IsExact: false } study)
            UncertaintyView.Write(console, study, units);
        CoverageView.Write(console, plan.Grid, units);
    }

    // What ran all tries by its numbers over them; what was looked at once has no score that could stand beside theirs.
    private static void Compared(IAnsiConsole console, Plan plan, UnitFormat units)
    {
        bool bodies = plan.Compared.Select(row => row.Rig.Body).Distinct().Count() > 1;
        int tries = plan.Compared[0].Numbers.Tries;
        foreach (IGrouping<bool, TriedRig> group in plan.Compared.GroupBy(row => row.IsJudged))
        {
            Table view = Views.NewTable(!group.Key ? "looked at once, in the conditions of the scenario"
                : tries > 1 ? $"everything compared over {tries} what-if tries: typical (8 times in 10)"
                : "everything compared");
            view.AddColumns(bodies ? ["jig head", "lure", "retrieve"] : ["jig head", "retrieve"]);
            foreach (string heading in (string[])["in zone", "on bottom", "in grass", $"typical depth ({units.Length.Symbol})", "to zone (s)", .. group.Key ? (string[])[tries > 1 ? "average score" : "score"] : []])
                view.AddColumn(new TableColumn(Views.Escape(heading)).RightAligned());
            foreach (TriedRig row in group)
            {
                TryNumbers numbers = row.Numbers;
                view.AddRow(
                [
                    Views.Escape(units.HeadText(row.Rig.Head)),
                    .. bodies ? [Views.Escape(units.LureText(row.Rig.Body))] : (string[])[],
                    Views.Escape(row.Rig.Presentation.Name),
                    UncertaintyWords.Band(numbers.ZoneShare, UnitFormat.Share, marked: true),
                    UncertaintyWords.Band(numbers.BottomShare, UnitFormat.Share, marked: true),
                    UncertaintyWords.Band(numbers.GrassShare, UnitFormat.Share, marked: true),
                    UncertaintyWords.Band(numbers.MedianDepth, units.Length),
                    UncertaintyWords.Band(numbers.TimeToZone, UnitFormat.Seconds),
                    .. group.Key ? [UnitFormat.Share.Number(numbers.Score.Mean)] : (string[])[],
                ]);
            }

            Views.WriteFitted(console, view);
        }
    }
}
