using System.Globalization;
using LureSim.Report.Figures;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Benchmarks;

/// <summary>Errors of one way of computing, over what they cost.</summary>
/// <param name="Label">Name, written at the curve.</param>
/// <param name="Points">A point for each setting: one cost for each panel, and the error (m), all above 0.</param>
public sealed record ErrorCurve(string Label, IReadOnlyList<(IReadOnlyList<double> Costs, double Error)> Points);

/// <summary>What a figure of errors shows.</summary>
/// <param name="Name">Name for files.</param>
/// <param name="Title">Title.</param>
/// <param name="Subtitle">One line under the title.</param>
/// <param name="Caption">How to read it.</param>
/// <param name="Costs">Titles of the costs, a panel for each.</param>
/// <param name="Curves">The curves, at most six.</param>
public sealed record ErrorFigure(string Name, string Title, string Subtitle, string Caption, IReadOnlyList<string> Costs, IReadOnlyList<ErrorCurve> Curves);

/// <summary>Error of the depth over cost, both logarithmic, a panel for each kind of cost.</summary>
public static class ErrorCurves
{
    private const double PanelGap = 0.05;

    private static readonly OxyColor[] Colours = [Palette.Blue, Palette.Vermilion, Palette.BluishGreen, Palette.Ink, Palette.Orange, Palette.SkyBlue];

    /// <summary>Draws the figure.</summary>
    /// <param name="content">What it shows.</param>
    /// <param name="options">Units (errors are in millimetres in either) and width.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Figure Create(ErrorFigure content, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(options);
        PlotModel model = PlotBase.Model(options);
        IEnumerable<double> errors = content.Curves.SelectMany(c => c.Points).Select(p => Math.Log10(1000 * p.Error));
        PlotAxis y = LogAxis(options, AxisPosition.Left, "largest error in depth (mm)", errors);
        model.Axes.Add(y);
        int panels = content.Costs.Count;
        for (int i = 0; i < panels; i++)
        {
            int panel = i;
            PlotAxis x = LogAxis(options, AxisPosition.Bottom, content.Costs[i], content.Curves.SelectMany(c => c.Points).Select(p => Math.Log10(p.Costs[panel])));
            x.Key = $"cost {i}";
            x.StartPosition = (i + (i > 0 ? PanelGap / 2 : 0)) / panels;
            x.EndPosition = (i + 1 - (i + 1 < panels ? PanelGap / 2 : 0)) / panels;
            model.Axes.Add(x);
            model.Annotations.Add(new Painter(AnnotationLayer.AboveSeries, area => Paint(area, content, panel, x, y, options), true) { XAxisKey = x.Key });
        }

        return new Figure(options)
        {
            Name = content.Name,
            Section = FigureSection.Documentation,
            Title = content.Title,
            Subtitle = content.Subtitle,
            Model = model,
            PlotHeight = options.Narrow ? 360 : 380,
            Caption = content.Caption,
            AltText = string.Join(". ", content.Curves.Select(c => string.Create(
                CultureInfo.InvariantCulture,
                $"{c.Label}: {string.Join("; ", c.Points.Select(p => string.Create(CultureInfo.InvariantCulture, $"{1000 * p.Error:G2} mm at {content.Costs[0]} {p.Costs[0]:G3}")))}"))) + ".",
        };
    }

    private static PlotAxis LogAxis(FigureOptions options, AxisPosition position, string title, IEnumerable<double> logarithms)
    {
        double[] values = [.. logarithms];
        PlotAxis axis = PlotBase.Axis(options, position, title, (Math.Floor(5 * values.Min()) / 5) - 0.1, (Math.Ceiling(5 * values.Max()) / 5) + 0.1);
        bool wide = axis.Maximum - axis.Minimum > 1.6;
        axis.MajorStep = wide ? 1 : Math.Log10(2);
        axis.LabelFormatter = value => Number(Math.Pow(10, value));
        return axis;
    }

    private static string Number(double value) =>
        value >= 1e6 ? string.Create(CultureInfo.InvariantCulture, $"{value / 1e6:G3} million") : double.Round(value, value >= 10 ? 0 : 6).ToString(value >= 1000 ? "#,0" : "0.######", CultureInfo.InvariantCulture);

    private static void Paint(PaintArea area, ErrorFigure content, int panel, PlotAxis x, PlotAxis y, FigureOptions options)
    {
        OxyRect bounds = area.Between(x.Minimum, y.Minimum, x.Maximum, y.Maximum);
        area.Line([new(bounds.Left, bounds.Top), new(bounds.Left, bounds.Bottom)], Palette.Line, 1);
        area.Line([new(bounds.Right, bounds.Top), new(bounds.Right, bounds.Bottom)], Palette.Line, 1);
        LabelPlacer placer = new(bounds);
        List<List<ScreenPoint>> lines = [.. content.Curves.Select(c => c.Points.Select(p => area.At(Math.Log10(p.Costs[panel]), Math.Log10(1000 * p.Error))).ToList())];
        for (int i = 0; i < lines.Count; i++)
        {
            OxyColor colour = Colours[i % Colours.Length];
            area.Line(lines[i], colour, i == 0 ? 3 : 1.8);
            placer.AddLine(lines[i]);
            foreach (ScreenPoint point in lines[i])
            {
                Shapes.Marker(area.Context, point, (MarkerShape)(i % Enum.GetValues<MarkerShape>().Length), true, colour, i == 0 ? 4.5 : 3.8);
                placer.Block(new OxyRect(point.X - 5, point.Y - 5, 10, 10));
            }
        }

        LabelPlacer.Draw(area, [.. lines.Select((line, i) => placer.Place(new LabelRequest
        {
            Text = content.Curves[i].Label,
            Anchors = line,
            Size = options.SmallFontSize,
            Bold = i == 0,
            Colour = Colours[i % Colours.Length],
            Rivals = [.. lines.Where((_, j) => j != i)],
        })).OfType<LabelPlacer.Placement>()]);
    }
}
