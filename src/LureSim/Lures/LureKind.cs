using System.Collections.Concurrent;
using LureSim.Hydrodynamics;
using LureSim.Model;

namespace LureSim.Lures;

/// <summary>
/// A kind of lure: its word, its proportions, the parts it is made of, and what follows from them, the body on its path, the body about its tow point and the
/// outline of a drawing. One file a kind; rows of Data/tackle are keyed by <see cref="Word"/>.
/// </summary>
/// <remarks>Instances are immutable and shared; see <see cref="LureKinds"/>.</remarks>
public abstract class LureKind
{
    // A bound on memory only; a tackle box holds far fewer.
    private const int MostKept = 512;

    // Working out how a lure falls takes a millisecond, and each of the many runs of a choice asks for it.
    private readonly ConcurrentDictionary<(JigHead Head, LureBody Body), PathLure> onPath = new();

    /// <summary>Its key.</summary>
    public abstract BodyProfile Profile { get; }

    /// <summary>Its word in scenarios, tables and sentences.</summary>
    public abstract string Word { get; }

    /// <summary>What the word means, for the reference of scenarios.</summary>
    public abstract string Meaning { get; }

    /// <summary>True for a soft body, which goes on a jig head or a hook.</summary>
    public abstract bool NeedsHead { get; }

    /// <summary>What it imitates where no forage was seen; a small bait fish unless a kind says otherwise.</summary>
    public virtual ForageKind Imitates => ForageKind.SmallBaitFish;

    /// <summary>True if a scenario may say whether it floats.</summary>
    public virtual bool TakesFloat => false;

    /// <summary>True if it may have a diving lip.</summary>
    public virtual bool TakesLip => false;

    /// <summary>True for a plate of metal, which has a thickness and a metal in place of a height and a density.</summary>
    public virtual bool IsPlate => false;

    /// <summary>True for a lure that is fished afloat.</summary>
    public virtual bool OnTop => false;

    /// <summary>Default shape and material, from Data/tackle/body_proportions.csv.</summary>
    /// <exception cref="InvalidOperationException">The table has no row for it.</exception>
    public BodyProportions Proportions => LureTables.Proportions(Word);

    /// <summary>Sections of its outline from nose to tail, from Data/tackle/lure_parts.csv; none for a plate.</summary>
    /// <exception cref="InvalidOperationException">The table has no row for it.</exception>
    public IReadOnlyList<OutlineSection> Sections => IsPlate ? [] : LureTables.Sections(Word);

    /// <summary>A body of a length in the kind's own proportions.</summary>
    /// <param name="length">Overall length (m), 0.02 to 0.3.</param>
    /// <param name="label">Name for people.</param>
    public LureBody Body(double length, string label)
    {
        BodyProportions p = Proportions;
        return new LureBody(Profile, length, p.HeightShare * length, p.WidthShare * length, p.Density, label)
        {
            Buoyancy = TakesFloat ? HardFloat.Suspending : null,
            Metal = IsPlate ? HeadMetal.Brass : null,
        };
    }

    /// <summary>Size at which it is seen from the side (m): the square root of its side area.</summary>
    /// <param name="body">A body of this kind.</param>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    public virtual double ApparentSize(LureBody body)
    {
        ArgumentNullException.ThrowIfNull(body);
        return Math.Sqrt(body.Length * body.Height);
    }

    /// <summary>Mass of a body of this kind without a head and its hook (kg); hooks of its own count.</summary>
    /// <param name="body">A body of this kind.</param>
    public double Mass(LureBody body) => Assemble(JigHead.None(body), body, new Rigging()).Mass;

    /// <summary>Puts a lure of this kind together from its parts: the one model of mass and volume, from which path and swimming both come.</summary>
    /// <param name="head">Jig head or hook; <see cref="JigHead.None"/> for a body that needs none.</param>
    /// <param name="body">A body of this kind.</param>
    /// <param name="rigging">How it is put on its hook.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is out of range.</exception>
    public LureAssembly Assemble(JigHead head, LureBody body, Rigging rigging)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(rigging);
        Guard.Positive(body.Length);
        Guard.Positive(body.Height);
        Guard.Positive(body.Width);
        return PutTogether(head, body, rigging);
    }

    /// <summary>The lure as a point body on its path, put on its hook without a fault.</summary>
    /// <param name="head">Jig head or hook; <see cref="JigHead.None"/> for a body that needs none.</param>
    /// <param name="body">A body of this kind.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is out of range.</exception>
    public PathLure OnPath(JigHead head, LureBody body)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        if (onPath.TryGetValue((head, body), out PathLure? known)) return known;
        if (onPath.Count > MostKept) onPath.Clear();
        return onPath.GetOrAdd((head, body), rig => OnPath(rig.Head, rig.Body, Assemble(rig.Head, rig.Body, new Rigging())));
    }

    /// <summary>What the water meets when the lure swims about its tow point.</summary>
    /// <param name="head">Jig head or hook; <see cref="JigHead.None"/> for a body that needs none.</param>
    /// <param name="body">A body of this kind.</param>
    /// <param name="parts">The lure put together.</param>
    public abstract SwimmingForm Swimming(JigHead head, LureBody body, LureAssembly parts);

    /// <summary>Its outline as flat pieces, for a drawing.</summary>
    /// <param name="head">Jig head or hook; <see cref="JigHead.None"/> for a body that needs none.</param>
    /// <param name="body">A body of this kind.</param>
    /// <param name="parts">The lure put together.</param>
    /// <param name="tailAngle">Angle of a swinging tail to the left (radians).</param>
    public abstract LureShape Outline(JigHead head, LureBody body, LureAssembly parts, double tailAngle);

    /// <summary>Parts, tow point and bends; the dimensions are positive.</summary>
    private protected abstract LureAssembly PutTogether(JigHead head, LureBody body, Rigging rigging);

    /// <summary>Drag and added mass on the path.</summary>
    private protected abstract PathLure OnPath(JigHead head, LureBody body, LureAssembly parts);

    /// <summary>Parts of the body's sections along its bent centre line: an arc as far as the hook holds it, straight beyond.</summary>
    private protected static IEnumerable<LurePart> SectionParts(IReadOnlyList<OutlineSection> sections, LureBody body, double volume, double mass, double arc, double sideways, double upright)
    {
        double sum = sections.Sum(s => s.Weight);
        foreach (OutlineSection s in sections)
        {
            double share = s.Weight / sum;
            double middle = s.Middle * body.Length;
            double along = Math.Min(1, arc > 0 ? middle / arc : 1);
            Station centre = BodyBends.CentreLine(middle, arc, sideways, upright);
            if (s.Aside == 0)
            {
                yield return Part(share, centre);
                continue;
            }

            // The pair lies on both sides of the bent axis.
            double aside = s.Aside * body.Width;
            (double sine, double cosine) = Math.SinCos(sideways * along);
            foreach (double side in (double[])[-1, 1])
                yield return Part(share / 2, centre with { Aft = centre.Aft - (side * aside * sine), Left = centre.Left + (side * aside * cosine) });

            LurePart Part(double part, Station at)
            {
                // A tail to the left is a section whose nose points to the right.
                Inertia own = Inertia.Cylinder(mass * part, (s.To - s.From) * body.Length, s.Height * body.Height, s.Width * body.Width);
                return new LurePart(s.Role, mass * part, volume * part, at, own.Yawed(-sideways * along).Raised(-upright * along));
            }
        }
    }

    /// <summary>Volume of a body of this kind by its fill (m3).</summary>
    private protected double BodyVolume(LureBody body) => Math.PI / 4 * body.Height * body.Width * body.Length * Proportions.Fill;

    /// <summary>Semi-axes, sections and rear edge of a body that is not a plate.</summary>
    private protected SwimmingForm SolidForm(LureBody body, LureAssembly parts, IReadOnlyList<FormDrag> drags)
    {
        // The ellipsoid with the body's length and volume and its ratio of height to width.
        double fill = Math.Sqrt(parts.SectionVolume / (Math.PI / 6 * parts.Length * body.Width * body.Height));
        double solidEnd = parts.Tail?.Hinge ?? parts.Length;
        IReadOnlyList<OutlineSection> sections = OutlineSection.Cut(Sections, parts.Length / body.Length);
        OutlineSection last = sections[^1];
        return new SwimmingForm
        {
            HalfLength = parts.Length / 2,
            HalfWidth = fill * body.Width / 2,
            HalfHeight = fill * body.Height / 2,

            // Behind the hinge the tail has forces of its own.
            Sections = [.. sections.Select(s => new FormSection(s.From * body.Length, Math.Min(s.To * body.Length, solidEnd), s.Height * body.Height, s.WholeWidth * body.Width))],

            // A tail that is thin and stiff is a fin; one that swings has forces of its own.
            Fin = parts.Tail is null ? new FormFin(new Station(parts.Length, 0, 0), last.Height * body.Height, last.WholeWidth * body.Width) : null,
            Drags = drags,
        };
    }

    /// <summary>Drag area of a part that stands in the flow by itself (m2); 0 for what belongs to the body or lies within it.</summary>
    private protected static double DragArea(LurePart part, JigHead head, LureBody body) => part.Role switch
    {
        PartRole.Point => HookWire.SingleDragArea(head.HookMass, part.Bare),
        PartRole.BellyHook or PartRole.TailHook => HookWire.TrebleDragArea(part.Mass),

        // Metal on the shank lies half in the body; a head at the nose shelters the body behind it.
        PartRole.ShankWeight => SphereDrag.Plateau / 2 * SphereDrag.FrontalArea(part.Volume),
        PartRole.Head => SphereDrag.Plateau * Math.Max(0, SphereDrag.FrontalArea(part.Volume) - (Math.PI / 4 * body.Height * body.Width)),
        PartRole.Body or PartRole.Stem or PartRole.Paddle or PartRole.Claw or PartRole.Shank or PartRole.Ballast or PartRole.Lip or PartRole.Plate => 0,
        _ => throw new ArgumentOutOfRangeException(nameof(part), part.Role, "The role is unknown."),
    };

    /// <summary>Parts that stand in the flow by themselves.</summary>
    private protected static IEnumerable<FormDrag> Drags(JigHead head, LureBody body, LureAssembly parts) =>
        parts.Parts.Select(part => new FormDrag(part.Role, part.Centre, DragArea(part, head, body))).Where(drag => drag.Area > 0);
}
