using LureSim.Decision.RigChecks;
using LureSim.Lures;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>
/// The rig in one look: the lure to scale from the side and from above with its faults marked, the path that it takes in ten feet, and the verdict; beside it the same lure put right.
/// </summary>
public static class RigPicture
{
    private const double ColumnGap = 14, Heading = 30, Gap = 6, PathHeading = 24, LeastStrip = 92, MostStrip = 210, NarrowStrip = 108;

    /// <summary>Draws the figure.</summary>
    /// <param name="focus">The rig.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static Figure Create(RigFocus focus, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(focus);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        LureKind kind = focus.Action.Rig.Body.Kind;
        IReadOnlyList<(RigFault Fault, string Text)> wrong = [.. RigWords.FaultsOf(focus.Action.Rig, focus.Rigging, format)];
        RigPanel own = RigPanel.Of(focus.Action.Rig, focus.Rigging, focus.Parts, focus.Action.Retrieve, focus.Action.Twitch, kind.NeedsHead ? "as it is rigged" : "as it comes", [], format);
        RigPanel? right = focus.Fixed is { } put
            ? RigPanel.Of(focus.Action.Rig, put.Rigging, put.Parts, put.Retrieve, put.Twitch, focus.Fixes.Count > 0 && !put.Retrieve.Report.IsFault ? "fixed" : "rigged straight", [.. wrong.Select(w => w.Fault).Except(RigWords.FaultsOf(focus.Action.Rig, put.Rigging, format).Select(w => w.Fault))], format)
            : null;
        RigPanel[] panels = right is null ? [own] : [own, right];

        PlotModel model = PlotBase.Model(options);
        model.Padding = new OxyThickness(12, 6, 12, 4);
        model.PlotAreaBorderThickness = new OxyThickness(0);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Bottom, 0, 1));
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, 1));

        // Wide: two lures side by side, each over its path, or one lure beside its path. Narrow: all under each other.
        bool aside = !options.Narrow;
        double width = options.Pixels - 24, column = aside ? (width - ColumnGap) / 2 : width;
        double scale = panels.Min(p => p.ScaleFor(column, options));
        double path = RigPath.Scale(column);
        (double mostRight, double mostLeft) = (Math.Min(0, panels.Min(p => p.Path.Lowest)), Math.Max(0, panels.Max(p => p.Path.Highest)));
        double strip = Math.Clamp(((mostLeft - mostRight) * path) + 72, LeastStrip, options.Narrow ? NarrowStrip : MostStrip);
        double high = panels.Max(p => p.Tall), broad = panels.Max(p => p.Broad);
        double lure = Heading + panels.Max(p => p.LureHeight(high, broad, scale, column, options)), line = panels.Max(p => p.VerdictHeight(column, options));
        double swim = PathHeading + strip + Gap + line;
        bool single = aside && right is null;
        double tall = single ? Math.Max(lure, Heading + swim) : aside ? lure + Gap + swim : panels.Length * (lure + Gap + swim) + ((panels.Length - 1) * 14);
        model.Paint(AnnotationLayer.BelowSeries, area =>
        {
            for (int i = 0; i < panels.Length; i++)
            {
                double left = area.Bounds.Left + (aside ? i * (column + ColumnGap) : 0), top = area.Bounds.Top + (aside ? 0 : i * (lure + Gap + swim + 14));
                panels[i].DrawLure(area, left, top, column, scale, high, broad, Heading, options);
                double pathLeft = single ? left + column + ColumnGap : left, pathTop = single ? top + Heading : top + lure + Gap;
                panels[i].DrawPath(area, new OxyRect(pathLeft, pathTop, column, swim), path, mostRight, mostLeft, PathHeading, strip, options);
            }
        });
        string name = $"{format.LureText(focus.Action.Rig.Body)}{(focus.Action.Rig.Head.IsNone ? "" : ", " + format.HeadText(focus.Action.Rig.Head))}";
        return new Figure(options)
        {
            Name = "rig-picture",
            Section = FigureSection.Rig,
            Order = -1,
            Title = "Your rig, and what it does",
            Subtitle = $"{name}, {focus.Action.Rig.Presentation.Name}: {format.SpeedText(focus.Action.Speed)}",
            Model = model,
            PlotHeight = tall + 10,
            Keys =
            [
                .. kind.NeedsHead ? [KeyItem.Line("straight line of the hook", Palette.SoftInk, 1, [2, 3])] : Array.Empty<KeyItem>(),
                .. kind.IsPlate ? Array.Empty<KeyItem>() : [KeyItem.Line(kind.NeedsHead ? "seam: middle of the back" : "middle of the back", OxyColor.FromRgb(0x0B, 0x3A, 0x5C), 1.2, [4, 3])],
                .. wrong.Count > 0 ? [KeyItem.Symbol("what is wrong", (rc, p, _) => Shapes.Disc(rc, p, 6, Palette.Vermilion, OxyColors.White, 1))] : Array.Empty<KeyItem>(),
            ],
            Caption = $"The lure is to scale, laid down at rest; so is the path of {SwimmingWords.WayText(format)}, on which the lures are drawn larger. Dark is the back, pale the belly.",
            AltText = Text(panels, format),
        };
    }

    private static string Text(RigPanel[] panels, UnitFormat format) => string.Join(" ", panels.Select(p =>
        $"{Grammar.Capital(p.Heading)}{(p.Wrong.Count > 0 ? $" ({string.Join(", ", p.Wrong.Select(w => w.Text))})" : "")} {p.Told(format)}."));
}
