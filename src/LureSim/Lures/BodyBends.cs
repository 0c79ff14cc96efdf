namespace LureSim.Lures;

/// <summary>How a soft body bends on its hook.</summary>
public static class BodyBends
{
    // A bait bunched harder than this kinks instead of arching (radians), assumed.
    private const double LargestArch = 0.6;

    /// <summary>
    /// Bend of a body by where the hook comes out (radians, away from the side on which it shows): the nose is clamped on the eye and the body pushed over by e
    /// at the end of the engaged length l, free beyond: a cantilever with an end load, whose end slope is 3/2 e/l (Euler-Bernoulli beam).
    /// </summary>
    /// <param name="offset">Exit beside the centre line (m), to the left positive.</param>
    /// <param name="engagement">Length of body on the hook (m), above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is not above 0.</exception>
    public static double BendOfExit(double offset, double engagement)
    {
        Guard.Positive(engagement);
        return -Math.Atan(1.5 * offset / engagement);
    }

    /// <summary>Where the hook would come out of a body bent by an angle: the inverse of <see cref="BendOfExit"/> (m).</summary>
    /// <param name="bend">Bend (radians), below pi/2 in size.</param>
    /// <param name="engagement">Length of body on the hook (m), above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of range.</exception>
    public static double ExitOfBend(double bend, double engagement)
    {
        Guard.InRange(bend, -1.5, 1.5, unit: "rad");
        Guard.Positive(engagement);
        return -Math.Tan(bend) * engagement / 1.5;
    }

    /// <summary>Slope at the ends of a body that is bunched by a length s between two points a length c apart (radians): for a circular arc
    /// arc/chord = a/sin a = 1 + a^2/6, so a = sqrt(6 s/c); at most 0.6, beyond which a bait kinks.</summary>
    /// <param name="surplus">s (m), 0 or more.</param>
    /// <param name="chord">c (m), above 0.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is out of range.</exception>
    public static double ArchOfSurplus(double surplus, double chord)
    {
        Guard.InRange(surplus, 0, 1);
        Guard.Positive(chord);
        return Math.Min(LargestArch, Math.Sqrt(6 * surplus / chord));
    }

    /// <summary>Centre line of a bent body at a length from its nose: slope 0 at the nose, growing evenly to the bend at the end of the arc, straight beyond.</summary>
    /// <param name="length">Length from the nose along the body (m).</param>
    /// <param name="arc">Length of the arc (m); 0 for a body straight from the nose.</param>
    /// <param name="sideways">Bend (radians), tail to the left positive.</param>
    /// <param name="upright">Bend (radians), tail up positive.</param>
    public static Station CentreLine(double length, double arc, double sideways, double upright)
    {
        double inside = Math.Min(length, arc), beyond = Math.Max(0, length - arc);
        double left = (arc > 0 ? sideways * inside * inside / (2 * arc) : 0) + (beyond * Math.Sin(sideways));
        double up = (arc > 0 ? upright * inside * inside / (2 * arc) : 0) + (beyond * Math.Sin(upright));
        return new Station(inside + (beyond * Math.Cos(sideways) * Math.Cos(upright)), left, up);
    }
}
