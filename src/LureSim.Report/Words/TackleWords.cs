using LureSim.Model;

namespace LureSim.Report.Words;

/// <summary>Lines and knots in words.</summary>
internal static class TackleWords
{
    /// <summary>A kind of line.</summary>
    public static string LineName(LineKind kind) => kind switch
    {
        LineKind.Braid => "braid",
        LineKind.Monofilament => "mono",
        LineKind.Fluorocarbon => "fluoro",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a line."),
    };

    /// <summary>A knot, without its size.</summary>
    public static string KnotName(KnotStyle knot) => knot switch
    {
        KnotStyle.Loop => "loop knot",
        KnotStyle.Snug => "snug knot",
        KnotStyle.Clip => "clip",
        KnotStyle.SplitRing => "split ring",
        _ => throw new ArgumentOutOfRangeException(nameof(knot), knot, "Not a knot."),
    };
}
