using LureSim.Decision.Trips;
using LureSim.Report.Rendering;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>A day by the clock: a lane a spot, shaded by how good its hours are, with the stops on it.</summary>
public static class TripTimeline
{
    // Long names lose their end, on a phone and where what is done at the spot stands behind them.
    private const double NameShare = 0.7;

    /// <summary>Draws the figure.</summary>
    /// <param name="facts">The day.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(DayFacts facts, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(options);
        TripDay day = facts.Day;
        int spots = facts.Scenarios.Count;
        double lane = options.Narrow ? 62 : 58, most = Math.Max(1e-9, day.Worth.Max(row => row.DefaultIfEmpty(0).Max()));
        PlotModel model = PlotBase.Model(options);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, "time of day", day.Clock.Start, day.Clock.End);
        x.MajorStep = day.Clock.End - day.Clock.Start > 8 || options.Narrow ? 2 : 1;
        x.LabelFormatter = TideWords.Clock;
        model.Axes.Add(x);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, spots));
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            for (int spot = 0; spot < spots; spot++)
            {
                double top = area.Bounds.Top + (area.Bounds.Height * spot / spots), high = area.Bounds.Height / spots, text = options.SmallFontSize * 1.5;
                OxyRect Box(double from, double to) => new(area.At(from, 0).X, top + text, area.At(to, 0).X - area.At(from, 0).X, high - text - 4);
                for (int slot = 0; slot < day.Worth[spot].Count; slot++)
                {
                    double from = day.Clock.Start + (slot * TripClock.Slot), share = day.Worth[spot][slot] / most;
                    OxyRect box = Box(from, from + TripClock.Slot);
                    area.Fill(box, share > 0 ? OxyColor.Interpolate(OxyColor.FromRgb(0xF4, 0xF7, 0xF9), Palette.SkyBlue, share) : OxyColors.White);
                    if (share <= 0) Shapes.Hatch(area.Context, box, Hatch.Rising, OxyColor.FromRgb(0xC4, 0xCA, 0xD0));
                }

                if (spot > 0) area.Line([new(area.Bounds.Left, top), new(area.Bounds.Right, top)], Palette.Grid, 1);
                TripStop? stop = day.Stops.FirstOrDefault(item => item.Spot == spot);
                string rig = stop is null ? "not today" : $"{TideWords.Clock(stop.Arrive)} to {TideWords.Clock(stop.Leave)}, {TripWords.Heads(facts, stop)}";
                double room = stop is null ? 0 : Math.Max(area.At(stop.Arrive, 0).X - area.Bounds.Left, area.Bounds.Right - area.At(stop.Leave, 0).X);
                bool behind = stop is not null && Wide(rig) > room - 12;
                double nameRoom = behind ? area.Bounds.Width - Wide(TripWords.Heads(facts, stop!)) - 24 : NameShare * area.Bounds.Width;
                string place = BundledFont.Cut($"{spot + 1}. {TripWords.Place(facts, spot)}", nameRoom, options.SmallFontSize, stop is null ? FontWeights.Normal : FontWeights.Bold);
                area.Text(new ScreenPoint(area.Bounds.Left + 6, top + (text / 2) + 1), place, options.SmallFontSize, Palette.Ink, HorizontalAlignment.Left, VerticalAlignment.Middle, bold: stop is not null);
                if (stop is null) continue;
                OxyRect visit = Box(stop.Arrive, stop.Leave).Deflate(new OxyThickness(1, 5, 1, 5));
                area.Context.DrawRectangle(visit, Palette.Blue, Palette.Ink, 1.2, EdgeRenderingMode.Adaptive);
                int number = day.Stops.ToList().IndexOf(stop) + 1;
                area.Text(new ScreenPoint(visit.Left + (visit.Width / 2), visit.Top + (visit.Height / 2)), UnitFormat.Number(number, 0), options.FontSize, OxyColors.White, bold: true);
                bool left = visit.Left - area.Bounds.Left > area.Bounds.Right - visit.Right;

                // Where there is no room beside the visit the words stand behind the name of the spot, without the hours where those do not fit either.
                double above = area.Bounds.Width - Wide(place, bold: true);
                if (behind)
                {
                    area.Text(new ScreenPoint(area.Bounds.Right - 6, top + (text / 2) + 1), Wide(rig) > above - 24 ? TripWords.Heads(facts, stop) : rig, options.SmallFontSize, Palette.Ink, HorizontalAlignment.Right, VerticalAlignment.Middle);
                    continue;
                }

                area.Text(new ScreenPoint(left ? visit.Left - 6 : visit.Right + 6, visit.Top + (visit.Height / 2)), rig, options.SmallFontSize, Palette.Ink, left ? HorizontalAlignment.Right : HorizontalAlignment.Left, VerticalAlignment.Middle);
            }

            double Wide(string words, bool bold = false) => area.Context.MeasureText(words, "", options.SmallFontSize, bold ? FontWeights.Bold : FontWeights.Normal).Width;

            // Ways between the stops, which pass behind the words.
            OxyRect[] words = [.. area.Placed.Select(text => text.Box.Inflate(new OxyThickness(3, 1, 3, 1)))];
            foreach (TripStop stop in day.Stops)
            {
                double y = area.Bounds.Top + (area.Bounds.Height * (stop.Spot + 0.65) / spots);
                if (stop != day.Stops[0])
                {
                    TripStop before = day.Stops[day.Stops.ToList().IndexOf(stop) - 1];
                    double from = area.Bounds.Top + (area.Bounds.Height * (before.Spot + 0.65) / spots);
                    foreach ((ScreenPoint start, ScreenPoint end) in Shapes.Outside(new(area.At(before.Leave, 0).X, from), new(area.At(Math.Min(stop.Arrive, before.Leave + stop.Travel), 0).X, y), words))
                        area.Line([start, end], Palette.Vermilion, 2.2, [6, 4]);
                }
            }
        });
        return new Figure(options)
        {
            Name = "trip-timeline",
            Section = FigureSection.Trip,
            Title = "The day by the clock",
            Subtitle = TripWords.Total(day),
            Model = model,
            PlotHeight = (lane * spots) + 56,
            Keys =
            [
                KeyItem.Box("you are there", Palette.Blue, Palette.Ink),
                KeyItem.Box("the darker, the better the hour", Palette.SkyBlue, Palette.Line),
                KeyItem.Box("not fishable, or no tide given", OxyColors.White, OxyColor.FromRgb(0xA0, 0xA8, 0xB0), Hatch.Rising),
            ],
            Caption = "A lane for each spot. An hour is as good as its best rig then fishes the strike zone; how many fish are there is yours to say (worth). Dashed: on the way.",
            AltText = $"Timeline of {UnitFormat.Counted(spots, "spot")} from {TideWords.Clock(day.Clock.Start)} to {TideWords.Clock(day.Clock.End)}: {string.Join("; ", day.Stops.Select(stop => $"{TripWords.Place(facts, stop.Spot)} {TideWords.Clock(stop.Arrive)} to {TideWords.Clock(stop.Leave)}"))}.",
        };
    }
}
