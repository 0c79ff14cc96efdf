namespace LureSim.Model;

/// <summary>A rod, a reel, a line, and how the lure is tied to it.</summary>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public abstract record Outfit
{
    /// <summary>Height of the rod tip above the water (m), 0.1 to 6.</summary>
    public required double RodTipHeight { get; init => field = Limits.RodTipHeight.Check(value); }

    /// <summary>The rod; null where it is not known, and every lure is taken to fly as far as the presentation says.</summary>
    public Rod? Rod
    {
        get;
        init
        {
            Guard.That(value is null || value.HeaviestLure > value.LightestLure, "The heaviest rated lure must weigh more than the lightest.", nameof(Rod));
            field = value;
        }
    }

    /// <summary>The reel.</summary>
    public required Reel Reel { get; init => field = Guard.Given(value); }

    /// <summary>The main line.</summary>
    public required LineSpecification Line { get; init => field = Guard.Given(value); }

    /// <summary>The leader, or null for none.</summary>
    public LeaderSpecification? Leader { get; init; }

    /// <summary>How the lure is tied on and put on its hook.</summary>
    public Rigging Rigging { get; init => field = Guard.Given(value); } = new();
}
