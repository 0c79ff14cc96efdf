using LureSim.Hydrodynamics;
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
}
