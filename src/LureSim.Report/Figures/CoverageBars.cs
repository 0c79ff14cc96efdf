using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Where each jig head spends its retrieve.</summary>
public static class CoverageBars
{
    /// <summary>Draws the figure.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="candidates">Candidates fished the same way, one a jig head.</param>
    /// <param name="first">The first choice, or null.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(Scenario scenario, IReadOnlyList<Candidate> candidates, Candidate? first, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(options);

        UnitFormat format = options.Format;
        Dictionary<JigHead, HeadStyle> styles = HeadStyle.For(scenario, candidates, format);
        int rows = Math.Max(1, candidates.Count);
        bool anyBottom = candidates.Any(c => c.Coverage.BottomShare > 0);
        bool anyGrass = candidates.Any(c => c.Coverage.GrassShare > 0);
        OxyColor above = OxyColor.FromRgb(0xB9, 0xDC, 0xF2);
        OxyColor zone = OxyColor.FromRgb(0xF0, 0xD9, 0x3A);
        OxyColor below = OxyColor.FromRgb(0x2F, 0x6E, 0xA0);
        OxyColor bottom = OxyColor.FromRgb(0x7A, 0x5C, 0x32);

        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, "share of the retrieve (%)", 0, 100);
        x.MajorStep = options.Narrow ? 25 : 20;
        PlotAxis y = CoverageMap.Rows(options, "", rows, i => candidates.Count == 0 ? "" : styles[candidates[i].Rig.Head].Label);
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int r = 0; r < candidates.Count; r++)
            {
                Coverage coverage = candidates[r].Coverage;
                double thin = (anyBottom ? 0.13 : 0) + (anyGrass ? 0.13 : 0);
                double topEdge = r - 0.4;
                double end = r + 0.4 - thin;
                double left = 0;
                foreach ((double share, OxyColor fill, Hatch hatch) in ((double, OxyColor, Hatch)[])
                    [(coverage.AboveShare, above, Hatch.Level), (coverage.ZoneShare, zone, Hatch.None), (coverage.BelowShare, below, Hatch.Falling)])
                {
                    if (!(share > 0))
                        continue;

                    OxyRect box = area.Between(left, topEdge, left + (100 * share), end);
                    area.Context.DrawRectangle(box, fill, OxyColors.White, 1, EdgeRenderingMode.Adaptive);
                    OxyColor ink = Palette.TextOn(fill);
                    Shapes.Hatch(area.Context, box, hatch, OxyColor.FromAColor(0x50, ink));
                    string text = UnitFormat.PercentText(share);
                    double size = Math.Min(options.SmallFontSize, box.Height * 0.8);
                    OxySize extent = area.Context.MeasureText(text, "", size, FontWeights.Bold);
                    if (extent.Width + 8 < box.Width)
                    {
                        ScreenPoint centre = new(box.Left + (box.Width / 2), box.Top + (box.Height / 2));
                        area.Fill(new OxyRect(centre.X - (extent.Width / 2) - 2, centre.Y - (extent.Height / 2), extent.Width + 4, extent.Height), fill);
                        area.Text(centre, text, size, ink, bold: true);
                    }

                    left += 100 * share;
                }

                double y0 = end;
                foreach ((double share, bool any, OxyColor fill, Hatch hatch) in ((double, bool, OxyColor, Hatch)[])
                    [(coverage.BottomShare, anyBottom, bottom, Hatch.None), (coverage.GrassShare, anyGrass, Palette.Grass, Hatch.Rising)])
                {
                    if (!any)
                        continue;

                    if (share > 0)
                    {
                        OxyRect strip = area.Between(0, y0 + 0.02, 100 * share, y0 + 0.12);
                        area.Context.DrawRectangle(strip, fill, OxyColors.Undefined, 0, EdgeRenderingMode.Adaptive);
                        Shapes.Hatch(area.Context, strip, hatch, OxyColors.White);
                    }

                    y0 += 0.13;
                }

                if (SideView.IsFirst(candidates[r], first))
                {
                    OxyRect frame = area.Between(0, r - 0.46, 100, r + 0.46);
                    Shapes.Frame(area.Context, frame);
                }
            }
        });

        double row = Math.Clamp(420.0 / rows, 34, 58);
        return new Figure(options)
        {
            Name = "coverage-bars",
            Section = FigureSection.Weight,
            Title = "Where each jig head spends its retrieve",
            Subtitle = SideView.RetrieveText(candidates),
            Model = model,
            PlotHeight = (row * rows) + 66,
            Keys =
            [
                KeyItem.Box("above the zone", above, Palette.Line, Hatch.Level),
                KeyItem.Box("in the zone", zone, Palette.Line),
                KeyItem.Box("below the zone", below, OxyColors.White, Hatch.Falling),
                .. anyBottom ? [KeyItem.Box("thin bar: on bottom", bottom, bottom)] : Array.Empty<KeyItem>(),
                .. anyGrass ? [KeyItem.Box("thin bar: in grass", Palette.Grass, OxyColors.White, Hatch.Rising)] : Array.Empty<KeyItem>(),
                .. first is null ? Array.Empty<KeyItem>() : [KeyItem.Box("choice", OxyColors.White, Palette.Vermilion)],
            ],
            Caption = "Each thick bar is one retrieve, from the first turn of the handle to the rod tip. The thin bars under it are time on bottom and in grass, which may also be time in the zone.",
            AltText = $"Bars: how much of the retrieve each head is above, in and below the strike zone. {(first is null ? "" : $"{format.HeadText(first.Rig.Head)}: {UnitFormat.PercentText(first.Coverage.AboveShare)} above, {UnitFormat.PercentText(first.Coverage.ZoneShare)} in, {UnitFormat.PercentText(first.Coverage.BelowShare)} below, {UnitFormat.PercentText(first.Coverage.BottomShare)} on bottom.")}".TrimEnd(),
        };
    }
}
