using LureSim.Decision.Tide;
using LureSim.Decision.Trials;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>The lightest common weight that holds the bottom, by depth and current.</summary>
public static class WeightByCurrent
{
    /// <summary>Draws the figure.</summary>
    /// <param name="tide">The tide table that the weights belong to.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(TideTable tide, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(tide);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        WeightTable table = tide.Table;
        int rows = table.Depths.Count, columns = table.Currents.Count;
        IReadOnlyList<double> sizes = CommonWeights.All;
        PlotModel model = PlotBase.Model(options);
        PlotAxis x = CoverageMap.Steps(options, AxisPosition.Bottom, $"current at the surface ({(options.Units == UnitSystem.Us ? "kn" : "m/s")})", columns, i => TideWords.Current(table.Currents[i], options.Units).Split(' ')[0]);
        PlotAxis y = CoverageMap.Rows(options, $"depth ({format.LengthUnit})", rows, i => format.LengthNumber(table.Depths[i]));
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int r = 0; r < rows; r++)
            {
                for (int c = 0; c < columns; c++)
                {
                    double? weight = table.Weight[r, c];
                    double place = weight is { } w ? Enumerable.Range(0, sizes.Count).First(i => sizes[i] >= w * (1 - 1e-9)) / (sizes.Count - 1.0) : 1;

                    // Light for light heads: the ramp of shares turned round.
                    OxyColor fill = weight is null ? OxyColor.FromRgb(0xE3, 0xE6, 0xE9) : Palette.Share(1 - place);
                    OxyRect box = area.Between(c - 0.5, r - 0.5, c + 0.5, r + 0.5);
                    area.Context.DrawRectangle(box, fill, OxyColors.White, 1, EdgeRenderingMode.Adaptive);
                    if (weight is null)
                        Shapes.Hatch(area.Context, box, Hatch.Rising, OxyColor.FromRgb(0xC4, 0xCA, 0xD0));
                    area.Text(new ScreenPoint(box.Left + (box.Width / 2), box.Top + (box.Height / 2)), Text(weight, options.Units), options.FontSize - (options.Narrow ? 1 : 0), weight is null ? Palette.Ink : Palette.TextOn(fill), bold: true);
                }
            }
        });
        return new Figure(options)
        {
            Name = "weight-by-current",
            Section = FigureSection.TideTable,
            Title = $"Weight that holds bottom, by depth and current ({(options.Units == UnitSystem.Us ? "oz" : "g")})",
            Subtitle = $"Cast {format.HandText(tide.Presentation.CastLength)}, let it sink to the bottom, then: {tide.Presentation.Name}{(tide.Presentation.RetrieveSpeed > 0 ? $", {format.SpeedText(tide.Presentation.RetrieveSpeed)}" : "")}",
            Model = model,
            PlotHeight = (42 * rows) + 66,
            Keys = !table.Weight.Cast<double?>().Any(weight => weight is null) ? [] : [KeyItem.Box($"more than {new UnitFormat(options.Units).Weight(sizes[^1])}, or never", OxyColor.FromRgb(0xE3, 0xE6, 0xE9), OxyColor.FromRgb(0xA0, 0xA8, 0xB0), Hatch.Rising)],
            Caption = "The lightest common weight that is on bottom for a third of the retrieve or more, with this line, lure and cast. One size heavier is the safe side: the current is seldom known better than a quarter.",
            AltText = $"Grid of the lightest weight that holds bottom at {UnitFormat.Counted(rows, "depth")} and {UnitFormat.Counted(columns, "current")}; it grows with both.",
        };
    }

    /// <summary>A weight without its unit; a dash for none.</summary>
    internal static string Text(double? kilograms, UnitSystem units) =>
        kilograms is { } mass ? new UnitFormat(units).Weight(mass).Split(' ') is { Length: > 1 } parts ? string.Join(' ', parts[..^1]) : "" : UnitFormat.None;
}
