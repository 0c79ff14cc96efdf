using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>Named shapes of a bottom.</summary>
internal enum BottomShape
{
    /// <summary>An even slope.</summary>
    Bank,

    /// <summary>A step.</summary>
    Ledge,

    /// <summary>A slope of one to three.</summary>
    ChannelEdge,

    /// <summary>Deeper in the middle.</summary>
    Hole,

    /// <summary>Shallower in the middle.</summary>
    Hump,
}

/// <summary>The part of the grammar that says how the bottom runs along the cast.</summary>
internal static class BottomGrammar
{
    // Heights of the bottom above the water are read to be refused with a reason of their own.
    private static readonly QuantityValue PointDepth = new(QuantityKind.Length, -Limits.Depth.Most, Limits.Depth.Most);

    private static readonly QuantityValue Distance = new(QuantityKind.Length, Limits.ProfileDistance) { Example = "30 ft" };

    /// <summary>Shapes.</summary>
    public static WordValue Shapes { get; } = new(
    [
        new("bank falling away", BottomShape.Bank, "an even slope from near_depth to far_depth"),
        new("ledge", BottomShape.Ledge, "a step from near_depth to far_depth"),
        new("channel edge", BottomShape.ChannelEdge, "a slope of about one to three from near_depth to far_depth"),
        new("hole", BottomShape.Hole, "deeper in the middle"),
        new("hump", BottomShape.Hump, "shallower in the middle"),
    ])
    { Names = EverydayNames.Shape };

    private static readonly MapValue Shape = new("bottom_profile", "A shape by its name, along the cast.",
    [
        new("shape", Shapes, "The shape.") { Required = true },
        new("at", Distance, "Where it begins, from below the rod tip.") { Required = true },
        new("width", Distance, "How far it reaches along the cast.") { Default = "bank: ten times the change of depth; channel edge: three times; ledge: 3 ft; hole or hump: 20 ft (all assumed)" },
        new("near_depth", PointDepth, "Depth on the rod's side of it.") { Required = true },
        new("far_depth", PointDepth, "Depth beyond it; for a bank, a ledge or an edge it must be given.") { Default = "near_depth, for a hole or a hump" },
        new("middle_depth", PointDepth, "Depth in the middle of a hole or hump, for which it must be given.") { Default = "none" },
    ]);

    private static readonly MapValue Stretch = new("bottom_stretch", "A stretch along the cast where the bottom is of another kind, or the grass another.",
    [
        new("from", Distance, "Where it begins, from below the rod tip.") { Required = true },
        new("to", Distance, "Where it ends.") { Required = true },
        new("bottom", BottomKinds, "What the bottom is made of there.") { Default = "that of the spot" },
        new("grass_height", new QuantityValue(QuantityKind.Length, Limits.WithinWater), "Height of the grass there, less than the water is deep; 0 ft for none.") { Default = "that of the spot" },
        new("name", new TextValue(40, false), "Name for people.") { Default = "where it lies" },
    ]);

    /// <summary>Kinds of bottom.</summary>
    public static WordValue BottomKinds => new(
    [
        new("hard", BottomKind.Hard, "rock, concrete, packed gravel"),
        new("sand", BottomKind.Sand, "sand"),
        new("mud", BottomKind.Mud, "soft mud"),
        new("shell", BottomKind.Shell, "oyster or broken shell"),
    ])
    { Names = EverydayNames.Bottom };

    /// <summary>Points or a shape.</summary>
    public static GrammarValue Profile { get; } = new PairsOrMapValue(new PairsValue(Distance, PointDepth, "distance", "depth", 1, 60, "[0 ft: 2 ft, 30 ft: 3 ft, 36 ft: 8 ft]"), Shape);

    /// <summary>Stretches.</summary>
    public static ListValue Stretches { get; } = new(Stretch, 1, 12);
}
