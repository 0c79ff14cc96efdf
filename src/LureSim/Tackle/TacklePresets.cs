using LureSim.Data;
using LureSim.Model;
using MathNet.Numerics.Interpolation;

namespace LureSim.Tackle;

/// <summary>
/// Values that a scenario may leave out: line diameters. They come from
/// a table in Data/tackle, which is common practice and says so in its header.
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
