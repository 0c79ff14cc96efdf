using LureSim.Hydrodynamics;
using LureSim.Model;

namespace LureSim.Lures;

/// <summary>A soft body on a weighted head, on a weighted hook or on a bare one: what all such kinds have in common.</summary>
/// <remarks>
/// Drag on the path is the sum of: the soft body as an ellipsoid by Hoelzer &amp; Sommerfeld 2008, at the angle at which it falls, by the projected area; the
/// part of a ball head that stands out beyond the body, by Brown &amp; Lawler 2003; bend and point of the hook as wire across the flow; and what a kind adds.
/// </remarks>
public abstract class SoftBait : LureKind
{
    // Reynolds number of the body at which its drag area is taken for the fall attitude: 0.4 m/s on 25 mm.
    private const double AttitudeReynolds = 1e4;

    // Places of the hook's mass for the fall attitude, forward of the body's middle as a share of the length (assumed).
    private const double HookForward = 0.2;

    // Base of a tail that ends thin as a share of the body's greatest section (assumed).
    private const double ThinBase = 0.1;

    // Metal of the hook or lead nearer to the tail than this share of the length still leaves a stump of tail that can swing.
    private const double ShortestTail = 0.08;

    /// <inheritdoc/>
    public override bool NeedsHead => true;

    /// <summary>Cd A of a tail that drags at the end of the body (m2).</summary>
    /// <param name="body">A body of this kind.</param>
    private protected virtual double TailDragArea(LureBody body) => 0;

    /// <summary>Height and width (m) that the end of a swinging tail shows the flow.</summary>
    /// <param name="body">A body of this kind.</param>
    /// <param name="section">Its section of the outline.</param>
    private protected virtual (double Height, double Width) Paddle(LureBody body, OutlineSection section) => (section.Height * body.Height, section.Width * body.Width);

    /// <summary>Area at the tail in which the flow leaves the body (m2).</summary>
    /// <param name="body">A body of this kind.</param>
    /// <param name="frontal">Frontal area of the body (m2).</param>
    private protected virtual double BaseArea(LureBody body, double frontal) => ThinBase * frontal;

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
        List<FormDrag> drags = [.. Drags(head, body, parts)];
        if (LimbDragArea(body) is > 0 and var limbs)
            drags.Add(new FormDrag(PartRole.Body, new Station(body.Length / 2, 0, 0), limbs));
        return SolidForm(body, parts, drags);
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
        double mass = parts.Mass, volume = parts.Volume, bodyVolume = parts.SectionVolume;
        double headVolume = head.Mass / Metals.Density(head.Metal);
        double hookVolume = head.HookMass / Metals.Steel;
        double headDiameter = Math.Cbrt(6 * headVolume / Math.PI);
        EllipsoidGeometry shape = Geometry(body, bodyVolume);

        // Fall attitude: moments about the centre of mass, x forward from the body's middle. The head sits at the nose, the hook in the front half.
        double noseX = body.Length / 2;
        bool onShank = head.Place == WeightPlace.Shank;
        double weightX = onShank ? noseX - (LureTables.Figure("shank_weight_station") * Proportions.ShankShare * body.Length) : noseX;
        double massCentre = ((head.Mass * weightX) + (head.HookMass * HookForward * body.Length)) / mass;
        double buoyancyCentre = ((headVolume * weightX) + (hookVolume * HookForward * body.Length)) / volume;
        double hookDragArea = HookWire.SingleDragArea(head.HookMass);
        double tailDragArea = TailDragArea(body);
        double limbs = LimbDragArea(body);

        // Metal on the shank lies half in the body.
        double headArea = Math.PI * headDiameter * headDiameter / 4 * (onShank ? 0.5 : 1);
        double bodyDragArea = shape.Drag(0).DragAreaTimesSpeed(1, shape.EquivalentDiameter / AttitudeReynolds, out _)
            + (SphereDrag.Plateau * ExposedArea(headArea, shape.FrontalArea, onShank)) + hookDragArea + limbs;
        double incidence = FallAttitude.Incidence(new FallBalance(
            FallAttitude.WaterDensity * volume * PhysicalConstants.StandardGravity,
            Math.Max(mass - (FallAttitude.WaterDensity * volume), 1e-6) * PhysicalConstants.StandardGravity,
            massCentre,
            buoyancyCentre,
            -noseX * tailDragArea / (bodyDragArea + tailDragArea),
            shape.BroadsideArea,
            bodyDragArea + tailDragArea,
            Math.Max(0, ((shape.TransverseAddedMass - shape.AxialAddedMass) * bodyVolume) - (BaseArea(body, shape.FrontalArea) * (noseX + massCentre)))));
        return new PathLure
        {
            Mass = mass,
            Volume = volume,
            AddedMassCoefficient = ((shape.AddedMass(incidence) * bodyVolume) + (0.5 * headVolume)) / volume,
            ContactRadius = Math.Max(headDiameter, body.Height) / 2,
            FallIncidence = incidence,
            HeadDiameter = headDiameter,
            ExposedHeadArea = ExposedArea(headArea, shape.FrontalArea * Math.Cos(incidence), onShank),
            Body = shape.Drag(incidence).With(hookDragArea).With(tailDragArea * Math.Cos(incidence)).With(limbs),
        };
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
        double volume = BodyVolume(body);
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
            var centre = new Station(LureTables.Figure("shank_weight_station") * shank, 0, -LureTables.Figure("shank_weight_below") * body.Height);
            parts.Add(new LurePart(PartRole.ShankWeight, head.Mass, headVolume, centre, Inertia.Ball(head.Mass, radius)));
        }

        if (head.HookMass > 0)
        {
            // On a jig the shank lies in the body and the point stands over it; a weedless hook carries its shank under the body, its point lies in the back.
            bool weedless = head.Mass == 0 || head.Place == WeightPlace.Shank;
            double below = weedless ? LureTables.Figure("weedless_shank_below") * body.Height : 0;
            double gape = weedless ? below + (body.Height / 2) : Math.Min(LureTables.Figure("gape_per_shank") * shank, 1.2 * body.Height);
            double inShank = LureTables.Figure("hook_mass_in_shank") * head.HookMass;
            double rest = head.HookMass - inShank;
            parts.Add(new LurePart(PartRole.Shank, inShank, inShank / Metals.Steel, new Station(shank / 2, 0, -below), Inertia.Rod(inShank, shank)));
            var point = new Station(shank, gape / 2 * Math.Sin(rigging.PointLean), (gape / 2 * Math.Cos(rigging.PointLean)) - below);
            double across = rest * gape * gape / 12;
            parts.Add(new LurePart(PartRole.Point, rest, rest / Metals.Steel, point, Inertia.Diagonal(across, across, 0)));
        }

        parts.AddRange(SectionParts(body, volume, volume * body.Density, shank, sideways, upright));
        return new LureAssembly
        {
            Parts = parts,
            Length = length,
            Height = body.Height,
            Width = body.Width,
            TowPoint = tow,
            Engagement = shank,
            BendSideways = sideways,
            BendUp = upright,
            Tail = Tail(body, volume, shank),
        };
    }

    // A head at the nose shelters the body behind it; metal under the shank stands beside it.
    private static double ExposedArea(double headArea, double frontal, bool onShank) => onShank ? headArea : Math.Max(0, headArea - frontal);

    // The tail swings from the beginning of the stem, or from where the hook ends if that is farther aft.
    private FreeTail? Tail(LureBody body, double volume, double shank)
    {
        IReadOnlyList<OutlineSection> sections = Sections;
        if (sections.FirstOrDefault(s => s.Role == PartRole.Stem) is not { } stem)
            return null;
        double sum = sections.Sum(s => s.Weight);
        OutlineSection paddle = sections[^1];
        double free = stem.From * body.Length;
        double hinge = Math.Min(Math.Max(free, shank), (1 - ShortestTail) * body.Length);
        double mass = 0;
        foreach (OutlineSection s in sections)
        {
            double from = Math.Max(s.From * body.Length, hinge), to = s.To * body.Length;
            if (to > from)
                mass += volume * body.Density * s.Weight / sum * (to - from) / ((s.To - s.From) * body.Length);
        }

        // A stem of elliptic section bent over the thin part of its length: k = E I / l, I = pi/64 h w^3.
        // It thickens towards the paddle, so a hook that holds it farther aft leaves a stouter piece to bend.
        double thicker = 1 + (LureTables.Figure("stem_thickening") * Math.Clamp((hinge - free) / ((paddle.From * body.Length) - free), 0, 1));
        double height = thicker * stem.Height * body.Height, width = thicker * stem.Width * body.Width;
        double bent = LureTables.Figure("stem_bending_share") * (body.Length - hinge);
        double stiffness = LureTables.Figure("soft_modulus_pa") * Math.PI / 64 * height * width * width * width / bent;
        (double Height, double Width) edge = Paddle(body, paddle);
        return new FreeTail(
            hinge,
            body.Length - hinge,
            body.Length - hinge - ((paddle.To - paddle.From) * body.Length / 2),
            edge.Height,
            edge.Width,
            LureTables.Figure("paddle_drop") * body.Height,
            mass,
            stiffness,
            (body.Length - hinge) / (body.Length - free));
    }
}
