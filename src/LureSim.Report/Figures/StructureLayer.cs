using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>What stands in the water and its shade, from the side and from above.</summary>
internal static class StructureLayer
{
    private static readonly OxyColor Wood = OxyColor.FromArgb(0xD8, 0x7A, 0x5C, 0x3E);
    private static readonly OxyColor Dark = OxyColor.FromArgb(0x38, 0x10, 0x20, 0x30);

    /// <summary>Whether the side view is drawn against the distance straight out, so that the lure stands over and beside what it is over and beside.</summary>
    public static bool StraightOut(Spot spot) => spot.Profile is { IsEven: false } || spot.Structures.Count > 0;

    /// <summary>Paints all structures of a spot from the side.</summary>
    public static void PaintSide(PaintArea area, Spot spot, UnitFormat format, double sky)
    {
        foreach (SpotStructure structure in spot.Structures)
        {
            double from = format.LengthValue(structure.From), to = format.LengthValue(structure.To), middle = 0.5 * (structure.From + structure.To);
            double bottom = format.LengthValue(spot.Profile?.DepthAt(middle) ?? spot.Depth);
            if (structure.ShadeFrom is { } begin && structure.ShadeTo is { } end)
            {
                double[] places = [.. Enumerable.Range(0, 25).Select(i => begin + ((end - begin) * i / 24))];
                ScreenPoint[] floor = [.. places.Select(at => area.At(format.LengthValue(at), format.LengthValue(spot.Profile?.DepthAt(at) ?? spot.Depth)))];
                area.Context.DrawPolygon([area.At(format.LengthValue(begin), 0), .. floor, area.At(format.LengthValue(end), 0)], Dark, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
            }

            switch (structure.Kind)
            {
                case StructureKind.Posts:
                    area.Fill(Wide(area.Between(from, -0.35 * sky, to, bottom)), Wood);
                    break;
                case StructureKind.Overhang:
                    {
                        double height = Math.Min(format.LengthValue(structure.Height), 0.7 * sky);
                        OxyRect deck = area.Between(from, -height, to, -height);
                        area.Fill(Wide(new OxyRect(deck.Left, deck.Top - 6, deck.Width, 6)), Wood);
                        break;
                    }

                case StructureKind.OysterClump:
                    {
                        double high = format.LengthValue(structure.Height), centre = 0.5 * (from + to), half = Math.Max(0.5 * (to - from), 1e-6);
                        ScreenPoint[] dome = [.. Enumerable.Range(0, 21).Select(i => -1 + (0.1 * i)).Select(u => area.At(centre + (u * half), bottom - (high * Math.Sqrt(Math.Max(0, 1 - (u * u))))))];
                        area.Context.DrawPolygon(dome, OxyColor.FromRgb(0xB9, 0xAE, 0x9E), OxyColor.FromRgb(0x6B, 0x5A, 0x3C), 1.2, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
                        break;
                    }

                default:
                    throw new ArgumentOutOfRangeException(nameof(spot), structure.Kind, "Not a structure.");
            }
        }
    }

    /// <summary>Corners of a structure seen from above, along the profile and to its left (m).</summary>
    public static IReadOnlyList<(double Along, double Left)> Corners(SpotStructure s)
    {
        // What is narrower than a boot would not be seen.
        const double Least = 0.3;
        double half = 0.5 * Math.Max(Least, s.Width), middle = 0.5 * (s.From + s.To), reach = 0.5 * Math.Max(Least, s.To - s.From);
        return [(middle - reach, s.Left - half), (middle - reach, s.Left + half), (middle + reach, s.Left + half), (middle + reach, s.Left - half)];
    }

    /// <summary>Fill of a structure seen from above.</summary>
    public static OxyColor FillFromAbove(SpotStructure structure) => structure.Kind switch
    {
        StructureKind.Posts => Wood,
        StructureKind.Overhang => OxyColor.FromArgb(0x60, 0x7A, 0x5C, 0x3E),
        StructureKind.OysterClump => OxyColor.FromRgb(0xCF, 0xC6, 0xB8),
        _ => throw new ArgumentOutOfRangeException(nameof(structure), structure.Kind, "Not a structure."),
    };

    /// <summary>Labels of the structures in the side view.</summary>
    public static IEnumerable<LabelRequest> Labels(PaintArea area, Spot spot, UnitFormat format, FigureOptions options, double sky) => spot.Structures.Select(structure =>
    {
        double x = format.LengthValue(0.5 * (structure.From + structure.To)), bottom = format.LengthValue(spot.Profile?.DepthAt(0.5 * (structure.From + structure.To)) ?? spot.Depth);
        double y = structure.Kind == StructureKind.OysterClump ? bottom - format.LengthValue(structure.Height) : -Math.Min(structure.Kind == StructureKind.Overhang ? format.LengthValue(structure.Height) : 0.35 * sky, 0.7 * sky);
        ScreenPoint at = area.At(x, y);
        return new LabelRequest
        {
            Text = StructureWords.Name(structure) + (Math.Abs(structure.Left) < 0.05 ? "" : $", {format.HandText(Math.Abs(structure.Left))} {(structure.Left > 0 ? "left" : "right")}"),
            Anchors = [new(at.X, at.Y - 16), new(at.X - 60, at.Y - 16), new(at.X + 60, at.Y - 16), new(at.X, at.Y + 16), new(at.X - 70, at.Y + 30), new(at.X + 70, at.Y + 30)],
            Size = options.SmallFontSize,
            Centred = true,
            Optional = true,
        };
    });

    // Never too thin to be seen.
    private static OxyRect Wide(OxyRect box) => box.Width >= 5 ? box : new OxyRect(box.Left + (0.5 * box.Width) - 2.5, box.Top, 5, box.Height);
}
