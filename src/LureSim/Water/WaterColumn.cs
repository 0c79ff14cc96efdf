using LureSim.Model;

namespace LureSim.Water;

/// <summary>Mechanical properties of a bottom.</summary>
/// <param name="Friction">Coulomb friction coefficient of a lure on it (dimensionless).</param>
/// <param name="Stiffness">Contact stiffness (N/m): a numerical penalty, soft enough for the integrator and stiff enough that a lure sinks in by millimetres; a heavy one meets more, so that at rest no more than half of it is in the bottom.</param>
/// <param name="RoughnessLength">Roughness length z0 of the current profile (m).</param>
public sealed record BottomProperties(double Friction, double Stiffness, double RoughnessLength)
{
    /// <summary>
    /// Presets. Roughness lengths after Soulsby 1997 (mud 2e-4, sand 4e-4, gravel 3e-3 m; from memory). Friction and stiffness are assumed.
    /// </summary>
    public static BottomProperties Of(BottomKind kind) => kind switch
    {
        BottomKind.Hard => new(0.4, 400, 3e-3),
        BottomKind.Mud => new(0.8, 40, 2e-4),
        BottomKind.Shell => new(0.7, 300, 3e-3),
        BottomKind.Sand => new(0.5, 150, 4e-4),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of bottom."),
    };
}

/// <summary>The water as the moving parts feel it: density, viscosity, current, wind, bottom and grass.</summary>
public sealed class WaterColumn
{
    /// <summary>Density of air at 20 degrees Celsius and one atmosphere (kg/m3), ISO 2533 scaled.</summary>
    public const double AirDensity = 1.204;

    /// <summary>Dynamic viscosity of air at 20 degrees Celsius (Pa s), Sutherland's law.</summary>
    public const double AirViscosity = 1.813e-5;

    /// <summary>Creates a water column.</summary>
    /// <param name="depth">Depth (m); may be infinite for an unbounded column.</param>
    /// <param name="density">Density (kg/m3), 900 to 1100.</param>
    /// <param name="viscosity">Dynamic viscosity (Pa s).</param>
    /// <param name="current">Current profile.</param>
    /// <param name="bottom">Bottom properties.</param>
    /// <param name="grassHeight">Canopy height above the bottom (m), 0 or more.</param>
    /// <param name="windX">Wind along x (m/s).</param>
    /// <param name="windY">Wind along y (m/s).</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or not a number.</exception>
    public WaterColumn(double depth, double density, double viscosity, CurrentProfile current, BottomProperties bottom, double grassHeight = 0, double windX = 0, double windY = 0)
    {
        ArgumentNullException.ThrowIfNull(current);
        ArgumentNullException.ThrowIfNull(bottom);
        Guard.InRange(depth, 0.05, double.PositiveInfinity);
        Guard.InRange(density, 900, 1100);
        Guard.InRange(viscosity, 1e-4, 1e-2);
        Guard.InRange(grassHeight, 0, depth);
        Guard.InRange(windX, -60, 60);
        Guard.InRange(windY, -60, 60);
        Depth = depth;
        Density = density;
        Viscosity = viscosity;
        Current = current;
        Bottom = bottom;
        GrassHeight = grassHeight;
        WindX = windX;
        WindY = windY;
    }

    /// <summary>Depth (m), the greatest where the bottom slopes.</summary>
    public double Depth { get; }

    /// <summary>Density (kg/m3).</summary>
    public double Density { get; }

    /// <summary>Dynamic viscosity (Pa s).</summary>
    public double Viscosity { get; }

    /// <summary>Current profile.</summary>
    public CurrentProfile Current { get; }

    /// <summary>Bottom properties.</summary>
    public BottomProperties Bottom { get; }

    /// <summary>Canopy height above the bottom (m).</summary>
    public double GrassHeight { get; }

    /// <summary>Wind along x (m/s).</summary>
    public double WindX { get; }

    /// <summary>Wind along y (m/s).</summary>
    public double WindY { get; }

    /// <summary>The bottom where it is not the same all over; null for even water of one kind.</summary>
    internal BottomRelief? Relief { get; init; }

    /// <summary>Kinematic viscosity (m2/s).</summary>
    public double KinematicViscosity => Viscosity / Density;

    /// <summary>The water column of a spot.</summary>
    public static WaterColumn Of(Spot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        BottomProperties bottom = BottomProperties.Of(spot.Bottom);
        double roughness = Math.Min(bottom.RoughnessLength, spot.Depth / 25);
        return new WaterColumn(
            spot.Depth,
            SeaWater.Density(spot.TemperatureCelsius, spot.Salinity),
            SeaWater.DynamicViscosity(spot.TemperatureCelsius, spot.Salinity),
            new CurrentProfile(spot.CurrentProfile, spot.CurrentSpeed, spot.CurrentDirection, spot.Depth, roughness),
            bottom,
            spot.GrassHeight,
            spot.WindSpeed * Math.Cos(spot.WindDirection),
            spot.WindSpeed * Math.Sin(spot.WindDirection))
        {
            Relief = spot.Profile is { IsEven: false } ? new BottomRelief(spot) : null,
        };
    }

    /// <summary>An unbounded column with a uniform stream along x: what the reference cases are stated in.</summary>
    /// <param name="density">Density (kg/m3).</param>
    /// <param name="viscosity">Dynamic viscosity (Pa s).</param>
    /// <param name="speed">Speed of the stream along +x (m/s).</param>
    public static WaterColumn Unbounded(double density, double viscosity, double speed = 0) =>
        new(double.PositiveInfinity, density, viscosity, new CurrentProfile(CurrentProfileKind.Uniform, speed, 0, 1e6, 1e-4), BottomProperties.Of(BottomKind.Sand));
}
