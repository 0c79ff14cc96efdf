namespace LureSim.Hydrodynamics;

/// <summary>A part of a body's drag, as the engine takes it: force 1/2 rho (Cd A) U^2.</summary>
/// <remarks>Implementations are immutable and allocate nothing when asked.</remarks>
public interface IDragComponent
{
    /// <summary>What it is, for reports.</summary>
    string Name { get; }

    /// <summary>Drag area Cd A (m2) at a speed, multiplied by the speed (m3/s), which stays finite at rest; so does the slope times the speed.</summary>
    /// <param name="speed">Speed through the water (m/s), 0 or more.</param>
    /// <param name="kinematicViscosity">nu (m2/s), above 0.</param>
    /// <param name="slope">Derivative of the returned value with respect to the speed (m2).</param>
    double AreaTimesSpeed(double speed, double kinematicViscosity, out double slope);
}

/// <summary>
/// Friction of the skin of a body along the flow: laminar (Blasius 1908) with the leading edge's correction (Messiter 1970), turbulent behind its transition (Prandtl
/// and Schlichting), and the creeping flow of a prolate spheroid (Oberbeck 1876) near rest.
/// </summary>
/// <remarks>
/// On the wetted area C_f = 1.328 Re^-1/2 + 2.661 Re^-7/8, which follows the measured plates of Janour 1951 (2.90 Re^-0.60) down to Re 10; from about Re 5e5 on
/// C_f = 0.455/(log10 Re)^2.58 - 1700/Re (Schlichting, Boundary-layer theory, transition at Re 5e5), the two joined by the mean of power 20. A lure of 0.1 m at 0.5 m/s
/// has 5e4. Below, the value goes over into Stokes drag, 2 pi nu times the shape's length, by the mean of power 8, which keeps the slope finite at rest.
/// </remarks>
public sealed class SkinFriction : IDragComponent
{
    private const double Laminar = 1.328;
    private const double LeadingEdge = 2.661;
    private const double TransitionLoss = 1700;
    private const double JoinTurbulent = 20;

    // Where the turbulent formula turns positive; below it there is none.
    private const double LeastTurbulent = 2.7e5;

    private readonly double wetted;
    private readonly double length;
    private readonly double creeping;

    /// <summary>Friction of a prolate spheroid, or of a body like one.</summary>
    /// <param name="wettedArea">Wetted area (m2), above 0.</param>
    /// <param name="length">Length along the flow (m), above 0.</param>
    /// <param name="diameter">Diameter of the spheroid of the same volume and length (m), above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is not positive.</exception>
    public SkinFriction(double wettedArea, double length, double diameter)
    {
        Guard.Positive(wettedArea);
        Guard.Positive(length);
        Guard.Positive(diameter);
        wetted = wettedArea;
        this.length = length;
        creeping = CreepingLength(length, diameter);
    }

    /// <inheritdoc/>
    public string Name => "skin friction";

    /// <summary>C_f on the wetted area at a Reynolds number on the length, laminar and turbulent, without the creeping part.</summary>
    /// <param name="reynolds">Re = U L/nu, above 0 to 1e9.</param>
    public static double Coefficient(double reynolds) => Coefficient(reynolds, out _);

    /// <inheritdoc/>
    public double AreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double still = creeping * kinematicViscosity;
        double reynolds = speed * length / kinematicViscosity;
        if (reynolds < 1e-9)
        {
            // (still^8 + layer^8)^(1/8) with layer^8 in proportion to the speed.
            double rise = Math.Pow(LeadingEdge * wetted, 8) * Math.Pow(kinematicViscosity / length, 7);
            slope = rise / (8 * Math.Pow(still, 7));
            return still;
        }

        double coefficient = Coefficient(reynolds, out double logarithmic);
        double layer = wetted * coefficient * speed;

        // d(C U)/dU = C (1 + dlnC/dlnRe).
        double layerSlope = wetted * coefficient * (1 + logarithmic);
        double share = layer / still;
        double power = share * share;
        power *= power;
        power *= power;
        double value = still * Math.Sqrt(Math.Sqrt(Math.Sqrt(1 + power)));
        slope = value * power / (1 + power) * layerSlope / layer;
        return value;
    }

    private static double Coefficient(double reynolds, out double logarithmicSlope)
    {
        double root = Laminar / Math.Sqrt(reynolds), edge = LeadingEdge * Math.Sqrt(Math.Sqrt(Math.Sqrt(reynolds))) / reynolds;
        double laminar = root + edge;
        double laminarSlope = -((0.5 * root) + (0.875 * edge)) / laminar;
        if (reynolds <= LeastTurbulent)
        {
            logarithmicSlope = laminarSlope;
            return laminar;
        }

        double log = Math.Log10(reynolds);
        double free = 0.455 / Math.Pow(log, 2.58), loss = TransitionLoss / reynolds;
        double turbulent = free - loss;
        double turbulentSlope = ((-2.58 * free / (log * Math.Log(10))) + loss) / turbulent;
        double weight = Math.Pow(turbulent / laminar, JoinTurbulent);
        logarithmicSlope = (laminarSlope + (weight * turbulentSlope)) / (1 + weight);
        return laminar * Math.Pow(1 + weight, 1 / JoinTurbulent);
    }

    // Stokes drag along the axis, 6 pi mu b K U with b the half diameter and K Oberbeck's for the prolate spheroid (Happel & Brenner 1983, sect. 5-11).
    // As Cd A U it is 12 pi nu b K.
    private static double CreepingLength(double length, double diameter)
    {
        double aspect = Math.Max(1.0001, length / diameter);
        double root = Math.Sqrt((aspect * aspect) - 1);
        double logarithm = Math.Log(aspect + root);
        double shape = 4.0 / 3 * root * root / (((((2 * aspect * aspect) - 1) / root) * logarithm) - aspect);
        return 6 * Math.PI * diameter * shape;
    }
}

/// <summary>
/// Suction on the base behind which the flow has parted: C_b = 0.029/sqrt(C_fb), both on the base area, C_fb the forebody's friction. Hoerner 1965, Fluid-dynamic drag,
/// ch. 3, eq. for bodies of revolution.
/// </summary>
public sealed class BluntBase : IDragComponent
{
    private const double Coefficient = 0.029;

    private readonly IDragComponent friction;
    private readonly double area;

    /// <summary>The base of a body.</summary>
    /// <param name="friction">Friction of the body before it.</param>
    /// <param name="area">Area of the base (m2), 0 or more.</param>
    /// <exception cref="ArgumentNullException"><paramref name="friction"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The area is negative.</exception>
    public BluntBase(IDragComponent friction, double area)
    {
        ArgumentNullException.ThrowIfNull(friction);
        Guard.InRange(area, 0, 10);
        this.friction = friction;
        this.area = area;
    }

    /// <inheritdoc/>
    public string Name => "base";

    /// <inheritdoc/>
    public double AreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        // 0.029 A^(3/2) U^(3/2) F^(-1/2) with F the friction's own Cd A U.
        double before = friction.AreaTimesSpeed(speed, kinematicViscosity, out double beforeSlope);
        double root = Math.Sqrt(speed / before);
        double scale = Coefficient * area * Math.Sqrt(area) * root;
        slope = scale * (1.5 - (0.5 * speed * beforeSlope / before));
        return scale * speed;
    }
}

/// <summary>A part whose drag area does not change with the speed.</summary>
public sealed class ConstantArea : IDragComponent
{
    private readonly double area;

    /// <summary>Such a part.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="dragArea">Cd A (m2), 0 or more.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The area is negative.</exception>
    public ConstantArea(string name, double dragArea)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        Guard.InRange(dragArea, 0, 10);
        Name = name;
        area = dragArea;
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public double AreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        slope = area;
        return area * speed;
    }
}

/// <summary>
/// A round body or wire across the flow: the measured cylinder by its Reynolds number (<see cref="CylinderDrag.NormalWieselsberger1922"/>) with the share of its finite
/// length (<see cref="CylinderDrag.FiniteLengthShare"/>).
/// </summary>
public sealed class CylinderAcross : IDragComponent
{
    private readonly double diameter;
    private readonly double extent;

    /// <summary>A cylinder.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="length">Length (m), above 0.</param>
    /// <param name="diameter">Diameter (m), above 0.</param>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is out of range.</exception>
    public CylinderAcross(string name, double length, double diameter)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        Guard.Positive(length);
        Guard.Positive(diameter);
        Name = name;
        this.diameter = diameter;
        extent = length * CylinderDrag.FiniteLengthShare(length / diameter);
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <inheritdoc/>
    public double AreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        // Cd A U = l d Cn U = l nu G(Re), G = Cn Re.
        double reynolds = speed * diameter / kinematicViscosity;
        LineDragLaw.Default.Evaluate(reynolds, out double normal, out double rise, out _, out _);
        slope = extent * diameter * (reynolds > 1e-12 ? rise / reynolds : 0);
        return extent * kinematicViscosity * normal;
    }
}

/// <summary>The sum of parts.</summary>
public sealed class DragSum : IDragComponent
{
    private readonly IDragComponent[] parts;

    /// <summary>A sum.</summary>
    /// <param name="name">What it is.</param>
    /// <param name="parts">Its parts.</param>
    /// <exception cref="ArgumentNullException">The list or a part is null.</exception>
    /// <exception cref="ArgumentException">The name is empty.</exception>
    public DragSum(string name, params IReadOnlyList<IDragComponent> parts)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(parts);
        foreach (IDragComponent part in parts) ArgumentNullException.ThrowIfNull(part, nameof(parts));
        Name = name;
        this.parts = [.. parts];
    }

    /// <inheritdoc/>
    public string Name { get; }

    /// <summary>The parts.</summary>
    public IReadOnlyList<IDragComponent> Parts => parts;

    /// <inheritdoc/>
    public double AreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double value = 0;
        slope = 0;
        foreach (IDragComponent part in parts)
        {
            value += part.AreaTimesSpeed(speed, kinematicViscosity, out double own);
            slope += own;
        }

        return value;
    }
}

/// <summary>The drag of a rounded, slender body nose first, put together from parts that are checked one by one.</summary>
public static class RoundedBody
{
    /// <summary>
    /// Nose first: friction of the skin, pressure lost behind the place where the laminar layer parts (<see cref="LaminarSeparation"/>), suction of the base there
    /// (<see cref="BluntBase"/>). The rounded nose itself has none: its pressures balance. The body is seen as the ellipsoid of its length and volume.
    /// </summary>
    /// <param name="length">Length (m), above 0.</param>
    /// <param name="height">Height of the ellipsoid (m), above 0.</param>
    /// <param name="width">Width of the ellipsoid (m), above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is not positive.</exception>
    public static DragSum NoseFirst(double length, double height, double width)
    {
        Guard.Positive(length);
        Guard.Positive(height);
        Guard.Positive(width);
        double diameter = Math.Sqrt(height * width);
        double frontal = Math.PI / 4 * diameter * diameter;

        // Beyond 50 diameters the layer parts at the very tail, whatever the length.
        var parting = LaminarSeparation.OfSpheroid(Math.Clamp(length / diameter, 1, 50));
        var friction = new SkinFriction(WettedArea(length, diameter), length, diameter);
        return new DragSum(
            "body, nose first",
            friction,
            new ConstantArea("pressure behind the place of separation", parting.PressureDrag * frontal),
            new BluntBase(friction, parting.AreaShare * frontal));
    }

    /// <summary>Across the flow: the measured cylinder of the body's side, its mean diameter and finite length.</summary>
    /// <param name="length">Length (m), above 0.</param>
    /// <param name="diameter">Largest diameter of the spheroid of the same volume and length (m), above 0.</param>
    public static CylinderAcross Broadside(double length, double diameter)
    {
        // A spheroid's side is pi/4 of the rectangle about it.
        Guard.Positive(diameter);
        return new CylinderAcross("body, across", length, Math.PI / 4 * diameter);
    }

    /// <summary>Surface of a prolate spheroid (m2).</summary>
    /// <param name="length">Length (m), above 0.</param>
    /// <param name="diameter">Diameter (m), above 0.</param>
    public static double WettedArea(double length, double diameter)
    {
        Guard.Positive(length);
        Guard.Positive(diameter);
        double aspect = Math.Max(1.0001, length / diameter);
        double eccentricity = Math.Sqrt(1 - (1 / (aspect * aspect)));
        return Math.PI * diameter * diameter / 2 * (1 + (aspect / eccentricity * Math.Asin(eccentricity)));
    }
}
