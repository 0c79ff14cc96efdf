namespace LureSim.Swimming.Bodies;

/// <summary>
/// The vortices behind a bluff body as a van der Pol oscillator that feels the body's acceleration:
/// q'' + e w_f (q^2 - 1) q' + w_f^2 q = (A/D) y'', lift coefficient C_L0 q/2. Facchinetti, de Langre &amp; Biolley 2004, J. Fluids Struct. 19:123.
/// </summary>
public static class WakeOscillator
{
    /// <summary>Van der Pol parameter e (Facchinetti et al. 2004).</summary>
    public const double Damping = 0.3;

    /// <summary>Coupling A to the acceleration (Facchinetti et al. 2004).</summary>
    public const double Coupling = 12;

    /// <summary>Strouhal number by the width; 0.15 to 0.25 for towed passive tails (from memory, weak).</summary>
    public const double Strouhal = 0.2;

    /// <summary>Amplitude of the lift coefficient of the body at rest, C_L0.</summary>
    public const double Lift = 0.3;

    /// <summary>Shedding rate w_f = 2 pi St U/D (rad/s).</summary>
    /// <param name="speed">U (m/s), 0 or more.</param>
    /// <param name="width">D (m), above 0.</param>
    public static double SheddingRate(double speed, double width) => 2 * Math.PI * Strouhal * speed / width;

    /// <summary>q''.</summary>
    /// <param name="q">Wake variable.</param>
    /// <param name="qRate">q'.</param>
    /// <param name="sheddingRate">w_f (rad/s).</param>
    /// <param name="accelerationOverWidth">y''/D (1/s2).</param>
    public static double Acceleration(double q, double qRate, double sheddingRate, double accelerationOverWidth) =>
        (-Damping * sheddingRate * ((q * q) - 1) * qRate) - (sheddingRate * sheddingRate * q) + (Coupling * accelerationOverWidth);
}
