namespace LureSim.Model;

/// <summary>What the bottom is made of: sets contact stiffness, friction and the roughness length of the current profile.</summary>
public enum BottomKind
{
    /// <summary>Rock, concrete, packed gravel.</summary>
    Hard,

    /// <summary>Sand, the default.</summary>
    Sand,

    /// <summary>Soft mud.</summary>
    Mud,

    /// <summary>Oyster or broken shell.</summary>
    Shell,
}

/// <summary>How the current changes between surface and bottom.</summary>
public enum CurrentProfileKind
{
    /// <summary>The same speed at every depth.</summary>
    Uniform,

    /// <summary>One-seventh power law of the height above bottom.</summary>
    Power,

    /// <summary>Logarithmic law of the wall with the bottom's roughness length.</summary>
    Logarithmic,
}

/// <summary>The spot. Axes: x along the cast, y to the caster's left, z up, still-water surface z = 0.</summary>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
/// <exception cref="ArgumentException">The strike zone has no height.</exception>
public sealed record Spot
{
    private readonly ValueList<SpotStructure> structures = new([]);

    /// <summary>Water depth (m), 0.2 to 60; where there is a <see cref="Profile"/>, its greatest.</summary>
    public required double Depth { get; init => field = Limits.Depth.Check(value); }

    /// <summary>Bottom material.</summary>
    public BottomKind Bottom { get; init => field = Guard.Defined(value); } = BottomKind.Sand;

    /// <summary>Height of the grass canopy above the bottom (m), 0 to the depth; 0 is bare bottom.</summary>
    public double GrassHeight { get; init => field = Limits.WithinWater.Check(value); }

    /// <summary>The bottom along the cast where it is not the same all over; null for even water of one kind.</summary>
    public BottomProfile? Profile { get; init; }

    /// <summary>Posts, overhangs and clumps; empty for none. None ends nearer than it begins.</summary>
    public IReadOnlyList<SpotStructure> Structures
    {
        get => structures;
        init
        {
            SpotStructure[] given = [.. Guard.Items(value, 0)];
            foreach (SpotStructure structure in given) Guard.That(structure.To >= structure.From, "A structure must not end nearer than it begins.", nameof(Structures));
            structures = new ValueList<SpotStructure>(given);
        }
    }

    /// <summary>Share of the light of the sky where direct light does not come, 0 to 1: in the shade of a structure; null in the open.</summary>
    public double? ShadedSky { get; init => field = Limits.Share.Check(value); }

    /// <summary>Direction in which the <see cref="Profile"/> runs away from the rod, radians to the left of the axis x; any finite angle.</summary>
    public double ProfileDirection { get; init => field = Guard.Finite(value); }

    /// <summary>Current at the surface (m/s), 0 to 3; over a <see cref="Profile"/>, where it is deepest.</summary>
    public double CurrentSpeed { get; init => field = Limits.CurrentSpeed.Check(value); }

    /// <summary>
    /// Where the current flows to, radians from the reference direction (that of a cast with an aim of 0), anticlockwise seen from above:
    /// 0 away from the angler, pi/2 to the left, pi towards the angler. Any finite angle.
    /// </summary>
    public double CurrentDirection { get; init => field = Guard.Finite(value); }

    /// <summary>Which way the tide runs, where the angler said so; it is for people, the direction says where the water goes.</summary>
    public TideStage? TideStage { get; init => field = value is { } stage ? Guard.Defined(stage) : null; }

    /// <summary>Shape of the current profile.</summary>
    public CurrentProfileKind CurrentProfile { get; init => field = Guard.Defined(value); } = CurrentProfileKind.Power;

    /// <summary>Wind speed (m/s), 0 to 25.</summary>
    public double WindSpeed { get; init => field = Limits.WindSpeed.Check(value); }

    /// <summary>Where the wind blows to, radians, same convention as <see cref="CurrentDirection"/>.</summary>
    public double WindDirection { get; init => field = Guard.Finite(value); }

    /// <summary>Practical salinity, 0 to 42.</summary>
    public required double Salinity { get; init => field = Limits.Salinity.Check(value); }

    /// <summary>Water temperature (degrees Celsius), -2 to 40.</summary>
    public required double TemperatureCelsius { get; init => field = Limits.Temperature.Check(value); }

    /// <summary>What of water and place was not given but assumed, so that pages can say so.</summary>
    public SpotAssumptions Assumed { get; init => field = Guard.Flags(value); }

    /// <summary>How clear the water is, in the form in which it was given.</summary>
    public required WaterClarity Clarity { get; init => field = Guard.Given(value); }

    /// <summary>Where the light comes from, in the form in which it was given.</summary>
    public required SkySetting Sky { get; init => field = Guard.Given(value); }

    /// <summary>Share of the sky covered by cloud, 0 to 1.</summary>
    public double CloudCover { get; init => field = Limits.Share.Check(value); }

    /// <summary>Where the fish are expected to strike; its lower edge is deeper than its upper one.</summary>
    public required StrikeZone StrikeZone
    {
        get;
        init
        {
            field = Guard.Given(value);
            Guard.That(value.Bottom > value.Top, "The strike zone must have a height.", nameof(StrikeZone));
        }
    }

    /// <summary>The target fish, a key of the table of fish eyes (for example "red drum").</summary>
    public required string TargetFish { get; init => field = Guard.Given(value); }

    /// <summary>Usual length of the target fish here (m), 0.1 to 2.5; null where it is not known.</summary>
    public double? TargetLength { get; init => field = Limits.TargetLength.Check(value); }

    /// <summary>The same spot with directions counted from a cast that is aimed to the left of the reference direction by an angle (radians).</summary>
    /// <param name="aim">Angle of the cast from the reference direction, anticlockwise (radians).</param>
    public Spot SeenAlong(double aim) =>
        aim == 0 ? this : this with { CurrentDirection = Turned(CurrentDirection - aim), WindDirection = Turned(WindDirection - aim), ProfileDirection = Turned(ProfileDirection - aim) };

    /// <summary>Distance along the profile (m) of a place; the distance along the cast where there is none.</summary>
    /// <param name="x">Along the cast (m).</param>
    /// <param name="y">To the left (m).</param>
    public double AlongProfile(double x, double y) => ProfileDirection == 0 ? x : (x * Math.Cos(ProfileDirection)) + (y * Math.Sin(ProfileDirection));

    /// <summary>Distance to the left of the line of the profile (m) of a place.</summary>
    /// <param name="x">Along the cast (m).</param>
    /// <param name="y">To the left (m).</param>
    public double AcrossProfile(double x, double y) => ProfileDirection == 0 ? y : (y * Math.Cos(ProfileDirection)) - (x * Math.Sin(ProfileDirection));

    /// <summary>Depth of the water at a place (m).</summary>
    /// <param name="x">Along the cast (m).</param>
    /// <param name="y">To the left (m).</param>
    public double DepthAt(double x, double y) => Profile is { } profile ? profile.DepthAt(AlongProfile(x, y)) : Depth;

    /// <summary>Height of the grass at a distance along the profile (m).</summary>
    /// <param name="along">Distance along the profile (m).</param>
    public double GrassAt(double along) => Profile?.StretchAt(along)?.GrassHeight ?? GrassHeight;

    /// <summary>Kind of bottom at a distance along the profile (m).</summary>
    /// <param name="along">Distance along the profile (m).</param>
    public BottomKind BottomAt(double along) => Profile?.StretchAt(along)?.Bottom ?? Bottom;

    private static double Turned(double angle) => angle - (2 * Math.PI * Math.Floor(angle / (2 * Math.PI)));
}
