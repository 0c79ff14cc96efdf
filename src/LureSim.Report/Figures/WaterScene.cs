using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>Water, bottom, grass and strike zone behind the tracks, in plots whose vertical axis is depth.</summary>
/// <param name="Spot">The spot.</param>
/// <param name="Format">Units of the axes.</param>
/// <param name="Left">Left end of the horizontal axis.</param>
/// <param name="Right">Right end of the horizontal axis.</param>
/// <param name="Floor">Lower end of the depth axis, in its unit.</param>
internal sealed record WaterScene(Spot Spot, UnitFormat Format, double Left, double Right, double Floor)
{
    /// <summary>Lower end of a depth axis that leaves room for a strip of bottom and its label.</summary>
    public static double FloorFor(Spot spot, UnitFormat format, double topOfAxis, double plotPixels, double stripPixels)
    {
        double depth = format.LengthValue(spot.Depth);
        double share = stripPixels / Math.Max(2 * stripPixels, plotPixels);
        return depth + ((depth - topOfAxis) * share / (1 - share));
    }

    /// <summary>The bottom as it runs, where the horizontal axis is the distance from the rod; null where it is even, or the axis another.</summary>
    public SlopingScene? Slope { get; init; }

    /// <summary>The scene of a plot over the distance from the rod: with the bottom as it runs.</summary>
    public static WaterScene ByDistance(Spot spot, UnitFormat format, double left, double right, double floor) => new(spot, format, left, right, floor)
    {
        Slope = spot.Profile is { IsEven: false } ? new SlopingScene(spot, format, left, right, floor) : null,
    };

    public void Paint(PaintArea area)
    {
        OxyRect water = area.Between(Left, 0, Right, Format.LengthValue(Spot.Depth));
        // Overlapping sheets, each from its own depth to the bottom: darker with depth and without seams.
        area.Fill(water, Palette.Water);
        const int sheets = 7;
        for (int i = 1; i < sheets; i++)
        {
            double top = water.Top + (water.Height * i / sheets);
            area.Fill(new OxyRect(water.Left, top, water.Width, water.Bottom - top), OxyColor.FromArgb(9, 0x1F, 0x6F, 0xA8));
        }

        if (Slope is { } slope)
        {
            slope.Paint(area);
        }
        else
        {
            PlotBase.PaintZone(area, Format.LengthValue(Spot.StrikeZone.Top), Format.LengthValue(Spot.StrikeZone.Bottom), Left, Right);
            PaintGrass(area);
            PaintBottom(area);
        }

        area.Line([new(water.Left, water.Top), new(water.Right, water.Top)], Palette.Surface, 2);
    }

    /// <summary>Labels of the scene, to be placed with the others.</summary>
    public IEnumerable<LabelRequest> Labels(PaintArea area, FigureOptions options) => Slope?.Labels(area, options) ?? EvenLabels(area, options);

    private IEnumerable<LabelRequest> EvenLabels(PaintArea area, FigureOptions options)
    {
        double size = options.SmallFontSize;
        OxyRect bounds = area.Bounds;
        OxyRect zone = area.Between(Left, Format.LengthValue(Spot.StrikeZone.Top), Right, Format.LengthValue(Spot.StrikeZone.Bottom));
        string band = Format.BandText(Spot.StrikeZone.Top, Spot.StrikeZone.Bottom);
        yield return new LabelRequest
        {
            Text = options.Narrow ? $"zone {band}" : $"strike zone, {band}",
            Anchors = PlotBase.Along(bounds.Left, bounds.Right, zone.Top + (zone.Height / 2)),
            Size = size,
            Bold = true,
            Colour = OxyColor.FromRgb(0x5C, 0x50, 0x00),
            Centred = true,
        };
        if (Spot.GrassHeight > 0)
        {
            OxyRect grass = area.Between(Left, Format.LengthValue(Spot.Depth - Spot.GrassHeight), Right, Format.LengthValue(Spot.Depth));
            yield return new LabelRequest
            {
                Text = $"grass, {Format.LengthText(Spot.GrassHeight)} high",
                Anchors = PlotBase.Along(bounds.Left, bounds.Right, grass.Top + (grass.Height / 2)),
                Size = size,
                Colour = OxyColor.FromRgb(0x1D, 0x5A, 0x35),
                Bold = true,
                Centred = true,
            };
        }

        OxyRect ground = area.Between(Left, Format.LengthValue(Spot.Depth), Right, Floor);
        yield return new LabelRequest
        {
            Text = $"{SpotWords.Bottom(Spot.Bottom)} at {Format.LengthText(Spot.Depth)}",
            Anchors = PlotBase.Along(bounds.Left, bounds.Right, ground.Top + (ground.Height / 2)),
            Size = size,
            Centred = true,
        };
    }

    // A number from 0 to 1 that looks random and is the same every time.
    internal static double Scatter(int index)
    {
        double value = Math.Sin((index * 12.9898) + 4.1) * 43758.5453;
        return value - Math.Floor(value);
    }

    private void PaintGrass(PaintArea area)
    {
        if (!(Spot.GrassHeight > 0))
            return;

        OxyRect grass = area.Between(Left, Format.LengthValue(Spot.Depth - Spot.GrassHeight), Right, Format.LengthValue(Spot.Depth));
        area.Fill(grass, OxyColor.FromArgb(0x33, 0x3E, 0x8E, 0x5A));
        const double pitch = 9;
        int blades = (int)(grass.Width / pitch);
        OxyColor colour = OxyColor.FromArgb(0xB0, 0x3E, 0x8E, 0x5A);
        for (int i = 0; i < blades; i++)
        {
            double root = grass.Left + ((i + 0.2 + (0.6 * Scatter(i))) * pitch);
            double height = grass.Height * (0.7 + (0.3 * Scatter(i + 1000)));
            double lean = (Scatter(i + 2000) - 0.35) * Math.Min(14, grass.Height * 0.5);
            area.Line([new(root, grass.Bottom), new(root + (lean * 0.25), grass.Bottom - (height * 0.55)), new(root + lean, grass.Bottom - height)], colour, 1.3);
        }

        area.Line([new(grass.Left, grass.Top), new(grass.Right, grass.Top)], Palette.Grass, 1, [2, 3]);
    }

    private void PaintBottom(PaintArea area)
    {
        OxyRect ground = area.Between(Left, Format.LengthValue(Spot.Depth), Right, Floor);
        (OxyColor fill, OxyColor mark) = Ground(Spot.Bottom);
        area.Fill(ground, fill);
        int count = (int)(ground.Width * ground.Height / 130);
        if (Spot.Bottom == BottomKind.Hard)
            Shapes.Hatch(area.Context, ground, Hatch.Rising, mark);
        for (int i = 0; i < count && Spot.Bottom != BottomKind.Hard; i++)
        {
            ScreenPoint at = new(ground.Left + (Scatter(i) * ground.Width), ground.Top + 3 + (Scatter(i + 5000) * (ground.Height - 5)));
            Mark(area, at, Spot.Bottom, mark);
        }

        area.Line([new(ground.Left, ground.Top), new(ground.Right, ground.Top)], OxyColor.FromRgb(0x6B, 0x5A, 0x3C), 1.6);
    }

    /// <summary>Colours of a kind of bottom: its fill and its marks.</summary>
    internal static (OxyColor Fill, OxyColor Mark) Ground(BottomKind kind) => kind switch
    {
        BottomKind.Hard => (OxyColor.FromRgb(0xC9, 0xCB, 0xCE), OxyColor.FromRgb(0x8B, 0x90, 0x96)),
        BottomKind.Mud => (OxyColor.FromRgb(0xC4, 0xB5, 0xA3), OxyColor.FromRgb(0x8E, 0x79, 0x60)),
        BottomKind.Shell => (OxyColor.FromRgb(0xE2, 0xDC, 0xD2), OxyColor.FromRgb(0x97, 0x8C, 0x7D)),
        BottomKind.Sand => (OxyColor.FromRgb(0xEF, 0xDF, 0xBD), OxyColor.FromRgb(0xB5, 0x9A, 0x62)),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a bottom."),
    };

    /// <summary>A mark of a kind of bottom.</summary>
    internal static void Mark(PaintArea area, ScreenPoint at, BottomKind kind, OxyColor mark)
    {
        switch (kind)
        {
            case BottomKind.Mud:
                area.Line([new(at.X - 4, at.Y), new(at.X + 4, at.Y)], mark, 1);
                break;
            case BottomKind.Shell:
                area.Line([new(at.X - 3, at.Y + 1.5), new(at.X - 1.5, at.Y - 1.5), new(at.X + 1.5, at.Y - 1.5), new(at.X + 3, at.Y + 1.5)], mark, 1);
                break;
            case BottomKind.Hard:
                area.Line([new(at.X - 3, at.Y + 3), new(at.X + 3, at.Y - 3)], mark, 1);
                break;
            case BottomKind.Sand:
                Shapes.Disc(area.Context, at, 0.9, mark, OxyColors.Undefined, 0);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a bottom.");
        }
    }
}
