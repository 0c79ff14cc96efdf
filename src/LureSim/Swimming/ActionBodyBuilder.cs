using LureSim.Swimming.Bodies;
using LureSim.Model;
using LureSim.Tackle;

namespace LureSim.Swimming;

/// <summary>Turns a lure put together from its parts, and the way it is rigged, into what the action model needs.</summary>
public static class ActionBodyBuilder
{
    // Slices for each section of the outline.
    private const int Slices = 3;

    // Drag of a ball behind whose edge the flow separates, subcritical (BodyDrag.SphereBrownLawler2003 at Re of some thousand).
    private const double BallDragCoefficient = 0.42;
    private const double WireDragCoefficient = 1.1;

    // A tail on a stem of soft plastisol; the loss factor is that of ActionBody's own default.
    private const double SmallestTail = 1e-3;

    // The largest bend the model takes.
    private const double LargestBend = Math.PI / 3;

    // Bending moduli the model takes (Pa).
    private const double LeastModulus = 1e7;
    private const double GreatestModulus = 2e11;

    /// <summary>The body of a lure.</summary>
    /// <param name="head">Jig head or hook; <see cref="JigHead.None"/> for a body that needs none.</param>
    /// <param name="body">Body.</param>
    /// <param name="rigging">How it is put on its hook.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is out of range.</exception>
    public static ActionBody Of(JigHead head, LureBody body, Rigging rigging)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(rigging);
        LureAssembly parts = LureParts.Of(head, body, rigging);
        double nose = parts.Length / 2;
        Vector3d At(Station s) => new(nose - s.Aft, s.Left, s.Up);

        Inertia i = parts.InertiaAboutMassCentre;
        bool spoon = body.Profile == BodyProfile.Spoon;
        Vector3d semiAxes = SemiAxes(body, parts);
        FlexibleTail? tail = Tail(body, parts.Tail, nose);
        double solidEnd = parts.Tail?.Hinge ?? parts.Length;
        double bend = Math.Sqrt((parts.BendSideways * parts.BendSideways) + (parts.BendUp * parts.BendUp));
        return new ActionBody
        {
            Name = body.Label,
            Mass = parts.Mass,
            Volume = parts.Volume,
            CentreOfMass = At(parts.MassCentre),
            CentreOfBuoyancy = At(parts.BuoyancyCentre),
            Inertia = new InertiaTensor(i.Roll, i.Pitch, i.Yaw, i.ForwardLeft, i.ForwardUp, i.LeftUp),
            SemiAxes = semiAxes,
            TowPoint = At(parts.TowPoint),
            Sections = spoon ? [] : Sections(body, nose, solidEnd),
            TrailingEdges = spoon ? [] : Edges(body, parts, nose, semiAxes),
            Appendages = Appendages(head, body, parts, rigging, At),
            Lip = Lip(body),
            Tail = tail,
            Plate = spoon ? new PlateForm(body.Length, body.Width, LureParts.Figure("spoon_cup_share") * body.Length) : null,

            // The arc of the engaged length turns as much as a kink at its middle.
            Bend = bend > 0 ? new BodyBend(Math.Min(bend, LargestBend), Math.Atan2(parts.BendUp, parts.BendSideways), nose - (parts.Engagement / 2)) : null,
            Head = HeadSetOf(head, rigging, nose),
        };
    }

    /// <summary>The knot of a tackle box.</summary>
    /// <param name="tackle">The tackle.</param>
    /// <exception cref="ArgumentNullException"><paramref name="tackle"/> is null.</exception>
    public static Knot KnotOf(Outfit tackle)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        Rigging rigging = tackle.Rigging;
        double diameter = tackle.Leader?.Diameter ?? tackle.Line.Diameter;
        double modulus = TackleBuilder.BendingStiffness(tackle) / (Math.PI / 64 * Math.Pow(diameter, 4));
        return new Knot
        {
            Kind = rigging.Knot switch
            {
                KnotStyle.Snug => KnotKind.Snug,
                KnotStyle.Clip => KnotKind.Clip,
                KnotStyle.SplitRing => KnotKind.SplitRing,
                _ => KnotKind.Loop,
            },
            Length = rigging.LoopLength,
            LeaderDiameter = Math.Clamp(diameter, 5e-5, 2e-3),
            LeaderModulus = Math.Clamp(modulus, LeastModulus, GreatestModulus),
        };
    }

    /// <summary>Semi-axes (m) of the ellipsoid with the body's length and volume and its ratio of height to width; of a plate the half sizes.</summary>
    private static Vector3d SemiAxes(LureBody body, LureAssembly parts)
    {
        if (body.Profile == BodyProfile.Spoon)
            return new Vector3d(body.Length / 2, body.Width / 2, body.Height / 2);
        double soft = parts.Parts.Where(p => LureParts.Sections(body.Profile).Any(s => s.Name == p.Name)).Sum(p => p.Volume);
        double fill = Math.Sqrt(soft / (Math.PI / 6 * body.Length * body.Width * body.Height));
        return new Vector3d(body.Length / 2, fill * body.Width / 2, fill * body.Height / 2);
    }

    // Behind the hinge the tail has forces of its own.
    private static List<BodySection> Sections(LureBody body, double nose, double solidEnd)
    {
        List<BodySection> slices = [];
        foreach (OutlineSection s in LureParts.Sections(body.Profile))
        {
            double from = s.From * body.Length, to = Math.Min(s.To * body.Length, solidEnd);
            double step = (to - from) / Slices;
            if (step < 1e-5)
                continue;
            for (int k = 0; k < Slices; k++)
                slices.Add(new BodySection(nose - from - ((k + 0.5) * step), step, s.Height * body.Height, s.Width * body.Width));
        }

        return slices;
    }

    // The rear of the body, and behind it the tail: a fin where it is thin and stiff; a tail that swings has forces of its own.
    private static List<TrailingEdge> Edges(LureBody body, LureAssembly parts, double nose, Vector3d semiAxes)
    {
        List<TrailingEdge> edges = [TrailingEdge.OfSpheroid(semiAxes)];
        if (parts.Tail is null)
        {
            OutlineSection fin = LureParts.Sections(body.Profile)[^1];
            edges.Add(new TrailingEdge(new Vector3d(-nose, 0, 0), fin.Height * body.Height, fin.Width * body.Width));
        }

        return edges;
    }

    private static List<AppendageDrag> Appendages(JigHead head, LureBody body, LureAssembly parts, Rigging rigging, Func<Station, Vector3d> at)
    {
        List<AppendageDrag> list = [];
        foreach (LurePart part in parts.Parts)
        {
            double area = part.Name switch
            {
                "bend and point" => WireArea(head.HookMass, 18),
                "front hook" or "rear hook" or "hook" => WireArea(part.Mass, 30),
                "shank weight" => BallDragCoefficient / 2 * BallArea(part.Volume),
                "head" => BallDragCoefficient * Math.Max(0, BallArea(part.Volume) - (Math.PI / 4 * body.Height * body.Width)),
                _ => 0,
            };
            if (area > 0)
                list.Add(new AppendageDrag(at(part.Centre), area));
        }

        return list;
    }

    private static double BallArea(double volume)
    {
        double radius = Math.Cbrt(3 * volume / (4 * Math.PI));
        return Math.PI * radius * radius;
    }

    // Bent wire across the flow, its thickness from its mass as for the drag on the path.
    private static double WireArea(double mass, double diameters)
    {
        double wire = 1.1e-3 * Math.Cbrt(mass / 0.6e-3);
        return WireDragCoefficient * wire * diameters * wire;
    }

    private static DivingLip? Lip(LureBody body)
    {
        if (body.Lip is not { } lip)
            return null;
        double root = LureParts.Figure("lip_root_below") * body.Height;
        var middle = new Vector3d((body.Length / 2) + (lip.Length / 2 * Math.Cos(lip.Angle)), 0, -root - (lip.Length / 2 * Math.Sin(lip.Angle)));
        return new DivingLip(middle, lip.Length * lip.Width, Math.Clamp(lip.Width / lip.Length, 0.1, 6), lip.Angle);
    }

    private static FlexibleTail? Tail(LureBody body, FreeTail? tail, double nose)
    {
        if (tail is null)
            return null;
        OutlineSection paddle = LureParts.Sections(body.Profile)[^1];
        double middle = tail.Length - ((paddle.To - paddle.From) * body.Length / 2);
        return new FlexibleTail(
            nose - tail.Hinge,
            Math.Max(SmallestTail, middle),
            Math.Max(SmallestTail, tail.Height),
            Math.Max(5e-4, paddle.Width * body.Width),
            Math.Max(1e-6, tail.Mass),
            tail.Stiffness,
            Drop: LureParts.Figure("paddle_drop") * body.Height);
    }

    private static HeadSet? HeadSetOf(JigHead head, Rigging rigging, double nose)
    {
        if (rigging.HeadTurn == 0 || head.Mass == 0 || head.Place != WeightPlace.Nose)
            return null;
        return new HeadSet(new Vector3d(nose, 0, 0), BallArea(head.Mass / Materials.Density(head.Metal)), rigging.HeadTurn);
    }
}
