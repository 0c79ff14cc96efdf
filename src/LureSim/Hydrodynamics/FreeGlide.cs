using MathNet.Numerics.RootFinding;

namespace LureSim.Hydrodynamics;

/// <summary>What a slender body that falls free is made of, places along its axis forward of its middle (m).</summary>
/// <param name="WetWeight">Weight less buoyancy (N), above 0.</param>
/// <param name="Buoyancy">Buoyancy (N), above 0.</param>
/// <param name="MassCentre">Centre of mass (m).</param>
/// <param name="BuoyancyCentre">Centre of buoyancy (m).</param>
/// <param name="OverturningVolume">Displaced volume times the difference of the added-mass coefficients across and along (m3).</param>
/// <param name="RearArea">Area of the section behind which the flow has parted (m2).</param>
/// <param name="RearPlace">Its place (m), negative.</param>
/// <param name="FinArea">Area pi/4 s^2 of the span s of a stiff tail (m2).</param>
/// <param name="FinPlace">Its place (m), negative.</param>
/// <param name="PaddleDragArea">Cd A of a paddle that gives way to no side (m2).</param>
/// <param name="PaddlePlace">Its place (m), negative.</param>
/// <param name="Along">Drag along the axis, the paddle's included.</param>
/// <param name="Across">Drag across it.</param>
public sealed record GlideBalance(
    double WetWeight,
    double Buoyancy,
    double MassCentre,
    double BuoyancyCentre,
    double OverturningVolume,
    double RearArea,
    double RearPlace,
    double FinArea,
    double FinPlace,
    double PaddleDragArea,
    double PaddlePlace,
    IDragComponent Along,
    IDragComponent Across)
{
    /// <summary>Where the line is tied, along the axis (m): at the nose unless said otherwise.</summary>
    public double EyePlace { get; init; }

    /// <summary>How far the line's eye stands over the axis, on the side that the line turns up (m), 0 or more.</summary>
    public double EyeAbove { get; init; }
}

/// <summary>
/// The steady fall of a slender body, free of its line or with its nose held back by one: the angle to the flow at which the moments balance, and the slope of its way. A body
/// whose weight lies forward falls nose first or glides down nose first; one without falls flat; the more the line carries, the flatter.
/// </summary>
/// <remarks>
/// Forces: along the axis the drag of the parts at U cos a; across it the cross flow at U sin a (Allen &amp; Perkins 1951) and rho A U^2 sin a cos a on the rear and the fin
/// (Jones 1946; Hopkins 1951). Their resultant is upright and carries the wet weight, so tan theta = N/A for the angle theta between axis and plumb line. Moments about the
/// centre of mass: rho U^2 V (k2 - k1) sin a cos a turns the body across (Munk 1924, NACA TR 184); cross flow at the middle, rear, fin and paddle behind the centre of mass
/// and buoyancy behind it turn the nose down; a line that pulls upward at its eye, before and above the centre of mass, lifts the nose and carries a part of the weight. It is what the swimming model integrates in full, without its unsteady part.
/// </remarks>
public readonly record struct FreeGlide
{
    private const int Steps = 200;
    private const int Rounds = 4;

    private FreeGlide(double incidence, double fromPlumb, double speed)
    {
        Incidence = incidence;
        FromPlumb = fromPlumb;
        Speed = speed;
    }

    /// <summary>Angle between axis and flow (radians), 0 to pi/2.</summary>
    public double Incidence { get; }

    /// <summary>Angle between axis and plumb line (radians), 0 to pi/2: 0 nose down.</summary>
    public double FromPlumb { get; }

    /// <summary>Speed through the water (m/s).</summary>
    public double Speed { get; }

    /// <summary>Speed downward (m/s): what is lost on the slope is the way forward.</summary>
    public double SinkRate => Speed * Math.Cos(FromPlumb - Incidence);

    /// <summary>Finds the fall.</summary>
    /// <param name="body">The body.</param>
    /// <param name="density">Density of the water (kg/m3), above 0.</param>
    /// <param name="kinematicViscosity">nu (m2/s), above 0.</param>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A weight or a property of the water is not positive.</exception>
    /// <param name="linePull">Upward pull of the line at its eye (N), 0 to less than the wet weight.</param>
    public static FreeGlide Of(GlideBalance body, double density, double kinematicViscosity, double linePull = 0)
    {
        ArgumentNullException.ThrowIfNull(body);
        Guard.Positive(body.WetWeight);
        Guard.Positive(body.Buoyancy);
        Guard.Positive(density);
        Guard.Positive(kinematicViscosity);
        Guard.InRange(linePull, 0, body.WetWeight);
        double before = Excess(body, density, kinematicViscosity, linePull, 1e-4);
        if (before <= 0) return At(body, density, kinematicViscosity, linePull, 0);
        for (int i = 1; i < Steps; i++)
        {
            double angle = Math.PI / 2 * i / Steps, from = Math.Max(1e-4, Math.PI / 2 * (i - 1) / Steps);
            if (Excess(body, density, kinematicViscosity, linePull, angle) <= 0)
                return At(body, density, kinematicViscosity, linePull, Bisection.FindRoot(a => Excess(body, density, kinematicViscosity, linePull, a), from, angle, 1e-7, 100));
        }

        return At(body, density, kinematicViscosity, linePull, Math.PI / 2);
    }

    private static FreeGlide At(GlideBalance body, double density, double viscosity, double pull, double angle)
    {
        Forces(body, density, viscosity, pull, angle, out double across, out double along, out double speed);
        return new FreeGlide(angle, Math.Atan2(across, along), speed);
    }

    // Forces per 1/2 rho U^2 (m2) and the speed at which they carry the wet weight: the parts' drag depends on it, a few rounds settle it.
    private static void Forces(GlideBalance body, double density, double viscosity, double pull, double angle, out double across, out double along, out double speed)
    {
        (double s, double c) = Math.SinCos(angle);
        speed = 0.5;
        across = along = 0;
        for (int i = 0; i < Rounds; i++)
        {
            across = (body.Across.AreaTimesSpeed(speed * s, viscosity, out _) * s / speed) + (2 * (body.RearArea + body.FinArea) * s * c) + (body.PaddleDragArea * s);
            along = body.Along.AreaTimesSpeed(speed * c, viscosity, out _) * c / speed;
            speed = Math.Sqrt(2 * (body.WetWeight - pull) / (density * Math.Sqrt((across * across) + (along * along))));
        }
    }

    // Moment that turns the body across, over sin a (N m).
    private static double Excess(GlideBalance body, double density, double viscosity, double pull, double angle)
    {
        (double s, double c) = Math.SinCos(angle);
        Forces(body, density, viscosity, pull, angle, out double across, out double along, out double speed);
        double pressure = density * speed * speed, m = body.MassCentre;
        double crossFlow = body.Across.AreaTimesSpeed(speed * s, viscosity, out _) * s / speed;
        double turning = pressure * s * c * (body.OverturningVolume + (body.RearArea * (body.RearPlace - m)) + (body.FinArea * (body.FinPlace - m)));
        double steadying = 0.5 * pressure * ((crossFlow * m) + (body.PaddleDragArea * s * (m - body.PaddlePlace)));
        (double sineFromPlumb, double cosineFromPlumb) = Math.SinCos(Math.Atan2(across, along));
        double righting = body.Buoyancy * (m - body.BuoyancyCentre) * sineFromPlumb;
        double lifting = pull * (((body.EyePlace - m) * sineFromPlumb) + (body.EyeAbove * cosineFromPlumb));
        return (turning + lifting - steadying - righting) / s;
    }
}
