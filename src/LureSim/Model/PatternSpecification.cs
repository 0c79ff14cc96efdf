namespace LureSim.Model;

/// <summary>A lure of several colours, each a preset name, a hex colour or the name of a measured one.</summary>
/// <param name="Name">Name.</param>
/// <param name="Back">Colour from above.</param>
/// <param name="Side">Colour of the flank.</param>
/// <param name="Belly">Colour from below.</param>
/// <param name="Eye">Colour of the eye; null for none.</param>
/// <exception cref="ArgumentNullException">A part is missing.</exception>
public sealed record PatternSpecification(string Name, string Back, string Side, string Belly, string? Eye)
{
    /// <summary>Name.</summary>
    public string Name { get; init => field = Guard.Given(value); } = Guard.Given(Name);

    /// <summary>Colour from above.</summary>
    public string Back { get; init => field = Guard.Given(value); } = Guard.Given(Back);

    /// <summary>Colour of the flank.</summary>
    public string Side { get; init => field = Guard.Given(value); } = Guard.Given(Side);

    /// <summary>Colour from below.</summary>
    public string Belly { get; init => field = Guard.Given(value); } = Guard.Given(Belly);
}
