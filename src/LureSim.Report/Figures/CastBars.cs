using LureSim.Casting;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>How far each lure of the box is cast.</summary>
public static class CastBars
{
    /// <summary>Draws the figure.</summary>
    /// <param name="table">The table; at least one row.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(CastTable table, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        double? wanted = table.ByLure ? table.Rows[0].Cast.Wanted : null;
        List<RowBar> rows = [.. table.Rows.Select(row =>
        {
            string note = CastingWords.Note(row.Cast, format);
            return new RowBar(
                CastingWords.Name(row, format),
                format.LengthValue(row.Cast.Length),
                $"{format.HandText(row.Cast.Length)}{(note.Length > 0 ? $", {note}" : "")}",
                row.Cast.FallsShort ? Palette.Orange : Palette.SkyBlue,
                row.Cast.FallsShort ? Hatch.Rising : Hatch.None);
        })];
        double most = Math.Max(wanted ?? 0, table.Rows.Max(row => row.Cast.Length));
        (PlotModel model, double height) = RowBars.Plot(rows, $"cast ({format.LengthUnit})", 0, 1.08 * format.LengthValue(most), wanted is { } length ? format.LengthValue(length) : null, options);
        CastRow longest = table.Rows.MaxBy(row => row.Cast.Length)!, shortest = table.Rows.MinBy(row => row.Cast.Length)!;
        return new Figure(options)
        {
            Name = "cast-by-weight",
            Section = FigureSection.Where,
            Title = "How far each one flies",
            Subtitle = CastingWords.Basis(table, format),
            Model = model,
            PlotHeight = height,
            Keys = table.Rows.Any(row => row.Cast.FallsShort) ? [KeyItem.Box("too light to get there", Palette.Orange, Palette.SoftInk, Hatch.Rising)] : [],
            Caption = "A lure takes its share of the swing and loses speed to the air and to the line that it pulls off the spool. Rod, hand and wobble are assumed: what counts is how the weights compare. Check one cast at the dock and write it as \"60 ft with 1/4 oz\".",
            AltText = $"Bars of the cast of {UnitFormat.Counted(table.Rows.Count, "lure")}: {CastingWords.Name(shortest, format)} flies {format.HandText(shortest.Cast.Length)}, {CastingWords.Name(longest, format)} {format.HandText(longest.Cast.Length)}.",
        };
    }
}
