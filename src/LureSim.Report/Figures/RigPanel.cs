using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Rendering;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>One lure of the picture of a rig: from the side, from above, with its faults marked, its path and its verdict.</summary>
internal sealed class RigPanel
{
    private const double MostHeight = 150, NarrowHeight = 78, Inset = 14, ViewPadding = 24, Badge = 9, MarkRadius = 8.5, LineGap = 4;

    private static readonly OxyColor Bad = Palette.Vermilion, Good = OxyColor.FromRgb(0x00, 0x7A, 0x5A);

    private readonly LureOutline outline;
    private readonly LureAssembly parts;
    private readonly Rigging rigging;
    private readonly Rig rig;
    private readonly EnsembleAssessment tries;
    private readonly UnitFormat format;

    // Least and greatest forward, left and up of all that is drawn (m).
    private readonly Vector3d least, most;

    private RigPanel(Rig rig, Rigging rigging, LureAssembly parts, EnsembleAssessment retrieve, EnsembleAssessment? twitch, string heading, IReadOnlyList<RigFault> put, UnitFormat format)
    {
        this.rig = rig;
        this.rigging = rigging;
        this.parts = parts;
        this.format = format;
        Heading = heading;
        Put = put;
        Wrong = [.. RigWords.FaultsOf(rig, rigging, format)];
        outline = new LureOutline(rig, parts);

        // A rig that is to be twitched is judged by its twitches, unless it goes astray before them.
        tries = twitch is not null && !retrieve.Report.GoesAstray ? twitch : retrieve;
        Path = RigPath.Of(tries, format);
        LureShape shape = outline.Shape(0);
        Vector3d[] all = [.. shape.Rings.SelectMany(ring => ring.Points).Concat(shape.Wires.SelectMany(wire => wire)).Select(outline.At)];
        double ball = shape.Ball?.Radius ?? 0;
        Vector3d middle = shape.Ball is { } b ? outline.At(b.Centre) : all[0];
        least = new(Math.Min(all.Min(p => p.X), middle.X - ball), Math.Min(all.Min(p => p.Y), middle.Y - ball), Math.Min(all.Min(p => p.Z), middle.Z - ball));
        most = new(Math.Max(all.Max(p => p.X), middle.X + ball), Math.Max(all.Max(p => p.Y), middle.Y + ball), Math.Max(all.Max(p => p.Z), middle.Z + ball));
    }

    /// <summary>What lure it is.</summary>
    public string Heading { get; }

    /// <summary>Faults that have been put right.</summary>
    public IReadOnlyList<RigFault> Put { get; }

    /// <summary>Faults that it has.</summary>
    public IReadOnlyList<(RigFault Fault, string Text)> Wrong { get; }

    /// <summary>The path.</summary>
    public RigPath Path { get; }

    public static RigPanel Of(Rig rig, Rigging rigging, LureAssembly parts, EnsembleAssessment retrieve, EnsembleAssessment? twitch, string heading, IReadOnlyList<RigFault> put, UnitFormat format) =>
        new(rig, rigging, parts, retrieve, twitch, heading, put, format);

    /// <summary>The verdict in a line.</summary>
    public string Verdict(UnitFormat units) => SwimmingWords.Brief(tries, units.System);

    /// <summary>The same in a clause.</summary>
    public string Told(UnitFormat units) => SwimmingWords.It(tries, units.System);

    /// <summary>Units of the drawing for a metre at which the lure fills a column.</summary>
    public double ScaleFor(double column, FigureOptions options) => Math.Min((column - (2 * Inset)) / (most.X - least.X), (options.Narrow ? NarrowHeight : MostHeight) / Math.Max(Tall, Broad));

    /// <summary>Height of the view from the side (m).</summary>
    public double Tall => most.Z - least.Z;

    /// <summary>Height of the view from above (m).</summary>
    public double Broad => most.Y - least.Y;

    /// <summary>Height of both views and of the list of faults, without the heading.</summary>
    public double LureHeight(double tall, double broad, double scale, double column, FigureOptions options) =>
        ViewHeight(tall, scale) + ViewHeight(broad, scale) + LineGap + Items(column, options).Sum(item => item.Height);

    /// <summary>Height of the verdict.</summary>
    public double VerdictHeight(double column, FigureOptions options) =>
        BundledFont.Measure(VerdictText(column, options), options.FontSize, FontWeights.Bold).Height + 2 + BundledFont.Measure(ShareText(column, options), options.SmallFontSize, FontWeights.Normal).Height + 4;

    /// <summary>Draws the lure from the side and from above, its faults marked and listed.</summary>
    public void DrawLure(PaintArea area, double left, double top, double column, double scale, double tall, double broad, double heading, FigureOptions options)
    {
        Mark(area, new(left + Badge, top + 11), tries.Report.IsFault);
        area.Text(new(left + (2 * Badge) + 8, top + 11), Grammar.Capital(Heading), options.FontSize, Palette.Ink, HorizontalAlignment.Left, bold: true);
        double y = top + heading;
        y += View(area, left, y, column, scale, tall, above: false, options);
        y += View(area, left, y, column, scale, broad, above: true, options) + LineGap;
        foreach ((int number, string text, double height) in Items(column, options))
        {
            double middle = y + (BundledFont.LineHeight(options.SmallFontSize) / 2);
            if (number > 0) Number(area, new(left + MarkRadius, middle), number, options);
            else Mark(area, new(left + MarkRadius, middle), false, 7);
            area.Text(new(left + (2 * MarkRadius) + 7, y), text, options.SmallFontSize, Palette.Ink, HorizontalAlignment.Left, VerticalAlignment.Top);
            y += height;
        }
    }

    /// <summary>Draws the path and the verdict under it.</summary>
    public void DrawPath(PaintArea area, OxyRect box, double scale, double low, double high, double heading, double strip, FigureOptions options)
    {
        area.Text(new(box.Left, box.Top + (heading / 2)), $"what it does in {SwimmingWords.WayText(format)}, from above", options.SmallFontSize, Palette.SoftInk, HorizontalAlignment.Left);
        OxyRect water = new(box.Left, box.Top + heading, box.Width, strip);
        area.Fill(water, Palette.Water);
        Path.Draw(area, water, scale, low, high, outline, rig.Body, parts, rigging, tries.Report, options);
        double y = water.Bottom + 6;
        string verdict = VerdictText(box.Width, options);
        area.Text(new(box.Left, y), verdict, options.FontSize, tries.Report.IsFault ? Bad : Good, HorizontalAlignment.Left, VerticalAlignment.Top, bold: true);
        y += BundledFont.Measure(verdict, options.FontSize, FontWeights.Bold).Height + 2;
        area.Text(new(box.Left, y), ShareText(box.Width, options), options.SmallFontSize, Palette.SoftInk, HorizontalAlignment.Left, VerticalAlignment.Top);
    }

    private static double ViewHeight(double extent, double scale) => (extent * scale) + (2 * ViewPadding);

    private string VerdictText(double column, FigureOptions options) => BundledFont.Wrap(Grammar.Capital(Verdict(options.Format)) + ".", column, options.FontSize, FontWeights.Bold);

    private string ShareText(double column, FigureOptions options) => BundledFont.Wrap(Grammar.Capital(SwimmingWords.Share(tries)) + ".", column, options.SmallFontSize, FontWeights.Normal);

    // What is wrong, by number; what has been put right, with a tick; or that nothing is wrong.
    private IEnumerable<(int Number, string Text, double Height)> Items(double column, FigureOptions options)
    {
        IEnumerable<(int, string)> lines = [.. Wrong.Select((wrong, i) => (i + 1, wrong.Text)), .. Put.Select(fault => (0, RigWords.Right(fault)))];
        if (!lines.Any()) lines = [(0, rig.Body.NeedsHead ? "rigged straight" : "nothing to rig")];
        foreach ((int number, string line) in lines)
        {
            string text = BundledFont.Wrap(line, column - (2 * MarkRadius) - 7, options.SmallFontSize, FontWeights.Normal);
            yield return (number, text, Math.Max(2 * MarkRadius, BundledFont.Measure(text, options.SmallFontSize, FontWeights.Normal).Height) + 3);
        }
    }

    // The lure lies nose to the right, as it is drawn in toward the rod.
    private double View(PaintArea area, double left, double top, double column, double scale, double extent, bool above, FigureOptions options)
    {
        double low = above ? least.Y : least.Z, high = above ? most.Y : most.Z, height = ViewHeight(extent, scale);
        high += (extent - (high - low)) / 2;
        OxyRect box = new(left, top, column, height - 3);
        area.Fill(box, OxyColor.FromRgb(0xF4, 0xF7, 0xF9));
        area.Text(new(left + 5, top + 3), above ? "from above" : "from the side", options.SmallFontSize, Palette.SoftInk, HorizontalAlignment.Left, VerticalAlignment.Top);
        double centre = left + (column / 2), middle = 0.5 * (least.X + most.X);
        ScreenPoint Project(Vector3d p) => new(centre + ((p.X - middle) * scale), top + ViewPadding - 1 + ((high - (above ? p.Y : p.Z)) * scale));
        outline.Draw(area.Context, Project, scale, 0, faint: false, above ? 1 : 0);
        if (rig.Body.NeedsHead && (above ? parts.BendSideways : parts.BendUp) != 0)
            area.Line([Project(new(parts.Length / 2, 0, 0)), Project(new(-parts.Length / 2, 0, 0))], Palette.Ink, 1, [2, 3]);
        if (!above) ScaleBar(area, box, scale, options);
        for (int i = 0; i < Wrong.Count; i++)
        {
            if (Place(Wrong[i].Fault, above) is not { } place) continue;
            ScreenPoint at = Project(outline.At(place.At));
            double up = place.Below ? 1 : -1;
            ScreenPoint disc = new(Math.Clamp(at.X + place.Aside, box.Left + MarkRadius + 2, box.Right - MarkRadius - 2), up < 0 ? box.Top + MarkRadius + 3 : box.Bottom - MarkRadius - 3);
            area.Line([disc, at], OxyColors.White, 3.4);
            area.Line([disc, at], Bad, 1.5);
            Shapes.Disc(area.Context, at, 2.6, Bad, OxyColors.White, 0.8);
            Number(area, disc, i + 1, options);
        }

        return height;
    }

    // Where a fault is seen, in which view, and to which side its number stands.
    private (Station At, bool Below, double Aside)? Place(RigFault fault, bool above)
    {
        double shank = parts.Engagement, length = parts.Length;
        Station On(double aft)
        {
            Station centre = BodyBends.CentreLine(aft, shank, parts.BendSideways, parts.BendUp);
            return above ? centre : centre with { Up = centre.Up + (0.3 * parts.Height) };
        }

        Station point = parts.Parts.FirstOrDefault(p => p.Role == PartRole.Point)?.Centre ?? new Station(shank, 0, 0);
        return (fault, above) switch
        {
            (RigFault.ExitSideways, true) => (new(shank, 0, 0), rigging.ExitSideways < 0, 14),
            (RigFault.ExitAbove, false) => (new(shank, 0, point.Up), false, 16),
            (RigFault.Bend, true) => (On(0.5 * (shank + length)), parts.BendSideways > 0, -12),
            (RigFault.PointLean, true) => (new(shank - (0.06 * length), 2 * point.Left, 0), rigging.PointLean < 0, -16),
            (RigFault.HeadTurn, true) => (new(0, 0, 0), rigging.HeadTurn < 0, -18),
            (RigFault.PulledUp, false) => (On(0.5 * shank), true, 0),
            (RigFault.Shank, false) => (new(shank, 0, 0), true, -14),
            (RigFault.HookGape, false) => (new(shank, 0, 2 * point.Up), false, -18),
            (RigFault.WeightStation, false) => (parts.Parts.FirstOrDefault(p => p.Role == PartRole.ShankWeight)?.Centre ?? default, true, 16),
            (RigFault.TailLost, false) => (BodyBends.CentreLine(length, shank, parts.BendSideways, parts.BendUp), true, 8),
            _ => null,
        };
    }

    private void ScaleBar(PaintArea area, OxyRect box, double scale, FigureOptions options)
    {
        double metres = format.System == UnitSystem.Us ? 0.0254 : 0.02, wide = metres * scale;
        double right = box.Right - 8, y = box.Top + 11;
        area.Line([new(right - wide, y - 3), new(right - wide, y + 3)], Palette.SoftInk, 1.2);
        area.Line([new(right, y - 3), new(right, y + 3)], Palette.SoftInk, 1.2);
        area.Line([new(right - wide, y), new(right, y)], Palette.SoftInk, 1.2);
        area.Text(new(right - wide - 5, y), format.SizeText(metres), options.SmallFontSize, Palette.SoftInk, HorizontalAlignment.Right);
    }

    private static void Number(PaintArea area, ScreenPoint at, int number, FigureOptions options)
    {
        Shapes.Disc(area.Context, at, MarkRadius, Bad, OxyColors.White, 1);
        area.Context.DrawText(at, UnitFormat.Number(number, 0), OxyColors.White, "", options.SmallFontSize, FontWeights.Bold, 0, HorizontalAlignment.Center, VerticalAlignment.Middle);
    }

    // A cross or a tick in a disc: told by its shape as well as by its colour.
    private static void Mark(PaintArea area, ScreenPoint at, bool bad, double radius = Badge)
    {
        Shapes.Disc(area.Context, at, radius, bad ? Bad : Good, OxyColors.Undefined, 0);
        double d = 0.45 * radius;
        if (bad)
        {
            area.Line([new(at.X - d, at.Y - d), new(at.X + d, at.Y + d)], OxyColors.White, 2);
            area.Line([new(at.X - d, at.Y + d), new(at.X + d, at.Y - d)], OxyColors.White, 2);
        }
        else
        {
            area.Line([new(at.X - (1.1 * d), at.Y), new(at.X - (0.2 * d), at.Y + (0.9 * d)), new(at.X + (1.2 * d), at.Y - (0.9 * d))], OxyColors.White, 2);
        }
    }
}
