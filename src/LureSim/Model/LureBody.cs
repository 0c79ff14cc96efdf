namespace LureSim.Model;

/// <summary>Profile of a lure body.</summary>
public enum BodyProfile
{
    /// <summary>Soft body with a thick swinging tail.</summary>
    PaddleTail,

    /// <summary>Straight soft bait without a swimming tail.</summary>
    SoftJerkbait,

    /// <summary>Soft shrimp imitation.</summary>
    ShrimpImitation,

    /// <summary>Hard bait fish with its own weight and hooks.</summary>
    HardTwitchbait,

    /// <summary>Bent plate of metal with a hook.</summary>
    Spoon,

    /// <summary>Short soft body with a thin curled tail.</summary>
    CurlTailGrub,

    /// <summary>Flat soft crab with claws.</summary>
    CrabImitation,

    /// <summary>Floating hard bait that walks from side to side.</summary>
    TopwaterWalker,
}

/// <summary>Whether a hard bait floats.</summary>
public enum HardFloat
{
    /// <summary>Rises when it is left alone.</summary>
    Floating,

    /// <summary>Hangs where it is left.</summary>
    Suspending,

    /// <summary>Sinks when it is left alone.</summary>
    Sinking,
}

/// <summary>A body: soft, for a jig head or hook, or a hard lure by itself.</summary>
/// <param name="Profile">Profile.</param>
/// <param name="Length">Overall length (m), 0.02 to 0.3.</param>
/// <param name="Height">Greatest height of the body (m), 0.0003 to 0.3; the thickness of a spoon.</param>
/// <param name="Width">Greatest width of the body (m), 0.0003 to 0.3.</param>
/// <param name="Density">Density of the material (kg/m3), 800 to 20000: of soft bodies 800 to 1400, of a hard twitchbait all in all; for a spoon the metal counts.</param>
/// <param name="Label">Name for people.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
/// <exception cref="ArgumentNullException">There is no label.</exception>
public sealed record LureBody(BodyProfile Profile, double Length, double Height, double Width, double Density, string Label)
{
    // Wider than what a scenario may give: the thickness of the thinnest spoon to the length of the longest body, and every metal.
    private static readonly ValueRange Side = new(Limits.SpoonThickness.Least, Limits.BodyLength.Most);
    private static readonly ValueRange Material = new(Limits.BodyDensity.Least, 20000);

    /// <summary>Profile.</summary>
    public BodyProfile Profile { get; init => field = Guard.Defined(value); } = Guard.Defined(Profile);

    /// <summary>Overall length (m), 0.02 to 0.3.</summary>
    public double Length { get; init => field = Limits.BodyLength.Check(value); } = Limits.BodyLength.Check(Length);

    /// <summary>Greatest height of the body (m), 0.0003 to 0.3; the thickness of a spoon.</summary>
    public double Height { get; init => field = Side.Check(value); } = Side.Check(Height);

    /// <summary>Greatest width of the body (m), 0.0003 to 0.3.</summary>
    public double Width { get; init => field = Side.Check(value); } = Side.Check(Width);

    /// <summary>Density of the material (kg/m3), 800 to 20000.</summary>
    public double Density { get; init => field = Material.Check(value); } = Material.Check(Density);

    /// <summary>Name for people.</summary>
    public string Label { get; init => field = Guard.Given(value); } = Guard.Given(Label);

    /// <summary>Whether a hard twitchbait floats; null for others.</summary>
    public HardFloat? Buoyancy { get; init => field = value is { } buoyancy ? Guard.Defined(buoyancy) : null; }

    /// <summary>The diving lip of a hard twitchbait, or null.</summary>
    public LipShape? Lip { get; init; }

    /// <summary>Its own drag where it was measured; null for the computed one.</summary>
    public MeasuredDrag? Drag { get; init; }

    /// <summary>The metal of a spoon; null for others.</summary>
    public HeadMetal? Metal { get; init => field = value is { } metal ? Guard.Defined(metal) : null; }
}
