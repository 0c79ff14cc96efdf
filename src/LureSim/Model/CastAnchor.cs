namespace LureSim.Model;

/// <summary>The lure with which an angler knows the length of a cast: "60 ft with 1/4 oz". Every other lure is thrown as hard and flies as far as it then does.</summary>
/// <param name="Head">Its head; <see cref="JigHead.None"/> for a lure without one.</param>
/// <param name="Body">Its bait, or the lure itself.</param>
/// <exception cref="ArgumentNullException">A part is missing.</exception>
/// <exception cref="ArgumentOutOfRangeException">The mass is outside its range.</exception>
public sealed record CastAnchor(JigHead Head, LureBody Body)
{
    /// <summary>Its head; <see cref="JigHead.None"/> for a lure without one.</summary>
    public JigHead Head { get; init => field = Guard.Given(value); } = Guard.Given(Head);

    /// <summary>Its bait, or the lure itself.</summary>
    public LureBody Body { get; init => field = Guard.Given(value); } = Guard.Given(Body);

    /// <summary>Mass of all of it (kg) where it is known otherwise than from its parts, 0.0003 to 0.3; null for that of the parts.</summary>
    public double? Mass { get; init => field = value is { } mass ? Limits.RatedLure.Check(mass) : null; }
}
