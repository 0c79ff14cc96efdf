using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>Time in the strike zone of each jig head over all draws, with its chance to be the best.</summary>
public static class ChanceBars
{
    /// <summary>Draws the figure.</summary>
    /// <param name="study">The study.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(UncertaintyStudy study, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(study);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        IReadOnlyList<HeadUncertainty> heads = study.Heads;
        Dictionary<JigHead, HeadStyle> styles = HeadStyle.For(heads.Select(h => h.Head), format);
        int rows = heads.Count;
        // Room for a marker at nothing.
        double left = options.Narrow ? -4 : -2;
        double right = options.Narrow ? 133 : 118;
        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, "share of the retrieve in the strike zone (%)", left, right);
        x.MajorStep = options.Narrow ? 25 : 20;
        x.IsShown = value => value is >= -1e-9 and <= 100 + 1e-9;
        x.MajorGridlineStyle = LineStyle.None;
        PlotAxis y = CoverageMap.Rows(options, "", rows, i => styles[heads[i].Head].Label);
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (double tick = 0; tick <= 100; tick += x.MajorStep)
                area.Line([area.At(tick, -0.5), area.At(tick, rows - 0.5)], Palette.Grid, 1);
            for (int r = 0; r < rows; r++)
            {
                HeadUncertainty head = heads[r];
                Interval zone = head.ZoneShare;
                HeadStyle style = styles[head.Head];
                bool best = head == study.Best;
                OxyRect chance = area.Between(102, r - 0.34, right - 1, r + 0.34);
                area.Context.DrawRectangle(chance, Palette.Share(head.ChanceBest), Palette.Line, 0.8, EdgeRenderingMode.Adaptive);
                area.Text(new ScreenPoint(chance.Left + (chance.Width / 2), chance.Top + (chance.Height / 2)), UnitFormat.PercentText(head.ChanceBest), options.SmallFontSize, Palette.TextOn(Palette.Share(head.ChanceBest)), bold: true);

                // Every draw as a tick, the middle eight tenths as a bar, the median as the head's marker.
                foreach (double share in head.Outcomes.Select(o => o.ZoneShare))
                    area.Line([area.At(100 * share, r + 0.18), area.At(100 * share, r + 0.34)], OxyColor.FromAColor(0x70, style.Colour), 1);
                OxyRect bar = area.Between(100 * zone.Low, r - 0.16, 100 * zone.High, r + 0.1);
                area.Context.DrawRectangle(bar.Width < 2 ? new OxyRect(bar.Left - 1, bar.Top, 2, bar.Height) : bar, OxyColor.FromAColor(0x66, style.Colour), style.Colour, 1, EdgeRenderingMode.Adaptive);
                Shapes.Marker(area.Context, area.At(100 * zone.Median, r - 0.03), style.Shape, style.Filled, style.Colour, 5.5);
                if (best)
                {
                    OxyRect frame = area.Between(left, r - 0.46, right, r + 0.46);
                    Shapes.Frame(area.Context, frame);
                }
            }
        });

        double row = Math.Clamp(430.0 / rows, 34, 60);
        return new Figure(options)
        {
            Name = "chance-bars",
            Section = FigureSection.Certainty,
            Title = "How sure is it? Time in the strike zone over the what-if tries",
            Subtitle = $"{study.Draws.Count} tries of current, cast, speed, depth, rod and line drag: {study.Presentation.Name}",
            Model = model,
            PlotHeight = (row * rows) + 66,
            Keys =
            [
                KeyItem.Box("8 times in 10", OxyColor.FromAColor(0x66, Palette.Weight(0.5)), Palette.Weight(0.5)),
                KeyItem.Symbol("typical", (rc, p, _) => Shapes.Marker(rc, p, MarkerShape.Circle, true, Palette.Weight(0.5), 4.5)),
                KeyItem.Symbol("one try", (rc, p, _) => rc.DrawLine([new ScreenPoint(p.X, p.Y - 5), new ScreenPoint(p.X, p.Y + 5)], Palette.Weight(0.5), 1.2, EdgeRenderingMode.Adaptive, null, LineJoin.Miter)),
                KeyItem.Ramp("right: how often this head is best", Palette.Share),
                KeyItem.Box("choice", OxyColors.White, Palette.Vermilion),
            ],
            Caption = "All heads meet the same tries. Best goes by the score, which also weighs grass, bottom, waiting and swing. A short bar is a head that forgives what you can't know.",
            AltText = $"Bars: time in the strike zone of each head over {study.Draws.Count} tries. {format.HeadText(study.Best.Head)}: {UnitFormat.PercentNumber(study.Best.ZoneShare.Low)} to {UnitFormat.PercentText(study.Best.ZoneShare.High)}, best in {UncertaintyWords.Tries(study.Best.ChanceBest, study)}.",
        };
    }
}
