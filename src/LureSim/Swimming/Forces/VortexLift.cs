using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Lift of the vortices behind a paddle or a lip from the wake variable q of <see cref="WakeOscillator"/>.</summary>
/// <param name="liftAtRest">Amplitude of the lift coefficient of a paddle at rest, see <see cref="ActionOptions.WakeLift"/>.</param>
internal sealed class VortexLift(double liftAtRest)
{
    /// <summary>The vortices of a lip: a sharp plate set across the flow; between a round cylinder, 0.3, and a square prism, 1.8 in amplitude (Vickery 1966); 0.8 assumed.</summary>
    public static VortexLift OfLip { get; } = new(0.8);

    // The lift of a plate cannot grow without bound when a twitch drives the wake: C_L = 1.2 tanh((C_L0 q/2)/1.2); 1.2 assumed.
    private const double GreatestLift = 1.2;

    // Below this speed (m/s) the wake is taken to keep the rhythm it has there, so that the oscillator stays one; assumed.
    private const double SlowestWake = 0.02;

    /// <summary>Lift coefficient.</summary>
    public double Coefficient(double wake) => GreatestLift * Math.Tanh(0.5 * liftAtRest * wake / GreatestLift);

    /// <summary>Shedding rate (rad/s) at a speed (m/s) behind a lip of a width (m).</summary>
    public static double OfLipRate(double speed, double width) => LipPlate.Strouhal / WakeOscillator.Strouhal * SheddingRate(speed, width);

    /// <summary>Shedding rate (rad/s) at a speed (m/s) behind a width (m).</summary>
    public static double SheddingRate(double speed, double width) => WakeOscillator.SheddingRate(Math.Max(speed, SlowestWake), width);
}
