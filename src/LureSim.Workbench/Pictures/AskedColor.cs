namespace LureSim.Workbench.Pictures;

/// <summary>A color that is asked about.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Depth">At which depth (m); null for the bottom, which also stands for a depth below it.</param>
internal sealed record AskedColor(string Name, double? Depth);
