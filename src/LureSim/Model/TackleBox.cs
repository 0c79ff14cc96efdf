namespace LureSim.Model;

/// <summary>What the angler owns.</summary>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
/// <exception cref="ArgumentException">There is no body, or no colour.</exception>
public sealed record TackleBox
{
    /// <summary>Height of the rod tip above the water (m), 0.1 to 6.</summary>
    public required double RodTipHeight { get; init => field = Limits.RodTipHeight.Check(value); }

    /// <summary>The reel.</summary>
    public required Reel Reel { get; init => field = Guard.Given(value); }

    /// <summary>The main line.</summary>
    public required LineSpecification Line { get; init => field = Guard.Given(value); }

    /// <summary>The leader, or null for none.</summary>
    public LeaderSpecification? Leader { get; init; }

    /// <summary>Jig heads to choose from; a head of mass 0 is an unweighted hook rig. Empty only if there is no soft body.</summary>
    public required IReadOnlyList<JigHead> JigHeads { get; init => field = Guard.Items(value, 0); }

    /// <summary>Bodies to choose from; at least one. The rules of <c>BodyChoice</c> choose the soft one that goes on the heads; where none speaks the first is taken. Others need no head and are fished as they are.</summary>
    public required IReadOnlyList<LureBody> Bodies { get; init => field = Guard.Items(value, 1); }

    /// <summary>How the lure is tied on and put on its hook.</summary>
    public Rigging Rigging { get; init => field = Guard.Given(value); } = new();

    /// <summary>Colours to choose from: preset names or hex colours, at least one.</summary>
    public required IReadOnlyList<string> Colours { get; init => field = Guard.Items(value, 1); }

    /// <summary>What the plan compares: the first soft body on every jig head, then every body that needs none.</summary>
    public IReadOnlyList<(JigHead Head, LureBody Body)> Lures => LuresWith(Bodies.FirstOrDefault(body => body.NeedsHead));

    /// <summary>A soft body on every jig head, then every body that needs no head.</summary>
    /// <param name="soft">The soft body; null for none.</param>
    public IReadOnlyList<(JigHead Head, LureBody Body)> LuresWith(LureBody? soft) =>
    [
        .. soft is null ? [] : JigHeads.Select(head => (head, soft)),
        .. Bodies.Where(body => !body.NeedsHead).Select(body => (JigHead.None(body), body)),
    ];
}
