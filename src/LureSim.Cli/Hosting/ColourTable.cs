namespace LureSim.Cli.Hosting;

/// <summary>Colours of lures at depths, as an eye used to the light there sees them.</summary>
/// <param name="Depths">Depths (m), increasing.</param>
/// <param name="Columns">One column a colour, in the order of the tackle box.</param>
internal sealed record ColourTable(IReadOnlyList<double> Depths, IReadOnlyList<ColourColumn> Columns)
{
    /// <summary>How deep the parts of lures of several colours can be told apart.</summary>
    public IReadOnlyList<Sight.PatternParts> Patterns { get; init; } = [];
}
