using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>The part of the grammar that says what was seen, felt and timed, and what a tackle file holds.</summary>
internal static class ObservationGrammar
{
    private static readonly QuantityValue Time = new(QuantityKind.Duration, 0.3, 600.0) { Example = "9 s" };

    private static readonly QuantityValue Angle = new(QuantityKind.Angle, 0.0, Math.PI / 2.0) { Example = "30 deg" };

    private static readonly QuantityValue Share = new(QuantityKind.Percentage, 0.01, 1.0) { Example = "20 %" };

    private static readonly DateValue Day = new(Limits.FirstDay, Limits.LastDay, "2026-06-14");

    private static readonly NumberValue Turns = new(0.5, 500.0, AllowRatio: false, "12");

    private static readonly MapValue Float = new("float", "A float, or a bubble or a leaf, timed from one mark to another.",
    [
        new("distance", new QuantityValue(QuantityKind.Length, 0.5, 200.0) { Example = "30 ft" }, "Distance between the marks, along the current.") { Required = true },
        new("time", Time, "Time from one to the other.") { Required = true },
    ]);

    private static readonly MapValue Pool = new("pool", "A fall in a pool or a bucket, the lure free of its line.",
    [
        new("depth", new QuantityValue(QuantityKind.Length, 0.2, 10.0) { Example = "6 ft" }, "How deep it fell, from the surface.") { Required = true },
        new("time", new QuantityValue(QuantityKind.Duration, 0.2, 120.0) { Example = "3.5 s" }, "How long it took.") { Required = true },
        new("temperature", new QuantityValue(QuantityKind.Temperature, Limits.Temperature), "Temperature of the water in it.") { Default = "20 degC" },
        new("salinity", new QuantityValue(QuantityKind.Salinity, Limits.Salinity), "Salinity of the water in it.") { Default = "0 ppt, fresh" },
    ]);

    private static readonly MapValue Seen = new("seen", "Something seen, felt or timed here: exactly one of the keys from bottom to pool says what. The plan learns from it how the water and the tackle really are.",
    [
        new("jig_head", new QuantityValue(QuantityKind.Mass, Limits.HeadMass) { Words = [new("unweighted", 0.0, "a hook without lead")], Names = EverydayNames.Head }, "The head that was fished, one of your box.") { Default = "none: needed with a soft bait" },
        new("bait", new TextValue(80, AllowLines: false), "Name of the bait that was fished, one of your box.") { Default = "the only one that fits, otherwise the first" },
        new("bottom", Time, "Time from when it hits the water to the bottom, by a watch.") { OneOf = "what" },
        new("bottom_count", new NumberValue(0.5, 600.0, AllowRatio: false, "9"), "The same by a count in the head, a second each.") { OneOf = "what" },
        new("first_tick", new IntegerValue(1, 600), "The least count after which the lure ticks bottom as the reel begins to turn.") { OneOf = "what" },
        new("turns_to_tick", Turns, "Turns of the handle until it first ticks bottom.") { OneOf = "what" },
        new("turns_to_clear", Turns, "Turns of the handle after which it no longer ticks bottom.") { OneOf = "what" },
        new("line_angle", Angle, "Angle between the direction of the cast and that of the line at the water, when the lure is down; see side and after.") { OneOf = "what" },
        new("came_out", Angle, "Angle between the direction of the cast and where the lure came out of the water; see side.") { OneOf = "what" },
        new("line_out", new QuantityValue(QuantityKind.Length, 1.0, 300.0) { Example = "70 ft" }, "Line out when the lure was on the bottom.") { OneOf = "what" },
        new("plate_gone", new QuantityValue(QuantityKind.Length, Limits.SecchiDepth), "Depth at which a white plate went out of sight.") { OneOf = "what" },
        new("lure_gone", new QuantityValue(QuantityKind.Length, Limits.SecchiDepth), "Depth at which a bright lure went out of sight.") { OneOf = "what" },
        new("float", Float, "A float timed past two marks.") { OneOf = "what" },
        new("pool", Pool, "A timed fall in a pool or a bucket: tells the drag of the bait for good.") { OneOf = "what" },
        new("happened", new WordValue([new("yes", true, "it did"), new("no", false, "up to this time, count or number of turns it had not")]), "Whether it happened. With no the figure says how long it had not: bottom: 20 s, happened: no.") { Default = "yes" },
        new("side", new WordValue([new("left", 1.0, "to the left of the cast"), new("right", -1.0, "to the right of it")]), "To which side of the cast an angle is.") { Default = "none: needed with an angle" },
        new("after", Time, "When line_angle was seen, counted from when it hits the water.") { Default = "with the lure on the bottom" },
        new("presentation", new TextValue(60, AllowLines: false), "Name of one of the presentations, which says how it was cast and worked.") { Default = "the first" },
        new("cast", new QuantityValue(QuantityKind.Length, Limits.CastLength), "Cast, in place of the presentation's.") { Default = "that of the presentation" },
        new("fall", MoveGrammar.Fall, "How the lure fell, in place of the presentation's.") { Default = "that of the presentation" },
        new("count_down", MoveGrammar.CountDown, "Count-down before the reel turned, in place of the presentation's; for turns and came_out.") { Default = "that of the presentation" },
        new("plus_or_minus", Share, "How well it was observed: nine times in ten within this share of it.") { Default = "what a hand and an eye do: 0.3 s for a watch, a tenth for a count, 7 deg for an angle" },
        new("date", Day, "Day on which it was observed.") { Default = "not noted" },
        new("spot", new TextValue(120, AllowLines: false), "Title of the scenario of the spot where it was observed. What was seen at another spot does not count here.") { Default = "this one" },
        new("note", new TextValue(200, AllowLines: false), "Remark.") { Default = "none" },
    ]);

    /// <summary>Most observations of a scenario.</summary>
    public const int Most = 40;

    /// <summary>What was seen.</summary>
    public static ListValue All { get; } = new(Seen, 1, Most);

    private static readonly MapValue OwnDrag = new("lure", "What was measured of a lure.",
    [
        new("bait", new TextValue(80, AllowLines: false), "Its name, as in the scenarios.") { Required = true },
        new("drag", new NumberValue(Limits.DragFactor.Least, Limits.DragFactor.Most, AllowRatio: false, "1.15"), "Its drag over the computed one.") { Required = true },
        new("plus_or_minus", new QuantityValue(QuantityKind.Percentage, 0.0, 1.0) { Example = "8 %" }, "How well it is known: nine in ten lie within this share of it.") { Required = true },
        new("measured", Day, "Day of the last measurement.") { Default = "not noted" },
        new("how", new TextValue(200, AllowLines: false), "How it was measured.") { Default = "not noted" },
    ]);

    /// <summary>A whole tackle file.</summary>
    public static MapValue TackleFile { get; } = new("tackle file", "What was measured of the lures of a box; scenarios include it.",
    [
        new("lures", new ListValue(OwnDrag, 1, 200), "The lures.") { Required = true },
    ]);
}
