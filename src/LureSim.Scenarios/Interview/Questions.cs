using LureSim.Model;

namespace LureSim.Scenarios.Interview;

/// <summary>
/// The questions, in the order in which they are asked: the one list behind the terminal, a file of answers and a page. What the words stand
/// for is common practice or assumed, as said there.
/// </summary>
internal static class Questions
{
    private const double Foot = 0.3048;
    private const double Inch = 0.0254;
    private const double Pound = 4.4482216152605;
    private const double Ounce = 0.45359237 / 16.0;
    private const double Knot = 1852.0 / 3600.0;

    private static readonly string[] Months = ["january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november", "december"];

    /// <summary>All questions.</summary>
    public static IReadOnlyList<Question> All { get; } =
    [
        new(1, "What do you call this spot?", "It is the heading of the sheet and the name of the file.",
        [
            new("name", "", new TextForm(80), "My spot") { Write = (draft, given) => draft.Set("title", ScenarioDraft.Quoted(given.First.Shown)) },
        ])
        { IsShort = true },

        new(2, "Where do you stand?", "It sets how high your rod tip is, and so how the line runs down to the water.",
        [
            // Heights of the rod tip with the rod held as when reeling: assumed.
            new("stand", "", Words(
                new("boat", "or kayak", "6 ft") { Names = ["kayak", "skiff", "on a boat", "canoe"] },
                new("dock", "or pier", "9 ft") { Names = ["pier", "on a dock"] },
                new("bridge", "", "") { Names = ["on a bridge"] },
                new("bank", "or beach", "5 ft") { Names = ["shore", "beach", "jetty", "surf"] },
                new("wading", "", "4 ft") { Names = ["wade", "in the water", "water"] }), "boat")
            {
                Write = (draft, given) => draft.Set("tackle.rod_tip_height", given.First.Yaml.Length > 0 ? given.First.Yaml : draft.Sheet["rod_height"].First.Yaml, given.First.Yaml.Length > 0 ? given : draft.Sheet["rod_height"], "above the water"),
            },
            new("rod_height", "How high is your rod tip above the water?", new MeasureForm(QuantityKind.Length, 3.0 * Foot, 19.0 * Foot, "ft", "15 ft"), "15 ft")
            {
                Applies = sheet => sheet.Word("stand") == "bridge",
                Write = (_, _) => { },
            },
        ]),

        new(3, "How deep is it where your lure swims?", "Depth decides how heavy a head has to be, and how long you count.",
        [
            new("depth", "", new MeasureForm(QuantityKind.Length, 1.0 * Foot, 100.0 * Foot, "ft", "6 ft")
            {
                Choices = [new("knee", "1.5 ft", "1.5 ft", 1.5 * Foot) { Names = ["knee deep", "knee-deep", "knees"] }, new("waist", "3 ft", "3 ft", 3.0 * Foot) { Names = ["waist deep", "waist-deep"] }, new("over my head", "6 ft", "6 ft", 6.0 * Foot) { Names = ["overhead"] }],
            }, "6 ft")
            {
                Write = (draft, given) => draft.Set("spot.depth", given.First.Yaml, given),
                WhenUnsure = draft => draft.Set("uncertainty.depth", "30 %"),
            },
        ])
        { IsShort = true },

        new(4, "What is the bottom?", "A lure digs into mud and grass and hangs up on shell and rock.",
        [
            new("bottom", "", new ChoiceForm(
            [
                new("sand", "", "sand") { Names = Names(EverydayNames.Bottom, "sand") },
                new("mud", "", "mud") { Names = Names(EverydayNames.Bottom, "mud") },
                new("oyster", "or other shell", "shell") { Names = ["shell", .. Names(EverydayNames.Bottom, "shell")] },
                new("rock", "or concrete", "hard") { Names = ["hard", .. Names(EverydayNames.Bottom, "hard")] },
            ]) { Most = 4 }, "sand")
            { Write = Writing.Bottom },
            new("grass", "Any grass on it, and how high does it stand?", new MeasureForm(QuantityKind.Length, 0.0, 6.0 * Foot, "in", "12 in")
            {
                Choices = [new("none", "", "0 in", 0.0) { Names = ["no", "no grass", "bare"] }, new("ankle", "6 in", "6 in", 6.0 * Inch) { Names = ["ankle high"] }, new("knee", "18 in", "18 in", 18.0 * Inch) { Names = ["knee high"] }],
            }, "none")
            { Write = Writing.Grass },
        ]),

        new(5, "How fast is the water moving?", "The current decides more than anything else how heavy you have to go.",
        [
            // Speeds by what a float does: 10 ft over the time is the speed.
            new("current", "", new MeasureForm(QuantityKind.Speed, 0.0, 3.0, "kn", "1 knot, or 10 ft in 6 s for something that floats")
            {
                Choices =
                [
                    new("still", "", "0 kn", 0.0) { Names = ["none", "no", "slack", "not at all", "not moving", "no current"] },
                    new("hardly", "a float takes 30 s for 10 ft", "0.2 kn", 0.2 * Knot) { Names = ["barely", "hardly moving", "very slow", "a little", "little"] },
                    new("slow", "12 s", "0.5 kn", 0.5 * Knot) { Names = ["slowly", "gentle", "easy"] },
                    new("steady", "6 s", "1 kn", Knot) { Names = ["moderate", "medium", "good", "moving well"] },
                    new("ripping", "3 s", "2 kn", 2.0 * Knot) { Names = ["fast", "strong", "hard", "swift"] },
                ],
            }, "slow")
            {
                Also = ["direction"],
                Hint = "Throw in anything that floats low, an orange or a half-full bottle, and time it over 10 ft.",
                Write = (draft, given) =>
                {
                    if (given.First.Number > 0.0)
                        draft.Set("spot.current.speed", given.First.Yaml, given, "at the surface");
                },
                WhenUnsure = draft => draft.Set("uncertainty.current", "{between: [0.2 kn, 1 kn]}"),
            },
        ])
        { IsShort = true },

        new(6, "Facing where you cast, which way does the water go?", "A lure is swept with it, and comes back otherwise against it.",
        [
            new("direction", "", new ChoiceForm(
            [
                new("left", "", "left") { Names = ["9 o'clock", .. Names(EverydayNames.Direction, "left")] },
                new("right", "", "right") { Names = ["3 o'clock", .. Names(EverydayNames.Direction, "right")] },
                new("away", "", "away") { Names = ["out", "12 o'clock", .. Names(EverydayNames.Direction, "away")] },
                new("toward", "", "180 deg") { Names = ["in", "6 o'clock", "towards", .. Names(EverydayNames.Direction, "towards")] },
                new("away and left", "", "45 deg") { Names = ["left and away", "away to the left", "away left"] },
                new("away and right", "", "315 deg") { Names = ["right and away", "away to the right", "away right"] },
                new("toward and left", "", "135 deg") { Names = ["left and toward", "towards and left", "toward left"] },
                new("toward and right", "", "225 deg") { Names = ["right and toward", "towards and right", "toward right"] },
            ]), "left")
            {
                Hint = "Not by the compass: by your own left and right.",
                Applies = sheet => sheet.Number("current") > 0.0,
                Write = (draft, given) =>
                {
                    if (draft.Sheet.Number("current") > 0.0)
                        draft.Set("spot.current.direction", given.First.Yaml, given, "where it flows to");
                },
            },
        ])
        { IsShort = true },

        new(7, "How deep can you see a white plate, or your lure?", "Clear or dirty water decides the color.",
        [
            new("visibility", "", new MeasureForm(QuantityKind.Length, 0.2 * Foot, 100.0 * Foot, "ft", "4 ft") { Choices = [new("to the bottom", "") { Names = ["bottom", "on the bottom", "the bottom"] }] }, "4 ft")
            {
                Also = ["water"],
                Write = Writing.Clarity,
                WhenUnsure = draft => draft.Set("uncertainty.clarity", "50 %"),
            },
            new("water", "And what color is the water?", new ChoiceForm(
            [
                new("green", "", "coastal green") { Names = ["coastal green", .. Names(EverydayNames.Water, "coastal green")] },
                new("blue", "clear", "clear ocean") { Names = ["clear ocean", .. Names(EverydayNames.Water, "clear ocean")] },
                new("tea", "brown but clear", "tannin stained") { Names = ["tannin stained", "coffee", .. Names(EverydayNames.Water, "tannin stained")] },
                new("muddy", "", "silty") { Names = ["silty", .. Names(EverydayNames.Water, "silty").Where(name => name != "muddy")] },
            ]), "green")
            { Write = (_, _) => { } },
        ])
        { IsShort = true },

        new(8, "When will you fish?", "Month and light decide what fish eat and what they can see.",
        [
            new("month", "Which month?", Words([.. Months.Select((month, i) => new Choice(month, "", "", i + 1) { Names = [month[..3], FormattableString.Invariant($"{i + 1}")] })]), "january")
            {
                DefaultOf = sheet => Months[sheet.Today.Month - 1],
                Write = (draft, given) => draft.Set("season", Data.ReferenceWords.Of(Seasons.Of((int)given.First.Number, south: false)), given),
            },
            new("time", "What time of day?", Words(new("dawn", "") { Names = ["sunrise", "first light", "daybreak"] }, new("morning", ""), new("midday", "") { Names = ["noon", "lunch"] }, new("afternoon", ""), new("dusk", "") { Names = ["sunset", "evening", "last light"] }, new("night", "") { Names = ["dark", "midnight"] }), "morning") { Write = Writing.Light },
            new("sky", "How much cloud?", Words(new("none", "", "0 %") { Names = ["clear", "sunny", "no", "blue"] }, new("half", "", "50 %") { Names = ["some", "partly cloudy", "scattered"] }, new("all", "", "100 %") { Names = ["overcast", "cloudy", "gray", "grey"] }), "half") { Write = (_, _) => { } },
            new("coast", "On which coast? It sets how high the sun stands.", Words(
                new("gulf", "Gulf, Florida", "28 deg", 28.0) { Names = ["florida", "texas", "louisiana", "alabama", "mississippi"] },
                new("southeast", "Georgia to North Carolina", "33 deg", 33.0) { Names = ["georgia", "carolina", "south carolina", "north carolina"] },
                new("mid-atlantic", "Virginia to New Jersey", "38 deg", 38.0) { Names = ["mid atlantic", "virginia", "maryland", "delaware", "new jersey", "chesapeake"] },
                new("northeast", "New York to Maine", "42 deg", 42.0) { Names = ["new york", "new england", "massachusetts", "maine", "rhode island", "connecticut"] }), "gulf")
            { Write = (_, _) => { } },
        ]),

        new(9, "Is the water warm or cold, salt or fresh?", "Cold fish want small and slow, and salt floats a lure a little.",
        [
            new("temperature", "How warm is the water?", new MeasureForm(QuantityKind.Temperature, 1.0, 38.0, "degF", "72 F")
            {
                Choices = [new("bath-warm", "85 F", "85 degF", 29.4) { Names = ["bath warm", "hot", "warm"] }, new("mild", "72 F", "72 degF", 22.2) { Names = ["nice", "ok"] }, new("cool", "62 F", "62 degF", 16.7) { Names = ["chilly"] }, new("cold", "50 F", "50 degF", 10.0) { Names = ["freezing"] }],
            }, "mild")
            {
                // By month on a subtropical coast: common practice.
                DefaultOf = sheet => (int)sheet.Number("month") switch { 12 or 1 or 2 => "cold", 3 or 4 or 11 => "cool", 5 or 10 => "mild", _ => "bath-warm" },
                Write = (draft, given) => draft.Set("spot.temperature", given.First.Yaml, given),
            },
            new("salinity", "Salt or fresh?", new MeasureForm(QuantityKind.Salinity, 0.0, 40.0, "ppt", "25 ppt")
            {
                Choices = [new("ocean", "35 ppt", "35 ppt", 35.0) { Names = ["salt", "salty", "sea"] }, new("bay", "25 ppt", "25 ppt", 25.0) { Names = ["sound", "estuary", "brackish"] }, new("creek mouth", "15 ppt", "15 ppt", 15.0) { Names = ["creek", "river mouth"] }, new("nearly fresh", "3 ppt", "3 ppt", 3.0), new("fresh", "0 ppt", "0 ppt", 0.0) { Names = ["freshwater", "fresh water", "river", "lake"] }],
            }, "bay")
            { Write = (draft, given) => draft.Set("spot.salinity", given.First.Yaml, given) },
        ]),

        new(10, "What are you after?", "Each fish has its own eyes, and its own table.",
        [
            new("fish", "", Words([.. ScenarioGrammar.TargetWord.Words.OrderBy(word => word.Text != "red drum").Select(word =>
            {
                string[] names = Names(EverydayNames.Fish, word.Text);
                return new Choice(Shown(word.Text), "", word.Text) { Names = [word.Text.ToLowerInvariant(), .. names] };
            })]), "redfish")
            { Write = (draft, given) => draft.Set("spot.target", given.First.Yaml, given) },
        ])
        { IsShort = true },

        new(11, "Where do they hit?", "That is the strike zone: where the lure has to be.",
        [
            new("zone", "", Words(
                new("on the bottom", "") { Names = ["bottom", "dragging bottom"] },
                new("off the bottom", "the first 2 ft") { Names = ["first 2 ft", "just off the bottom", "first two feet", "near the bottom", "first 2 feet"] },
                new("middle", "") { Names = ["mid water", "midwater", "halfway", "mid", "suspended"] },
                new("near the top", "") { Names = ["top", "surface", "on top"] },
                new("over the grass", "") { Names = ["grass", "above the grass"] }), "off the bottom")
            { Write = Writing.Zone },
        ])
        { IsShort = true },

        new(12, "What are they eating?", "What fish are busting beats everything else when it comes to shape and size.",
        [
            new("eating", "", new ChoiceForm(
            [
                new("no idea", "") { Names = ["nothing", "none", "nothing seen"] },
                new("shrimp", "", "shrimp") { Names = Names(EverydayNames.Forage, "shrimp") },
                new("crab", "", "crab") { Names = Names(EverydayNames.Forage, "crab") },
                new("small baitfish", "up to 3 in", "small bait fish") { Names = ["small bait fish", .. Names(EverydayNames.Forage, "small bait fish").Where(name => name != "small baitfish")] },
                new("mullet", "about 5 in", "large bait fish") { Names = ["large bait fish", .. Names(EverydayNames.Forage, "large bait fish").Where(name => name != "mullet")] },
            ]) { Most = 4 }, "no idea")
            { Write = Writing.Forage },
            new("seen", "Are fish busting it, or did you just see it?", Words(new("seen", "just around", "present") { Names = ["present", "saw", "i saw", "just seen", .. Names(EverydayNames.Seen, "present").Where(name => name != "seen")] }, new("busting", "", "being attacked") { Names = ["being attacked", .. Names(EverydayNames.Seen, "being attacked").Where(name => name != "busting")] }), "seen")
            {
                Applies = sheet => sheet.Word("eating") != "no idea",
                Write = (_, _) => { },
            },
            new("bait_size", "How long is it?", new MeasureForm(QuantityKind.Length, 0.5 * Inch, 12.0 * Inch, "in", "3 in") { Choices = [new("usual", "")] }, "usual")
            {
                Applies = sheet => sheet.Word("eating") != "no idea",
                Write = (_, _) => { },
            },
        ]),

        new(13, "What line do you fish?", "Thick line drags in the current and holds the lure up.",
        [
            new("line", "", Words(LineKind("braid"), LineKind("monofilament"), LineKind("fluorocarbon")), "braid") { Write = (draft, given) => draft.Set("tackle.line", $"{{kind: {given.First.Yaml}, strength: {draft.Sheet["line_strength"].First.Yaml}}}", given) },
            new("line_strength", "How strong?", new MeasureForm(QuantityKind.LineStrength, 6.0 * Pound, 80.0 * Pound, "lb", "10 lb"), "10 lb") { Write = (_, _) => { } },
            new("leader", "How strong a leader?", new MeasureForm(QuantityKind.LineStrength, 6.0 * Pound, 100.0 * Pound, "lb", "20 lb") { Choices = [new("none", "", "", 0.0) { Names = ["no leader", "no"] }] }, "20 lb") { Write = Writing.Leader },
            new("leader_kind", "Leader of what?", Words(LineKind("fluorocarbon"), LineKind("monofilament")), "fluorocarbon") { Applies = HasLeader, Write = (_, _) => { } },
            new("leader_length", "How long a leader?", new MeasureForm(QuantityKind.Length, 6.0 * Inch, 5.0 * Foot, "in", "24 in"), "24 in") { Applies = HasLeader, Write = (_, _) => { } },
        ]),

        new(14, "Which reel?", "It turns handle turns into speed.",
        [
            new("reel", "What size is it?", Words(
                // Diameters of the wound line by the size of a spinning reel, with 6.2:1: assumed.
                new("1000", "", "38 mm", 0.038), new("2500", "", "45 mm", 0.045) { Names = ["2000", "2500s", "spinning"] }, new("3000", "", "47 mm", 0.047), new("4000", "", "52 mm", 0.052)), "2500")
            { Write = Writing.Reel },
            new("rod", "What power is your rod?", Words(
                new("any", "it does not matter", "") { Names = ["no matter", "none"] },
                new("light", "", "light") { Names = Lower(EverydayNames.Power, "light") },
                new("medium light", "", "medium light") { Names = Lower(EverydayNames.Power, "medium light") },
                new("medium", "", "medium") { Names = Lower(EverydayNames.Power, "medium") },
                new("medium heavy", "", "medium heavy") { Names = Lower(EverydayNames.Power, "medium heavy") },
                new("heavy", "", "heavy") { Names = Lower(EverydayNames.Power, "heavy") }), "any")
            {
                Write = (draft, given) =>
                {
                    if (given.First.Yaml.Length > 0)
                        draft.Set("tackle.rod", $"{{length: {draft.Sheet["rod_length"].First.Yaml}, power: {given.First.Yaml}}}", given, "it says how far each head flies");
                },
            },
            new("rod_length", "How long is it?", new MeasureForm(QuantityKind.Length, 5.0 * Foot, 13.0 * Foot, "ft", "7 ft"), "7 ft")
            {
                Applies = sheet => sheet["rod"].First.Yaml.Length > 0,
                Write = (_, _) => { },
            },
            new("inches_per_turn", "Inches of line a turn, if it is printed on the reel?", new MeasureForm(QuantityKind.Length, 12.0 * Inch, 60.0 * Inch, "in", "34 in") { Choices = [new("usual", "") { Names = ["not printed", "no", "none"] }] }, "usual") { Write = (_, _) => { } },
            new("turns", "How many turns of the handle in 10 seconds, reeling as you do?", new CountForm(1.0, 25.0) { Choices = [new("did not count", "") { Names = ["didn't count", "no", "usual", "none"] }] }, "did not count") { Write = (_, _) => { } },
        ]),

        new(15, "Which jig heads are in your box?", "One of them is the answer.",
        [
            new("heads", "", new MeasureForm(QuantityKind.Mass, Ounce / 32.0, 4.0 * Ounce, "oz", "1/8, 1/4, 3/8") { Most = 12, Choices = [new("unweighted", "a bare hook", "unweighted", 0.0) { Names = Names(EverydayNames.Head, "unweighted") }] }, "1/8, 1/4, 3/8") { Write = Writing.Heads },
        ])
        { IsShort = true },

        new(16, "Which lures and colors?", "Shape by what is eaten, color by what is seen.",
        [
            new("baits", "Which lures?", new BaitForm { Most = 8 }, "4 in paddle tail")
            {
                Write = (draft, given) => draft.Set("tackle.bodies", $"[{string.Join(", ", given.Pieces.Select(piece => piece.Yaml))}]", given with { Written = "" }),
            },
            new("colors", "Which colors?", new ChoiceForm([.. ColourNames.All.Select(name => new Choice(name.Replace("grey", "gray", StringComparison.Ordinal), "", name) { Names = [name, .. Names(EverydayNames.Colour, name)] })]) { Most = 12 }, "white, chartreuse, natural green back, gold")
            {
                Write = (draft, given) => draft.Set("tackle.colours", $"[{string.Join(", ", given.Pieces.Select(piece => piece.Yaml))}]", given with { Written = "" }),
            },
        ]),

        new(17, "How far do you cast, and how do you work it?", "The same lure runs high or low by the hand that works it.",
        [
            new("cast", "How far do you cast?", new MeasureForm(QuantityKind.Length, 25.0 * Foot, 200.0 * Foot, "ft", "60 ft")
            {
                Choices = [new("short", "40 ft", "40 ft", 40.0 * Foot), new("ordinary", "60 ft", "60 ft", 60.0 * Foot) { Names = ["average", "normal", "medium"] }, new("long", "80 ft", "80 ft", 80.0 * Foot) { Names = ["far"] }],
            }, "60 ft")
            { Write = (_, _) => { } },
            new("cast_with", "With which weight do you cast that far?", new MeasureForm(QuantityKind.Mass, Ounce / 32.0, 4.0 * Ounce, "oz", "1/4 oz") { Choices = [new("any", "whatever is on", "") { Names = ["all"] }] }, "any")
            {
                Hint = "The other heads then get their own casts.",
                Write = (_, _) => { },
            },
            new("work", "How do you work it?", new ChoiceForm(
            [
                new("steady", "") { Names = Names(EverydayNames.Style, "steady") },
                new("slow along the bottom", "") { Names = ["slow", "crawl", .. Names(EverydayNames.Style, "slow lift")] },
                new("lift and drop", "") { Names = Names(EverydayNames.Style, "lift and drop") },
                new("twitch-twitch-pause", "") { Names = ["twitches", .. Names(EverydayNames.Style, "twitch, twitch, pause").Where(name => name != "twitch-twitch-pause")] },
                new("stop and go", "") { Names = Names(EverydayNames.Style, "stop and go") },
                new("swing", "let the current do it") { Names = ["drift", "swinging"] },
            ]) { Most = 3 }, "steady, lift and drop")
            { Write = Writing.Presentations },
        ]),
    ];

    /// <summary>All parts, in order.</summary>
    public static IReadOnlyList<Part> Parts { get; } = [.. All.SelectMany(question => question.Parts)];

    /// <summary>The question of a part.</summary>
    public static Question Of(Part part) => All.First(question => question.Parts.Contains(part));

    /// <summary>The part of an id.</summary>
    public static Part Part(string id) => Parts.First(part => part.Id == id);

    private static ChoiceForm Words(params Choice[] choices) => new(choices);

    // Answers are read in small letters.
    private static string[] Lower(EverydayNames names, string word) => [.. names.Of(word).Select(name => name.ToLowerInvariant())];

    private static string[] Names(EverydayNames names, string word) => [.. names.Of(word)];

    private static bool HasLeader(AnswerSheet sheet) => sheet.Word("leader") != "none";

    private static Choice LineKind(string kind)
    {
        string shown = kind.Replace("filament", "", StringComparison.Ordinal).Replace("carbon", "", StringComparison.Ordinal);
        return new(shown, "", kind) { Names = [kind, .. EverydayNames.Line.Of(kind).Where(name => name != shown)] };
    }

    // The name on the dock, where one is shorter.
    private static string Shown(string fish) => fish switch
    {
        "red drum" => "redfish",
        "spotted seatrout" => "speckled trout",
        "striped bass" => "striper",
        "common snook" => "snook",
        "Atlantic tarpon" => "tarpon",
        "summer flounder" => "flounder",
        _ => fish.ToLowerInvariant(),
    };
}
