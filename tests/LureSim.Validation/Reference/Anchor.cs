using LureSim.Lures;

namespace LureSim.Validation.Reference;

/// <summary>An end that does not move: a body of neutral buoyancy and of a mass that no line accelerates.</summary>
internal static class Anchor
{
    private const double Mass = 1e18;

    /// <summary>An anchor in water of a density (kg/m3).</summary>
    public static ConstantDragLure In(double density) => new() { Mass = Mass, Volume = Mass / density, AddedMassCoefficient = 0.5, ContactRadius = 0.01, Area = 0 };
}
