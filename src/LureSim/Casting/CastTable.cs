using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Casting;

/// <summary>A lure of a box with its cast.</summary>
/// <param name="Head">Head; <see cref="JigHead.None"/> for a lure without one.</param>
/// <param name="Body">Bait, or the lure itself.</param>
/// <param name="Cast">How far it flies.</param>
public sealed record CastRow(JigHead Head, LureBody Body, CastOfLure Cast);

/// <summary>How far each lure of a box is cast in one presentation.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Presentation">The presentation.</param>
/// <param name="Rows">The heads with the bait in the order of the box, then the lures that need no head.</param>
public sealed record CastTable(Scenario Scenario, Presentation Presentation, IReadOnlyList<CastRow> Rows)
{
    /// <summary>Computes the table.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="bait">The soft bait on the heads; null for the first of the box.</param>
    /// <param name="presentation">The presentation; null for the first.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    public static CastTable Of(Scenario scenario, LureBody? bait = null, Presentation? presentation = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        presentation ??= scenario.Presentations[0];
        TackleBox box = scenario.Tackle;
        LureBody? soft = bait is { NeedsHead: true } ? bait : box.Bodies.FirstOrDefault(body => body.NeedsHead);
        IEnumerable<(JigHead Head, LureBody Body)> lures =
        [
            .. soft is null ? [] : box.JigHeads.Select(head => (head, soft)),
            .. box.Bodies.Where(body => !body.NeedsHead).Select(body => (JigHead.None(body), body)),
        ];
        return new CastTable(scenario, presentation, [.. lures.Select(lure =>
            new CastRow(lure.Head, lure.Body, CastReach.Of(scenario.Spot, FishingRig.Of(box, lure.Head, lure.Body), presentation)))]);
    }

    /// <summary>True if the casts differ by lure.</summary>
    public bool ByLure => CastReach.IsOwn(Scenario.Tackle, Presentation);
}
