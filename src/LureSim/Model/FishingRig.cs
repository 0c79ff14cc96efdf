namespace LureSim.Model;

/// <summary>One lure on one outfit, ready to cast.</summary>
public sealed record FishingRig : Outfit
{
    /// <summary>Jig head or hook; <see cref="JigHead.None"/> for a lure that needs none.</summary>
    public required JigHead Head { get; init => field = Guard.Given(value); }

    /// <summary>The soft bait on it, or the hard lure itself.</summary>
    public required LureBody Body { get; init => field = Guard.Given(value); }

    /// <summary>A lure on the outfit of a tackle box.</summary>
    /// <param name="outfit">Rod, reel, line and rigging.</param>
    /// <param name="head">Jig head or hook.</param>
    /// <param name="body">Soft bait, or hard lure.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static FishingRig Of(Outfit outfit, JigHead head, LureBody body)
    {
        ArgumentNullException.ThrowIfNull(outfit);
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        return new FishingRig
        {
            RodTipHeight = outfit.RodTipHeight,
            Rod = outfit.Rod,
            Reel = outfit.Reel,
            Line = outfit.Line,
            Leader = outfit.Leader,
            Rigging = outfit.Rigging,
            Head = head,
            Body = body,
        };
    }
}
