using LureSim.Hydrodynamics;
using MathNet.Numerics.RootFinding;

namespace LureSim.Lures;

/// <summary>Moments on a lure in a free fall; places along its axis from the body's middle, forward (m).</summary>
/// <param name="Buoyancy">Buoyancy (N).</param>
/// <param name="WetWeight">Weight less buoyancy (N), above 0.</param>
/// <param name="MassCentre">Centre of mass.</param>
/// <param name="BuoyancyCentre">Centre of buoyancy.</param>
/// <param name="DragCentre">Where the drag acts.</param>
/// <param name="SideArea">Area seen broadside (m2).</param>
/// <param name="AxialDragArea">Cd A along the axis (m2).</param>
/// <param name="OverturningVolume">Volume V (k2 - k1) - A_b x_b by which the Munk moment turns it (m3).</param>
internal readonly record struct FallBalance(
    double Buoyancy,
    double WetWeight,
    double MassCentre,
    double BuoyancyCentre,
    double DragCentre,
    double SideArea,
    double AxialDragArea,
    double OverturningVolume);

/// <summary>The attitude in which a lure falls.</summary>
internal static class FallAttitude
{
    /// <summary>Density at which the attitude is found (kg/m3): brackish water at large; it hardly changes between fresh and sea water.</summary>
    public const double WaterDensity = 1015;

    /// <summary>
    /// Equilibrium angle a between axis and flow on a free fall (radians). Drag balances the wet weight W and acts at the body's middle (or towards the tail, where
    /// a paddle drags), buoyancy B at its own centre: about the centre of mass both turn the nose down, in proportion to sin a. The Munk moment
    /// 1/2 rho U^2 sin 2a (V (k2 - k1) - A_b x_b) turns the body broadside (Munk 1924, NACA TR 184), less by the base area A_b of a blunt tail at the distance x_b
    /// (Jorgensen 1977, NASA TR R-474, from memory).
    /// </summary>
    /// <param name="balance">Moments.</param>
    public static double Incidence(FallBalance balance)
    {
        double restoring = (balance.Buoyancy * (balance.MassCentre - balance.BuoyancyCentre)) + (balance.WetWeight * (balance.MassCentre - balance.DragCentre));
        FallBalance b = balance;
        double Excess(double a)
        {
            double s = Math.Sin(a), c = Math.Cos(a);
            double drag = 0.5 * WaterDensity * ((WireDrag.Coefficient * b.SideArea * s * s * s) + (b.AxialDragArea * c * c * c));
            double munk = WaterDensity * b.OverturningVolume * b.WetWeight / drag * c;
            return munk - restoring;
        }

        double high = Math.PI / 2;
        if (Excess(0) <= 0) return 0;
        if (Excess(high) >= 0) return high;
        return Bisection.FindRoot(Excess, 0, high, 1e-6, 200);
    }
}
