using LureSim.Decision.Tide;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Time in the strike zone of each jig head by the hour of the tide.</summary>
public static class TideByHour
{
    /// <summary>Draws the figure.</summary>
    /// <param name="table">A table with at least one row.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">The table has no rows.</exception>
    public static Figure Create(TideTable table, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(options);
        IReadOnlyList<TideRow> rows = table.Rows;
        IReadOnlyList<JigHead> heads = table.Heads;
        if (rows.Count == 0)
            throw new ArgumentException("The table has no rows.", nameof(table));
        UnitFormat format = options.Format;
        Dictionary<JigHead, HeadStyle> styles = HeadStyle.For(heads, format);
        PlotModel model = PlotBase.Model(options);
        PlotAxis x = CoverageMap.Steps(options, AxisPosition.Top, options.Narrow ? $"jig head ({(options.Units == UnitSystem.Us ? "oz" : "g")})" : "", heads.Count, i => options.Narrow ? Short(heads[i], styles[heads[i]].Label, options.Units) : styles[heads[i]].Label);
        x.FontSize = options.SmallFontSize - 1;
        PlotAxis y = CoverageMap.Rows(options, "", rows.Count, i => $"{TideWords.Clock(rows[i].Hours)}  {TideWords.Current(rows[i].Current, options.Units)}");
        y.FontSize = options.SmallFontSize;
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int r = 0; r < rows.Count; r++)
            {
                for (int h = 0; h < heads.Count; h++)
                {
                    double share = rows[r].ZoneShares[h];
                    OxyColor fill = Palette.Share(share);
                    OxyRect box = area.Between(h - 0.5, r - 0.5, h + 0.5, r + 0.5);
                    area.Context.DrawRectangle(box, fill, OxyColors.White, 1, EdgeRenderingMode.Adaptive);
                    if (box.Width >= 24)
                        area.Text(new ScreenPoint(box.Left + (box.Width / 2), box.Top + (box.Height / 2)), UnitFormat.PercentNumber(share), options.SmallFontSize, Palette.TextOn(fill), bold: rows[r].Best == heads[h]);
                    if (rows[r].Best == heads[h])
                    {
                        area.Context.DrawRectangle(box.Deflate(new OxyThickness(1.5)), OxyColors.Undefined, OxyColors.White, 4.5, EdgeRenderingMode.Adaptive);
                        Shapes.Frame(area.Context, box);
                    }
                }
            }
        });
        string[] best = [.. rows.Select(r => r.Best is { } head ? format.HeadText(head) : "none").Distinct()];
        return new Figure(options)
        {
            Name = "tide-by-hour",
            Section = FigureSection.TideByHour,
            Title = "Best weight, hour by hour",
            Subtitle = $"Percent of the retrieve in the strike zone: {table.Presentation.Name}",
            Model = model,
            PlotHeight = (Math.Clamp(430.0 / rows.Count, 26, 34) * rows.Count) + (options.Narrow ? 62 : 40),
            Keys =
            [
                KeyItem.Ramp("0 to 100% in the strike zone", Palette.Share),
                KeyItem.Box("best in your box at that hour, snags counted too", OxyColors.White, Palette.Vermilion),
            ],
            Caption = $"Read across from the hour and its current at the surface; the framed head is best then. {TideWords.Minus}",
            AltText = $"Grid of {UnitFormat.Counted(rows.Count, "hour")} by {UnitFormat.Counted(heads.Count, "head")} with the percent of the retrieve in the strike zone. Best over the tide: {Grammar.Join(best.Take(6))}.",
        };
    }

    // Without its unit, which stands in the title of the axis.
    private static string Short(JigHead head, string label, UnitSystem units) =>
        head.Mass == 0 ? "none" : label.Replace(units == UnitSystem.Us ? " oz" : " g", "", StringComparison.Ordinal);
}
