using LureSim.Light;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Tackle;

namespace LureSim.Scenarios;

/// <summary>The grammar of scenarios: every key with its kind, range, default and meaning. Ranges in SI.</summary>
internal static class ScenarioGrammar
{
    /// <summary>Greatest size of a scenario file (bytes).</summary>
    public const int MaximumBytes = 1_000_000;

    /// <summary>Name of the schema file that scenarios point editors to.</summary>
    public const string SchemaFileName = "luresim-scenario.schema.json";

    private static readonly IReadOnlyList<GrammarWord> Directions =
    [
        new("away", 0.0, "away from the angler, straight out (0 deg)"),
        new("left", Math.PI / 2.0, "to the left of who faces that way (90 deg)"),
        new("towards", Math.PI, "towards the angler (180 deg)"),
        new("right", 3.0 * Math.PI / 2.0, "to the right (270 deg)"),
    ];

    private static readonly IReadOnlyList<GrammarWord> LineKinds =
    [
        new("braid", LineKind.Braid, "braided polyethylene: thin and light"),
        new("monofilament", LineKind.Monofilament, "nylon monofilament"),
        new("fluorocarbon", LineKind.Fluorocarbon, "fluorocarbon: heavier than water, sinks"),
    ];

    private static readonly WordValue LineKindWord = new(LineKinds) { Names = EverydayNames.Line };

    private static readonly IReadOnlyList<GrammarWord> Metals =
    [
        new("lead", HeadMetal.Lead, "11,340 kg/m3"),
        new("tungsten", HeadMetal.Tungsten, "composite, 17,000 kg/m3"),
        new("tin", HeadMetal.Tin, "7,290 kg/m3"),
        new("zinc", HeadMetal.Zinc, "7,140 kg/m3"),
        new("bismuth", HeadMetal.Bismuth, "9,780 kg/m3"),
        new("steel", HeadMetal.Steel, "7,850 kg/m3"),
    ];

    private static readonly QuantityValue Strength = new(QuantityKind.LineStrength, Limits.LineStrength);

    private static readonly QuantityValue LineDiameter = new(QuantityKind.Length, Limits.LineDiameter);

    private static readonly QuantityValue Direction = new(QuantityKind.Angle, 0.0, 2.0 * Math.PI)
    {
        Words = Directions,
        Names = EverydayNames.Direction,
        Advice = "say to your right, to your left, toward you or away",
    };

    private static readonly MapValue Current = new("current", "The current, or how the tide runs in one line: outgoing 0.8 kn, to my right.",
    [
        new("speed", new QuantityValue(QuantityKind.Speed, Limits.CurrentSpeed) { Words = [new("slack", 0.0, "still water between the tides")], Names = EverydayNames.Slack }, "Speed at the surface; over a bottom profile, where it is deepest.") { Required = true },
        new("direction", Direction, "Where the water flows to, anticlockwise seen from above from straight out (a cast without `aim`), or in words. May be left out where the water is still.") { Default = "required where the water moves" },
        new("tide", new WordValue(
        [
            new("outgoing", TideStage.Outgoing, "the tide falls, the water goes out"),
            new("incoming", TideStage.Incoming, "the tide rises, the water comes in"),
            new("slack", TideStage.Slack, "between the two"),
        ]) { Names = EverydayNames.Tide }, "Which way the tide runs, for people.") { Default = "not said" },
        new("profile", new WordValue(
        [
            new("uniform", CurrentProfileKind.Uniform, "the same speed at every depth"),
            new("power", CurrentProfileKind.Power, "one-seventh power of the height above the bottom"),
            new("log", CurrentProfileKind.Logarithmic, "logarithmic, with the roughness of the bottom"),
        ]), "How the speed falls off towards the bottom.") { Default = "power" },
    ]);

    private static readonly MapValue Wind = new("wind", "The wind, which bows the line in the air.",
    [
        new("speed", new QuantityValue(QuantityKind.Speed, Limits.WindSpeed), "Speed over the water.") { Required = true },
        new("direction", Direction, "Where the wind blows to, as for the current.") { Required = true },
    ]);

    /// <summary>Kinds of water; their Secchi depths are those of <see cref="ScenarioBuilder.SecchiRange"/>.</summary>
    internal static readonly WordValue WaterKinds = new(
    [
        new("clear ocean", WaterKind.ClearOcean, "blue water, little but plankton; Secchi depth 2 m or more"),
        new("coastal green", WaterKind.CoastalGreen, "green water, plankton with some dissolved stain; Secchi depth 0.3 m to 30 m"),
        new("tannin stained", WaterKind.TanninStained, "brown like tea; Secchi depth up to 12 m"),
        new("silty", WaterKind.Silty, "grey-brown, stirred-up mineral; Secchi depth up to 12 m"),
    ])
    { Names = EverydayNames.Water };

    private static readonly MapValue Clarity = new("clarity", "How clear the water is, in one of three forms: a Secchi depth with the kind of water, a Jerlov type, or what was measured in the water.",
    [
        new("secchi", new QuantityValue(QuantityKind.Length, Limits.SecchiDepth), "Depth at which a white disc goes out of sight (it may be more than the water is deep here).") { Required = true, Form = "secchi" },
        new("water", WaterKinds, "What colours the water.") { Required = true, Form = "secchi" },
        new("jerlov", new WordValue(
        [
            new("I", JerlovType.I, "the clearest ocean water"),
            new("IA", JerlovType.IA, "very clear ocean water"),
            new("IB", JerlovType.IB, "clear ocean water"),
            new("II", JerlovType.II, "ocean water with some plankton"),
            new("III", JerlovType.III, "the murkiest ocean water"),
            new("1C", JerlovType.Coastal1, "the clearest coastal water"),
            new("3C", JerlovType.Coastal3, "clear coastal water"),
            new("5C", JerlovType.Coastal5, "middling coastal water"),
            new("7C", JerlovType.Coastal7, "murky coastal water"),
            new("9C", JerlovType.Coastal9, "the murkiest coastal water"),
        ]), "Jerlov's optical type of the water, as on maps and in papers.") { Required = true, Form = "jerlov" },
        new("chlorophyll", new QuantityValue(QuantityKind.Concentration, Limits.Chlorophyll), "Chlorophyll a: how much plankton there is.") { Required = true, Form = "constituents" },
        new("dissolved_440", new QuantityValue(QuantityKind.AbsorptionCoefficient, Limits.Dissolved440), "Absorption of the coloured dissolved matter (the tea stain) at a wavelength of 440 nm.") { Required = true, Form = "constituents" },
        new("mineral", new QuantityValue(QuantityKind.Concentration, Limits.Mineral) { Example = "3 g/m3" }, "Suspended mineral: silt and clay in the water.") { Required = true, Form = "constituents" },
    ]);

    private static readonly MapValue Light = new("light", "The light from above, in one of two forms: the height of the sun, or a moment and a place, from which sun and moon are computed.",
    [
        new("sun_elevation", new QuantityValue(QuantityKind.Angle, Limits.SunElevation), "Height of the sun above the horizon; negative below it: -6 deg is the end of civil twilight, -18 deg night. There is no moon in it.") { Required = true, Form = "elevation" },
        new("date", new DateValue(Limits.FirstDay, Limits.LastDay, "2026-06-14"), "Day by the local calendar.") { Required = true, Form = "moment" },
        new("time", new ClockValue("06:20")
        {
            Words = new WordValue([new("dawn", DayTime.Dawn, "the sun stands 3 degrees below the horizon and rises"), new("morning", DayTime.Morning, "halfway from sunrise to noon"), new("midday", DayTime.Midday, "the sun is highest"), new("afternoon", DayTime.Afternoon, "halfway from noon to sunset"), new("dusk", DayTime.Dusk, "the sun stands 3 degrees below the horizon and goes down"), new("night", DayTime.Night, "the sun is lowest")]) { Names = EverydayNames.DayTime },
        }, "Time by the local clock, in quotes, or in a word.") { Required = true, Form = "moment" },
        new("state", new WordValue([.. Coast.All.Select(coast => new GrammarWord(coast.Name, coast, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"taken as {coast.LatitudeDegrees:0.#} deg north, {-coast.LongitudeDegrees:0.#} deg west, UTC{coast.StandardOffset:+0;-0} h, in summer an hour more")))]) { Names = EverydayNames.Coast }, "State or coast, in place of clock offset and coordinates; those that are given go before it.") { Default = "none: offset, latitude and longitude are needed" },
        new("utc_offset", new QuantityValue(QuantityKind.UtcOffset, -12.0 * 3600.0, 14.0 * 3600.0), "What the local clock is ahead of UTC, summer time included; negative west of Greenwich.") { Default = "that of the state; required without one" },
        new("latitude", new QuantityValue(QuantityKind.Angle, Limits.Latitude) { Example = "30 deg" }, "Latitude, north positive.") { Default = "that of the state; required without one" },
        new("longitude", new QuantityValue(QuantityKind.Angle, Limits.Longitude) { Example = "-75 deg" }, "Longitude, east positive.") { Default = "that of the state; required without one" },
        new("cloud", new QuantityValue(QuantityKind.Percentage, Limits.Share), "Share of the sky covered by cloud.") { Default = "0 %" },
    ]);

    /// <summary>Keys of the light.</summary>
    public static IReadOnlyList<GrammarKey> LightKeys => Light.Keys;

    private static readonly ListValue Band = new(new QuantityValue(QuantityKind.Length, Limits.WithinWater), 2, 2);

    private static readonly MapValue StrikeZone = new("strike_zone", "Where the fish are expected to strike, in one of two forms.",
    [
        new("depth", Band, "Upper and lower edge as depths below the surface.") { OneOf = "form" },
        new("above_bottom", Band, "Lower and upper edge as heights above the bottom.") { OneOf = "form" },
    ]);

    /// <summary>Fish that a scenario may aim at.</summary>
    public static WordValue TargetWord { get; } = new([.. TargetFishNames.All.Select(name => new GrammarWord(name, name, ""))]) { Names = EverydayNames.Fish };

    private static readonly MapValue Spot = new("spot", "The water, the bottom, the light and the fish.",
    [
        new("depth", new QuantityValue(QuantityKind.Length, Limits.Depth), "Depth of the water. With a bottom profile, its depth where it is deepest: the whole profile is raised or lowered to that.") { Default = "required without bottom_profile; otherwise its greatest depth" },
        new("bottom_profile", BottomGrammar.Profile, "How the bottom runs along the cast: distances from below the rod tip with the depth there, straight between them and even beyond the last; or a shape by its name.") { Default = "even, as deep as depth says" },
        new("bottom", BottomGrammar.BottomKinds, "What the bottom is made of.") { Default = "sand" },
        new("bottom_stretches", BottomGrammar.Stretches, "Stretches along the cast where the bottom or the grass is another: mud, then shell; grass to the edge.") { Default = "the same all along" },
        new("grass_height", new QuantityValue(QuantityKind.Length, Limits.WithinWater), "Height of the grass above the bottom, less than the depth.") { Default = "0 m, bare bottom" },
        new("structure", StructureGrammar.Structures, "Posts, overhangs and oyster clumps to pass close by or to keep off.") { Default = "none" },
        new("current", new ShortOrMapValue("speed", Current) { Phrase = PhraseBook.Current }, "The current.") { Default = "still water" },
        new("wind", Wind, "The wind.") { Default = "calm" },
        new("salinity", new QuantityValue(QuantityKind.Salinity, Limits.Salinity), "Saltiness of the water; 0 ppt is fresh, 35 ppt the open sea.") { Default = "24 ppt or so, by season, with a wide spread in the tries" },
        new("temperature", new QuantityValue(QuantityKind.Temperature, Limits.Temperature), "Temperature of the water, above its freezing point.") { Default = "usual for season and latitude, with its spread in the tries" },
        new("clarity", Clarity, "How clear the water is.") { Required = true },
        new("light", Light, "The light from above.") { Required = true },
        new("strike_zone", StrikeZone, "Where the fish are expected to strike.") { Default = "where this fish holds by season, temperature, light and structure, by rules of the trade; the sheet says which, and the tries vary it" },
        new("target", TargetWord, "The fish whose eyes judge the colours.") { Required = true },
        new("target_length", new QuantityValue(QuantityKind.Length, Limits.TargetLength), "Usual length of these fish here; some rules on the size of the lure go by it.") { Default = "not known" },
    ]);

    private static readonly MapValue Rod = new("rod", "The rod, or its length and power in one line: 7 ft medium. It says how far each lure flies.",
    [
        new("length", new QuantityValue(QuantityKind.Length, Limits.RodLength) { Example = "7 ft" }, "Length.") { Required = true },
        new("power", new WordValue(
        [
            new("ultralight", RodPower.Ultralight, "usually rated 1/32 to 3/16 oz"),
            new("light", RodPower.Light, "1/16 to 1/4 oz"),
            new("medium light", RodPower.MediumLight, "1/8 to 3/8 oz"),
            new("medium", RodPower.Medium, "1/4 to 5/8 oz"),
            new("medium heavy", RodPower.MediumHeavy, "3/8 to 1 oz"),
            new("heavy", RodPower.Heavy, "1/2 to 2 oz"),
        ]) { Names = EverydayNames.Power }, "Power, which stands for the lures that it is rated for.") { Default = "medium" },
        new("lures", new ListValue(new QuantityValue(QuantityKind.Mass, Limits.RatedLure), 2, 2), "Lightest and heaviest lure that is printed on the rod, in place of its power.") { Default = "usual for the power" },
    ]);

    private static readonly MapValue Reel = new("reel", "The reel, or the size that is printed on it.",
    [
        new("gear_ratio", new NumberValue(Limits.GearRatio.Least, Limits.GearRatio.Most, true, "6.2"), "Turns of the spool or rotor for one turn of the handle, as 6.2 or 6.2:1.") { Default = "of the size; required without one" },
        new("spool_diameter", new QuantityValue(QuantityKind.Length, Limits.SpoolDiameter), "Diameter of the wound line on the spool.") { Default = "of the size; required without one" },
        new("line_capacity", new QuantityValue(QuantityKind.Length, Limits.LineCapacity), "Line on the spool: no more can be out.") { Default = "of the size, otherwise 150 m" },
        new("size", new WordValue([.. TacklePresets.ReelSizes.Select(size => new GrammarWord(size.Name, size, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{size.Kind}, usually {size.Reel.GearRatio:0.0}:1 with a spool of {1000 * size.Reel.SpoolDiameter:0} mm")))]), "Size, which stands for a usual gear ratio, spool and capacity; keys beside it go before it.") { Default = "none" },
    ]);

    /// <summary>Keys of a reel.</summary>
    public static IReadOnlyList<GrammarKey> ReelKeys => Reel.Keys;

    private static readonly MapValue Line = new("line", "The main line.",
    [
        new("kind", LineKindWord, "What the line is made of.") { Required = true },
        new("strength", Strength, "Nominal breaking strength.") { Required = true },
        new("diameter", LineDiameter, "Diameter.") { Default = "common practice for the kind and strength" },
    ]);

    private static readonly MapValue Leader = new("leader", "The leader between line and lure.",
    [
        new("kind", LineKindWord, "What the leader is made of.") { Required = true },
        new("strength", Strength, "Nominal breaking strength.") { Required = true },
        new("length", new QuantityValue(QuantityKind.Length, Limits.LeaderLength), "Length.") { Required = true },
        new("diameter", LineDiameter, "Diameter.") { Default = "common practice for the kind and strength" },
    ]);

    private static readonly MapValue JigHead = new("jig_head", "A jig head.",
    [
        new("weight", new QuantityValue(QuantityKind.Mass, Limits.HeadMass) { Words = [new("unweighted", 0.0, "a hook without lead")], Names = EverydayNames.Head }, "Weight of the metal without the hook.") { Required = true },
        new("metal", new WordValue(Metals), "Metal of the head.") { Default = "lead" },
        new("hook", new QuantityValue(QuantityKind.Mass, Limits.HookMass), "Mass of the steel hook.") { Default = "common practice for the length of the first body" },
        new("place", new WordValue(
        [
            new("nose", WeightPlace.Nose, "a head at the nose of the body"),
            new("shank", WeightPlace.Shank, "a weighted hook: the metal sits on the shank under the body"),
        ]), "Where the metal sits.") { Default = "nose" },
    ]);

    /// <summary>Profiles of bodies.</summary>
    public static WordValue ProfileWord { get; } = new([.. LureKinds.All.Select(kind => new GrammarWord(kind.Word, kind.Profile, kind.Meaning))]) { Names = EverydayNames.Profile };

    private static string HeadlessKinds => string.Join(", ", LureKinds.All.Where(kind => !kind.NeedsHead).Select(kind => kind.Word));

    private static readonly MapValue Body = new("body", "A lure body. Season, water and forage choose which soft body of the list goes on the jig heads; where they say nothing it is the first. What needs no head is fished as it is: " + HeadlessKinds + ".",
    [
        new("profile", ProfileWord, "Shape of the body.") { Required = true },
        new("length", new QuantityValue(QuantityKind.Length, Limits.BodyLength), "Overall length.") { Required = true },
        new("height", new QuantityValue(QuantityKind.Length, Limits.BodySide), "Greatest height of the body; a spoon takes thickness instead.") { Default = "proportion of the profile" },
        new("width", new QuantityValue(QuantityKind.Length, Limits.BodySide), "Greatest width of the body.") { Default = "proportion of the profile" },
        new("density", new QuantityValue(QuantityKind.Density, Limits.BodyDensity), "Density of the material; of a hard bait all in all, hooks included; not for a spoon.") { Default = "density of the profile" },
        new("float", RiggingGrammar.Float, "Whether a hard jerkbait floats.") { Default = "suspending" },
        new("lip", RiggingGrammar.Lip, "The diving lip of a hard jerkbait.") { Default = "none" },
        new("thickness", new QuantityValue(QuantityKind.Length, Limits.SpoonThickness), "Thickness of the metal of a spoon.") { Default = "proportion of the profile" },
        new("metal", new WordValue(RiggingGrammar.SpoonMetals), "Metal of a spoon.") { Default = "brass" },
        new("name", new TextValue(60, false), "Name for people.") { Default = "length and profile" },
    ]);

    private static readonly MapValue MeasuredColour = new("measured_colour", "A colour whose reflectance was measured.",
    [
        new("name", new TextValue(40, AllowLines: false), "Its name.") { Required = true },
        new("reflectance", new TextValue(200, AllowLines: false), "A table beside the scenario, such as my-lure.csv: a line wavelength_nm,reflectance, then a row a wavelength, in nanometres, rising, and the share of light sent back, 0 to 1. Lines that start with # are remarks. The path is relative to the scenario.") { Required = true },
    ]);

    private static readonly MapValue Pattern = new("pattern", "A lure of several colours.",
    [
        new("name", new TextValue(40, AllowLines: false), "Its name.") { Required = true },
        new("back", new ColourValue(ColourNames.All) { OrMeasured = true }, "Colour seen from above.") { Required = true },
        new("side", new ColourValue(ColourNames.All) { OrMeasured = true }, "Colour of the flank.") { Required = true },
        new("belly", new ColourValue(ColourNames.All) { OrMeasured = true }, "Colour seen from below.") { Required = true },
        new("eye", new ColourValue(ColourNames.All) { OrMeasured = true }, "Colour of a drawn or glued eye.") { Default = "none" },
    ]);

    private static readonly MapValue Tackle = new("tackle", "What the angler owns.",
    [
        new("rod_tip_height", new QuantityValue(QuantityKind.Length, Limits.RodTipHeight), "Height of the rod tip above the water while retrieving.") { OneOf = "height" },
        new("stand", new WordValue([.. TacklePresets.Stands.Select(stand => new GrammarWord(stand.Name, stand, string.Create(System.Globalization.CultureInfo.InvariantCulture, $"the rod tip is taken to be {stand.TipHeight:0.0} m above the water, plus or minus {100 * stand.Spread:0} %")))]) { Names = EverydayNames.Stand }, "Where you stand, in place of the height of the rod tip.") { OneOf = "height" },
        new("rod", new ShortOrMapValue("length", Rod) { Phrase = PhraseBook.Rod }, "The rod; with it every lure is cast as far as it flies.") { Default = "not known: every lure flies as far as the cast says" },
        new("reel", new ShortOrMapValue("size", Reel), "The reel.") { Required = true },
        new("line", Line, "The main line.") { Required = true },
        new("leader", Leader, "The leader.") { Default = "none" },
        new("jig_heads", new ListValue(new ShortOrMapValue("weight", JigHead), 1, 24), "Jig heads to choose from: a weight such as 1/4 oz, the word unweighted, or a mapping. Needed if there is a soft body.") { Default = "none" },
        new("bodies", new ListValue(Body, 1, 12), "Bodies to choose from.") { Required = true },
        new("rigging", RiggingGrammar.Rigging, "How the lure is tied on and put on its hook.") { Default = "a loop knot and a clean job" },
        new("colours", new ListValue(new ColourValue(ColourNames.All), 1, 24), "Colours to choose from: names, or hex colours in quotes.") { Required = true, Alias = "colors" },
        new("measured_colours", new ListValue(MeasuredColour, 1, 24), "Further colours to choose from, by a measured reflectance.") { Default = "none", Alias = "measured_colors" },
        new("patterns", new ListValue(Pattern, 1, 12), "Lures of several colours: how deep their parts can be told apart.") { Default = "none" },
        new("include", new TextValue(200, AllowLines: false), "A tackle file beside the scenario, such as my-box.yaml, with what was measured of the lures: their own numbers stand in place of the computed ones. The path is relative to the scenario; `luresim calibrate` writes such a file.") { Default = "none" },
    ]);

    private static readonly MapValue Pause = new("pause", "Stops in the retrieve.",
    [
        new("every", new QuantityValue(QuantityKind.Duration, 0.1, 60.0), "How long the reel turns between two pauses.") { Required = true },
        new("for", new QuantityValue(QuantityKind.Duration, 0.1, 60.0), "How long each pause lasts.") { Required = true },
    ]);

    private static readonly MapValue Twitch = new("twitch", "Rod work at the start of each pause.",
    [
        new("count", new IntegerValue(1, 6), "Number of twitches or lifts.") { Required = true },
        new("height", new QuantityValue(QuantityKind.Length, 0.01, 2.5), "How far the rod tip goes up.") { Required = true },
        new("period", new QuantityValue(QuantityKind.Duration, 0.1, 5.0), "Time for one twitch, up and down.") { Default = "0.5 s" },
    ]);

    private static readonly MapValue Drift = new("drift", "The boat drifts, or the angler walks, from when the lure hits the water on, at constant velocity. The wind does not move the boat by itself: give its drift here.",
    [
        new("speed", new QuantityValue(QuantityKind.Speed, Limits.DriftSpeed), "Speed over ground.") { Required = true },
        new("direction", Direction, "Where to, counted like the current from straight out, not from the cast.") { Required = true },
    ]);

    private static readonly MapValue Cast = new("cast", "The cast: a length, the length with a lure that you know (60 ft with 1/4 oz), or a full cast.",
    [
        new("length", new QuantityValue(QuantityKind.Length, Limits.CastLength) { Words = [new("full cast", null, "as far as the rod throws each lure in a cast that can be repeated all day")], Names = EverydayNames.Cast }, "Horizontal distance from the rod tip to where the lure hits the water. With a rod and without `with`, the distance that you want: a lure that cannot be thrown so far falls short, and the plan says so.") { Required = true },
        new("with", new QuantityValue(QuantityKind.Mass, Limits.HeadMass), "The lure with which the cast is so long in still air: a jig head with the first soft body, or where there is none a lure of this weight. Every other lure is thrown as hard and flies as far as it then does.") { Default = "none" },
    ]);

    private static readonly MapValue Presentation = new("presentation", "A way to fish the lure.",
    [
        new("name", new TextValue(60, false), "Name for people; no two may be the same.") { Required = true },
        new("cast", new ShortOrMapValue("length", Cast) { Phrase = PhraseBook.Cast }, "How far it is cast.") { Required = true },
        new("aim", Direction, "Where the cast goes: anticlockwise from straight out, which all directions are counted from.") { Default = "0 deg, straight out" },
        new("fall", MoveGrammar.Fall, "How the lure sinks once it hits the water.") { Default = "slack line, or as the style has it" },
        new("count_down", MoveGrammar.CountDown, "Time from when it hits the water until the retrieve begins; the fall ends sooner if the lure reaches the bottom.") { Default = "as the style has it; required without one" },
        new("style", new WordValue([.. RetrieveStyle.All.Select(style => new GrammarWord(style.Name, style.Name, style.Meaning))]) { Names = EverydayNames.Style }, "A ready-made retrieve of the trade.") { Default = "none" },
        new("retrieve", MoveGrammar.Retrieve, "How fast line is taken in while reeling.") { Default = "as the style or the moves have it; required without either" },
        new("pause", Pause, "Stops in the retrieve; with a style, its own figures in place of those of the style.") { Default = "none, a steady retrieve" },
        new("twitch", Twitch, "Rod work at the start of each pause; needs pauses. With a style, its own figures in place of those of the style.") { Default = "none" },
        new("moves", MoveGrammar.Moves, "The retrieve as a list of moves, which begin again after the last until the line is in. A list with a swing is done once.") { Default = "by style, retrieve, pause and twitch" },
        new("drift", Drift, "The boat drifts, or the angler walks, from when the lure hits the water on.") { Default = "none" },
        new("time_limit", new QuantityValue(QuantityKind.Duration, Limits.TimeLimit), "The retrieve ends after this time, if it has not ended before.") { Default = "none" },
        new("line_left", new QuantityValue(QuantityKind.Length, Limits.LineLeft), "The retrieve ends with this much line still out; at least the height of the rod tip, less than the cast.") { Default = "3 m, or the height of the rod tip and 0.5 m if that is more" },
    ]);

    /// <summary>Kinds of forage.</summary>
    public static WordValue ForageKindWord { get; } = new(
    [
        new("small bait fish", ForageKind.SmallBaitFish, "up to about 3 in"),
        new("large bait fish", ForageKind.LargeBaitFish, "about 5 in"),
        new("shrimp", ForageKind.Shrimp, "shrimp"),
        new("crab", ForageKind.Crab, "crabs"),
    ])
    { Names = EverydayNames.Forage };

    /// <summary>How forage was seen.</summary>
    public static WordValue ForageSeenWord { get; } = new(
    [
        new("present", ForageSeen.Present, "it is about"),
        new("being attacked", ForageSeen.BeingAttacked, "fish were seen taking it"),
    ])
    { Names = EverydayNames.Seen };

    private static readonly MapValue Forage = new("forage", "Forage that was seen at the spot.",
    [
        new("kind", ForageKindWord, "What it is.") { Required = true },
        new("seen", ForageSeenWord, "How it was seen.") { Default = "present" },
        new("length", new QuantityValue(QuantityKind.Length, Limits.ForageLength) { Example = "3 in" }, "Its length; a lure of the same size or a bit bigger suits it.") { Default = "not judged, usual for the kind" },
        new("colour", new ColourValue(ColourNames.All), "Its colour, which a natural lure is to match.") { Default = "usual for the kind", Alias = "color" },
    ]);

    private static readonly MapValue ComparedRig = new("rig", "One of the two rigs to compare. What is not given is that of the tackle box.",
    [
        new("name", new TextValue(40, false), "Name for people, such as mine.") { Required = true },
        new("jig_head", new ShortOrMapValue("weight", JigHead), "The jig head, as in the tackle box.") { Required = true },
        new("body", Body, "The soft body.") { Default = "the first of the tackle box" },
        new("colour", new ColourValue(ColourNames.All), "The colour.") { Default = "the first of the tackle box", Alias = "color" },
        new("line", Line, "The main line.") { Default = "that of the tackle box" },
        new("leader", Leader, "The leader.") { Default = "that of the tackle box" },
        new("presentation", new TextValue(60, false), "Name of one of the presentations.") { Default = "the first" },
        new("cast", new QuantityValue(QuantityKind.Length, Limits.CastLength), "Cast, in place of the presentation's.") { Default = "that of the presentation" },
        new("count_down", MoveGrammar.CountDown, "Count-down, in place of the presentation's.") { Default = "that of the presentation" },
        new("retrieve", MoveGrammar.Retrieve, "Speed, in place of the presentation's.") { Default = "that of the presentation" },
        new("rigging", RiggingGrammar.Rigging, "Knot and hook, in place of the tackle box's: what it leaves out is a loop knot and a clean job.") { Default = "that of the tackle box" },
    ]);

    /// <summary>Seasons.</summary>
    public static WordValue SeasonWord { get; } = new(
    [
        new("winter", Season.Winter, "December to February in the north"),
        new("early spring", Season.EarlySpring, "March and April"),
        new("late spring", Season.LateSpring, "May"),
        new("summer", Season.Summer, "June and July"),
        new("late summer", Season.LateSummer, "August"),
        new("early autumn", Season.EarlyAutumn, "September and October"),
        new("late autumn", Season.LateAutumn, "November"),
    ])
    { Names = EverydayNames.Season };

    /// <summary>What the hands are free to do, and a word for all of it.</summary>
    public static WordValue HandWord { get; } = new(
    [
        new("sink count", Hand.SinkCount, "how long the lure sinks before the retrieve, or to the bottom"),
        new("reel speed", Hand.ReelSpeed, "how fast the reel turns"),
        new("lift", Hand.Lift, "how far the rod tip goes in a twitch or a lift"),
        new("rest", Hand.Rest, "how long each rest lasts"),
        new("cast angle", Hand.CastAngle, "where the cast goes"),
        new("all", EveryHand, "all of these"),
    ]);

    /// <summary>Stands for every hand.</summary>
    public const string EveryHand = "every hand";

    /// <summary>How far the angler will go with each hand and with the weight.</summary>
    public static MapValue Hands { get; } = new("hands", "How far you will go, each from the first value to the second. The figures of your presentations must lie inside.",
    [
        new("weight", new ListValue(new QuantityValue(QuantityKind.Mass, 0.0, Limits.HeadMass.Most) { Words = [new("unweighted", 0.0, "a hook without lead")], Names = EverydayNames.Head }, 2, 2), "Weight of the jig head; one in your box must lie inside.") { Default = "the whole box" },
        new("sink_count", new ListValue(new QuantityValue(QuantityKind.Duration, Limits.CountDown), 2, 2), "How long a lure that is counted down may sink.") { Default = "up to 60 s, or to the bottom" },
        new("reel_speed", new ListValue(new QuantityValue(QuantityKind.Speed, Limits.LineSpeed), 2, 2), "How fast the reel turns, as line coming in.") { Default = "0.7 to 1.4 times the presentation's" },
        new("lift", new ListValue(new QuantityValue(QuantityKind.Length, Limits.Lift), 2, 2), "How far the rod tip goes in a twitch or a lift.") { Default = "0.6 to 1.4 times the presentation's" },
        new("rest", new ListValue(new QuantityValue(QuantityKind.Duration, Limits.Rest), 2, 2), "How long each rest lasts.") { Default = "half to twice the presentation's" },
        new("cast_angle", new ListValue(new QuantityValue(QuantityKind.Angle, Limits.CastTurn), 2, 2), "Where the cast may go, from the presentation's own direction, to the left positive.") { Default = "20 deg to either side" },
    ]);

    /// <summary>The whole file.</summary>
    public static MapValue Root { get; } = new("scenario", "A question to LureSim: one spot, the tackle at hand and the presentations to compare.",
    [
        new("title", new TextValue(120, false), "Short name, the heading of the sheet.") { Required = true },
        new("notes", new TextValue(4000, true), "Free remarks for the sheet.") { Default = "none" },
        new("spot", Spot, "The water, the bottom, the light and the fish.") { Required = true },
        new("tackle", Tackle, "What the angler owns.") { Required = true },
        new("presentations", new ListValue(Presentation, 1, 24), "The retrieves to compare.") { Required = true },
        new("uncertainty", UncertaintyGrammar.Uncertainty, "How well the inputs are known.") { Default = "what a person at the water knows of each input, assumed" },
        new("tide", TideGrammar.Tide, "The tide: current and depth by the hour, or harmonic constituents from which they are worked out; for the table of weight by hour and for trips.") { Default = "none" },
        new("seen", ObservationGrammar.All, "What was seen, felt and timed here: the plan learns from it how the water and the tackle really are.") { Default = "nothing" },
        new("season", SeasonWord, "Season, which tells what fish are likely to eat.") { Default = "from the date of the light, otherwise not known" },
        new("forage", new ListValue(Forage, 1, 8), "Forage that was seen.") { Default = "none seen" },
        new("fixed", new ListValue(HandWord, 1, 6), "What you will not change in a presentation; the rest may be varied within what a hand does.") { Default = "nothing" },
        new("hands", Hands, "How far you will go with what is not fixed.") { Default = "what hands do, within the bounds of docs/decision.md" },
        new("compare", new ListValue(ComparedRig, 2, 2), "Two rigs to compare side by side: yours and your partner's.") { Default = "none" },
    ]);
}

/// <summary>Fish that a scenario may aim at: keys of the table of fish eyes.</summary>
public static class TargetFishNames
{
    /// <summary>All names, in alphabetical order.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "Atlantic tarpon",
        "bluefish",
        "common snook",
        "red drum",
        "spotted seatrout",
        "striped bass",
        "summer flounder",
        "weakfish",
    ];
}

/// <summary>Names of the colour presets: plain words, no maker's names.</summary>
public static class ColourNames
{
    /// <summary>All names, light ones first; each is the name of a ready-made colour of the light model.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "white",
        "chartreuse",
        "yellow",
        "fluorescent orange",
        "orange",
        "fluorescent pink",
        "pink",
        "red",
        "gold",
        "copper",
        "tan",
        "green",
        "blue",
        "natural silver side",
        "natural green back",
        "shrimp brown",
        "dark green-brown",
        "dark purple",
        "smoke grey",
        "clear",
        "black",
    ];
}
