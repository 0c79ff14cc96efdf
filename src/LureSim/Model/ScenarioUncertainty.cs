namespace LureSim.Model;

/// <summary>Which published drag law of the line the draws use.</summary>
public enum LineLawChoice
{
    /// <summary>Half of the draws use one, half the other.</summary>
    Either,

    /// <summary>Choo &amp; Casarella 1971 with an axial boundary layer, the law of the single runs.</summary>
    ChooCasarella,

    /// <summary>Choo &amp; Casarella 1971 across, Churchill &amp; Bernstein 1977 along.</summary>
    ChurchillBernstein,
}

/// <summary>How well the inputs of a scenario are known, and how the draws are made.</summary>
public sealed record ScenarioUncertainty
{
    /// <summary>Most draws of one study.</summary>
    public const int MostSamples = 2000;

    /// <summary>What a person at the water knows of each input when nothing is said about it. Assumed.</summary>
    public static ScenarioUncertainty Assumed { get; } = new();

    /// <summary>Everything is taken as known.</summary>
    public static ScenarioUncertainty None { get; } = new()
    {
        Current = Spread.Exact,
        Cast = Spread.Exact,
        RetrieveSpeed = Spread.Exact,
        Depth = Spread.Exact,
        RodHeight = Spread.Exact,
        LineDrag = Spread.Exact,
        LineLaw = LineLawChoice.ChooCasarella,
        Clarity = Spread.Exact,
    };

    /// <summary>Current at the surface: judged from drift, weed or a chart, and gusty by nature.</summary>
    public Spread Current { get; init => field = Guard.Given(value); } = Spread.OfShare(0.25);

    /// <summary>Length of the cast.</summary>
    public Spread Cast { get; init => field = Guard.Given(value); } = Spread.OfShare(0.10);

    /// <summary>Speed of the retrieve: no hand keeps it better.</summary>
    public Spread RetrieveSpeed { get; init => field = Guard.Given(value); } = Spread.OfShare(0.15);

    /// <summary>Depth of the water along the retrieve.</summary>
    public Spread Depth { get; init => field = Guard.Given(value); } = Spread.OfShare(0.10);

    /// <summary>Height of the rod tip.</summary>
    public Spread RodHeight { get; init => field = Guard.Given(value); } = Spread.OfShare(0.15);

    /// <summary>Factor on the drag of the line: a braid is not round, and its diameter is a name more than a measure.</summary>
    public Spread LineDrag { get; init => field = Guard.Given(value); } = Spread.OfShare(0.15);

    /// <summary>Drag law of the line.</summary>
    public LineLawChoice LineLaw { get; init => field = Guard.Defined(value); } = LineLawChoice.Either;

    /// <summary>Secchi depth; it moves light and sight alone.</summary>
    public Spread Clarity { get; init => field = Guard.Given(value); } = Spread.OfShare(0.25);

    /// <summary>Draws for each jig head, 0 to <see cref="MostSamples"/>; 0 for no study.</summary>
    public int Samples { get; init => field = (int)new ValueRange(0, MostSamples).Check(value); } = 24;

    /// <summary>Seed of the draws, 0 or more: the same seed gives the same draws.</summary>
    public int Seed { get; init => field = (int)new ValueRange(0, int.MaxValue).Check(value); } = 1;

    /// <summary>True if the motion is the same in every draw.</summary>
    public bool IsExactInMotion => Current.IsExact && Cast.IsExact && RetrieveSpeed.IsExact && Depth.IsExact && RodHeight.IsExact && LineDrag.IsExact && LineLaw == LineLawChoice.ChooCasarella;
}
