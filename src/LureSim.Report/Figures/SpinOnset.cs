using LureSim.Decision.RigChecks;
using LureSim.Report.Units;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace LureSim.Report.Figures;

/// <summary>When a bent bait spins: spin rate by bend and speed, with the onset drawn in.</summary>
public static class SpinOnset
{
    /// <summary>Spin rate from which a lure counts as spinning in this picture (turns/s).</summary>
    public const double Onset = 0.25;

    /// <summary>Draws the figure.</summary>
    /// <param name="focus">The rig; it must hold a map of spin.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException">There is no map.</exception>
    public static Figure Create(RigFocus focus, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(focus);
        ArgumentNullException.ThrowIfNull(options);
        if (focus.Spin is not { Bends.Count: > 1, Speeds.Count: > 1 } map)
            throw new ArgumentException("There is no map of spin.", nameof(focus));
        UnitFormat format = options.Format;
        double[] speeds = [.. map.Speeds.Select(format.SpeedValue)];
        double[] bends = [.. map.Bends.Select(b => b * 180 / Math.PI)];
        double halfX = (speeds[1] - speeds[0]) / 2, halfY = (bends[1] - bends[0]) / 2;
        double most = Math.Max(1, map.SpinRate.Cast<double>().Where(double.IsFinite).DefaultIfEmpty(0).Max());
        double own = map.OwnBend * 180 / Math.PI, ownSpeed = format.SpeedValue(map.OwnSpeed);

        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, $"speed ({format.SpeedUnit})", speeds[0] - halfX, speeds[^1] + halfX);
        PlotAxis y = PlotBase.Axis(options, AxisPosition.Left, "bend between nose and tail (°)", bends[0] - halfY, bends[^1] + halfY);
        y.IsShown = value => value >= -1e-9;
        x.MajorGridlineStyle = LineStyle.None;
        y.MajorGridlineStyle = LineStyle.None;
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            for (int b = 0; b < bends.Length; b++)
            {
                for (int s = 0; s < speeds.Length; s++)
                {
                    double spin = map.SpinRate[b, s];
                    OxyColor fill = double.IsFinite(spin) ? Palette.Share(spin / most) : OxyColors.LightGray;
                    OxyRect cell = area.Between(speeds[s] - halfX, bends[b] - halfY, speeds[s] + halfX, bends[b] + halfY);
                    area.Context.DrawRectangle(cell, fill, OxyColors.White, 0.6, EdgeRenderingMode.Adaptive);
                    if (!double.IsFinite(spin) || spin >= 0.05)
                        area.Text(new ScreenPoint(cell.Left + (cell.Width / 2), cell.Top + (cell.Height / 2)), double.IsFinite(spin) ? UnitFormat.Number(spin, 1) : UnitFormat.None, options.SmallFontSize, Palette.TextOn(fill));
                }
            }
        });

        // The library wants the data by column, then row.
        double[,] byColumn = new double[speeds.Length, bends.Length];
        for (int b = 0; b < bends.Length; b++)
        {
            for (int s = 0; s < speeds.Length; s++)
                byColumn[s, b] = double.IsFinite(map.SpinRate[b, s]) ? map.SpinRate[b, s] : 0;
        }

        bool crosses = byColumn.Cast<double>().Any(v => v >= Onset) && byColumn.Cast<double>().Any(v => v < Onset);
        if (crosses)
        {
            foreach ((OxyColor colour, double thickness) in ((OxyColor, double)[])[(OxyColors.White, 5), (Palette.Vermilion, 2.6)])
            {
                ContourSeries contour = new()
                {
                    ColumnCoordinates = speeds,
                    RowCoordinates = bends,
                    Data = byColumn,
                    ContourLevels = [Onset],
                    ContourColors = [colour],
                    Color = colour,
                    StrokeThickness = thickness,
                    LineStyle = LineStyle.Solid,
                    LabelStep = 1000,
                    LabelBackground = OxyColors.Undefined,
                    FontSize = 0.1,
                };
                contour.CalculateContours();
                model.Series.Add(contour);
            }
        }

        bool inside = ownSpeed >= speeds[0] - halfX && ownSpeed <= speeds[^1] + halfX && own <= bends[^1] + halfY;
        if (inside)
        {
            model.Paint(AnnotationLayer.AboveSeries, area =>
            {
                ScreenPoint at = area.At(ownSpeed, own);
                Shapes.Disc(area.Context, at, 9, OxyColors.Undefined, OxyColors.White, 4.5);
                Shapes.Disc(area.Context, at, 9, OxyColors.Undefined, Palette.Ink, 2.2);
            });
        }

        string first = OnsetText(map, format);
        return new Figure(options)
        {
            Name = "spin-onset",
            Section = FigureSection.Rig,
            Title = "When a bent bait begins to spin",
            Subtitle = $"{format.LureText(focus.Action.Rig.Body)}, {format.HeadText(focus.Action.Rig.Head)}: turns a second",
            Model = model,
            PlotHeight = options.Narrow ? 360 : 400,
            Keys =
            [
                KeyItem.Ramp($"0 to {UnitFormat.Number(most, 1)} turns a second", Palette.Share),
                .. crosses ? [KeyItem.Line($"onset, {UnitFormat.Number(Onset, 2)} turns a second", Palette.Vermilion, 2.6, null)] : Array.Empty<KeyItem>(),
                .. inside ? [KeyItem.Symbol("this rig and retrieve", (rc, p, _) => Shapes.Disc(rc, p, 6, OxyColors.Undefined, Palette.Ink, 2))] : Array.Empty<KeyItem>(),
            ],
            Caption = "Numbers are turns a second about the long axis; empty cells do not turn. Below the line the bait may be a little bent and still runs.",
            AltText = first,
        };
    }

    // For each speed the least bend of the map that spins.
    private static string OnsetText(SpinMap map, UnitFormat format)
    {
        List<string> parts = [];
        for (int s = 0; s < map.Speeds.Count; s++)
        {
            int b = 0;
            while (b < map.Bends.Count && !(map.SpinRate[b, s] >= Onset)) b++;
            parts.Add($"{format.SpeedText(map.Speeds[s])}: {(b < map.Bends.Count ? $"from {UnitFormat.Number(map.Bends[b] * 180 / Math.PI, 0)} degrees" : "not at all")}");
        }

        return $"Bend from which the bait spins, by speed. {string.Join("; ", parts)}.";
    }
}
