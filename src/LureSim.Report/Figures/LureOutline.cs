using LureSim.Swimming.Bodies;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Swimming;
using LureSim.Tackle;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>What a piece of a drawn lure is.</summary>
internal enum LurePiece
{
    Body,
    Tail,
    Metal,
    Wire,
}

/// <summary>
/// A lure as flat pieces in body axes (origin at the middle, x towards the nose, y to the left, z up; m), bent as it is rigged. Several lengthwise cuts through the
/// body stand for its roundness, so that it can be drawn from any side.
/// </summary>
internal sealed class LureOutline
{
    private const int CentreSteps = 22;
    private const int Cuts = 4;

    private readonly LureBody body;
    private readonly JigHead head;
    private readonly LureAssembly parts;
    private readonly IReadOnlyList<OutlineSection> sections;

    public LureOutline(Rig rig, LureAssembly parts)
    {
        body = rig.Body;
        head = rig.Head;
        this.parts = parts;
        sections = LureParts.Sections(body.Profile);
    }

    /// <summary>Overall length (m).</summary>
    public double Length => body.Length;

    /// <summary>Draws the lure.</summary>
    /// <param name="rc">The context.</param>
    /// <param name="project">From a point in body axes to the drawing.</param>
    /// <param name="scale">Units of the drawing for a metre.</param>
    /// <param name="tailAngle">Tail to the left (radians).</param>
    /// <param name="faint">True for a pale drawing.</param>
    public void Draw(IRenderContext rc, Func<Vector3d, ScreenPoint> project, double scale, double tailAngle, bool faint)
    {
        List<(LurePiece Piece, List<ScreenPoint> Points)> rings = [.. Rings(tailAngle).Select(r => (r.Piece, r.Points.ConvertAll(p => project(p))))];
        double edge = scale * Length > 60 ? 2.2 : 1.6;
        foreach ((LurePiece piece, List<ScreenPoint> points) in rings)
            rc.DrawPolygon(points, OxyColors.Undefined, EdgeOf(piece, faint), edge, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        foreach ((LurePiece piece, List<ScreenPoint> points) in rings)
            rc.DrawPolygon(points, FillOf(piece, faint), FillOf(piece, faint), 0.4, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        foreach (List<Vector3d> wire in Wires())
            rc.DrawLine([.. wire.Select(project)], EdgeOf(LurePiece.Wire, faint), Math.Clamp(0.0012 * scale, 0.8, 2.2), EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        if (head.Mass > 0 && parts.Parts.FirstOrDefault(p => p.Name is "head" or "shank weight") is { } lead)
        {
            double radius = Math.Cbrt(3 * lead.Volume / (4 * Math.PI));
            Shapes.Disc(rc, project(At(lead.Centre)), Math.Max(1.5, radius * scale), FillOf(LurePiece.Metal, faint), EdgeOf(LurePiece.Metal, faint), 1);
        }
    }

    private static OxyColor FillOf(LurePiece piece, bool faint) => piece switch
    {
        LurePiece.Metal => faint ? OxyColor.FromRgb(0xC4, 0xCC, 0xD3) : Palette.Line,
        LurePiece.Tail => faint ? OxyColor.FromRgb(0xF5, 0xDF, 0xB5) : Palette.Orange,
        _ => faint ? OxyColor.FromRgb(0xCF, 0xE4, 0xF2) : Palette.SkyBlue,
    };

    private static OxyColor EdgeOf(LurePiece piece, bool faint) => piece switch
    {
        LurePiece.Metal or LurePiece.Wire => faint ? Palette.Line : Palette.Ink,
        LurePiece.Tail => faint ? OxyColor.FromRgb(0xD9, 0x9A, 0x5B) : Palette.Vermilion,
        _ => faint ? OxyColor.FromRgb(0x7F, 0xA9, 0xC7) : Palette.Blue,
    };

    private Vector3d At(Station s) => new((body.Length / 2) - s.Aft, s.Left, s.Up);

    private List<(LurePiece Piece, List<Vector3d> Points)> Rings(double tailAngle)
    {
        List<(LurePiece, List<Vector3d>)> rings = [];
        double half = body.Length / 2;
        if (body.Profile == BodyProfile.Spoon)
        {
            // The dish: a plate that hangs lower in its middle.
            double dish = LureParts.Figure("spoon_cup_share") * body.Length;
            rings.Add((LurePiece.Metal, [.. Enumerable.Range(0, 36).Select(i =>
            {
                (double s, double c) = Math.SinCos(2 * Math.PI * i / 36);
                return new Vector3d(half * c, body.Width / 2 * s, dish * ((c * c) - 0.5));
            })]));
            double thick = Math.Max(body.Height, 0.02 * body.Length) / 2;
            List<Vector3d> upper = [], lower = [];
            for (int i = 0; i <= 12; i++)
            {
                double x = -1 + (i / 6.0);
                double z = dish * ((x * x) - 0.5);
                upper.Add(new Vector3d(half * x, 0, z + thick));
                lower.Add(new Vector3d(half * x, 0, z - thick));
            }

            lower.Reverse();
            rings.Add((LurePiece.Metal, [.. upper, .. lower]));
            return rings;
        }

        double hinge = parts.Tail?.Hinge ?? body.Length;
        for (int cut = 0; cut < Cuts; cut++)
        {
            double angle = Math.PI * cut / Cuts;
            if (parts.Tail is not null)
                rings.Add((LurePiece.Tail, Ring(hinge, body.Length, angle, tailAngle)));
        }

        for (int cut = 0; cut < Cuts; cut++)
            rings.Add((LurePiece.Body, Ring(0, hinge, Math.PI * cut / Cuts, 0)));
        if (body.Lip is { } lip)
        {
            double root = LureParts.Figure("lip_root_below") * body.Height;
            double fore = half + (lip.Length * Math.Cos(lip.Angle)), down = -root - (lip.Length * Math.Sin(lip.Angle)), wide = lip.Width / 2;
            rings.Add((LurePiece.Metal, [new(half * 0.94, -wide, -root), new(fore, -wide * 0.8, down), new(fore, wide * 0.8, down), new(half * 0.94, wide, -root)]));
        }

        return rings;
    }

    private IEnumerable<List<Vector3d>> Wires()
    {
        double half = body.Length / 2;
        if (parts.Parts.FirstOrDefault(p => p.Name == "bend and point") is { } point)
        {
            // From the eye down to the shank, along it, round the bend and up to the point.
            double low = parts.Parts.First(p => p.Name == "shank").Centre.Up;
            double shank = parts.Engagement, left = 2 * point.Centre.Left, up = 2 * (point.Centre.Up - low), bend = 0.07 * body.Length;
            List<Vector3d> line = low < 0 ? [new(half, 0, 0), new(half - (0.04 * body.Length), 0, 0), new(half - (0.07 * body.Length), 0, low), new(half - shank, 0, low)] : [new(half, 0, 0), new(half - shank, 0, 0)];
            for (int i = 1; i <= 8; i++)
            {
                (double s, double c) = Math.SinCos(Math.PI * i / 8);
                line.Add(new Vector3d(half - shank - (bend / 2 * s), left * (1 - c) / 2, low + (up * (1 - c) / 2)));
            }

            line.Add(new Vector3d(half - shank + (1.3 * bend), left, low + up));
            yield return line;
        }

        foreach (LurePart hook in parts.Parts.Where(p => p.Name is "front hook" or "rear hook" or "hook"))
        {
            Vector3d centre = At(hook.Centre);
            double r = 0.05 * body.Length;
            for (int k = 0; k < 3; k++)
            {
                (double s, double c) = Math.SinCos((2 * Math.PI * k / 3) + (Math.PI / 2));
                yield return hook.Name == "front hook"
                    ? [centre + new Vector3d(0, 0, r), centre + new Vector3d(0, 0, -0.5 * r), centre + new Vector3d(0.5 * r * c, 0.5 * r * s, -r), centre + new Vector3d(0.9 * r * c, 0.9 * r * s, -0.2 * r)]
                    : [centre + new Vector3d(r, 0, 0), centre + new Vector3d(-0.5 * r, 0, 0), centre + new Vector3d(-r, 0.5 * r * c, 0.5 * r * s), centre + new Vector3d(-0.2 * r, 0.9 * r * c, 0.9 * r * s)];
            }
        }
    }

    // One lengthwise cut: both sides of the outline along the bent centre line, the tail swung about its hinge.
    private List<Vector3d> Ring(double from, double to, double cut, double swing)
    {
        (double cutUp, double cutLeft) = Math.SinCos(cut);
        List<Vector3d> one = [], other = [];
        Station root = Centre(from);
        for (int i = 0; i <= CentreSteps; i++)
        {
            double s = from + ((to - from) * i / CentreSteps);
            Station at = Centre(s);
            double turned = Math.Min(1, parts.Engagement > 0 ? s / parts.Engagement : 1);
            double slopeLeft = parts.BendSideways * turned, slopeUp = parts.BendUp * turned;
            if (swing != 0)
            {
                double angle = swing * Math.Min(1, (s - from) / Math.Max(1e-9, 0.6 * (to - from)));
                (double sine, double cosine) = Math.SinCos(angle);
                double aft = at.Aft - root.Aft, left = at.Left - root.Left;
                at = new Station(root.Aft + (aft * cosine) - (left * sine), root.Left + (aft * sine) + (left * cosine), at.Up);
                slopeLeft += angle;
            }

            double half = HalfSize(s, cutLeft, cutUp);
            double back = half * ((cutLeft * Math.Sin(slopeLeft)) + (cutUp * Math.Sin(slopeUp)));
            one.Add(At(new Station(at.Aft - back, at.Left + (half * cutLeft * Math.Cos(slopeLeft)), at.Up + (half * cutUp))));
            other.Add(At(new Station(at.Aft + back, at.Left - (half * cutLeft * Math.Cos(slopeLeft)), at.Up - (half * cutUp))));
        }

        other.Reverse();
        return [.. one, .. other];
    }

    private Station Centre(double station) => LureParts.CentreLine(station, parts.Engagement, parts.BendSideways, parts.BendUp);

    // Radius of the elliptic section in a direction: between the middles of the outline's sections smooth, round at the nose.
    private double HalfSize(double station, double cutLeft, double cutUp)
    {
        double share = Math.Clamp(station / body.Length, 0, 1);
        double width = Size(share, s => s.Width) * body.Width / 2, height = Size(share, s => s.Height) * body.Height / 2;
        double a = cutLeft / Math.Max(width, 1e-6), b = cutUp / Math.Max(height, 1e-6);
        return 1 / Math.Sqrt((a * a) + (b * b));
    }

    private double Size(double share, Func<OutlineSection, double> of)
    {
        OutlineSection first = sections[0], last = sections[^1];
        if (share <= Middle(first))
        {
            double t = share / Middle(first);
            return of(first) * (head.Mass > 0 && head.Place == WeightPlace.Nose ? 0.8 + (0.2 * t) : Math.Sqrt(Math.Max(0.02, t)));
        }

        if (share >= Middle(last))
        {
            // A tail that ends thin runs out to a tip; a paddle ends round.
            double t = (1 - share) / (1 - Middle(last));
            return of(last) * (parts.Tail is null ? Math.Sqrt(Math.Max(0.01, t)) : 0.6 + (0.4 * Math.Sqrt(Math.Max(0, t))));
        }

        int at = 0;
        while (share > Middle(sections[at + 1])) at++;
        double x = (share - Middle(sections[at])) / (Middle(sections[at + 1]) - Middle(sections[at]));
        x = x * x * (3 - (2 * x));
        return of(sections[at]) + (x * (of(sections[at + 1]) - of(sections[at])));
    }

    private static double Middle(OutlineSection s) => (s.From + s.To) / 2;
}
