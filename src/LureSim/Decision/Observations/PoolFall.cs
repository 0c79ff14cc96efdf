using LureSim.Coupling;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Tackle;
using LureSim.Water;
using MathNet.Numerics.RootFinding;

namespace LureSim.Decision.Observations;

/// <summary>A lure that falls free of its line in still water, from rest at the surface: what a pool or a bucket shows.</summary>
public static class PoolFall
{
    /// <summary>
    /// Seconds to a depth with a drag as the square of the speed: with the final speed v and the first acceleration a,
    /// t = (v/a) arcosh(exp(z a / v^2)). Of fall rates that are no squares the drag at the final speed counts.
    /// </summary>
    /// <param name="depth">Depth z (m), above 0.</param>
    /// <param name="terminal">Final speed v (m/s), above 0.</param>
    /// <param name="acceleration">First acceleration a (m/s2), above 0: wet weight over mass and added mass.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is not above 0.</exception>
    public static double Seconds(double depth, double terminal, double acceleration)
    {
        Guard.Positive(depth);
        Guard.Positive(terminal);
        Guard.Positive(acceleration);
        double x = depth * acceleration / (terminal * terminal);

        // arcosh(e^x) = x + ln(1 + sqrt(1 - e^-2x)), which does not overflow.
        return terminal / acceleration * (x + Math.Log(1 + Math.Sqrt(1 - Math.Exp(-2 * x))));
    }

    /// <summary>Seconds that a lure takes to fall through a pool; infinite for one that floats.</summary>
    /// <param name="tackle">The tackle, for rigging and leader.</param>
    /// <param name="observation">The timing: its lure, depth and water.</param>
    /// <param name="factor">Factor on the drag of the lure, above 0; its own measured one does not count.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="ArgumentException">The observation has no lure or no depth.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not above 0.</exception>
    public static double Seconds(Outfit tackle, Observation observation, double factor)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        ArgumentNullException.ThrowIfNull(observation);
        Guard.InRange(factor, 0.1, 10);
        if (observation.Head is null || observation.Body is null || observation.Length is not { } depth) throw new ArgumentException("A timed fall needs a lure and a depth.", nameof(observation));
        (LureProperties lure, double density, double viscosity) = Lure(tackle, observation);
        return Seconds(lure, density, viscosity, depth, factor);
    }

    /// <summary>The factor on the drag at which a lure falls through a pool in the time that was taken; null where no factor from 0.1 to 10 gives it.</summary>
    /// <param name="tackle">The tackle, for rigging and leader.</param>
    /// <param name="observation">The timing: its lure, depth and water.</param>
    /// <param name="seconds">The time (s); null for the observed one.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="ArgumentException">The observation has no lure or no depth.</exception>
    public static double? Factor(Outfit tackle, Observation observation, double? seconds = null)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        ArgumentNullException.ThrowIfNull(observation);
        if (observation.Head is null || observation.Body is null || observation.Length is not { } depth) throw new ArgumentException("A timed fall needs a lure and a depth.", nameof(observation));
        (LureProperties lure, double density, double viscosity) = Lure(tackle, observation);
        double time = seconds ?? observation.Value;
        double Residual(double log) => (Seconds(lure, density, viscosity, depth, Math.Clamp(Math.Exp(log), 0.1, 10)) / time) - 1;
        double least = Math.Log(0.1), most = Math.Log(10);
        return time > 0 && Residual(least) < 0 && Residual(most) > 0 ? Math.Exp(Brent.FindRoot(Residual, least, most, 1e-9, 200)) : null;
    }

    private static (LureProperties Lure, double Density, double Viscosity) Lure(Outfit tackle, Observation observation)
    {
        double density = SeaWater.Density(observation.TemperatureCelsius, observation.Salinity);
        double viscosity = SeaWater.DynamicViscosity(observation.TemperatureCelsius, observation.Salinity) / density;
        var pool = new Spot
        {
            Depth = 5,
            Salinity = observation.Salinity,
            TemperatureCelsius = observation.TemperatureCelsius,
            Clarity = new SecchiClarity(5, WaterKind.CoastalGreen),
            Sky = new SkyByElevation(0.5),
            StrikeZone = new StrikeZone(0, 5),
            TargetFish = "red drum",
        };
        return (ActingLures.Of(tackle, pool, observation.Head!, observation.Body! with { Drag = null }), density, viscosity);
    }

    private static double Seconds(LureProperties lure, double density, double viscosity, double depth, double factor)
    {
        double weight = (lure.Mass - (density * lure.Volume)) * PhysicalConstants.StandardGravity;
        if (!(weight > 0)) return double.PositiveInfinity;
        double terminal = FreeFall.TerminalSpeed(ScaledDragLure.Of(lure, factor), density, viscosity);
        return Seconds(depth, terminal, weight / (lure.Mass + (lure.AddedMassCoefficient * density * lure.Volume)));
    }
}
