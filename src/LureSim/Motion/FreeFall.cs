using LureSim.Lures;
using MathNet.Numerics.RootFinding;

namespace LureSim.Motion;

/// <summary>Fall of a lure free of any line in still, deep water.</summary>
public static class FreeFall
{
    /// <summary>Terminal speed (m/s), positive down; negative for a lure that floats (its rise rate).</summary>
    /// <param name="lure">The lure.</param>
    /// <param name="density">Water density (kg/m3).</param>
    /// <param name="kinematicViscosity">nu (m2/s).</param>
    /// <exception cref="ArgumentNullException"><paramref name="lure"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A fluid property is not positive.</exception>
    /// <example><code>
    /// using LureSim.Lures;
    /// using LureSim.Model;
    /// using LureSim.Motion;
    /// using LureSim.Tackle;
    /// LureProperties lure = TackleBuilder.Lure(new JigHead(0.00709, HeadMetal.Lead, 0.0011, "1/4 oz"), new LureBody(BodyProfile.PaddleTail, 0.1, 0.019, 0.0164, 1050, "paddle tail"));
    /// Console.WriteLine(FreeFall.TerminalSpeed(lure, density: 1021, kinematicViscosity: 1.05e-6));
    /// </code></example>
    public static double TerminalSpeed(LureProperties lure, double density, double kinematicViscosity)
    {
        ArgumentNullException.ThrowIfNull(lure);
        Guard.Positive(density);
        Guard.Positive(kinematicViscosity);
        double wetWeight = (lure.Mass - (density * lure.Volume)) * PhysicalConstants.StandardGravity;
        if (wetWeight == 0) return 0;
        double load = Math.Abs(wetWeight);

        // Residual scaled by the weight: of order 1, as the root finder's accuracy is absolute.
        double Residual(double speed) => (0.5 * density * lure.FallDragAreaTimesSpeed(speed, kinematicViscosity, out _) * speed / load) - 1;
        double high = 0.01;
        while (Residual(high) < 0 && high < 1e4) high *= 2;
        double root = Brent.FindRoot(Residual, 0, high, 1e-12, 200);
        return Math.Sign(wetWeight) * root;
    }
}
