using LureSim.Data;
using LureSim.Model;
using MathNet.Numerics.Interpolation;

namespace LureSim.Tackle;

/// <summary>A size that is printed on a reel.</summary>
/// <param name="Name">The number, such as 3000.</param>
/// <param name="Kind">Spinning or bait casting.</param>
/// <param name="Reel">What reels of the size usually have.</param>
public sealed record ReelSize(string Name, string Kind, Reel Reel);

/// <summary>Where an angler stands.</summary>
/// <param name="Name">The place in a word.</param>
/// <param name="TipHeight">Usual height of the rod tip above the water (m).</param>
/// <param name="Spread">Plus or minus of it as a share, nine in ten.</param>
public sealed record StandHeight(string Name, double TipHeight, double Spread);

/// <summary>
/// Values that a scenario may leave out: line diameters, the rating of a rod, what a reel of a size has, how high the rod tip is. They come from
/// tables in Data/tackle, which are common practice and say so in their headers.
/// </summary>
public static class TacklePresets
{
    private const double NewtonsPerPound = 4.4482216152605;

    // Strength goes with the cross-section, so the diameter goes with the root of the strength; the tables are
    // interpolated in the ratio diameter / sqrt(strength), which hardly varies, and that ratio is held outside them.
    private static readonly Dictionary<LineKind, (LinearSpline Ratio, double Lowest, double Highest)> Diameters = new()
    {
        [LineKind.Braid] = ReadDiameters("braid"),
        [LineKind.Monofilament] = ReadDiameters("monofilament"),
        [LineKind.Fluorocarbon] = ReadDiameters("fluorocarbon"),
    };

    /// <summary>
    /// Common diameter (m) of a line of a nominal strength. Source: Data/tackle/line_diameters.csv (common practice).
    /// </summary>
    /// <param name="kind">Material.</param>
    /// <param name="strength">Nominal breaking force (N), more than 0 and finite; outside the table, where it is 2 to 80 lb,
    /// the diameter goes with the square root of the strength.</param>
    /// <exception cref="ArgumentOutOfRangeException">The strength is not more than 0 and finite.</exception>
    public static double LineDiameter(LineKind kind, double strength)
    {
        if (!(strength > 0.0) || double.IsInfinity(strength))
            throw new ArgumentOutOfRangeException(nameof(strength), strength, "The strength must be more than 0 N and finite.");
        (LinearSpline ratio, double lowest, double highest) = Diameters[kind];
        double logarithm = Math.Log(strength);
        return ratio.Interpolate(Math.Clamp(logarithm, lowest, highest)) * Math.Sqrt(strength);
    }

    private static readonly Dictionary<RodPower, (double Lightest, double Heaviest)> Ratings = ReferenceTable.Tackle("rod_powers").Rows.ToDictionary(
        row => Enum.Parse<RodPower>(row.Text("power").Replace(" ", "", StringComparison.Ordinal), ignoreCase: true),
        row => (row.Number("lightest_oz") * PhysicalConstants.Ounce, row.Number("heaviest_oz") * PhysicalConstants.Ounce));

    /// <summary>Sizes of reels in the table, in its order.</summary>
    public static IReadOnlyList<ReelSize> ReelSizes { get; } = [.. ReferenceTable.Tackle("reel_sizes").Rows.Select(row => new ReelSize(
        row.Text("size"), row.Text("kind"), new Reel(row.Number("gear_ratio"), row.Number("spool_diameter_mm") / 1000, row.Number("line_capacity_m"))))];

    /// <summary>Places to stand in the table, in its order.</summary>
    public static IReadOnlyList<StandHeight> Stands { get; } = [.. ReferenceTable.Tackle("stands").Rows.Select(row => new StandHeight(
        row.Text("stand"), row.Number("tip_height_m"), row.Number("spread_share")))];

    /// <summary>A rod of a power. Source: Data/tackle/rod_powers.csv (common practice).</summary>
    /// <param name="length">Length (m), 1 to 5.</param>
    /// <param name="power">Power.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is outside its range, or there is no such power.</exception>
    public static Rod Rod(double length, RodPower power) => Ratings.TryGetValue(power, out (double Lightest, double Heaviest) rating)
        ? new Rod(length, rating.Lightest, rating.Heaviest)
        : throw new ArgumentOutOfRangeException(nameof(power), power, "Not a power.");

    private static (LinearSpline, double, double) ReadDiameters(string kind)
    {
        double[][] rows = [.. ReferenceTable.Tackle("line_diameters").Rows
            .Where(row => row.Text("kind") == kind)
            .Select(row => new[] { row.Number("strength_lb") * NewtonsPerPound, row.Number("diameter_mm") / 1000.0 })];
        double[] logarithms = [.. rows.Select(row => Math.Log(row[0]))];
        double[] ratios = [.. rows.Select(row => row[1] / Math.Sqrt(row[0]))];
        return (LinearSpline.InterpolateSorted(logarithms, ratios), logarithms[0], logarithms[^1]);
    }
}
