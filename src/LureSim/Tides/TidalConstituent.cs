using System.Globalization;
using LureSim.Data;

namespace LureSim.Tides;

/// <summary>A constituent of the tide: its equilibrium argument, its speed, and what the moon's node does to it.</summary>
/// <remarks>Schureman 1940 (schureman1940manual): arguments by tables 2 and 2a, node factors by formulas 73 to 78, 149, 195 to 207, 215, 227 and 235. The table is Data/tides/constituents.csv.</remarks>
public sealed class TidalConstituent
{
    private const double Degree = Math.PI / 180;

    // Speeds of T, s, h, p, p1: the linear terms of table 1 (radians an hour).
    private static readonly double[] Speeds =
    [
        15 * Degree,
        ((1336 * 360) + (1108411.20 / 3600)) * Degree / (36525 * 24),
        129602768.13 / 3600 * Degree / (36525 * 24),
        ((11 * 360) + (392515.94 / 3600)) * Degree / (36525 * 24),
        6189.03 / 3600 * Degree / (36525 * 24),
    ];

    private static readonly Lazy<IReadOnlyList<TidalConstituent>> Table = new(Read);

    private readonly double[] multiples;
    private readonly double constant;
    private readonly string rule;
    private readonly (int Count, TidalConstituent Part)[] parts;

    private TidalConstituent(string name, double[] multiples, double constant, string rule, (int, TidalConstituent)[] parts)
    {
        Name = name;
        this.multiples = multiples;
        this.constant = constant;
        this.rule = rule;
        this.parts = parts;
        if (rule is not ("unity" or "M2" or "O1" or "K1" or "K2" or "J1" or "OO1" or "M1" or "L2" or "M3" or "MM" or "MF" or "parts"))
            throw new InvalidOperationException($"Data/tides/constituents.csv has an unknown rule, '{rule}'.");
    }

    /// <summary>All constituents, in the order of the table.</summary>
    public static IReadOnlyList<TidalConstituent> All => Table.Value;

    /// <summary>Its standard name, such as M2.</summary>
    public string Name { get; }

    /// <summary>Speed (radians an hour).</summary>
    public double Speed => parts.Length > 0 ? parts.Sum(item => item.Count * item.Part.Speed)
        : multiples.Zip(Speeds, (count, speed) => count * speed).Sum() + (rule == "M1" ? Speeds[3] : 0);

    /// <summary>The constituent of a name, whatever its case; null for none.</summary>
    /// <param name="name">The name.</param>
    public static TidalConstituent? Find(string name) => All.FirstOrDefault(item => string.Equals(item.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>Equilibrium argument V + u (radians) and node factor f at a moment.</summary>
    /// <param name="sky">Sun and moon then.</param>
    /// <exception cref="ArgumentNullException"><paramref name="sky"/> is null.</exception>
    public (double Argument, double Factor) At(TidalAstronomy sky)
    {
        ArgumentNullException.ThrowIfNull(sky);
        if (parts.Length > 0)
        {
            double sum = 0, product = 1;
            foreach ((int count, TidalConstituent part) in parts)
            {
                (double argument, double factor) = part.At(sky);
                sum += count * argument;
                product *= Math.Pow(factor, Math.Abs(count));
            }

            return (sum, product);
        }

        double v = (multiples[0] * sky.SolarHour) + (multiples[1] * sky.Moon) + (multiples[2] * sky.Sun) + (multiples[3] * sky.LunarPerigee) + (multiples[4] * sky.SolarPerigee) + constant;
        (double u, double f) = Node(sky);
        return (v + u, f);
    }

    private (double Angle, double Factor) Node(TidalAstronomy sky)
    {
        double i = sky.OrbitInclination, sine = Math.Sin(i), half = Math.Cos(i / 2), twice = Math.Sin(2 * i), square = sine * sine;
        double m2 = Math.Pow(half, 4) / 0.9154, m2Angle = 2 * (sky.Xi - sky.Nu), o1 = sine * half * half / 0.3800, p = sky.PerigeeFromIntersection;
        switch (rule)
        {
            case "M2":
                return (m2Angle, m2);
            case "O1":
                return ((2 * sky.Xi) - sky.Nu, o1);
            case "K1":
                return (-sky.NuPrime, Math.Sqrt((0.8965 * twice * twice) + (0.6001 * twice * Math.Cos(sky.Nu)) + 0.1006));
            case "K2":
                return (-sky.TwiceNuDoublePrime, Math.Sqrt((19.0444 * square * square) + (2.7702 * square * Math.Cos(2 * sky.Nu)) + 0.0981));
            case "J1":
                return (-sky.Nu, twice / 0.7214);
            case "OO1":
                return ((-2 * sky.Xi) - sky.Nu, sine * Math.Pow(Math.Sin(i / 2), 2) / 0.0164);
            case "M1":
                return (sky.Xi - sky.Nu + Math.Atan2(0.483 * Math.Sin(p), Math.Cos(p)), o1 * Math.Sqrt(2.310 + (1.435 * Math.Cos(2 * p))));
            case "L2":
                double tangent = Math.Pow(Math.Tan(i / 2), 2);
                double r = Math.Atan2(Math.Sin(2 * p), (1 / (6 * tangent)) - Math.Cos(2 * p));
                return (m2Angle - r, m2 * Math.Sqrt(1 - (12 * tangent * Math.Cos(2 * p)) + (36 * tangent * tangent)));
            case "M3":
                return (1.5 * m2Angle, Math.Pow(half, 6) / 0.8758);
            case "MM":
                return (0, ((2.0 / 3) - square) / 0.5021);
            case "MF":
                return (-2 * sky.Xi, square / 0.1578);
            default:
                return (0, 1);
        }
    }

    private static List<TidalConstituent> Read()
    {
        List<TidalConstituent> found = [];
        foreach (ReferenceRow row in ReferenceTable.Tides("constituents").Rows)
        {
            string name = row.Text("name"), rule = row.Text("rule");
            found.Add(rule == "parts"
                ? new TidalConstituent(name, [], 0, rule, [.. Parts(row.Text("parts")).Select(part => (part.Count, found.First(item => item.Name == part.Name)))])
                : new TidalConstituent(name, [.. ((string[])["T", "s", "h", "p", "p1"]).Select(row.Number)], row.Number("constant") * Degree, rule, []));
        }

        return found;
    }

    // "2*M2-K1".
    private static IEnumerable<(int Count, string Name)> Parts(string text)
    {
        foreach (string part in text.Replace("-", "+-", StringComparison.Ordinal).Split('+', StringSplitOptions.RemoveEmptyEntries))
        {
            int sign = part[0] == '-' ? -1 : 1;
            string[] pieces = part.TrimStart('-').Split('*');
            yield return pieces.Length == 2 ? (sign * int.Parse(pieces[0], CultureInfo.InvariantCulture), pieces[1]) : (sign, pieces[0]);
        }
    }
}
