using LureSim.Model;

namespace LureSim.Tackle;

/// <summary>Densities and moduli of what lines are made of.</summary>
public static class Materials
{
    /// <summary>Density of a line material (kg/m3): high-modulus polyethylene 970, nylon 1140 (fibre tables); PVDF 1780 (from memory).</summary>
    public static double Density(LineKind kind) => kind switch
    {
        LineKind.Braid => 970,
        LineKind.Fluorocarbon => 1780,
        LineKind.Monofilament => 1140,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of line."),
    };

    /// <summary>
    /// Share of a line's nominal section that is material: braid is laid from fibres with water between them (0.7 to 0.9 in practice, 0.8 taken).
    /// </summary>
    public static double Packing(LineKind kind) => kind == LineKind.Braid ? 0.8 : 1.0;

    /// <summary>
    /// Tensile modulus at fishing loads (Pa). Braid: fibre 130 N/tex x 970 kg/m3, halved for the braid angle; nylon 4 N/tex; PVDF 2 GPa (from memory).
    /// A light jig strains a line by parts in ten thousand, so the track hardly depends on it.
    /// </summary>
    public static double Modulus(LineKind kind) => kind switch
    {
        LineKind.Braid => 63e9,
        LineKind.Fluorocarbon => 2e9,
        LineKind.Monofilament => 3e9,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of line."),
    };
}
