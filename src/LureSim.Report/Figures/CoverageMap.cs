using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Share of the retrieve in the strike zone by jig head and retrieve speed.</summary>
public static class CoverageMap
{
    /// <summary>Shares of bottom or grass from which a cell is marked (dimensionless): a tenth of the retrieve.</summary>
    public const double MarkFrom = 0.10;

    /// <summary>Draws the figure.</summary>
    /// <param name="grid">The grid; at least one head and one speed.</param>
    /// <param name="first">The first choice, to be framed if its retrieve and speed are in the grid; null frames the cell with most time in the zone.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">The grid is empty, or its arrays do not fit its heads and speeds.</exception>
    public static Figure Create(CoverageGrid grid, Candidate? first, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(grid);
        ArgumentNullException.ThrowIfNull(options);
        int rows = grid.Heads.Count;
        int columns = grid.Speeds.Count;
        if (rows == 0 || columns == 0)
            throw new ArgumentException("The grid needs a jig head and a speed.", nameof(grid));
        foreach (double[,] values in (double[][,])[grid.ZoneShare, grid.BottomShare, grid.GrassShare])
        {
            if (values.GetLength(0) != rows || values.GetLength(1) != columns)
                throw new ArgumentException($"The grid's arrays must be {rows} by {columns}.", nameof(grid));
        }

        UnitFormat format = options.Format;
        Dictionary<JigHead, HeadStyle> styles = HeadStyle.For(grid.Heads, format);
        (int bestRow, int bestColumn) = first is null ? Best(grid) : Find(grid, first);
        PlotModel model = PlotBase.Model(options);
        PlotAxis x = Steps(options, AxisPosition.Bottom, $"reel speed ({format.SpeedUnit})", columns, i => format.SpeedNumber(grid.Speeds[i]));
        PlotAxis y = Rows(options, "", rows, i => styles[grid.Heads[i]].Label);
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int r = 0; r < rows; r++)
            {
                for (int c = 0; c < columns; c++)
                    PaintCell(area, grid, r, c, options);
            }

            if (bestRow >= 0)
            {
                OxyRect best = area.Between(bestColumn - 0.5, bestRow - 0.5, bestColumn + 0.5, bestRow + 0.5);
                area.Context.DrawRectangle(best.Deflate(new OxyThickness(1.5)), OxyColors.Undefined, OxyColors.White, 5, EdgeRenderingMode.Adaptive);
                area.Context.DrawRectangle(best.Deflate(new OxyThickness(1.5)), OxyColors.Undefined, Palette.Vermilion, 3, EdgeRenderingMode.Adaptive);
            }
        });

        double cell = Math.Clamp((options.Narrow ? 420.0 : 400.0) / rows, 32, 56);
        string bestText = bestRow < 0 ? "" : $"{(first is null ? "Most time in the zone" : "The choice")}: {format.HeadText(grid.Heads[bestRow])} at {format.SpeedText(grid.Speeds[bestColumn])}, {UnitFormat.PercentText(grid.ZoneShare[bestRow, bestColumn])} in the zone.";
        return new Figure(options)
        {
            Name = "coverage-map",
            Section = FigureSection.Speed,
            Title = "Percent of the retrieve in the strike zone",
            Subtitle = "Retrieve: " + grid.PresentationName,
            Model = model,
            PlotHeight = (cell * rows) + 66,
            Keys =
            [
                KeyItem.Ramp("0 to 100% in the strike zone", Palette.Share),
                .. Any(grid.BottomShare) ? [KeyItem.Symbol($"on bottom {UnitFormat.PercentText(MarkFrom)} or more", (rc, p, s) => Shapes.BottomMark(rc, p, s, Palette.Ink))] : Array.Empty<KeyItem>(),
                .. Any(grid.GrassShare) ? [KeyItem.Symbol($"in grass {UnitFormat.PercentText(MarkFrom)} or more", (rc, p, s) => Shapes.GrassMark(rc, p, s, Palette.Ink))] : Array.Empty<KeyItem>(),
                .. bestRow < 0 ? Array.Empty<KeyItem>() : [KeyItem.Box(first is null ? "most in the zone" : "choice", OxyColors.White, Palette.Vermilion)],
            ],
            Caption = "A wide bright area around the frame forgives a wrong speed. The choice also weighs time on bottom, in grass and on the way down.",
            AltText = $"Grid of {UnitFormat.Counted(rows, "head")} by {UnitFormat.Counted(columns, "reel speed")} with the percent of the retrieve in the strike zone. {bestText}".TrimEnd(),
        };

        static bool Any(double[,] values) => values.Cast<double>().Any(v => v >= MarkFrom);
    }

    /// <summary>The cell with most time in the zone, of equals the one with least on the bottom or in the grass; -1 if none is in the zone.</summary>
    internal static (int Row, int Column) Best(CoverageGrid grid)
    {
        (int Row, int Column) best = (-1, -1);
        for (int r = 0; r < grid.Heads.Count; r++)
        {
            for (int c = 0; c < grid.Speeds.Count; c++)
            {
                double share = grid.ZoneShare[r, c];
                if (share > 0 && (best.Row < 0 || share > grid.ZoneShare[best.Row, best.Column] || (share == grid.ZoneShare[best.Row, best.Column] && Lost(r, c) < Lost(best.Row, best.Column))))
                    best = (r, c);
            }
        }

        return best;

        double Lost(int r, int c) => Math.Max(grid.BottomShare[r, c], grid.GrassShare[r, c]);
    }

    /// <summary>The cell of a candidate; -1 if the grid does not hold its retrieve and speed.</summary>
    internal static (int Row, int Column) Find(CoverageGrid grid, Candidate candidate)
    {
        Presentation p = candidate.Rig.Presentation;
        if (p.Name != grid.PresentationName)
            return (-1, -1);

        int row = grid.Heads.ToList().IndexOf(candidate.Rig.Head);
        // A thousandth of the speed is rounding, no other speed.
        int column = grid.Speeds.ToList().FindIndex(s => Math.Abs(s - p.RetrieveSpeed) <= 1e-3 * p.RetrieveSpeed);
        return row < 0 || column < 0 ? (-1, -1) : (row, column);
    }

    /// <summary>An axis of numbered cells.</summary>
    internal static PlotAxis Steps(FigureOptions options, AxisPosition position, string title, int count, Func<int, string> label)
    {
        PlotAxis axis = PlotBase.Axis(options, position, title, -0.5, count - 0.5);
        axis.MajorStep = 1;
        axis.MajorGridlineStyle = LineStyle.None;
        axis.MajorTickSize = 0;
        axis.LabelFormatter = value =>
        {
            int index = (int)Math.Round(value);
            return Math.Abs(value - index) < 1e-6 && index >= 0 && index < count ? label(index) : "";
        };
        return axis;
    }

    /// <summary>The same for rows, the first on top.</summary>
    internal static PlotAxis Rows(FigureOptions options, string title, int count, Func<int, string> label)
    {
        PlotAxis axis = Steps(options, AxisPosition.Left, title, count, label);
        axis.StartPosition = 1;
        axis.EndPosition = 0;
        return axis;
    }

    private static void PaintCell(PaintArea area, CoverageGrid grid, int row, int column, FigureOptions options)
    {
        double share = grid.ZoneShare[row, column];
        OxyColor fill = double.IsFinite(share) ? Palette.Share(share) : OxyColors.LightGray;
        OxyColor ink = Palette.TextOn(fill);
        OxyRect box = area.Between(column - 0.5, row - 0.5, column + 0.5, row + 0.5);
        area.Context.DrawRectangle(box, fill, OxyColors.White, 1, EdgeRenderingMode.Adaptive);
        bool bottom = grid.BottomShare[row, column] >= MarkFrom;
        bool grass = grid.GrassShare[row, column] >= MarkFrom;
        int marks = (bottom ? 1 : 0) + (grass ? 1 : 0);
        double size = Math.Min(options.FontSize + 1, box.Height * 0.45);
        double markSize = Math.Min(13, box.Height * 0.4);
        bool side = box.Width > 60;
        ScreenPoint centre = new(box.Left + (box.Width / 2), box.Top + (box.Height / 2));
        // Marks stand right of the number where the cell is wide, under it where it is narrow.
        ScreenPoint number = marks == 0 ? centre : side ? new ScreenPoint(centre.X - (marks * markSize * 0.6), centre.Y) : new ScreenPoint(centre.X, centre.Y - (box.Height * 0.2));
        string text = UnitFormat.PercentNumber(share);
        area.Text(number, text, size, ink, bold: true);
        double width = area.Context.MeasureText(text, "", size, FontWeights.Bold).Width;
        ScreenPoint mark = side ? new ScreenPoint(number.X + (width / 2) + (markSize * 0.8), centre.Y)
            : new ScreenPoint(centre.X - ((marks - 1) * markSize * 0.6), centre.Y + (box.Height * 0.24));
        if (bottom)
        {
            Shapes.BottomMark(area.Context, mark, markSize, ink);
            mark = new ScreenPoint(mark.X + (markSize * 1.2), mark.Y);
        }

        if (grass)
            Shapes.GrassMark(area.Context, mark, markSize, ink);
    }
}
