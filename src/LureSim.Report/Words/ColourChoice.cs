namespace LureSim.Report.Words;

/// <summary>The color that a card recommends.</summary>
/// <param name="Name">Name of the color.</param>
/// <param name="Reason">Why, in a few words, or empty.</param>
public sealed record ColourChoice(string Name, string Reason);
