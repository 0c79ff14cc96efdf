namespace LureSim.Model;

/// <summary>
/// A question: one spot, the tackle at hand and the presentations to compare. All values SI. Every record refuses values outside its documented range when it
/// is made and when it is copied with a change; what must hold between values is checked where the parts come together.
/// </summary>
/// <exception cref="ArgumentNullException">A part is missing.</exception>
/// <exception cref="ArgumentException">A list is too short, or parts do not fit together.</exception>
public sealed record Scenario
{
    // Edges that were converted from another unit may lie outside by a rounding error.
    private const double Rounding = 1e-9;

    /// <summary>A short name for people, shown as the heading of the sheet.</summary>
    public required string Title { get; init => field = Guard.Given(value); }

    /// <summary>Free remarks, shown on the sheet; may be empty.</summary>
    public string Notes { get; init => field = Guard.Given(value); } = "";

    /// <summary>The water, the bottom, the light and the fish. The grass is lower than the water is deep, and the strike zone lies inside the water.</summary>
    public required Spot Spot
    {
        get;
        init
        {
            field = Guard.Given(value);
            Guard.That(value.Profile is not { } profile || profile.Deepest == value.Depth, "The depth of the spot must be the greatest of its profile.", nameof(Spot));
            Guard.That(value.GrassHeight == 0 || value.GrassHeight < value.Depth, "The grass must be lower than the water is deep.", nameof(Spot));
            Guard.That(value.StrikeZone.Bottom <= value.Depth * (1 + Rounding), "The strike zone must lie inside the water.", nameof(Spot));
        }
    }

    /// <summary>What the angler owns.</summary>
    public required TackleBox Tackle { get; init => field = Guard.Given(value); }

    /// <summary>The retrieves to compare; at least one.</summary>
    public required IReadOnlyList<Presentation> Presentations { get; init => field = Guard.Items(value, 1); }

    /// <summary>Forage that was seen; empty where none was.</summary>
    public IReadOnlyList<ForageSighting> Forage { get; init => field = Guard.Items(value, 0); } = [];

    /// <summary>The season where the scenario names one; <see cref="Seasons.Of(Scenario)"/> falls back on its date.</summary>
    public Season? Season { get; init => field = value is { } season ? Guard.Defined(season) : null; }

    /// <summary>Two rigs to compare, or none.</summary>
    public IReadOnlyList<ComparedRig> Compare { get; init => field = Guard.Items(value, 0); } = [];

    /// <summary>How well the inputs are known.</summary>
    public ScenarioUncertainty Uncertainty { get; init => field = Guard.Given(value); } = ScenarioUncertainty.Assumed;

    /// <summary>What the angler will not change in a presentation; a choice may vary the rest (<c>ChoiceSearch</c>).</summary>
    public IReadOnlyList<Hand> Fixed { get; init => field = [.. Guard.Given(value).Select(hand => Guard.Defined(hand, nameof(Fixed)))]; } = [];

    /// <summary>What was seen, felt or timed; empty where nothing was.</summary>
    public IReadOnlyList<Observation> Seen { get; init => field = Guard.Items(value, 0); } = [];

    /// <summary>How far the angler will go with what is not fixed.</summary>
    public HandRanges Hands { get; init => field = Guard.Given(value); } = HandRanges.None;

    /// <summary>The tide, in order of time; empty when none was given.</summary>
    public IReadOnlyList<TidePoint> Tide { get; init => field = Guard.Items(value, 0); } = [];
}
