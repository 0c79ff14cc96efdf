namespace LureSim.Scenarios;

/// <summary>
/// Names that people use for the words of scenarios: read as the word they stand for, and reported. One list for the reader, the schema,
/// the reference and the interview. What a name stands for is common practice on the coasts of North America.
/// </summary>
internal sealed class EverydayNames
{
    private readonly Dictionary<string, string> words = new(StringComparer.Ordinal);

    private readonly Dictionary<string, string> instead = new(StringComparer.Ordinal);

    private EverydayNames(params (string Word, string Names)[] rows)
    {
        foreach ((string word, string names) in rows)
        {
            foreach (string name in names.Split(", "))
                words.Add(name, word);
        }
    }

    /// <summary>No names.</summary>
    public static EverydayNames None { get; } = new();

    /// <summary>Fish.</summary>
    public static EverydayNames Fish { get; } = new(
        ("red drum", "redfish, red, reds, red fish, channel bass, puppy drum"),
        ("spotted seatrout", "speckled trout, speck, specks, trout, sea trout, seatrout, spotted sea trout"),
        ("striped bass", "striper, stripers, rockfish"),
        ("summer flounder", "fluke, flounder, flatfish"),
        ("common snook", "snook"),
        ("Atlantic tarpon", "tarpon"),
        ("bluefish", "blues, blue fish"),
        ("weakfish", "gray trout, grey trout, weak fish"));

    /// <summary>Bottoms.</summary>
    public static EverydayNames Bottom { get; } = new EverydayNames(
        ("shell", "oyster, oysters, oyster shell, oyster bar, shells"),
        ("hard", "rock, rocks, rocky, gravel, concrete, hard bottom"),
        ("sand", "sandy"),
        ("mud", "muddy, soft mud, soft"))
    {
        instead = { ["grass"] = "write sand or mud here, and how high the grass stands under grass_height", ["seagrass"] = "write sand or mud here, and how high the grass stands under grass_height" },
    };

    /// <summary>Structures.</summary>
    public static EverydayNames Structure { get; } = new(
        ("posts", "post, piling, pilings, pier, piers, poles"),
        ("overhang", "dock, bridge, branches, mangroves, overhanging branches, roof"),
        ("oyster clump", "clump, oyster clumps, oysters, oyster bar, shell mound"));

    /// <summary>Shapes of a bottom.</summary>
    public static EverydayNames Shape { get; } = new(
        ("bank falling away", "bank, slope, sloping bank, shoreline, marsh edge"),
        ("ledge", "drop-off, drop off, dropoff, drop, step, shelf"),
        ("channel edge", "edge, channel, edge of a channel"),
        ("hole", "pothole, trough, gut, depression"),
        ("hump", "bar, sandbar, sand bar, ridge, hill"));

    /// <summary>Kinds of water.</summary>
    public static EverydayNames Water { get; } = new(
        ("clear ocean", "clear, blue, clear blue, gin clear"),
        ("coastal green", "green, greenish"),
        ("tannin stained", "tea, tea colored, tea coloured, tea stained, tannin, tannic, stained, brown"),
        ("silty", "muddy, mud, silt, dirty, chocolate"));

    /// <summary>Directions seen from the angler.</summary>
    public static EverydayNames Direction { get; } = new(
        ("away", "away from me, away from you, straight away, straight out"),
        ("left", "to the left, to my left, to your left, right to left"),
        ("towards", "toward, toward me, towards me, toward you, towards you, at me, at you"),
        ("right", "to the right, to my right, to your right, left to right"));

    /// <summary>Times of the day.</summary>
    public static EverydayNames DayTime { get; } = new(
        ("dawn", "sunrise, first light, daybreak"),
        ("midday", "noon"),
        ("dusk", "sunset, sundown, evening, last light"),
        ("night", "midnight"));

    /// <summary>Coasts.</summary>
    public static EverydayNames Coast { get; } = new(
        ("Florida", "florida, FL"),
        ("Texas", "texas, TX"),
        ("Louisiana", "louisiana, LA"),
        ("Mississippi", "mississippi, MS"),
        ("Alabama", "alabama, AL"),
        ("Georgia", "georgia, GA"),
        ("South Carolina", "south carolina, SC"),
        ("North Carolina", "north carolina, NC"),
        ("Virginia", "virginia, VA"),
        ("Maryland", "maryland, MD"),
        ("New Jersey", "new jersey, NJ"),
        ("New York", "new york, NY"),
        ("Massachusetts", "massachusetts, MA"),
        ("Maine", "maine, ME"),
        ("California", "california, CA"),
        ("Gulf coast", "gulf, Gulf, gulf coast"),
        ("southeast coast", "southeast"),
        ("mid-Atlantic coast", "mid-atlantic, mid atlantic, mid-Atlantic"),
        ("northeast coast", "northeast, new england, New England"));

    /// <summary>Ways of the tide.</summary>
    public static EverydayNames Tide { get; } = new(
        ("outgoing", "falling, ebb, ebbing, going out, running out, out"),
        ("incoming", "rising, flood, flooding, coming in, running in, in"),
        ("slack", "slack tide, slack water, still"));

    /// <summary>Ways of the tide that have a current.</summary>
    public static EverydayNames Runs { get; } = new(
        ("outgoing", "falling, ebb, ebbing, going out, running out, out"),
        ("incoming", "rising, flood, flooding, coming in, running in, in"));

    /// <summary>Constituents of the tide under other spellings.</summary>
    public static EverydayNames Constituent { get; } = new(
        ("LAM2", "LAMBDA2, LDA2"),
        ("RHO", "RHO1"),
        ("MSF", "MSf"),
        ("MF", "Mf"),
        ("MM", "Mm"),
        ("SSA", "Ssa"),
        ("SA", "Sa"));

    /// <summary>Still water.</summary>
    public static EverydayNames Slack { get; } = new(("slack", "slack tide, slack water, still"));

    /// <summary>Powers of rods.</summary>
    public static EverydayNames Power { get; } = new(
        ("ultralight", "ultra light, ultra-light, UL"),
        ("light", "L"),
        ("medium light", "medium-light, ML"),
        ("medium", "M"),
        ("medium heavy", "medium-heavy, MH"),
        ("heavy", "H"));

    /// <summary>Places to stand.</summary>
    public static EverydayNames Stand { get; } = new(
        ("wading", "wade, in the water, waist deep"),
        ("kayak", "canoe, paddle board, paddleboard"),
        ("bank", "shore, beach, shoreline, ashore"),
        ("boat", "skiff, from a boat"),
        ("dock", "from a dock, seawall"),
        ("pier", "bridge, from a bridge, jetty"));

    /// <summary>Casts without a length.</summary>
    public static EverydayNames Cast { get; } = new(("full cast", "full, long cast, as far as it goes"));

    /// <summary>Lines.</summary>
    public static EverydayNames Line { get; } = new(
        ("braid", "braided, braided line"),
        ("monofilament", "mono, nylon"),
        ("fluorocarbon", "fluoro, flouro, flourocarbon"));

    /// <summary>Weights of jig heads.</summary>
    public static EverydayNames Head { get; } = new(("unweighted", "weightless, no weight, none, bare hook"));

    /// <summary>Bodies.</summary>
    public static EverydayNames Profile { get; } = new(
        ("paddle tail", "paddletail, paddle-tail, swimbait"),
        ("soft jerkbait", "jerk shad, jerkshad, soft jerk bait"),
        ("shrimp imitation", "shrimp, soft shrimp"),
        ("crab imitation", "crab, soft crab"),
        ("curl-tail grub", "grub, curly tail, curl tail, curl tail grub, curlytail"),
        ("hard twitchbait", "hard jerkbait, twitchbait, hard jerk bait, suspending jerkbait"),
        ("topwater walker", "topwater, walking bait, top water"),
        ("spoon", "metal spoon, spoons"));

    /// <summary>Forage.</summary>
    public static EverydayNames Forage { get; } = new(
        ("small bait fish", "small baitfish, baitfish, bait fish, minnow, minnows, glass minnows, finger mullet"),
        ("large bait fish", "large baitfish, mullet, mullet-size, big baitfish, menhaden"),
        ("shrimp", "shrimps"),
        ("crab", "crabs"));

    /// <summary>How forage was seen.</summary>
    public static EverydayNames Seen { get; } = new(
        ("being attacked", "busting, attacked, eaten, being eaten"),
        ("present", "seen, around, there"));

    /// <summary>Seasons.</summary>
    public static EverydayNames Season { get; } = new(("early autumn", "early fall"), ("late autumn", "late fall"));

    /// <summary>Retrieves. A hop is lifted and dropped, a drag is drawn along the bottom by the rod.</summary>
    public static EverydayNames Style { get; } = new(
        ("lift and drop", "hop, hopping, jigging, lift-and-drop"),
        ("slow lift", "drag, dragging"),
        ("twitch, twitch, pause", "twitch-twitch-pause, twitch twitch pause, twitching, twitch"),
        ("stop and go", "stop-and-go, reel and pause"),
        ("steady", "straight, steady retrieve"),
        ("burn", "burning, fast"));

    /// <summary>How the lure falls.</summary>
    public static EverydayNames Fall { get; } = new(
        ("slack line", "bail open, open bail, free spool, slack"),
        ("tight line", "bail closed, closed bail, tight"));

    /// <summary>A count-down in words.</summary>
    public static EverydayNames CountDown { get; } = new(("to bottom", "to the bottom, bottom, on the bottom, on bottom"));

    /// <summary>Colours.</summary>
    public static EverydayNames Colour { get; } = new(
        ("smoke grey", "smoke gray, gray, grey, smoke"),
        ("natural green back", "natural green, natural"),
        ("natural silver side", "silver, natural silver"),
        ("dark purple", "purple"),
        ("chartreuse", "lime"),
        ("shrimp brown", "brown, root beer, rootbeer"),
        ("dark green-brown", "dark green brown, olive"),
        ("fluorescent pink", "hot pink"),
        ("fluorescent orange", "hot orange"));

    /// <summary>All names, in the order of the list.</summary>
    public IEnumerable<string> All => words.Keys;

    /// <summary>The words that have names.</summary>
    public IEnumerable<string> Words => words.Values.Distinct();

    /// <summary>The word that a name stands for; null for none.</summary>
    public string? Word(string name) => words.GetValueOrDefault(name);

    /// <summary>What to do instead of writing this name here; null for none.</summary>
    public string? Instead(string name) => instead.GetValueOrDefault(name);

    /// <summary>The names of a word.</summary>
    public IEnumerable<string> Of(string word) => words.Where(pair => pair.Value == word).Select(pair => pair.Key);
}
