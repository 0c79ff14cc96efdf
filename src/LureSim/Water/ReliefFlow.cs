namespace LureSim.Water;

/// <summary>What the shape of the bottom makes of the current at a place.</summary>
/// <param name="Height">Height above the bottom (m) at which the profile of the deepest place has the speed.</param>
/// <param name="Ratio">How much faster that height changes than the place's own.</param>
/// <param name="X">Flow along the cast as a multiple of that speed.</param>
/// <param name="Y">Flow to the left as a multiple of that speed.</param>
/// <param name="Climb">Upward flow as a multiple of that speed.</param>
internal readonly record struct ReliefFlow(double Height, double Ratio, double X, double Y, double Climb);
