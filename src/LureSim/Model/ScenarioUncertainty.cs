namespace LureSim.Model;

/// <summary>Which published drag law of the line the draws use.</summary>
public enum LineLawChoice
{
    /// <summary>Half of the draws use the measured cylinder, half Choo &amp; Casarella 1971 across and Churchill &amp; Bernstein 1977 along.</summary>
    Either,

    /// <summary>The measured cylinder across (Wieselsberger 1922), Choo &amp; Casarella 1971 with an axial boundary layer along: the law of the single runs.</summary>
    Measured,

    /// <summary>Choo &amp; Casarella 1971 across and along, with an axial boundary layer.</summary>
    ChooCasarella,

    /// <summary>Sucker &amp; Brauer 1975 across, Choo &amp; Casarella 1971 with an axial boundary layer along.</summary>
    SuckerBrauer,

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
        LureDrag = Spread.Exact,
        LineLaw = LineLawChoice.Measured,
        Clarity = Spread.Exact,
        SightIsKnown = true,
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

    /// <summary>
    /// Factor on the drag of the line. A braid is not round, its diameter is a name more than a measure, and loose fibres stand out of it: for netting twine the pressure
    /// drag of a knotted surface is about 10 % above a smooth one, and no measured drag of braided angling line is known. Assumed.
    /// </summary>
    public Spread LineDrag { get; init => field = Guard.Given(value); } = Spread.OfShare(0.15);

    /// <summary>
    /// Factor on the drag of the lure: what its parts leave open. The parts meet measured ellipsoids, cylinders and plates within 10 %; computed sink rates of weights and baits
    /// on line lie from 28 % below to 36 % above the measured ones (docs/validation.md), which is a drag from half to nearly twice as great. No drag of a soft bait has been published.
    /// </summary>
    public Spread LureDrag { get; init => field = Guard.Given(value); } = Spread.OfShare(0.4);

    /// <summary>Drag law of the line.</summary>
    public LineLawChoice LineLaw { get; init => field = Guard.Defined(value); } = LineLawChoice.Either;

    /// <summary>Secchi depth; it moves light and sight alone.</summary>
    public Spread Clarity { get; init => field = Guard.Given(value); } = Spread.OfShare(0.25);

    /// <summary>
    /// True if the eye and the optics of the water are taken as the model has them; false if sighting distances are drawn with what is not known of them: the contrast
    /// that a fish needs, the smallest target, the peaks of borrowed cones, the attenuation of light at a given Secchi depth.
    /// </summary>
    public bool SightIsKnown { get; init; }

    /// <summary>Temperature of the water (K); exact where the scenario gives it.</summary>
    public Spread Temperature { get; init => field = Guard.Given(value); } = Spread.Exact;

    /// <summary>Practical salinity; exact where the scenario gives it.</summary>
    public Spread Salinity { get; init => field = Guard.Given(value); } = Spread.Exact;

    /// <summary>Draws for each jig head, 0 to <see cref="MostSamples"/>; 0 for no study.</summary>
    public int Samples { get; init => field = (int)new ValueRange(0, MostSamples).Check(value); } = 24;

    /// <summary>Seed of the draws, 0 or more: the same seed gives the same draws.</summary>
    public int Seed { get; init => field = (int)new ValueRange(0, int.MaxValue).Check(value); } = 1;

    /// <summary>What observations left of current, depth and drag, equally likely; empty where there were none. The draws take these in place of the spreads.</summary>
    public IReadOnlyList<LearnedTry> Learned { get; init => field = new ValueList<LearnedTry>([.. Guard.Items(value, 0)]); } = new ValueList<LearnedTry>([]);

    /// <summary>True if the motion is the same in every draw.</summary>
    public bool IsExactInMotion => Current.IsExact && Cast.IsExact && RetrieveSpeed.IsExact && Depth.IsExact && RodHeight.IsExact && LineDrag.IsExact && LineLaw == LineLawChoice.Measured && LureDrag.IsExact && Temperature.IsExact && Salinity.IsExact;
}
