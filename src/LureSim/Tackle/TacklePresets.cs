using LureSim.Data;
using LureSim.Model;
using MathNet.Numerics.Interpolation;

namespace LureSim.Tackle;

/// <summary>
/// Values that a scenario may leave out: line diameters, proportions of soft bodies and hook masses. All come from
/// the tables in Data/tackle, which are common practice or invented; each table says so in its header.
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

    private static readonly Dictionary<BodyProfile, BodyProportions> Bodies = ReferenceTable.Tackle("body_proportions").Rows.ToDictionary(
        row => ProfileNamed(row.Text("profile")),
        row => new BodyProportions(row.Number("height_share"), row.Number("width_share"), row.Number("density_kg_m3")));

    private static readonly double[] HookLengths = [.. ReferenceTable.Tackle("hook_masses").Numbers("body_length_mm").Select(length => length / 1000.0)];

    private static readonly LinearSpline Hooks = LinearSpline.InterpolateSorted(HookLengths, [.. ReferenceTable.Tackle("hook_masses").Numbers("hook_mass_g").Select(mass => mass / 1000.0)]);

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

    /// <summary>Default proportions and density of a profile. Source: Data/tackle/body_proportions.csv (invented).</summary>
    /// <param name="profile">Profile.</param>
    public static BodyProportions Proportions(BodyProfile profile) => Bodies[profile];

    /// <summary>Density of a head metal (kg/m3); handbook values of the pure metals, tungsten as a nickel-iron heavy alloy (17,000-18,500).</summary>
    /// <param name="metal">Metal.</param>
    public static double MetalDensity(HeadMetal metal) => metal switch
    {
        HeadMetal.Tungsten => 17000,
        HeadMetal.Tin => 7290,
        HeadMetal.Zinc => 7140,
        HeadMetal.Bismuth => 9780,
        HeadMetal.Steel => 7850,
        HeadMetal.Brass => 8500,
        _ => 11340,
    };

    /// <summary>Default mass (kg) of the hook for a body. Source: Data/tackle/hook_masses.csv (invented).</summary>
    /// <param name="bodyLength">Length of the body (m), finite; outside the table, 0.025 to 0.3 m, the nearest row holds.</param>
    /// <exception cref="ArgumentOutOfRangeException">The length is not more than 0 and finite.</exception>
    public static double HookMass(double bodyLength)
    {
        if (!(bodyLength > 0.0) || double.IsInfinity(bodyLength))
            throw new ArgumentOutOfRangeException(nameof(bodyLength), bodyLength, "The length must be more than 0 m and finite.");
        return Hooks.Interpolate(Math.Clamp(bodyLength, HookLengths[0], HookLengths[^1]));
    }

    /// <summary>The profile of a name in the tables.</summary>
    /// <exception cref="InvalidOperationException">A table names an unknown profile.</exception>
    internal static BodyProfile ProfileNamed(string name) => name switch
    {
        "paddle tail" => BodyProfile.PaddleTail,
        "soft jerkbait" => BodyProfile.SoftJerkbait,
        "shrimp imitation" => BodyProfile.ShrimpImitation,
        "hard twitchbait" => BodyProfile.HardTwitchbait,
        "spoon" => BodyProfile.Spoon,
        _ => throw new InvalidOperationException($"A table of tackle names an unknown profile, {name}."),
    };

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

/// <summary>Default shape and material of a soft body.</summary>
/// <param name="HeightShare">Greatest height as a share of the length.</param>
/// <param name="WidthShare">Greatest width as a share of the length.</param>
/// <param name="Density">Density of the material (kg/m3).</param>
public sealed record BodyProportions(double HeightShare, double WidthShare, double Density);
