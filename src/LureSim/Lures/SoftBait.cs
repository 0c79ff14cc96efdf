using LureSim.Hydrodynamics;
using LureSim.Model;

namespace LureSim.Lures;

/// <summary>A soft body on a weighted head, on a weighted hook or on a bare one: what all such kinds have in common.</summary>
/// <remarks>
/// Drag nose first is the sum of parts that are checked one by one: the soft body as the ellipsoid of its length and volume (<see cref="RoundedBody"/>), what stands off it
/// (the part of a ball head beyond the body, bend and point of the hook, line eye, limbs), and the end of a swinging tail as a plate across the flow in
/// the wake that the body leaves it (<see cref="PlateDrag"/>). The swimming model has the same parts. A fall has the attitude and the sink rate of
/// <see cref="FallCurve"/>: nose first or gliding where the line is slack, the flatter the more of the weight the line carries.
/// </remarks>
public abstract class SoftBait : LureKind
{
    // The fall is found for brackish water at large (kg/m3, m2/s); it hardly changes between fresh and sea water.
    private const double FallDensity = 1015;
    private const double FallViscosity = 1.1e-6;

    // A bait that floats or hangs has no fall (N).
    private const double LeastWetWeight = 1e-6;

    // Speed at which the wake before the tail is taken (m/s); between 0.2 and 1 m/s its share of the pressure changes by a twentieth.
    private const double WakeSpeed = 0.5;

    // The rear of a spheroid from which sideways flow parts (Hopkins 1951, NACA RM A51C14): 40.5 % of the length behind its middle, 0.344 of its largest section.
    private const double RearPlace = 0.405;
    private const double RearShare = 0.344;

    // Metal of the hook or lead nearer to the tail than this share of the length still leaves a stump of tail that can swing.
    private const double ShortestTail = 0.08;

    /// <inheritdoc/>
    public override bool NeedsHead => true;

    /// <summary>Common place of the metal of a weighted hook along the shank, 0 at the eye to 1 at the bend.</summary>
    public static double CommonWeightStation => LureTables.Figure("shank_weight_station");

    /// <summary>Gape of the common hook for a body, from shank to point (m).</summary>
    /// <param name="head">Jig head or hook.</param>
    /// <param name="body">A soft body.</param>
    /// <param name="rigging">How it is put on its hook: the gape of a jig goes by its shank.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static double CommonGape(JigHead head, LureBody body, Rigging rigging)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(rigging);
        double shank = (rigging.ShankShare ?? body.Kind.Proportions.ShankShare) * body.Length;

        // A weedless hook holds the body between shank and point.
        return Weedless(head) ? (LureTables.Figure("weedless_shank_below") + 0.5) * body.Height : Math.Min(LureTables.Figure("gape_per_shank") * shank, 1.2 * body.Height);
    }

    /// <summary>Height and width (m) that the end of a swinging tail shows the flow.</summary>
    /// <param name="body">A body of this kind.</param>
    /// <param name="section">Its section of the outline.</param>
    private protected virtual (double Height, double Width) Paddle(LureBody body, OutlineSection section) => (section.Height * body.Height, section.Width * body.Width);

    /// <summary>The ellipsoid in whose place the body is reckoned.</summary>
    /// <param name="body">A body of this kind.</param>
    /// <param name="volume">Its volume (m3).</param>
    private protected virtual EllipsoidGeometry Geometry(LureBody body, double volume) => EllipsoidGeometry.Prolate(volume, body.Length);

    /// <summary>Cd A of what stands off the middle of the body, such as legs (m2).</summary>
    /// <param name="body">A body of this kind.</param>
    private protected virtual double LimbDragArea(LureBody body) => 0;

    /// <inheritdoc/>
    public override SwimmingForm Swimming(JigHead head, LureBody body, LureAssembly parts)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(parts);
        return SolidForm(body, parts, SmallDrags(head, body, parts));
    }

    /// <inheritdoc/>
    public override LureShape Outline(JigHead head, LureBody body, LureAssembly parts, double tailAngle)
    {
        var outline = new BodyOutline(head, body, parts);
        return outline.Shape([.. TailRings(outline, tailAngle), .. outline.BodyRings()]);
    }

    /// <summary>Outline of the tail that swings.</summary>
    private protected virtual IEnumerable<ShapeRing> TailRings(BodyOutline outline, double tailAngle) => outline.TailRings(tailAngle);

    private protected override PathLure OnPath(JigHead head, LureBody body, LureAssembly parts)
    {
        double mass = parts.Mass, volume = parts.Volume, bodyVolume = parts.SectionVolume, length = body.Length;
        double headVolume = head.Mass / Metals.Density(head.Metal);
        double headDiameter = Math.Cbrt(6 * headVolume / Math.PI);
        EllipsoidGeometry shape = Geometry(body, bodyVolume);

        // The ellipsoid's diameter nose on, and the one that it shows broadside.
        double diameter = Math.Sqrt(4 * shape.FrontalArea / Math.PI), side = shape.BroadsideArea / (Math.PI / 4 * length);
        DragSum alone = RoundedBody.NoseFirst(length, diameter, diameter);
        double paddle = 0;
        if (parts.Tail is { } tail)
        {
            double wake = alone.AreaTimesSpeed(WakeSpeed, FallViscosity, out _) / (WakeSpeed * shape.FrontalArea);
            paddle = PlateDrag.Broadside * PlateDrag.WakePressureShare(wake) * tail.Height * tail.Width;
        }

        var towed = new DragSum("soft bait, nose first", alone, new ConstantArea("small parts", SmallDrags(head, body, parts).Sum(drag => drag.Area)), new ConstantArea("tail", paddle));

        // Places along the axis, forward from the middle. Free to roll, a bait falls on the side on which its stiff tail is narrow.
        double nose = length / 2;
        OutlineSection last = Sections[^1];
        double span = Math.Min(last.WholeWidth * body.Width, last.Height * body.Height);
        IDragComponent across = new DragSum("soft bait, across", RoundedBody.Broadside(length, side), new ConstantArea("limbs", LimbDragArea(body)));
        double wet = Math.Max((mass - (FallDensity * volume)) * PhysicalConstants.StandardGravity, LeastWetWeight);
        var balance = new GlideBalance(
                wet, FallDensity * volume * PhysicalConstants.StandardGravity, nose - parts.MassCentre.Aft, nose - parts.BuoyancyCentre.Aft,
                (shape.TransverseAddedMass - shape.AxialAddedMass) * bodyVolume, RearShare * Math.PI / 4 * side * side, -RearPlace * length,
                parts.Tail is null ? Math.PI / 4 * span * span : 0, -nose, paddle, -nose, towed, across)
        {
            EyePlace = nose - parts.TowPoint.Aft,
            EyeAbove = Math.Max(0, parts.TowPoint.Up),
        };
        var fall = FallCurve.Of(balance, FallDensity, FallViscosity);
        return new PathLure
        {
            Mass = mass,
            Volume = volume,
            AddedMassCoefficient = ((shape.AddedMass(fall.Free.Incidence) * bodyVolume) + (0.5 * headVolume)) / volume,
            ContactRadius = Math.Max(headDiameter, body.Height) / 2,
            Fall = fall,
            Towed = towed,
        };
    }

    // What stands off the body: head, hook, line eye, limbs.
    private List<FormDrag> SmallDrags(JigHead head, LureBody body, LureAssembly parts)
    {
        List<FormDrag> drags = [.. Drags(head, body, parts)];
        if (head.HookMass > 0)
            drags.Add(new FormDrag(PartRole.Shank, parts.TowPoint, HookWire.EyeDragArea(head.HookMass)));
        if (LimbDragArea(body) is > 0 and var limbs)
            drags.Add(new FormDrag(PartRole.Body, new Station(body.Length / 2, 0, 0), limbs));
        return drags;
    }

    private protected override LureAssembly PutTogether(JigHead head, LureBody body, Rigging rigging)
    {
        Guard.InRange(head.Mass, 0, 1);
        Guard.InRange(head.HookMass, 0, 0.1);
        Guard.InRange(body.Density, 500, 3000);
        double length = body.Length;
        double shank = (rigging.ShankShare ?? Proportions.ShankShare) * length;
        double sideways = rigging.Bend + BodyBends.BendOfExit(rigging.ExitSideways, shank);
        double upright = BodyBends.BendOfExit(rigging.ExitAbove, shank) - BodyBends.ArchOfSurplus(rigging.PulledUp, shank);
        double end = TailEnd(rigging.TailLost);
        IReadOnlyList<OutlineSection> sections = OutlineSection.Cut(Sections, end);
        double volume = BodyVolume(body) * sections.Sum(s => s.Weight) / Sections.Sum(s => s.Weight);
        var parts = new List<LurePart>();

        double headVolume = head.Mass / Metals.Density(head.Metal);
        double radius = Math.Cbrt(3 * headVolume / (4 * Math.PI));
        var tow = new Station(0, 0, 0);
        if (head.Mass > 0 && head.Place == WeightPlace.Nose)
        {
            parts.Add(new LurePart(PartRole.Head, head.Mass, headVolume, default, Inertia.Ball(head.Mass, radius)));

            // The eye stands on the head and turns with it.
            double above = LureTables.Figure("eye_above_head") * 2 * radius;
            tow = new Station(0, 0, above);
        }
        else if (head.Mass > 0)
        {
            var centre = new Station((rigging.WeightStation ?? CommonWeightStation) * shank, 0, -LureTables.Figure("shank_weight_below") * body.Height);
            parts.Add(new LurePart(PartRole.ShankWeight, head.Mass, headVolume, centre, Inertia.Ball(head.Mass, radius)));
        }

        if (head.HookMass > 0)
        {
            // On a jig the shank lies in the body and the point stands over it; a weedless hook carries its shank under the body, its point lies in the back.
            double below = Weedless(head) ? LureTables.Figure("weedless_shank_below") * body.Height : 0;
            double common = CommonGape(head, body, rigging), gape = rigging.HookGape ?? common;
            double inShank = LureTables.Figure("hook_mass_in_shank") * head.HookMass;
            double rest = head.HookMass - inShank;
            parts.Add(new LurePart(PartRole.Shank, inShank, inShank / Metals.Steel, new Station(shank / 2, 0, -below), Inertia.Rod(inShank, shank)));
            var point = new Station(shank, gape / 2 * Math.Sin(rigging.PointLean), (gape / 2 * Math.Cos(rigging.PointLean)) - below);
            double across = rest * gape * gape / 12;
            parts.Add(new LurePart(PartRole.Point, rest, rest / Metals.Steel, point, Inertia.Diagonal(across, across, 0)) { Bare = Math.Max(0, gape - common) });
        }

        parts.AddRange(SectionParts(sections, body, volume, volume * body.Density, shank, sideways, upright));
        FreeTail? tail = Tail(sections, body, volume, shank, end * length);
        return new LureAssembly
        {
            Parts = parts,
            Length = end * length,
            Height = body.Height,
            Width = body.Width,
            TowPoint = tow,
            Engagement = shank,
            BendSideways = sideways,
            BendUp = upright,
            Tail = tail,
            Rear = SoftRear.Of(sections, length, body.Height, body.Width, volume, body.Density, shank, tail?.Hinge ?? (end * length), tail?.Mass ?? 0, LureTables.Figure("soft_modulus_pa")),
        };
    }

    private static bool Weedless(JigHead head) => head.Mass == 0 || head.Place == WeightPlace.Shank;

    // Where a bait ends that has lost a share of its tail: of what swings, or of the last section of one whose tail does not; share of the whole length.
    private double TailEnd(double lost)
    {
        IReadOnlyList<OutlineSection> sections = Sections;
        double root = (sections.FirstOrDefault(s => s.Role == PartRole.Stem) ?? sections[^1]).From;
        return 1 - (lost * (1 - root));
    }

    // The tail swings from the beginning of the stem, or from where the hook ends if that is farther aft.
    private FreeTail? Tail(IReadOnlyList<OutlineSection> sections, LureBody body, double volume, double shank, double end)
    {
        if (sections.FirstOrDefault(s => s.Role == PartRole.Stem) is not { } stem)
            return null;
        double sum = sections.Sum(s => s.Weight);

        // What is left of the paddle, or of the stem where it is gone.
        OutlineSection paddle = sections[^1];
        double free = stem.From * body.Length, whole = Sections[^1].From * body.Length;
        double hinge = Math.Min(Math.Max(free, shank), end - (ShortestTail * body.Length));
        bool bare = paddle.Role == PartRole.Stem;
        double mass = 0;
        foreach (OutlineSection s in sections)
        {
            double from = Math.Max(s.From * body.Length, hinge), to = s.To * body.Length;
            if (to > from)
                mass += volume * body.Density * s.Weight / sum * (to - from) / ((s.To - s.From) * body.Length);
        }

        // A stem of elliptic section bent over the thin part of its length: k = E I / l, I = pi/64 h w^3.
        // It thickens towards the paddle, so a hook that holds it farther aft leaves a stouter piece to bend.
        double thicker = 1 + (LureTables.Figure("stem_thickening") * Math.Clamp((hinge - free) / (whole - free), 0, 1));
        double height = thicker * stem.Height * body.Height, width = thicker * stem.Width * body.Width;
        double bent = LureTables.Figure("stem_bending_share") * (end - hinge);
        double stiffness = LureTables.Figure("soft_modulus_pa") * Math.PI / 64 * height * width * width * width / bent;
        (double Height, double Width) edge = bare ? (paddle.Height * body.Height, paddle.Width * body.Width) : Paddle(body, paddle);
        return new FreeTail(
            hinge,
            end - hinge,
            end - hinge - (Math.Min((paddle.To - paddle.From) * body.Length, end - hinge) / 2),
            edge.Height,
            edge.Width,
            bare ? 0 : LureTables.Figure("paddle_drop") * body.Height,
            mass,
            stiffness,
            (end - hinge) / (body.Length - free));
    }
}
