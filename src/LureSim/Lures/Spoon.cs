using LureSim.Hydrodynamics;
using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Bent plate of metal with a hook.</summary>
/// <remarks>
/// Drag on the path: friction on both faces and the normal force of the plate at a mean incidence of 45 degrees, between gliding and broadside (assumed); the
/// action model corrects it while the spoon is towed.
/// </remarks>
public sealed class Spoon : LureKind
{
    private const double MeanIncidence = Math.PI / 4;

    // Added mass broadside between disc (8/3 a^3) and strip (pi/4 w^2 a unit length): the strip's with the disc's end correction for this aspect (assumed).
    private const double EndCorrection = 2.0 / 3.0;

    // The hook and its ring trail behind the plate by this share of the length (assumed).
    private const double Trail = 0.15;

    // Middle of a parabolic dish over its deepest place: the mean of (x/a)^2 over an ellipse is 1/4. The ends, where line and hook hang, stand the rest above the centre of mass.
    private const double MeanSquare = 0.25;

    private const int Corners = 36, HalfProfile = 12;

    /// <inheritdoc/>
    public override BodyProfile Profile => BodyProfile.Spoon;

    /// <inheritdoc/>
    public override string Word => "spoon";

    /// <inheritdoc/>
    public override string Meaning => "a bent plate of metal with a hook";

    /// <inheritdoc/>
    public override bool NeedsHead => false;

    /// <inheritdoc/>
    public override bool IsPlate => true;

    /// <inheritdoc/>
    public override double ApparentSize(LureBody body)
    {
        ArgumentNullException.ThrowIfNull(body);
        return Math.Sqrt(body.Length * body.Width);
    }

    /// <inheritdoc/>
    public override SwimmingForm Swimming(JigHead head, LureBody body, LureAssembly parts)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(parts);
        return new SwimmingForm
        {
            HalfLength = body.Length / 2,
            HalfWidth = body.Width / 2,
            HalfHeight = body.Height / 2,
            Drags = [.. Drags(head, body, parts)],

            // Hung by its end a dished plate lies hollow side up, the weight of its middle below the line.
            Plate = new FormPlate(body.Length, body.Width, -Dish(body)),
        };
    }

    /// <inheritdoc/>
    public override LureShape Outline(JigHead head, LureBody body, LureAssembly parts, double tailAngle)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(parts);

        // The dish: a plate that hangs lower in its middle.
        double half = body.Length / 2, dish = Dish(body);
        ShapeRing face = new(ShapePiece.Metal, [.. Enumerable.Range(0, Corners).Select(i =>
        {
            (double s, double c) = Math.SinCos(2 * Math.PI * i / Corners);
            return new Station(half - (half * c), body.Width / 2 * s, dish * ((c * c) - MeanSquare));
        })]);
        double thick = Math.Max(body.Height, 0.02 * body.Length) / 2;
        List<Station> upper = [], lower = [];
        for (int i = 0; i <= HalfProfile; i++)
        {
            double x = -1 + (2.0 * i / HalfProfile);
            double z = dish * ((x * x) - MeanSquare);
            upper.Add(new Station(half - (half * x), 0, z + thick));
            lower.Add(new Station(half - (half * x), 0, z - thick));
        }

        lower.Reverse();
        return new LureShape([face, new(ShapePiece.Metal, [.. upper, .. lower])], [.. BodyOutline.TrebleWires(body, parts)], null);
    }

    private protected override PathLure OnPath(JigHead head, LureBody body, LureAssembly parts)
    {
        double area = Math.PI / 4 * body.Length * body.Width;
        double sine = Math.Sin(MeanIncidence);
        double added = Math.PI / 4 * body.Width * body.Width * body.Length * EndCorrection;
        double form = PlateDrag.AreaAtIncidence(area, body.Length / body.Width, sine) + Drags(head, body, parts).Sum(drag => drag.Area);
        return new PathLure
        {
            Mass = parts.Mass,
            Volume = parts.Volume,
            AddedMassCoefficient = added * sine * sine / parts.Volume,
            ContactRadius = body.Width / 4,
            Towed = new DragSum("spoon", new SkinFriction(2 * area, body.Length, Math.Sqrt(body.Width * body.Height)), new ConstantArea("plate and hook", form)),
        };
    }

    private protected override LureAssembly PutTogether(JigHead head, LureBody body, Rigging rigging)
    {
        double volume = Math.PI / 4 * body.Length * body.Width * body.Height;
        double mass = volume * Metals.Density(body.Metal ?? HeadMetal.Brass);
        double hook = LureTables.Figure("spoon_hook_share") * HookWire.CommonMass(body.Length);
        double width2 = body.Width * body.Width, length2 = body.Length * body.Length;
        double trail = Trail * body.Length, end = (1 - MeanSquare) * Dish(body);

        // An elliptic plate: m/16 times the squares of its axes.
        var plate = Inertia.Diagonal(mass * width2 / 16, mass * length2 / 16, mass * (length2 + width2) / 16);
        return new LureAssembly
        {
            Parts =
            [
                new LurePart(PartRole.Plate, mass, volume, new Station(body.Length / 2, 0, 0), plate),
                new LurePart(PartRole.TailHook, hook, hook / Metals.Steel, new Station(body.Length + trail, 0, end), Inertia.Rod(hook, 2 * trail)) { Eye = new Station(body.Length, 0, end) },
            ],
            Length = body.Length,
            Height = body.Height,
            Width = body.Width,
            TowPoint = new Station(0, 0, end),
        };
    }

    private static double Dish(LureBody body) => LureTables.Figure("spoon_cup_share") * body.Length;
}
