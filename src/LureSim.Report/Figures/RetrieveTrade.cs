using LureSim.Decision.Search;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>What retrieves give and cost: time in the zone with the action on against time clear of bottom and grass, all that was tried.</summary>
public static class RetrieveTrade
{
    // With its action on for less than this share of the time a lure counts as dull.
    private const double Lively = 0.5;

    private static readonly (OxyColor Colour, MarkerShape Shape)[] Looks =
    [
        (Palette.Blue, MarkerShape.Circle),
        (Palette.Vermilion, MarkerShape.Square),
        (Palette.BluishGreen, MarkerShape.Triangle),
        (Palette.DarkOrange, MarkerShape.Diamond),
        (OxyColor.FromRgb(0x6A, 0x3D, 0x9A), MarkerShape.TriangleDown),
        (Palette.Surface, MarkerShape.Pentagon),
    ];

    /// <summary>Draws the figure.</summary>
    /// <param name="search">The search.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(RetrieveSearch search, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        Dictionary<RetrieveFamily, (OxyColor Colour, MarkerShape Shape)> looks = RetrieveFamily.All.Select((family, i) => (family, i)).ToDictionary(p => p.family, p => Looks[p.i % Looks.Length]);
        (OxyColor Colour, MarkerShape Shape) Look(RetrieveTrial trial) => trial.Family is { } family && looks.TryGetValue(family, out (OxyColor, MarkerShape) look) ? look : (Palette.Ink, MarkerShape.Pentagon);
        IReadOnlyList<RetrieveTrial> front = search.Front;

        PlotModel model = PlotBase.Model(options);

        // What is never in the zone with its action on gives nothing to weigh.
        RetrieveTrial[] tried = [.. search.Families.SelectMany(f => f.Tried).Where(t => t.LiveZoneShare > 0)];
        double far = 100 * tried.Concat(search.Families.Select(f => f.Best)).Concat(search.Own).Max(t => t.LiveZoneShare);
        double low = 100 * tried.Concat(search.Families.Select(f => f.Best)).Concat(search.Own).Min(t => t.ClearShare);
        double right = Math.Max(10, far * 1.12), bottom = Math.Min(88, low - 6);
        PlotAxis x = PlotBase.Axis(options, AxisPosition.Bottom, "working in the strike zone (% of the time)", -0.03 * right, right);
        x.IsShown = value => value is >= -1e-9 and <= 100.001;
        PlotAxis y = PlotBase.Axis(options, AxisPosition.Left, options.Narrow ? "clear of bottom and grass (%)" : "clear of bottom and grass (% of the time)", bottom, 100 + (0.12 * (100 - bottom)));
        y.IsShown = value => value is >= -1e-9 and <= 100.001;
        model.Axes.Add(x);
        model.Axes.Add(y);
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            LabelPlacer placer = new(area.Bounds);
            ScreenPoint At(RetrieveTrial trial) => area.At(100 * trial.LiveZoneShare, 100 * trial.ClearShare);
            void Avoid(ScreenPoint at, double size) => placer.AddLine([new(at.X - size, at.Y - size), new(at.X + size, at.Y + size), new(at.X - size, at.Y + size), new(at.X + size, at.Y - size)]);

            // Beyond this stair nothing was found.
            List<ScreenPoint> stair = [];
            for (int i = 0; i < front.Count; i++)
            {
                if (i == 0) stair.Add(area.At(0, 100 * front[0].ClearShare));
                else stair.Add(area.At(100 * front[i - 1].LiveZoneShare, 100 * front[i].ClearShare));
                stair.Add(At(front[i]));
            }

            if (front.Count > 0)
            {
                stair.Add(area.At(100 * front[^1].LiveZoneShare, bottom));
                area.Line(stair, Palette.Line, 1.2, [2, 3]);
                placer.AddLine(stair);
            }

            foreach (RetrieveTrial trial in tried)
            {
                (OxyColor colour, MarkerShape shape) = Look(trial);
                Shapes.Marker(area.Context, At(trial), shape, !IsDull(trial), colour, 2.6);
                Avoid(At(trial), 3);
            }

            List<LabelRequest> labels = [];
            foreach (FamilyResult family in search.Families)
            {
                (OxyColor colour, MarkerShape shape) = Look(family.Best);
                Shapes.Marker(area.Context, At(family.Best), shape, !IsDull(family.Best), colour, 7);
                Avoid(At(family.Best), 8);
                bool best = family == search.Best;
                labels.Add(new LabelRequest { Text = $"{family.Family.Name}, {format.SpeedText(family.Best.Presentation.RetrieveSpeed)}", Anchors = [At(family.Best)], Size = options.FontSize - 1, Bold = best });
            }

            foreach (RetrieveTrial own in search.Own)
            {
                Shapes.Marker(area.Context, At(own), MarkerShape.Pentagon, false, Palette.Ink, 5);
                Avoid(At(own), 6);
                labels.Add(new LabelRequest { Text = $"yours: {own.Presentation.Name}", Anchors = [At(own)], Size = options.SmallFontSize, Colour = Palette.SoftInk, Optional = own != search.BestOwn });
            }

            LabelPlacer.Draw(area, [.. labels.Select(placer.Place).OfType<LabelPlacer.Placement>()]);
        });
        RetrieveTrial winner = search.Best.Best;
        string lure = ChoiceWords.Lure(search.Head, search.Body, format);
        return new Figure(options)
        {
            Name = "retrieve-trade",
            Section = FigureSection.Retrieve,
            Title = "Time in the zone, and what it costs",
            Subtitle = $"{lure}: {search.Families.Sum(f => f.Tried.Count)} retrieves tried",
            Model = model,
            PlotHeight = options.Narrow ? 340 : 420,
            Keys =
            [
                .. search.Families.Select(f => KeyItem.Symbol(f.Family.Name, (rc, at, _) => Shapes.Marker(rc, at, Look(f.Best).Shape, true, Look(f.Best).Colour, 4))),
                KeyItem.Symbol("yours", (rc, at, _) => Shapes.Marker(rc, at, MarkerShape.Pentagon, false, Palette.Ink, 5)),
                KeyItem.Symbol($"hollow: working less than {UnitFormat.PercentText(Lively)} of the time", (rc, at, _) => Shapes.Marker(rc, at, MarkerShape.Circle, false, Palette.SoftInk, 4)),
                KeyItem.Line("limit of what was found", Palette.Line, 1.2, [2, 3]),
            ],
            Caption = "Every mark is a retrieve; large marks are the best of each kind. Up and to the right is better. "
                + "What time clear of the bottom is worth depends on the bottom: the score weighs shell and grass most.",
            AltText = $"Marks of all retrieves tried, time working in the zone against time clear of bottom and grass. Best: {winner.Presentation.Name}, working in the zone {UnitFormat.PercentText(winner.LiveZoneShare)}, clear {UnitFormat.PercentText(winner.ClearShare)}.",
        };
    }

    private static bool IsDull(RetrieveTrial trial) => trial.ActionShare < Lively;
}
