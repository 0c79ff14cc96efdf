using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>The part of the grammar that says what stands in the water beside the cast.</summary>
internal static class StructureGrammar
{
    private static readonly QuantityValue Distance = new(QuantityKind.Length, Limits.ProfileDistance) { Example = "30 ft" };

    private static readonly QuantityValue Aside = new(QuantityKind.Length, 0, Limits.Aside.Most);

    private static readonly MapValue Item = new("structure", "Something beside or across the cast, seen from above a rectangle along the line straight out.",
    [
        new("kind", new WordValue(
        [
            new("posts", StructureKind.Posts, "posts or pilings, through all the water: hung up on by lure and line"),
            new("overhang", StructureKind.Overhang, "a dock, a bridge or branches over the water: hung up on by a cast that lands on it; shades the water under it"),
            new("oyster clump", StructureKind.OysterClump, "shells standing up from the bottom: hung up on by a lure that comes over it too low"),
        ])
        { Names = EverydayNames.Structure }, "What it is.") { Required = true },
        new("from", Distance, "Where it begins, from below the rod tip.") { Required = true },
        new("to", Distance, "Where it ends.") { Default = "1 ft beyond from" },
        new("left", Aside, "How far its middle is to the left of the line straight out.") { Default = "0 ft, on the line" },
        new("right", Aside, "How far its middle is to the right of it.") { Default = "0 ft, on the line" },
        new("width", new QuantityValue(QuantityKind.Length, Limits.StructureWidth), "Its width across that line.") { Default = "1 ft" },
        new("height", new QuantityValue(QuantityKind.Length, Limits.WithinWater), "Height of a clump above the bottom, or of the underside of an overhang above the water; posts have none.") { Default = "clump 1 ft, overhang 3 ft (assumed)" },
        new("pass", new WordValue(
        [
            new("close by", StructureRole.PassClose, "fish hold there"),
            new("keep off", StructureRole.KeepOff, "it takes lures"),
        ]), "What you want of it.") { Default = "close by" },
        new("reach", new QuantityValue(QuantityKind.Length, Limits.StructureReach), "How near counts as within reach of the fish that hold there.") { Default = "3 ft, assumed" },
        new("shade", new ListValue(Distance, 2, 2), "Where its shade lies on the water, from and to.") { Default = "an overhang shades what is under it; posts and clumps nothing" },
    ]);

    /// <summary>Structures of a spot.</summary>
    public static ListValue Structures { get; } = new(Item, 1, 12);
}
