using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;
using OxyPlot.Series;

namespace LureSim.Report.Figures;

/// <summary>Which light is left at depth.</summary>
public static class SpectrumCurves
{
    private const double Decades = 4;

    /// <summary>Draws the figure.</summary>
    /// <param name="plate">The spectra; at least one depth and two wavelengths.</param>
    /// <param name="options">Units of the depths, and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">The plate is empty or ragged.</exception>
    public static Figure Create(SpectrumPlate plate, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(plate);
        ArgumentNullException.ThrowIfNull(options);
        if (plate.Depths.Count == 0 || plate.WavelengthsNm.Count < 2 || plate.Irradiance.Count != plate.Depths.Count || plate.Irradiance.Any(i => i.Count != plate.WavelengthsNm.Count))
            throw new ArgumentException("The plate needs a depth and two wavelengths, and a value for each pair.", nameof(plate));

        UnitFormat format = options.Format;
        List<int> visible = [.. Enumerable.Range(0, plate.WavelengthsNm.Count).Where(i => plate.WavelengthsNm[i] is >= 380 and <= 730)];
        double largest = plate.Irradiance.Max(row => visible.Select(i => row[i]).Where(double.IsFinite).DefaultIfEmpty(0).Max());
        double top = largest > 0 ? Math.Pow(10, Math.Ceiling(Math.Log10(largest))) : 1;
        double low = top / Math.Pow(10, Decades);

        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, "wavelength (nm)", 390, 720);
        x.MajorStep = options.Narrow ? 100 : 50;
        x.AxisTickToLabelDistance = 14;
        x.MajorTickSize = 0;
        LogarithmicAxis y = new()
        {
            Position = AxisPosition.Left,
            Title = "light from above (W/m² per nm)",
            Minimum = low,
            Maximum = top,
            FontSize = options.FontSize - 1,
            TitleFontSize = options.FontSize,
            MajorGridlineStyle = LineStyle.Solid,
            MajorGridlineColor = Palette.Grid,
            TicklineColor = Palette.Line,
            MinorTickSize = 0,
            TickStyle = TickStyle.Outside,
            AxisTitleDistance = 6,
            LabelFormatter = value => UnitFormat.Number(value, 8),
        };
        model.Axes.Add(x);
        model.Axes.Add(y);
        List<(string Label, OxyColor Colour, double[]? Dashes, List<DataPoint> Points)> curves = [];
        for (int d = 0; d < plate.Depths.Count; d++)
        {
            double place = plate.Depths.Count == 1 ? 0.5 : d / (plate.Depths.Count - 1.0);
            List<DataPoint> points = [.. visible.Select(i => new DataPoint(plate.WavelengthsNm[i], plate.Irradiance[d][i])).Where(p => double.IsFinite(p.Y) && p.Y > low * 1e-3)];
            string label = plate.Depths[d] <= 0 ? "surface" : format.LengthText(plate.Depths[d]);
            double[]? dashes = (d % 3) switch { 1 => [7, 3], 2 => [2.5, 2.5], _ => null };
            curves.Add((label, Palette.Weight(place), dashes, points));
            LineSeries series = new() { Color = curves[^1].Colour, StrokeThickness = 2.2, Dashes = dashes, LineJoin = LineJoin.Round };
            series.Points.AddRange(points);
            model.Series.Add(series);
        }

        model.Paint(AnnotationLayer.BelowSeries, area => PaintStrip(area), clip: false);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            LabelPlacer placer = new(area.Bounds);
            List<List<ScreenPoint>> lines = [.. curves.Select(c => c.Points.Select(p => area.At(p.X, p.Y)).ToList())];
            foreach (List<ScreenPoint> line in lines)
                placer.AddLine([.. line.Where(area.Bounds.Contains)]);
            List<LabelPlacer.Placement> placements = [];
            for (int i = 0; i < curves.Count; i++)
            {
                List<ScreenPoint> inside = [.. lines[i].Where(area.Bounds.Contains)];
                // A depth whose light is all below the scale has no line to write on; the caption covers it.
                if (inside.Count == 0)
                    continue;

                LabelRequest request = new()
                {
                    Text = curves[i].Label,
                    Anchors = [.. inside.OrderBy(p => p.Y)],
                    Size = options.SmallFontSize,
                    Bold = true,
                    Colour = curves[i].Colour,
                    AnchorCost = 30,
                    Rivals = [.. lines.Where((_, k) => k != i).Select(l => (IReadOnlyList<ScreenPoint>)l)],
                };
                if (placer.Place(request) is { } placement)
                    placements.Add(placement);
            }

            LabelPlacer.Draw(area, placements);
        });

        return new Figure(options)
        {
            Name = "light-spectrum",
            Section = FigureSection.Colours,
            Title = options.Units.Spell("Which colors of light are left at depth"),
            Subtitle = "daylight coming down, by wavelength",
            Model = model,
            PlotHeight = options.Narrow ? 340 : 360,
            Caption = options.Units.Spell("Each line is a depth; each step down is ten times less light. A lure can only show the colors that are left: where a line has dropped, that color is gone."),
            AltText = $"Curves of the light coming down, by wavelength, at {plate.Depths.Count} depths. {Grammar.Capital(Describe(plate, plate.Depths.Count - 1, visible, format))}.",
        };
    }

    private static string Describe(SpectrumPlate plate, int d, List<int> visible, UnitFormat format)
    {
        string depth = plate.Depths[d] <= 0 ? "just below the surface" : $"at {format.LengthText(plate.Depths[d])}";
        int peak = visible.Count == 0 ? 0 : visible.MaxBy(i => plate.Irradiance[d][i]);
        return $"{depth} the most light is at {UnitFormat.Number(plate.WavelengthsNm[peak], 0)} nm";
    }

    // A strip in the colours of the spectrum between the plot and the numbers of its axis.
    private static void PaintStrip(PaintArea area)
    {
        OxyRect bounds = area.Bounds;
        for (double nm = 390; nm < 720; nm += 3)
        {
            double left = area.At(nm, 1).X;
            area.Fill(new OxyRect(left, bounds.Bottom + 3, bounds.Right - left, 9), Rainbow.Colour(nm));
        }
    }
}
