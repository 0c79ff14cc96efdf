namespace LureSim.Tides;

/// <summary>Sun and moon as the tide feels them at a moment: the arguments of Schureman 1940 (schureman1940manual), in radians.</summary>
/// <remarks>
/// Mean longitudes by his table 1 (Newcomb and Brown), counted in Julian centuries from Greenwich mean noon of 1899 December 31; I, nu and xi by the explanation of
/// table 6, nu' and 2 nu'' by formulas 224 and 232, with the obliquity 23.452 and the inclination 5.145 degrees of his table 1.
/// </remarks>
public sealed record TidalAstronomy
{
    private const double Degree = Math.PI / 180;
    private const double Second = Degree / 3600;
    private const double Obliquity = 23.452 * Degree;
    private const double Inclination = 5.145 * Degree;
    private static readonly DateTime Epoch = new(1899, 12, 31, 12, 0, 0, DateTimeKind.Utc);

    private TidalAstronomy()
    {
    }

    /// <summary>Hour angle of the mean sun at Greenwich, T: half a turn at midnight.</summary>
    public double SolarHour { get; private init; }

    /// <summary>Mean longitude of the moon, s.</summary>
    public double Moon { get; private init; }

    /// <summary>Mean longitude of the sun, h.</summary>
    public double Sun { get; private init; }

    /// <summary>Longitude of the lunar perigee, p.</summary>
    public double LunarPerigee { get; private init; }

    /// <summary>Longitude of the solar perigee, p1.</summary>
    public double SolarPerigee { get; private init; }

    /// <summary>Longitude of the moon's ascending node, N.</summary>
    public double Node { get; private init; }

    /// <summary>Inclination of the moon's orbit to the equator, I.</summary>
    public double OrbitInclination { get; private init; }

    /// <summary>Right ascension of the lunar intersection, nu.</summary>
    public double Nu { get; private init; }

    /// <summary>Longitude in the moon's orbit of the intersection, xi.</summary>
    public double Xi { get; private init; }

    /// <summary>nu', the angle of K1 (formula 224).</summary>
    public double NuPrime { get; private init; }

    /// <summary>2 nu'', the angle of K2 (formula 232).</summary>
    public double TwiceNuDoublePrime { get; private init; }

    /// <summary>P: the lunar perigee counted from the intersection.</summary>
    public double PerigeeFromIntersection => LunarPerigee - Xi;

    /// <summary>The arguments at a moment.</summary>
    /// <param name="time">The moment; universal time is taken for Greenwich mean time.</param>
    public static TidalAstronomy At(DateTimeOffset time)
    {
        double days = (time.UtcDateTime - Epoch).TotalDays, t = days / 36525;
        double node = (259 * Degree) + (10 * 60 * Second) + (57.12 * Second) + (t * ((-((5 * 1296000.0) + 482912.63) * Second) + (t * ((7.58 * Second) + (t * 0.008 * Second)))));
        return OfNode(node) with
        {
            SolarHour = 2 * Math.PI * (days - Math.Floor(days)),
            Moon = (270 * Degree) + (26 * 60 * Second) + (14.72 * Second) + (t * ((((1336 * 1296000.0) + 1108411.20) * Second) + (t * ((9.09 * Second) + (t * 0.0068 * Second))))),
            Sun = (279 * Degree) + (41 * 60 * Second) + (48.04 * Second) + (t * ((129602768.13 * Second) + (t * 1.089 * Second))),
            LunarPerigee = (334 * Degree) + (19 * 60 * Second) + (40.87 * Second) + (t * ((((11 * 1296000.0) + 392515.94) * Second) + (t * ((-37.24 * Second) - (t * 0.045 * Second))))),
            SolarPerigee = (281 * Degree) + (13 * 60 * Second) + (15 * Second) + (t * ((6189.03 * Second) + (t * ((1.63 * Second) + (t * 0.012 * Second))))),
        };
    }

    /// <summary>What hangs on the node alone; the longitudes are 0.</summary>
    /// <param name="node">Longitude of the node N (radians).</param>
    internal static TidalAstronomy OfNode(double node)
    {
        // Within half a turn, so that the half angles stay on one branch.
        double n = Math.IEEERemainder(node, 2 * Math.PI);
        double cosine = (Math.Cos(Inclination) * Math.Cos(Obliquity)) - (Math.Sin(Inclination) * Math.Sin(Obliquity) * Math.Cos(n));
        double inclination = Math.Acos(cosine);
        double tangent = Math.Tan(n / 2);
        double sum = Math.Atan(Math.Cos((Obliquity - Inclination) / 2) / Math.Cos((Obliquity + Inclination) / 2) * tangent);
        double difference = Math.Atan(Math.Sin((Obliquity - Inclination) / 2) / Math.Sin((Obliquity + Inclination) / 2) * tangent);
        double nu = sum - difference, twice = Math.Sin(2 * inclination), square = Math.Sin(inclination) * Math.Sin(inclination);
        return new TidalAstronomy
        {
            Node = node,
            OrbitInclination = inclination,
            Nu = nu,
            Xi = n - sum - difference,
            NuPrime = Math.Atan2(twice * Math.Sin(nu), (twice * Math.Cos(nu)) + 0.3347),
            TwiceNuDoublePrime = Math.Atan2(square * Math.Sin(2 * nu), (square * Math.Cos(2 * nu)) + 0.0727),
        };
    }
}
