using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Casting;

/// <summary>Where a lure comes down.</summary>
/// <param name="Distance">Along the cast from the rod tip (m).</param>
/// <param name="Aside">To the left of it (m), by the wind.</param>
/// <param name="Time">Time of the flight (s).</param>
/// <param name="Height">Greatest height above the water (m).</param>
/// <param name="LineOut">Line that was pulled off the spool (m).</param>
/// <param name="Speed">Speed at the water (m/s).</param>
public readonly record struct CastLanding(double Distance, double Aside, double Time, double Height, double LineOut, double Speed)
{
    /// <summary>Level distance from the rod tip (m).</summary>
    public double Length => Math.Sqrt((Distance * Distance) + (Aside * Aside));
}

/// <summary>
/// The flight of a lure that pulls its line off the spool: Newton's law for the lure with gravity, its drag in the air, and the pull of the line.
/// </summary>
/// <remarks>
/// The line follows the lure along its path, so that (m + lambda s) dv/dt = -lambda v^2 - F along the path: every metre of line that leaves the spool is brought from rest to the speed
/// of the lure (momentum of a body of growing mass; the line's mass by length lambda, line out s). F is the drag of the lure (its own path drag at the Reynolds number of air, nose
/// first, or that of a sphere: Brown and Lawler 2003, brown2003sphere), the pull of spool and guides (assumed), and the friction of the air along the line, pi mu h u for each metre: a
/// line in its own track has the laminar boundary layer of a long thin cylinder (Glauert and Lighthill 1955), wind across adds that of a yawed one (Choo and Casarella 1971).
/// Wind across bows the line. A string hands half of its load on to each end, by no more than its tension can: what it cannot hold, the line drifts with the wind.
/// Steps by the classical Runge-Kutta method; the error of the distance is below a millimetre.
/// </remarks>
public sealed class CastFlight
{
    /// <summary>Pull at which line comes off a full spool through the guides at rest (N). Assumed.</summary>
    public const double SpoolPull = 0.004;

    /// <summary>Factor of the guides and of the coils on the pull that brings the line up to speed. Assumed.</summary>
    public const double GuideFactor = 1.15;

    /// <summary>Factor on the drag of a lure nose first: jigs and plugs yaw and wobble in the air. Assumed.</summary>
    public const double Wobble = 1.5;

    /// <summary>Angle above level at which the lure leaves the rod (radians): 35 degrees. Assumed; a full cast goes about as far from 30 to 42.</summary>
    public const double UsualAngle = 35 * Math.PI / 180;

    private const double AirKinematicViscosity = WaterColumn.AirViscosity / WaterColumn.AirDensity;
    private const double Step = 0.02;
    private const double LongestFlight = 60;

    private readonly LureProperties lure;
    private readonly double mass;
    private readonly LineMaterial? line;
    private readonly double lureFactor;

    /// <summary>Creates a flight.</summary>
    /// <param name="lure">The lure; its drag is taken in air.</param>
    /// <param name="line">The line behind it; null for none.</param>
    /// <param name="mass">Mass of the lure (kg), above 0, where it is not the lure's own; null for that.</param>
    /// <param name="lureFactor">Factor on the drag of the lure, above 0: <see cref="Wobble"/> for what does not fly straight.</param>
    /// <exception cref="ArgumentNullException"><paramref name="lure"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">Mass or factor is not above 0.</exception>
    public CastFlight(LureProperties lure, LineMaterial? line, double? mass = null, double lureFactor = 1)
    {
        ArgumentNullException.ThrowIfNull(lure);
        this.lure = lure;
        this.line = line;
        this.mass = mass ?? lure.Mass;
        Guard.Positive(this.mass, nameof(mass));
        Guard.Positive(lureFactor);
        this.lureFactor = lureFactor;
    }

    /// <summary>Flies.</summary>
    /// <param name="speed">Speed at which it leaves the rod (m/s), above 0 to 200.</param>
    /// <param name="height">Height at which it does (m), 0 or more.</param>
    /// <param name="angle">Angle above level (radians), between -1.5 and 1.58 (straight up).</param>
    /// <param name="windAlong">Wind along the cast (m/s), positive from behind, -60 to 60.</param>
    /// <param name="windLeft">Wind to the left (m/s), -60 to 60.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public CastLanding Fly(double speed, double height, double angle = UsualAngle, double windAlong = 0, double windLeft = 0)
    {
        Guard.Positive(speed);
        Guard.InRange(speed, 0, 200);
        Guard.InRange(height, 0, 100);
        Guard.InRange(angle, -1.5, 1.58);
        Guard.InRange(windAlong, -60, 60);
        Guard.InRange(windLeft, -60, 60);
        Span<double> state = [0, 0, height, speed * Math.Cos(angle), 0, speed * Math.Sin(angle), 0];
        Span<double> before = stackalloc double[7], a = stackalloc double[7], b = stackalloc double[7], c = stackalloc double[7], d = stackalloc double[7], probe = stackalloc double[7];
        double time = 0, top = height;
        while (time < LongestFlight)
        {
            state.CopyTo(before);
            Advance(state, Step, windAlong, windLeft, a, b, c, d, probe);
            time += Step;
            top = Math.Max(top, state[2]);
            if (state[2] > 0) continue;

            // The last step is shortened until it ends at the water; a few turns of the secant rule are exact to rounding.
            double used = Step;
            for (int turn = 0; turn < 8 && Math.Abs(state[2]) > 1e-9; turn++)
            {
                used -= state[2] / state[5];
                before.CopyTo(state);
                Advance(state, used, windAlong, windLeft, a, b, c, d, probe);
            }

            return Landing(state, time - Step + used, top);
        }

        return Landing(state, time, top);
    }

    private static CastLanding Landing(ReadOnlySpan<double> state, double time, double top) =>
        new(state[0], state[1], time, top, state[6], Math.Sqrt((state[3] * state[3]) + (state[4] * state[4]) + (state[5] * state[5])));

    private void Advance(Span<double> state, double step, double windAlong, double windLeft, Span<double> a, Span<double> b, Span<double> c, Span<double> d, Span<double> probe)
    {
        Slope(state, windAlong, windLeft, a);
        Add(state, a, step / 2, probe);
        Slope(probe, windAlong, windLeft, b);
        Add(state, b, step / 2, probe);
        Slope(probe, windAlong, windLeft, c);
        Add(state, c, step, probe);
        Slope(probe, windAlong, windLeft, d);
        for (int i = 0; i < 7; i++) state[i] += step / 6 * (a[i] + (2 * b[i]) + (2 * c[i]) + d[i]);
    }

    private static void Add(ReadOnlySpan<double> state, ReadOnlySpan<double> slope, double step, Span<double> result)
    {
        for (int i = 0; i < 7; i++) result[i] = state[i] + (step * slope[i]);
    }

    // State: place, velocity, line out.
    private void Slope(ReadOnlySpan<double> state, double windAlong, double windLeft, Span<double> slope)
    {
        double vx = state[3], vy = state[4], vz = state[5], speed = Math.Sqrt((vx * vx) + (vy * vy) + (vz * vz));
        double ux = windAlong - vx, uy = windLeft - vy, air = Math.Sqrt((ux * ux) + (uy * uy) + (vz * vz));
        double drag = WaterColumn.AirDensity / 2 * lureFactor * lure.DragAreaTimesSpeed(air, AirKinematicViscosity, out _) / mass;
        double ax = drag * ux, ay = drag * uy, az = (-drag * vz) - PhysicalConstants.StandardGravity;
        if (line is not null && speed > 0)
        {
            double tx = vx / speed, ty = vy / speed, tz = vz / speed;
            double paid = state[6];
            double windForward = (windAlong * tx) + (windLeft * ty);
            double acrossX = windAlong - (windForward * tx), acrossY = windLeft - (windForward * ty), acrossZ = -windForward * tz;
            double across = Math.Sqrt((acrossX * acrossX) + (acrossY * acrossY) + (acrossZ * acrossZ));
            double along = speed - windForward;
            double pull = (GuideFactor * line.MassPerLength * speed * speed) + SpoolPull;

            // What the string can hold of the wind across, under the tension that it has without it, is the wind that it still feels.
            double tension = Math.Max(0, pull + Friction(0, along, paid));
            double side = 0;
            if (across > 0)
            {
                double load = WaterColumn.AirDensity / 2 * CylinderDrag.NormalWieselsberger1922(across * line.Diameter / AirKinematicViscosity) * line.Diameter * across * across * paid / 2;
                side = load * tension / Math.Sqrt((load * load) + (tension * tension));
                if (load > 0) tension = Math.Max(0, pull + Friction(across * Math.Sqrt(side / load), along, paid));
            }

            // Along the path the line that is out moves with the lure.
            double forward = (ax * tx) + (ay * ty) + (az * tz);
            double want = ((forward * mass) - tension) / (mass + (line.MassPerLength * paid));
            ax += (want - forward) * tx;
            ay += (want - forward) * ty;
            az += (want - forward) * tz;
            if (side > 0)
            {
                side /= mass * across;
                ax += side * acrossX;
                ay += side * acrossY;
                az += side * acrossZ;
            }
        }

        slope[0] = vx;
        slope[1] = vy;
        slope[2] = vz;
        slope[3] = ax;
        slope[4] = ay;
        slope[5] = az;
        slope[6] = speed;
    }

    // Friction along the line (N): the two numbers as in the law of the line in the water.
    private double Friction(double across, double along, double paid)
    {
        double yawed = CylinderDrag.TangentialChooCasarella1971(across * line!.Diameter / AirKinematicViscosity);
        return Math.PI * WaterColumn.AirViscosity * Math.Sqrt((LineDragLaw.AxialFrictionNumber * LineDragLaw.AxialFrictionNumber) + (yawed * yawed)) * along * paid;
    }
}
