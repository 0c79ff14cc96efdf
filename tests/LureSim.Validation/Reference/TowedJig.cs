using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Validation.Reference;

/// <summary>
/// The light jig on thin line of the towing cases: 20 m of 0.23 mm line, EA 1 kN, a 1/4 oz body; all under water, no surface, no bottom.
/// </summary>
internal static class TowedJig
{
    public const double Length = 20;
    public const double Density = 1025;
    public const double Viscosity = 1.0766e-3;

    public static LineMaterial Line { get; } = LineMaterial.Round(0.23e-3, 4.0302e-5, 1000);

    public static ConstantDragLure Body { get; } =
        new() { Mass = 7.0873808e-3, Volume = 6.2499e-7, AddedMassCoefficient = 0.5, ContactRadius = 0.005, Area = 3.97e-5 };

    public static WaterColumn Stream(double speed) => WaterColumn.Unbounded(Density, Viscosity, speed);

    /// <summary>
    /// Lets the engine settle in a uniform stream, the tip at rest, from a line that hangs straight down.
    /// </summary>
    public static EngineRun Settle(double speed, LineDragLaw law, EngineSettings? settings = null, double time = 3000)
    {
        const double TipZ = -50;
        var run = new EngineRun(
            Body, LineProperties.Uniform(Line), Stream(speed), law, GivenBoundary.Fixed(0, TipZ, Length),
            (settings ?? new EngineSettings()) with { MaximumStep = 50 });
        run.Start(0, f => (0, 0, TipZ - (Length * (1 - f) * (1 + 6.3e-5))));
        run.RunTo(time);
        return run;
    }

    /// <summary>
    /// Rod tip of the transient cases: 0.3 m/s from rest, the ramp of 2 s a quintic smoothstep; with the lift, from 20 to 32 s the tip also rises and falls by
    /// 0.15 (1 - cos(2 pi (t - 20)/1.5)) m.
    /// </summary>
    public static (double X, double Y, double Z, double Vx, double Vy, double Vz) Tip(double t, bool lift)
    {
        const double Speed = 0.3;
        double u = Math.Min(t / 2, 1);
        double share = u * u * u * (10 + (u * (-15 + (6 * u))));
        double travelled = (2 * u * u * u * u * (2.5 + (u * (-3 + u)))) + Math.Max(0, t - 2);
        double z = -50, vz = 0;
        if (lift && t is > 20 and <= 32)
        {
            const double Omega = 2 * Math.PI / 1.5;
            z += 0.15 * (1 - Math.Cos(Omega * (t - 20)));
            vz = 0.15 * Omega * Math.Sin(Omega * (t - 20));
        }

        return (Speed * travelled, 0, z, Speed * share, 0, vz);
    }

    /// <summary>The hanging line that the transient cases start from.</summary>
    public static (double X, double Y, double Z) Hanging(double fraction) => (0, 0, -50 - (Length * (1 - fraction) * (1 + 6.3e-5)));

    /// <summary>The engine on a transient case, at its start.</summary>
    public static EngineRun Tow(bool lift, EngineSettings? settings = null)
    {
        var run = new EngineRun(
            Body, LineProperties.Uniform(Line), Stream(0), LineDragLaw.Constant(1.2, 0.01),
            new GivenBoundary { TipAt = t => Tip(t, lift), LineAt = _ => (Length, 0, 0) }, settings);
        run.Start(0, Hanging);
        return run;
    }

    /// <summary>The independent lumped-mass code on a transient case, at its start, with equal segments.</summary>
    public static LumpedMassReference TowReference(bool lift, int segments, double step = 5e-4) =>
        new(Body, LineProperties.Uniform(Line), Stream(0), DragFormula.Constant(1.2, 0.01), t => Tip(t, lift), LumpedMassReference.Lengths(Length, 0, segments, 1), Hanging, step);
}
