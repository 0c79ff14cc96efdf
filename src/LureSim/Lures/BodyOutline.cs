using LureSim.Model;

namespace LureSim.Lures;

/// <summary>
/// Outlines of a body from the sections of its table, bent as it is rigged. Several lengthwise cuts through the body stand for its roundness.
/// </summary>
internal sealed class BodyOutline
{
    private const int CentreSteps = 22;

    // Lengthwise cuts, more through a body whose bend shows their ends.
    private const int StraightCuts = 4, BentCuts = 8;

    private readonly JigHead head;
    private readonly LureBody body;
    private readonly LureAssembly parts;
    private readonly OutlineSection[] axis;
    private readonly OutlineSection[] pairs;

    public BodyOutline(JigHead head, LureBody body, LureAssembly parts)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(parts);
        this.head = head;
        this.body = body;
        this.parts = parts;
        IReadOnlyList<OutlineSection> sections = body.Kind.Sections;
        axis = [.. sections.Where(s => s.Aside == 0)];
        pairs = [.. OutlineSection.Cut(sections, parts.Length / body.Length).Where(s => s.Aside != 0)];
    }

    private int Cuts => parts.BendSideways == 0 && parts.BendUp == 0 ? StraightCuts : BentCuts;

    /// <summary>Where the part of the body ends that does not swing, from the nose (m).</summary>
    public double SolidEnd => parts.Tail?.Hinge ?? Math.Min(parts.Length, axis[^1].To * body.Length);

    /// <summary>Where the lure ends, from the nose (m).</summary>
    public double End => parts.Length;

    /// <summary>The body.</summary>
    public LureBody Body => body;

    /// <summary>The whole lure: rings, hooks and the ball of its weight.</summary>
    /// <param name="rings">Rings, those behind first.</param>
    public LureShape Shape(IReadOnlyList<ShapeRing> rings)
    {
        ShapeBall? ball = parts.Parts.FirstOrDefault(p => p.Role is PartRole.Head or PartRole.ShankWeight) is { } lead
            ? new ShapeBall(lead.Centre, Math.Cbrt(3 * lead.Volume / (4 * Math.PI)))
            : null;
        return new LureShape(rings, [.. HookWires(), .. TrebleWires(body, parts)], ball) { Seam = [.. Ring(0, SolidEnd, Math.PI / 2, 0).Take(CentreSteps + 1)] };
    }

    /// <summary>The part of the body that does not swing, and its pairs.</summary>
    public IEnumerable<ShapeRing> BodyRings()
    {
        foreach (OutlineSection pair in pairs)
        {
            foreach (double side in (double[])[-1, 1])
            {
                for (int cut = 0; cut < 2; cut++) yield return new(ShapePiece.Tail, PairRing(pair, side, Math.PI / 2 * cut));
            }
        }

        for (int cut = 0; cut < Cuts; cut++)
            yield return new(ShapePiece.Body, Ring(0, SolidEnd, Math.PI * cut / Cuts, 0));
    }

    /// <summary>The tail that swings; nothing where there is none.</summary>
    /// <param name="angle">Tail to the left (radians).</param>
    public IEnumerable<ShapeRing> TailRings(double angle)
    {
        for (int cut = 0; cut < Cuts; cut++)
        {
            if (parts.Tail is not null)
                yield return new(ShapePiece.Tail, Ring(SolidEnd, parts.Length, Math.PI * cut / Cuts, angle));
        }
    }

    /// <summary>A place on a tail that swings as a whole about its hinge.</summary>
    /// <param name="behind">Behind the hinge (m).</param>
    /// <param name="left">To the left of the tail's own line (m).</param>
    /// <param name="up">Above it (m).</param>
    /// <param name="angle">Tail to the left (radians).</param>
    public Station OnTail(double behind, double left, double up, double angle)
    {
        Station root = Centre(SolidEnd);
        (double sine, double cosine) = Math.SinCos(angle + parts.BendSideways);
        return new Station(root.Aft + (behind * cosine) - (left * sine), root.Left + (behind * sine) + (left * cosine), root.Up + up + (behind * Math.Sin(parts.BendUp)));
    }

    /// <summary>A diving lip.</summary>
    public static ShapeRing LipRing(LureBody body, LipShape lip, double root)
    {
        double half = body.Length / 2, wide = lip.Width / 2, back = half - (half * 0.94);
        double fore = -lip.Length * Math.Cos(lip.Angle), down = -root - (lip.Length * Math.Sin(lip.Angle));
        return new(ShapePiece.Metal, [new(back, -wide, -root), new(fore, -wide * 0.8, down), new(fore, wide * 0.8, down), new(back, wide, -root)]);
    }

    /// <summary>Hooks with three points each.</summary>
    public static IEnumerable<IReadOnlyList<Station>> TrebleWires(LureBody body, LureAssembly parts)
    {
        foreach (LurePart hook in parts.Parts.Where(p => p.Role is PartRole.BellyHook or PartRole.TailHook))
        {
            double r = 0.05 * body.Length;
            if (hook.Eye is { } eye) yield return [eye, hook.Role == PartRole.BellyHook ? Off(0, 0, r) : Off(r, 0, 0)];
            for (int k = 0; k < 3; k++)
            {
                (double s, double c) = Math.SinCos((2 * Math.PI * k / 3) + (Math.PI / 2));
                yield return hook.Role == PartRole.BellyHook
                    ? [Off(0, 0, r), Off(0, 0, -0.5 * r), Off(0.5 * r * c, 0.5 * r * s, -r), Off(0.9 * r * c, 0.9 * r * s, -0.2 * r)]
                    : [Off(r, 0, 0), Off(-0.5 * r, 0, 0), Off(-r, 0.5 * r * c, 0.5 * r * s), Off(-0.2 * r, 0.9 * r * c, 0.9 * r * s)];
            }

            Station Off(double forward, double left, double up) => new(hook.Centre.Aft - forward, hook.Centre.Left + left, hook.Centre.Up + up);
        }
    }

    private IEnumerable<IReadOnlyList<Station>> HookWires()
    {
        if (parts.Parts.FirstOrDefault(p => p.Role == PartRole.Point) is not { } point)
            yield break;

        // From the eye down to the shank, along it, round the bend and up to the point.
        double low = parts.Parts.First(p => p.Role == PartRole.Shank).Centre.Up;
        double shank = parts.Engagement, left = 2 * point.Centre.Left, up = 2 * (point.Centre.Up - low), bend = 0.07 * body.Length;
        List<Station> line = low < 0 ? [new(0, 0, 0), new(0.04 * body.Length, 0, 0), new(0.07 * body.Length, 0, low), new(shank, 0, low)] : [new(0, 0, 0), new(shank, 0, 0)];
        for (int i = 1; i <= 8; i++)
        {
            (double s, double c) = Math.SinCos(Math.PI * i / 8);
            line.Add(new Station(shank + (bend / 2 * s), left * (1 - c) / 2, low + (up * (1 - c) / 2)));
        }

        line.Add(new Station(shank - (1.3 * bend), left, low + up));
        yield return line;
    }

    // One lengthwise cut: both sides of the outline along the bent centre line, the tail swung about its hinge.
    private List<Station> Ring(double from, double to, double cut, double swing)
    {
        (double cutUp, double cutLeft) = Math.SinCos(cut);
        List<Station> one = [], other = [];
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
            one.Add(new Station(at.Aft - back, at.Left + (half * cutLeft * Math.Cos(slopeLeft)), at.Up + (half * cutUp)));
            other.Add(new Station(at.Aft + back, at.Left - (half * cutLeft * Math.Cos(slopeLeft)), at.Up - (half * cutUp)));
        }

        other.Reverse();
        return [.. one, .. other];
    }

    // One of a pair: an ellipse beside the bent axis.
    private List<Station> PairRing(OutlineSection pair, double side, double cut)
    {
        (double cutUp, double cutLeft) = Math.SinCos(cut);
        double half = (pair.To - pair.From) * body.Length / 2;
        double across = (cutLeft * pair.Width * body.Width / 2) + (cutUp * pair.Height * body.Height / 2);
        (double turnSine, double turnCosine) = Math.SinCos(parts.BendSideways);
        Station middle = Centre(pair.Middle * body.Length);
        List<Station> points = [];
        for (int i = 0; i < CentreSteps; i++)
        {
            (double s, double c) = Math.SinCos(2 * Math.PI * i / CentreSteps);
            double aft = half * c, left = (side * pair.Aside * body.Width) + (across * s * cutLeft);
            points.Add(new Station(middle.Aft + (aft * turnCosine) - (left * turnSine), middle.Left + (aft * turnSine) + (left * turnCosine), middle.Up + (across * s * cutUp)));
        }

        return points;
    }

    private Station Centre(double station) => BodyBends.CentreLine(station, parts.Engagement, parts.BendSideways, parts.BendUp);

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
        OutlineSection first = axis[0], last = axis[^1];
        if (share <= first.Middle)
        {
            double t = share / first.Middle;
            return of(first) * (head.Mass > 0 && head.Place == WeightPlace.Nose ? 0.8 + (0.2 * t) : Math.Sqrt(Math.Max(0.02, t)));
        }

        if (share >= last.Middle)
        {
            // A tail that ends thin runs out to a tip; a paddle ends round.
            double t = (last.To - share) / (last.To - last.Middle);
            return of(last) * (parts.Tail is null ? Math.Sqrt(Math.Max(0.01, t)) : 0.6 + (0.4 * Math.Sqrt(Math.Max(0, t))));
        }

        int at = 0;
        while (share > axis[at + 1].Middle) at++;
        double x = (share - axis[at].Middle) / (axis[at + 1].Middle - axis[at].Middle);
        x = x * x * (3 - (2 * x));
        return of(axis[at]) + (x * (of(axis[at + 1]) - of(axis[at])));
    }
}
