namespace LureSim.Cli.Hosting;

/// <summary>One colour at all depths.</summary>
/// <param name="Name">Name as in the scenario.</param>
/// <param name="Srgb">Colours as "#rrggbb", one for each depth.</param>
/// <param name="RelativeLuminance">Luminance over that of a perfect white at the same depth, one for each depth; fluorescent colours can pass 1.</param>
/// <param name="Words">How the colour reads to a person, in a word, one for each depth.</param>
internal sealed record ColourColumn(string Name, IReadOnlyList<string> Srgb, IReadOnlyList<double> RelativeLuminance, IReadOnlyList<string> Words);
