using LureSim.Model;

namespace LureSim.Decision;

/// <summary>Share of the retrieve in the strike zone by jig head and retrieve speed.</summary>
/// <param name="PresentationName">The presentation that was varied.</param>
/// <param name="Heads">Jig heads (rows).</param>
/// <param name="Speeds">Retrieve speeds (m/s) (columns).</param>
/// <param name="ZoneShare">Share, 0 to 1, [head, speed].</param>
/// <param name="BottomShare">Share in contact with the bottom, 0 to 1, [head, speed].</param>
/// <param name="GrassShare">Share in the grass, 0 to 1, [head, speed].</param>
/// <param name="MedianDepth">Median depth (m), [head, speed].</param>
public sealed record CoverageGrid(
    string PresentationName,
    IReadOnlyList<JigHead> Heads,
    IReadOnlyList<double> Speeds,
    double[,] ZoneShare,
    double[,] BottomShare,
    double[,] GrassShare,
    double[,] MedianDepth);
