using System.Collections.Concurrent;

namespace LureSim.Hydrodynamics;

/// <summary>
/// Where the laminar boundary layer leaves a prolate spheroid that moves along its axis, and the pressure drag that follows.
/// </summary>
/// <remarks>
/// The speed along the surface is that of ideal flow, (1 + k1) U t_x with t_x the part of the surface's direction along the axis and k1 Lamb's added mass. The layer is
/// followed by Thwaites's method in the axisymmetric form of Rott &amp; Crabtree 1952 (J. Aeronaut. Sci. 19:553), theta^2 = 0.45 nu/(r^2 u^6) times the integral of r^2 u^5,
/// and leaves where theta^2 u'/nu = -0.09. Behind it the pressure stays what it is there, so that the part of the ideal pressure that would have pushed from behind is lost.
/// The station does not depend on the Reynolds number. For a sphere it is 103.6 degrees, as published; a real sphere parts at 82, because its wake changes the outer flow:
/// the method holds for slender bodies, and its wake pressure is not let fall below -0.13, what blunt bodies have at their base (Hoerner 1965, ch. 3).
/// </remarks>
public readonly record struct LaminarSeparation
{
    // Thwaites 1949: separation at this value of theta^2 u'/nu, and the constant of the quadrature.
    private const double Parting = -0.09;
    private const double Quadrature = 0.45;

    // Pressure coefficient of the base of blunt bodies.
    private const double LeastWakePressure = -0.13;

    private const int Steps = 2000;

    // A bound on memory only. The shapes of a box are few, and each window of the swimming model asks for its own.
    private const int MostKept = 1024;

    private static readonly ConcurrentDictionary<double, LaminarSeparation> Known = new();

    private LaminarSeparation(double station, double areaShare, double wakePressure, double pressureDrag)
    {
        Station = station;
        AreaShare = areaShare;
        WakePressure = wakePressure;
        PressureDrag = pressureDrag;
    }

    /// <summary>Place of separation from the nose as a share of the length, 0.5 to 1.</summary>
    public double Station { get; }

    /// <summary>Section there over the largest section: the area of the base that the wake sees, 0 to 1.</summary>
    public double AreaShare { get; }

    /// <summary>Pressure coefficient at the place of separation, -0.13 or more.</summary>
    public double WakePressure { get; }

    /// <summary>Pressure drag coefficient on the largest section, without the suction of the base (<see cref="BluntBase"/>).</summary>
    public double PressureDrag { get; }

    /// <summary>A prolate spheroid along its axis.</summary>
    /// <param name="slenderness">Length over diameter, 1 to 50; slender means 3 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The slenderness is outside its range.</exception>
    public static LaminarSeparation OfSpheroid(double slenderness)
    {
        Guard.InRange(slenderness, 1, 50);
        if (Known.TryGetValue(slenderness, out LaminarSeparation known)) return known;
        if (Known.Count > MostKept) Known.Clear();
        return Known.GetOrAdd(slenderness, Follow);
    }

    // The layer from the nose to where it parts.
    private static LaminarSeparation Follow(double slenderness)
    {
        SpheroidAddedMass.Coefficients(Math.Max(slenderness, 1.0001), out double axial, out _);
        double fastest = 1 + axial;
        double integral = 0;
        for (int i = 0; i < Steps; i++)
        {
            // The angle t of the ellipse x = -a cos t, r = sin t, a the slenderness, lengths in radii.
            double t = Math.PI * (i + 0.5) / Steps;
            (double s, double c) = Math.SinCos(t);
            double stretch = Math.Sqrt((slenderness * slenderness * s * s) + (c * c));
            double speed = fastest * slenderness * s / stretch;
            double fifth = speed * speed * speed * speed * speed;
            integral += s * s * fifth * stretch * Math.PI / Steps;

            // du/ds = (du/dt)/(ds/dt); du/dt = fastest a c/stretch^3.
            double gradient = fastest * slenderness * c / (stretch * stretch * stretch * stretch);
            if (Quadrature * integral * gradient / (s * s * fifth * speed) < Parting)
                return Behind(slenderness, fastest, (1 - c) / 2, s * s, 1 - (speed * speed));
        }

        return default;
    }

    // Ideal pressure over the sections 0 to S of the rear, 1 - F^2 a^2 A/(a^2 A + 1 - A) integrated in A in closed form, less the wake's.
    private static LaminarSeparation Behind(double slenderness, double fastest, double station, double share, double pressure)
    {
        double square = slenderness * slenderness, excess = square - 1;
        double wake = Math.Max(pressure, LeastWakePressure);
        double carried = excess < 1e-6 ? share * share / 2 : (share / excess) - (Math.Log(1 + (excess * share)) / (excess * excess));
        double lost = share - (fastest * fastest * square * carried);
        return new LaminarSeparation(station, share, wake, lost - (wake * share));
    }
}
