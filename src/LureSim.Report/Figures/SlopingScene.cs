using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>A bottom that is not the same all along, with what grows on it and the zone over it, in plots of depth over the distance along the profile.</summary>
/// <param name="Spot">The spot, seen along the cast.</param>
/// <param name="Format">Units of the axes.</param>
/// <param name="Left">Left end of the horizontal axis.</param>
/// <param name="Right">Right end of the horizontal axis.</param>
/// <param name="Floor">Lower end of the depth axis, in its unit.</param>
internal sealed record SlopingScene(Spot Spot, UnitFormat Format, double Left, double Right, double Floor)
{
    // Distance of the points of a curve (1/96 inch).
    private const double Pitch = 3;

    private double PerMetre => Format.LengthValue(1);

    /// <summary>Zone, grass and bottom.</summary>
    public void Paint(PaintArea area)
    {
        ScreenPoint[] bottom = Curve(area, at => Depth(at));
        ScreenPoint[] top = Curve(area, at => Math.Max(0, Spot.StrikeZone.Top + Shift(at))), low = Curve(area, at => Math.Max(0, Spot.StrikeZone.Bottom + Shift(at)));
        area.Context.DrawPolygon([.. top, .. low.Reverse()], Palette.Zone, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        PaintZoneEdges(area);
        foreach ((BottomKind kind, double grass, ScreenPoint[] run) in Runs(area, bottom))
        {
            if (grass > 0) PaintGrass(area, run, grass);
            PaintGround(area, run, kind);
        }

        area.Line(bottom, OxyColor.FromRgb(0x6B, 0x5A, 0x3C), 1.6);
    }

    /// <summary>The edges of the zone.</summary>
    public void PaintZoneEdges(PaintArea area)
    {
        foreach (double edge in (double[])[Spot.StrikeZone.Top, Spot.StrikeZone.Bottom])
        {
            // Only where there is water at that depth.
            List<ScreenPoint> line = [];
            foreach (double at in Places(area))
            {
                double depth = edge + Shift(at);
                if (depth >= 0 && depth <= Depth(at) + 1e-9)
                {
                    line.Add(area.At(at, Format.LengthValue(depth)));
                    continue;
                }

                if (line.Count > 1) area.Line(line, Palette.ZoneEdge, 1.2, [5, 3]);
                line = [];
            }

            if (line.Count > 1) area.Line(line, Palette.ZoneEdge, 1.2, [5, 3]);
        }
    }

    /// <summary>Labels of the zone and of each kind of bottom.</summary>
    public IEnumerable<LabelRequest> Labels(PaintArea area, FigureOptions options)
    {
        StrikeZone zone = Spot.StrikeZone;
        string band = zone.MovesWithBottom ? $"{Format.BandText(Spot.Depth - zone.Bottom, Spot.Depth - zone.Top)} above bottom" : Format.BandText(zone.Top, zone.Bottom);
        double[] places = Places(area);
        double[] wet = [.. places.Where(at => Depth(at) > zone.Top + Shift(at) + (0.3 * (zone.Bottom - zone.Top)))];
        if (wet.Length > 0)
        {
            yield return new LabelRequest
            {
                Text = options.Narrow ? $"zone {band}" : $"strike zone, {band}",
                Anchors = [.. wet.Where((_, i) => i % 6 == 3 || wet.Length < 6).Select(at => area.At(at, Format.LengthValue(0.5 * (Math.Max(0, zone.Top + Shift(at)) + zone.Bottom + Shift(at)))))],
                Size = options.SmallFontSize,
                Bold = true,
                Colour = OxyColor.FromRgb(0x5C, 0x50, 0x00),
                Centred = true,
            };
        }

        double floor = area.At(0, Floor).Y;
        foreach ((BottomKind kind, double grass, ScreenPoint[] run) in Runs(area, Curve(area, at => Depth(at))))
        {
            if (run.Length < 8) continue;
            double[] depths = [.. run.Select(p => Depth(Place(area, p)))];
            string name = Spot.Profile!.StretchAt(Place(area, run[run.Length / 2]) / PerMetre)?.Name is { } named ? $"{named}, " : "";
            string deep = options.Narrow ? "" : Math.Abs(depths.Max() - depths.Min()) < 0.05 ? $" at {Format.HandText(depths.Max())}" : $", {Format.HandBand(depths.Min(), depths.Max())}";
            yield return new LabelRequest
            {
                Text = name + SpotWords.Bottom(kind) + deep,
                Anchors = [.. run.Where((_, i) => i % 5 == 2).OrderByDescending(p => floor - p.Y).Select(p => new ScreenPoint(p.X, p.Y + Math.Min(0.5 * (floor - p.Y), 16)))],
                Size = options.SmallFontSize,
                Centred = true,
                Optional = true,
            };
            if (grass > 0)
            {
                yield return new LabelRequest
                {
                    Text = $"grass, {Format.LengthText(grass)} high",
                    Anchors = [.. run.Where((_, i) => i % 5 == 2).Select(p => new ScreenPoint(p.X, p.Y - (0.5 * GrassPixels(area, grass))))],
                    Size = options.SmallFontSize,
                    Colour = OxyColor.FromRgb(0x1D, 0x5A, 0x35),
                    Bold = true,
                    Centred = true,
                    Optional = true,
                };
            }
        }
    }

    private double Depth(double at) => Spot.Profile!.DepthAt(at / PerMetre);

    private double Shift(double at) => Spot.StrikeZone.Shift(Spot.Depth, Depth(at));

    private double[] Places(PaintArea area)
    {
        double pixels = area.Between(Left, 0, Right, 0).Width;
        int count = Math.Max(8, (int)(pixels / Pitch));
        return [.. Enumerable.Range(0, count + 1).Select(i => Left + ((Right - Left) * i / count))];
    }

    private ScreenPoint[] Curve(PaintArea area, Func<double, double> depth) => [.. Places(area).Select(at => area.At(at, Format.LengthValue(depth(at))))];

    private double Place(PaintArea area, ScreenPoint point)
    {
        OxyRect all = area.Between(Left, 0, Right, 0);
        return Left + ((Right - Left) * (point.X - all.Left) / Math.Max(1e-9, all.Width));
    }

    // Stretches of one kind and one height of grass, with the points of the bottom over them.
    private IEnumerable<(BottomKind Kind, double Grass, ScreenPoint[] Run)> Runs(PaintArea area, ScreenPoint[] bottom)
    {
        int start = 0;
        for (int i = 1; i <= bottom.Length; i++)
        {
            if (i < bottom.Length && Of(bottom[i]) == Of(bottom[start])) continue;
            (BottomKind kind, double grass) = Of(bottom[start]);
            yield return (kind, grass, bottom[start..Math.Min(bottom.Length, i + 1)]);
            start = i;
        }

        (BottomKind Kind, double Grass) Of(ScreenPoint point)
        {
            double along = Place(area, point) / PerMetre;
            return (Spot.BottomAt(along), Spot.GrassAt(along));
        }
    }

    private double GrassPixels(PaintArea area, double grass) => Math.Abs(area.At(0, Format.LengthValue(grass)).Y - area.At(0, 0).Y);

    private void PaintGrass(PaintArea area, ScreenPoint[] run, double grass)
    {
        double high = GrassPixels(area, grass);
        area.Context.DrawPolygon([.. run, .. run.Reverse().Select(p => new ScreenPoint(p.X, p.Y - high))], OxyColor.FromArgb(0x33, 0x3E, 0x8E, 0x5A), OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        OxyColor colour = OxyColor.FromArgb(0xB0, 0x3E, 0x8E, 0x5A);
        for (int i = 0; i < run.Length; i += 3)
        {
            double height = high * (0.7 + (0.3 * WaterScene.Scatter(i + 1000))), lean = (WaterScene.Scatter(i + 2000) - 0.35) * Math.Min(14, high * 0.5);
            area.Line([run[i], new(run[i].X + (lean * 0.25), run[i].Y - (height * 0.55)), new(run[i].X + lean, run[i].Y - height)], colour, 1.3);
        }
    }

    private void PaintGround(PaintArea area, ScreenPoint[] run, BottomKind kind)
    {
        double floor = area.At(0, Floor).Y;
        (OxyColor fill, OxyColor mark) = WaterScene.Ground(kind);
        area.Context.DrawPolygon([.. run, new(run[^1].X, floor), new(run[0].X, floor)], fill, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        int index = 0;
        for (int i = 0; i < run.Length; i++)
        {
            for (double y = run[i].Y + 6 + (12 * WaterScene.Scatter(index + 7)); y < floor - 3; y += 30 + (20 * WaterScene.Scatter(index)))
            {
                index++;
                WaterScene.Mark(area, new ScreenPoint(run[i].X + (Pitch * WaterScene.Scatter(index + 300)), y), kind, mark);
            }

            index += 13;
        }
    }
}
