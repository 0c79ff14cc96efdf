using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>A label that wants a place near one of several points.</summary>
internal sealed record LabelRequest
{
    /// <summary>The text; broken into lines if it is wide for the plot.</summary>
    public required string Text { get; init; }

    /// <summary>Points of the drawing it may belong to, the dearest first.</summary>
    public required IReadOnlyList<ScreenPoint> Anchors { get; init; }

    /// <summary>Text size.</summary>
    public required double Size { get; init; }

    /// <summary>Text colour.</summary>
    public OxyColor Colour { get; init; } = Palette.Ink;

    /// <summary>Bold text.</summary>
    public bool Bold { get; init; }

    /// <summary>Style whose marker stands before the text, or null.</summary>
    public HeadStyle? Marker { get; init; }

    /// <summary>True: left out when there is no room near an anchor. False: placed further off with a leader line.</summary>
    public bool Optional { get; init; }

    /// <summary>True: sits on one of its anchors (text in a band), and goes elsewhere only if all are taken.</summary>
    public bool Centred { get; init; }

    /// <summary>What an anchor late in the list costs against the first (1/96 inch of distance for the whole list).</summary>
    public double AnchorCost { get; init; } = 40;

    /// <summary>Points that this label may not be confused with: other lines of the same kind.</summary>
    public IReadOnlyList<IReadOnlyList<ScreenPoint>> Rivals { get; init; } = [];
}

/// <summary>
/// Puts labels where they cover neither each other nor, as far as there is room, the lines: greedy, in the
/// order given, least cost first. Nothing random, so a drawing comes out the same every time.
/// </summary>
internal sealed class LabelPlacer
{
    private const double Cell = 3;
    private const double Gap = 3;
    private const double LineCost = 4;
    private const double RivalReach = 16;

    private readonly OxyRect bounds;
    private readonly int columns;
    private readonly int rows;
    private readonly int[] ink;
    private readonly List<OxyRect> taken = [];
    private int[]? sums;

    public LabelPlacer(OxyRect bounds)
    {
        this.bounds = bounds;
        columns = Math.Max(1, (int)Math.Ceiling(bounds.Width / Cell));
        rows = Math.Max(1, (int)Math.Ceiling(bounds.Height / Cell));
        ink = new int[columns * rows];
    }

    /// <summary>A place of a label.</summary>
    /// <param name="Request">The label.</param>
    /// <param name="Box">Its box, marker included.</param>
    /// <param name="Anchor">The point it belongs to.</param>
    /// <param name="Leader">True if it stands so far off that a line must lead to the point.</param>
    public sealed record Placement(LabelRequest Request, OxyRect Box, ScreenPoint Anchor, bool Leader);

    /// <summary>Room for a marker before the text.</summary>
    public const double MarkerRoom = 14;

    /// <summary>Keeps an area free of labels.</summary>
    public void Block(OxyRect area) => taken.Add(area);

    /// <summary>Marks a line that labels should rather not cover.</summary>
    public void AddLine(IReadOnlyList<ScreenPoint> points)
    {
        sums = null;
        for (int i = 0; i < points.Count; i++)
        {
            ScreenPoint to = points[i];
            ScreenPoint from = i == 0 ? to : points[i - 1];
            double length = (to - from).Length;
            int steps = double.IsFinite(length) ? Math.Clamp((int)(length / Cell), 1, 2000) : 0;
            for (int k = 1; k <= steps; k++)
                Mark(from.X + ((to.X - from.X) * k / steps), from.Y + ((to.Y - from.Y) * k / steps));
        }
    }

    /// <summary>Places one label; null if it is optional and there is no room.</summary>
    public Placement? Place(LabelRequest request)
    {
        double weight = request.Bold ? FontWeights.Bold : FontWeights.Normal;
        OxySize text = Rendering.BundledFont.Measure(request.Text, request.Size, weight);
        if (text.Width > 0.6 * bounds.Width)
        {
            request = request with { Text = Rendering.BundledFont.Wrap(request.Text, 0.5 * bounds.Width, request.Size, weight) };
            text = Rendering.BundledFont.Measure(request.Text, request.Size, weight);
        }

        double width = text.Width + 6 + (request.Marker is null ? 0 : MarkerRoom);
        double height = text.Height;
        Placement? best = null;
        double bestCost = double.PositiveInfinity;

        double[] reaches = request.Optional ? [6, 12] : [6, 14, 28, 46, 70];
        for (int a = 0; a < request.Anchors.Count; a++)
        {
            ScreenPoint anchor = request.Anchors[a];
            double anchorCost = request.Anchors.Count == 1 ? 0 : request.AnchorCost * a / (request.Anchors.Count - 1);
            anchorCost += RivalCost(request, anchor);
            if (anchorCost >= bestCost)
                continue;

            if (request.Centred)
                Try(anchor, anchor.X - (width / 2), anchor.Y - (height / 2), anchorCost, leader: false);

            foreach (double reach in request.Centred ? [] : reaches)
            {
                for (int direction = 0; direction < 16; direction++)
                {
                    double angle = direction * Math.PI / 8;
                    // The box touches a circle of this radius from outside, in this direction.
                    double x = anchor.X + (reach * Math.Cos(angle)) + (((Math.Cos(angle) - 1) / 2) * width);
                    double y = anchor.Y + (reach * Math.Sin(angle)) + (((Math.Sin(angle) - 1) / 2) * height);
                    Try(anchor, x, y, anchorCost + reach + (reach > 20 ? 25 : 0), reach > 20);
                }
            }
        }

        if (best is null && !request.Optional && request.Anchors.Count > 0)
        {
            // No room nearby: anywhere in the plot, the closer the better.
            ScreenPoint anchor = request.Anchors[0];
            for (double y = bounds.Top + 2; y + height <= bounds.Bottom - 2; y += height / 3)
            {
                for (double x = bounds.Left + 2; x + width <= bounds.Right - 2; x += 12)
                {
                    double distance = Math.Sqrt(Math.Pow(x + (width / 2) - anchor.X, 2) + Math.Pow(y + (height / 2) - anchor.Y, 2));
                    Try(anchor, x, y, distance, leader: true);
                }
            }
        }

        if (best is not null)
            taken.Add(best.Box);
        return best;

        void Try(ScreenPoint anchor, double x, double y, double cost, bool leader)
        {
            if (cost >= bestCost || !(x >= bounds.Left + 2 && y >= bounds.Top + 2 && x + width <= bounds.Right - 2 && y + height <= bounds.Bottom - 2))
                return;

            OxyRect box = new(x, y, width, height);
            foreach (OxyRect other in taken)
            {
                if (x < other.Right + Gap && other.Left < x + width + Gap && y < other.Bottom + 1 && other.Top < y + height + 1)
                    return;
            }

            cost += LineCost * Ink(box);
            if (cost < bestCost)
            {
                bestCost = cost;
                best = new Placement(request, box, anchor, leader);
            }
        }
    }

    /// <summary>Draws placed labels, leaders first.</summary>
    public static void Draw(PaintArea area, IReadOnlyList<Placement> placements)
    {
        foreach (Placement p in placements.Where(p => p.Leader))
        {
            double x = Math.Clamp(p.Anchor.X, p.Box.Left, p.Box.Right);
            double y = Math.Clamp(p.Anchor.Y, p.Box.Top, p.Box.Bottom);
            area.Line([p.Anchor, new ScreenPoint(x, y)], p.Request.Marker?.Colour ?? Palette.Line, 1);
        }

        foreach (Placement p in placements)
        {
            LabelRequest request = p.Request;
            area.Fill(p.Box, Palette.Halo);
            double x = p.Box.Left + 3;
            double middle = p.Box.Top + (p.Box.Height / 2);
            if (request.Marker is { } style)
            {
                Shapes.Marker(area.Context, new ScreenPoint(x + 5, middle), style.Shape, style.Filled, style.Colour, 4);
                x += MarkerRoom;
            }

            area.Context.DrawText(new ScreenPoint(x, middle), request.Text, request.Colour, "", request.Size, request.Bold ? FontWeights.Bold : FontWeights.Normal, 0, HorizontalAlignment.Left, VerticalAlignment.Middle);
            area.Placed.Add(new PlacedText(request.Text, p.Box));
        }
    }

    private static double RivalCost(LabelRequest request, ScreenPoint anchor)
    {
        double cost = 0;
        foreach (IReadOnlyList<ScreenPoint> rival in request.Rivals)
        {
            double nearest = RivalReach * RivalReach;
            foreach (ScreenPoint p in rival)
            {
                double dx = p.X - anchor.X;
                double dy = p.Y - anchor.Y;
                nearest = Math.Min(nearest, (dx * dx) + (dy * dy));
            }

            cost += RivalReach - Math.Sqrt(nearest);
        }

        return cost;
    }

    private void Mark(double x, double y)
    {
        if (!bounds.Contains(x, y))
            return;

        int column = Math.Min(columns - 1, (int)((x - bounds.Left) / Cell));
        int row = Math.Min(rows - 1, (int)((y - bounds.Top) / Cell));
        ink[(row * columns) + column] = 1;
    }

    // Number of marked cells under a box, from a summed-area table.
    private int Ink(OxyRect box)
    {
        int[] table = sums ??= Sum();
        int stride = columns + 1;
        int left = Math.Clamp((int)((box.Left - bounds.Left) / Cell), 0, columns);
        int right = Math.Clamp((int)((box.Right - bounds.Left) / Cell) + 1, 0, columns);
        int top = Math.Clamp((int)((box.Top - bounds.Top) / Cell), 0, rows);
        int bottom = Math.Clamp((int)((box.Bottom - bounds.Top) / Cell) + 1, 0, rows);
        return table[(bottom * stride) + right] - table[(top * stride) + right] - table[(bottom * stride) + left] + table[(top * stride) + left];
    }

    private int[] Sum()
    {
        int stride = columns + 1;
        int[] table = new int[stride * (rows + 1)];
        for (int row = 0; row < rows; row++)
        {
            int line = 0;
            for (int column = 0; column < columns; column++)
            {
                line += ink[(row * columns) + column];
                table[((row + 1) * stride) + column + 1] = table[(row * stride) + column + 1] + line;
            }
        }

        return table;
    }
}
