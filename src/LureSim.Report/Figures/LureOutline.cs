using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Swimming.Bodies;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>Draws the outline of a lure that its kind gives, in body axes (origin at the middle, x towards the nose, y to the left, z up; m).</summary>
internal sealed class LureOutline(Rig rig, LureAssembly parts)
{
    // Of the back and the belly of a lure that shows which way it lies; its seam shows while the back is turned to the viewer by more than this cosine.
    private static readonly OxyColor Back = OxyColor.FromRgb(0x3C, 0x93, 0xC9), Belly = OxyColor.FromRgb(0xF3, 0xFA, 0xFE), Seam = OxyColor.FromRgb(0x0B, 0x3A, 0x5C);
    private const double SeamInSight = 0.3;

    /// <summary>Overall length (m).</summary>
    public double Length => parts.Length;

    /// <summary>Draws the lure.</summary>
    /// <param name="rc">The context.</param>
    /// <param name="project">From a point in body axes to the drawing.</param>
    /// <param name="scale">Units of the drawing for a metre.</param>
    /// <param name="tailAngle">Tail to the left (radians).</param>
    /// <param name="faint">True for a pale drawing.</param>
    /// <param name="back">How far the back is turned to the viewer, 1 to -1: the back is dark and shows its middle line, the belly is pale; null for a lure of one tone.</param>
    public void Draw(IRenderContext rc, Func<Vector3d, ScreenPoint> project, double scale, double tailAngle, bool faint, double? back = null)
    {
        LureShape shape = Shape(tailAngle);
        List<(ShapePiece Piece, ScreenPoint[] Points)> rings = [.. shape.Rings.Select(ring => (ring.Piece, Project(ring.Points)))];
        double edge = scale * Length > 60 ? 2.2 : 1.6;
        foreach ((ShapePiece piece, ScreenPoint[] points) in rings)
            rc.DrawPolygon(points, OxyColors.Undefined, EdgeOf(piece, faint), edge, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        foreach ((ShapePiece piece, ScreenPoint[] points) in rings)
        {
            OxyColor fill = back is { } turned && piece == ShapePiece.Body ? OxyColor.Interpolate(Belly, Back, (1 + turned) / 2) : FillOf(piece, faint);
            rc.DrawPolygon(points, fill, fill, 0.4, EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        }

        if (back > SeamInSight && shape.Seam.Count > 1)
            rc.DrawLine(Project(shape.Seam), Seam, 1.2, EdgeRenderingMode.Adaptive, [4, 3], LineJoin.Round);
        foreach (IReadOnlyList<Station> wire in shape.Wires)
            rc.DrawLine(Project(wire), EdgeOf(ShapePiece.Metal, faint), Math.Clamp(0.0012 * scale, 0.8, 2.2), EdgeRenderingMode.Adaptive, null, LineJoin.Round);
        if (shape.Ball is { } ball)
            Shapes.Disc(rc, project(At(ball.Centre)), Math.Max(1.5, ball.Radius * scale), FillOf(ShapePiece.Metal, faint), EdgeOf(ShapePiece.Metal, faint), 1);

        ScreenPoint[] Project(IReadOnlyList<Station> points) => [.. points.Select(point => project(At(point)))];
    }

    /// <summary>The lure as flat pieces.</summary>
    /// <param name="tailAngle">Tail to the left (radians).</param>
    public LureShape Shape(double tailAngle) => rig.Body.Kind.Outline(rig.Head, rig.Body, parts, tailAngle);

    /// <summary>A place on the lure in body axes.</summary>
    public Vector3d At(Station s) => new((parts.Length / 2) - s.Aft, s.Left, s.Up);

    private static OxyColor FillOf(ShapePiece piece, bool faint) => piece switch
    {
        ShapePiece.Metal => faint ? OxyColor.FromRgb(0xC4, 0xCC, 0xD3) : Palette.Line,
        ShapePiece.Tail => faint ? OxyColor.FromRgb(0xF5, 0xDF, 0xB5) : Palette.Orange,
        ShapePiece.Body => faint ? OxyColor.FromRgb(0xCF, 0xE4, 0xF2) : Palette.SkyBlue,
        _ => throw new ArgumentOutOfRangeException(nameof(piece), piece, "The piece is unknown."),
    };

    private static OxyColor EdgeOf(ShapePiece piece, bool faint) => piece switch
    {
        ShapePiece.Metal => faint ? Palette.Line : Palette.Ink,
        ShapePiece.Tail => faint ? OxyColor.FromRgb(0xD9, 0x9A, 0x5B) : Palette.Vermilion,
        ShapePiece.Body => faint ? OxyColor.FromRgb(0x7F, 0xA9, 0xC7) : Palette.Blue,
        _ => throw new ArgumentOutOfRangeException(nameof(piece), piece, "The piece is unknown."),
    };
}
