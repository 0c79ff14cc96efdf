namespace LureSim.Model;

/// <summary>One of two rigs to compare.</summary>
/// <param name="Name">Name for people, such as "mine".</param>
/// <param name="Head">Jig head.</param>
/// <param name="Body">Soft body.</param>
/// <param name="Colour">Colour, a preset name or a hex colour.</param>
/// <param name="Line">Main line.</param>
/// <param name="Leader">Leader, or null for none.</param>
/// <param name="Presentation">The way it is fished.</param>
/// <exception cref="ArgumentNullException">A part is missing.</exception>
public sealed record ComparedRig(
    string Name,
    JigHead Head,
    LureBody Body,
    string Colour,
    LineSpecification Line,
    LeaderSpecification? Leader,
    Presentation Presentation)
{
    /// <summary>Name for people, such as "mine".</summary>
    public string Name { get; init => field = Guard.Given(value); } = Guard.Given(Name);

    /// <summary>Jig head.</summary>
    public JigHead Head { get; init => field = Guard.Given(value); } = Guard.Given(Head);

    /// <summary>Soft body.</summary>
    public LureBody Body { get; init => field = Guard.Given(value); } = Guard.Given(Body);

    /// <summary>Colour, a preset name or a hex colour.</summary>
    public string Colour { get; init => field = Guard.Given(value); } = Guard.Given(Colour);

    /// <summary>Main line.</summary>
    public LineSpecification Line { get; init => field = Guard.Given(value); } = Guard.Given(Line);

    /// <summary>The way it is fished.</summary>
    public Presentation Presentation { get; init => field = Guard.Given(value); } = Guard.Given(Presentation);

    /// <summary>How it is tied on and put on its hook.</summary>
    public Rigging Rigging { get; init => field = Guard.Given(value); } = new();
}
