using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>The part of the grammar that says how a lure is built and put on its hook.</summary>
internal static class RiggingGrammar
{
    /// <summary>Common inner length of an open loop (m).</summary>
    public const double LoopLength = 0.010;

    /// <summary>Common length of a clip (m).</summary>
    public const double ClipLength = 0.012;

    /// <summary>Common diameter of a split ring (m).</summary>
    public const double RingLength = 0.006;

    private static readonly QuantityValue Lean = new(QuantityKind.Angle, Limits.Lean) { Example = "10 deg" };

    /// <summary>Metals of which spoons are made.</summary>
    public static IReadOnlyList<GrammarWord> SpoonMetals { get; } =
    [
        new("brass", HeadMetal.Brass, "8,500 kg/m3"),
        new("steel", HeadMetal.Steel, "7,850 kg/m3"),
        new("zinc", HeadMetal.Zinc, "7,140 kg/m3"),
        new("lead", HeadMetal.Lead, "11,340 kg/m3"),
    ];

    private static string CommonShanks => string.Join(", ", LureKinds.All.Where(kind => kind.NeedsHead)
        .Select(kind => FormattableString.Invariant($"{100 * kind.Proportions.ShankShare:0} % {kind.Word}")));

    /// <summary>The diving lip.</summary>
    public static MapValue Lip { get; } = new("lip", "The diving lip of a hard jerkbait.",
    [
        new("length", new QuantityValue(QuantityKind.Length, Limits.LipSide), "Length of the lip from its root.") { Required = true },
        new("width", new QuantityValue(QuantityKind.Length, Limits.LipSide), "Width of the lip.") { Required = true },
        new("angle", new QuantityValue(QuantityKind.Angle, Limits.LipAngle) { Example = "45 deg" }, "Angle between the lip and the body's axis: small for a lip that points ahead, large for one that points down.") { Required = true },
    ]);

    /// <summary>Whether a hard bait floats.</summary>
    public static WordValue Float { get; } = new(
    [
        new("floating", HardFloat.Floating, "rises when it is left alone; 940 kg/m3 all in all"),
        new("suspending", HardFloat.Suspending, "hangs where it is left; 1,015 kg/m3 all in all"),
        new("sinking", HardFloat.Sinking, "sinks when it is left alone; 1,100 kg/m3 all in all"),
    ]);

    /// <summary>The rigging.</summary>
    public static MapValue Rigging { get; } = new("rigging", "How the lure is tied on and how well it is put on its hook. What is left out is a clean job; see docs/rigging.md for how to measure.",
    [
        new("knot", new WordValue(
        [
            new("loop", KnotStyle.Loop, "loop knot: the eye swings freely"),
            new("snug", KnotStyle.Snug, "drawn tight on the eye: the leader holds the nose like a spring"),
            new("clip", KnotStyle.Clip, "wire clip"),
            new("split ring", KnotStyle.SplitRing, "split ring"),
        ]), "How the lure is tied on.") { Default = "loop" },
        new("loop_length", new QuantityValue(QuantityKind.Length, Limits.LoopLength), "Inner length of the loop, the clip or the ring; not for a snug knot.") { Default = "10 mm for a loop, 12 mm for a clip, 6 mm for a split ring" },
        new("shank", new QuantityValue(QuantityKind.Length, 0.004, 0.15), "Length of the hook's shank from the eye to the bend; less than the shortest soft body. Not together with shank_share.") { Default = "common share of the profile" },
        new("shank_share", new QuantityValue(QuantityKind.Percentage, Limits.ShankShare) { Example = "45 %" }, "The same as a share of the body's length.") { Default = $"common share of the profile: {CommonShanks}" },
        new("exit_sideways", new QuantityValue(QuantityKind.Length, Limits.HookExit) { Example = "3 mm" }, "How far beside the centre line of the back the hook comes out, to the left positive.") { Default = "0 mm" },
        new("exit_above", new QuantityValue(QuantityKind.Length, Limits.HookExit) { Example = "2 mm" }, "How far above the place where the body would lie straight the hook comes out, negative below.") { Default = "0 mm" },
        new("bend", Lean, "Sideways bend of the body, the angle between nose and tail seen from above, tail to the left positive; it adds to the bend that exit_sideways makes.") { Default = "0 deg" },
        new("point_lean", Lean, "Lean of the hook's point from straight up, seen from behind, to the left positive.") { Default = "0 deg" },
        new("head_turn", new QuantityValue(QuantityKind.Angle, Limits.HeadTurn) { Example = "5 deg" }, "Angle between the axis of the jig head and that of the body, seen from above, head to the left positive.") { Default = "0 deg" },
        new("pulled_up", new QuantityValue(QuantityKind.Length, Limits.PulledUp) { Example = "3 mm" }, "How much too far a weedless bait is pulled up towards the eye, so that it bunches and arches.") { Default = "0 mm" },
        new("gape", new QuantityValue(QuantityKind.Length, Limits.HookGape) { Example = "20 mm" }, "Gape of the hook, from the shank to the point. A hook too large for the bait has more of it.") { Default = "of a hook that fits the bait" },
        new("weight_at", new QuantityValue(QuantityKind.Percentage, Limits.WeightStation) { Example = "50 %" }, "Where the metal of a weighted hook (place: shank) sits along the shank, 0 % at the eye, 100 % at the bend.") { Default = "50 %" },
        new("tail_lost", new QuantityValue(QuantityKind.Percentage, Limits.TailLost) { Example = "30 %" }, "How much of the tail's length is torn, bitten or cut off.") { Default = "0 %" },
    ]);
}
