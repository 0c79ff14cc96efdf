namespace LureSim.Lures;

/// <summary>What the water meets when a lure swims about its tow point, as its kind describes it; places are measured from the nose aft.</summary>
/// <remarks>Mass, inertia, bends and a swinging tail come from <see cref="LureAssembly"/>. Immutable.</remarks>
public sealed record SwimmingForm
{
    /// <summary>Half length of the ellipsoid that stands for the body in the added mass (m).</summary>
    public required double HalfLength { get; init; }

    /// <summary>Half width (m).</summary>
    public required double HalfWidth { get; init; }

    /// <summary>Half height (m).</summary>
    public required double HalfHeight { get; init; }

    /// <summary>Sections of the solid body from nose to tail; none for a plate.</summary>
    public IReadOnlyList<FormSection> Sections { get; init; } = [];

    /// <summary>Fin at the end of the body, or null.</summary>
    public FormFin? Fin { get; init; }

    /// <summary>Parts that stand in the flow by themselves.</summary>
    public IReadOnlyList<FormDrag> Drags { get; init; } = [];

    /// <summary>Diving lip, or null.</summary>
    public FormLip? Lip { get; init; }

    /// <summary>The body is a thin plate, or null.</summary>
    public FormPlate? Plate { get; init; }
}

/// <summary>A section of the solid body.</summary>
/// <param name="From">Where it begins, from the nose (m).</param>
/// <param name="To">Where it ends (m); not above From where the tail swings instead.</param>
/// <param name="Height">Height (m).</param>
/// <param name="Width">Width (m).</param>
public readonly record struct FormSection(double From, double To, double Height, double Width);

/// <summary>An edge at which the flow leaves the body.</summary>
/// <param name="Middle">Its middle.</param>
/// <param name="Height">Span that meets sideways flow (m).</param>
/// <param name="Width">Span that meets vertical flow (m).</param>
public sealed record FormFin(Station Middle, double Height, double Width);

/// <summary>A part that drags alike from all sides.</summary>
/// <param name="Role">What it is.</param>
/// <param name="Centre">Its centre.</param>
/// <param name="Area">Cd A (m2).</param>
public readonly record struct FormDrag(PartRole Role, Station Centre, double Area);

/// <summary>A diving lip.</summary>
/// <param name="Middle">Middle of the plate.</param>
/// <param name="Length">Length along the lip (m).</param>
/// <param name="Width">Width (m).</param>
/// <param name="Angle">Angle between the lip and the body's axis (radians).</param>
public sealed record FormLip(Station Middle, double Length, double Width, double Angle);

/// <summary>A thin plate with an elliptic outline, dished lengthwise.</summary>
/// <param name="Length">Length (m).</param>
/// <param name="Width">Width (m).</param>
/// <param name="CamberDepth">Depth of the dish (m), hollow side down when positive.</param>
public sealed record FormPlate(double Length, double Width, double CamberDepth);
