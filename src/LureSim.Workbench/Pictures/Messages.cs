using System.Text.Json;
using System.Text.Json.Serialization;

namespace LureSim.Workbench.Pictures;

/// <summary>A wish of the page.</summary>
internal sealed record PageMessage
{
    /// <summary>What is asked for: "hello", "look", "fine", "tries", "save", "choice", "seen", "lessons", "lesson" or "stop".</summary>
    public string Kind { get; init; } = "";

    /// <summary>The key that the page was served with; in the first message.</summary>
    public string? Nonce { get; init; }

    /// <summary>Version of the program that served the page; in the first message.</summary>
    public string? Version { get; init; }

    /// <summary>Number of the wish; replies carry it.</summary>
    public long Seq { get; init; }

    /// <summary>Settings of the knobs.</summary>
    public Dictionary<string, string>? State { get; init; }

    /// <summary>Settings of the picture that is kept for comparison; null for none.</summary>
    public Dictionary<string, string>? Pin { get; init; }

    /// <summary>Name of a lesson, null for the end of the class; what was noted with "seen".</summary>
    public string? Id { get; init; }

    /// <summary>True to write over a file that is there.</summary>
    public bool Overwrite { get; init; }
}

/// <summary>An answer to the page.</summary>
/// <param name="Kind">"look", "box", "fine", "swim", "colors", "tries", "saved", "choice", "seen", "lessons", "lesson", "reload" or "error".</param>
/// <param name="Seq">Number of the wish.</param>
internal sealed record ServerMessage(string Kind, long Seq)
{
    /// <summary>Settings on the steps of their knobs.</summary>
    public IReadOnlyDictionary<string, string>? State { get; init; }

    /// <summary>The knobs, where they are not those of the answer before.</summary>
    public IReadOnlyList<KnobView>? Knobs { get; init; }

    /// <summary>The water.</summary>
    public SceneView? Scene { get; init; }

    /// <summary>Paths; those of a look may come in two parts.</summary>
    public IReadOnlyList<LineView>? Lines { get; init; }

    /// <summary>What the heads do.</summary>
    public IReadOnlyList<RowView>? Rows { get; init; }

    /// <summary>Name of the lure that is looked at.</summary>
    public string? Focus { get; init; }

    /// <summary>The sentence on top.</summary>
    public string? Sentence { get; init; }

    /// <summary>Against the picture that is kept; null where there is none.</summary>
    public string? Difference { get; init; }

    /// <summary>Why something is not shown, or a report; null for none.</summary>
    public string? Note { get; init; }

    /// <summary>Depths by time as a table.</summary>
    public TableView? Table { get; init; }

    /// <summary>How the lure swims.</summary>
    public SwimView? Swim { get; init; }

    /// <summary>What color it shows.</summary>
    public ColorsView? Colors { get; init; }

    /// <summary>What-if tries.</summary>
    public TriesView? Tries { get; init; }

    /// <summary>The choice of the program.</summary>
    public ChoiceView? Choice { get; init; }

    /// <summary>What the angler saw, and what it changes.</summary>
    public SeenView? Seen { get; init; }

    /// <summary>What was seen at this spot, of the file and of the page, a line each; with a whole picture.</summary>
    public IReadOnlyList<string>? Noted { get; init; }

    /// <summary>The lessons of a class.</summary>
    public IReadOnlyList<LessonTitle>? Lessons { get; init; }

    /// <summary>A lesson that was checked.</summary>
    public LessonView? Lesson { get; init; }

    /// <summary>Which water it is of: how often it was changed before, by a lesson or by the end of a class; null where it is of none.</summary>
    public int? Water { get; init; }

    /// <summary>Milliseconds of computing.</summary>
    public double Work { get; init; }
}

/// <summary>A lesson in a list.</summary>
internal sealed record LessonTitle(string Id, string Title);

/// <summary>A lesson for the page; where it is refused, why.</summary>
internal sealed record LessonView(
    string Id, string Title, string Show, string Question, IReadOnlyList<string> Answers, int Right, string Because, string LeavesOut, string Knob, IReadOnlyDictionary<string, string> Before, IReadOnlyDictionary<string, string> After, string? Refused);

/// <summary>A knob for the page.</summary>
internal sealed record KnobView(string Id, string Name, string Place, string Kind, IReadOnlyList<string> Values, IReadOnlyList<string> Labels, IReadOnlyList<double> Sizes, int File, int UncheckedFrom);

/// <summary>A mark on an axis: where (cm), and its words.</summary>
internal sealed record TickView(int At, string Label);

/// <summary>The water as it is drawn; lengths in cm, x along the cast from below the rod tip, depths positive down.</summary>
internal sealed record SceneView
{
    public required int Depth { get; init; }

    public required int Grass { get; init; }

    /// <summary>Places and depths of a bottom that slopes, in turn; empty where it is even.</summary>
    public IReadOnlyList<int> Floor { get; init; } = [];

    /// <summary>Stretches of one kind of bottom and one height of grass, from the left; empty where it is the same all along.</summary>
    public IReadOnlyList<FloorPiece> Pieces { get; init; } = [];

    /// <summary>Whether the zone follows the bottom.</summary>
    public bool ZoneFollows { get; init; }

    public required int ZoneTop { get; init; }

    public required int ZoneBottom { get; init; }

    public required int Cast { get; init; }

    public required int Rod { get; init; }

    public required int From { get; init; }

    public required int To { get; init; }

    /// <summary>Depth at which a white plate goes out of sight; 0 where the file says it otherwise.</summary>
    public required int Plate { get; init; }

    /// <summary>Part of the current along the cast, -1 toward the angler to 1 away; 0 in slack water.</summary>
    public required double Along { get; init; }

    /// <summary>Share of the greatest current that is drawn.</summary>
    public required double Flow { get; init; }

    public required string Bottom { get; init; }

    public required int Stretch { get; init; }

    public required string StretchText { get; init; }

    /// <summary>The same for a narrow screen.</summary>
    public required int NarrowStretch { get; init; }

    public required string NarrowStretchText { get; init; }

    public required string CurrentText { get; init; }

    public required string DepthText { get; init; }

    public required string CastText { get; init; }

    public required string PlateText { get; init; }

    public required string ZoneText { get; init; }

    public required string CountText { get; init; }

    public required string BottomText { get; init; }

    public required string GrassText { get; init; }

    public required IReadOnlyList<TickView> Across { get; init; }

    public required IReadOnlyList<TickView> Down { get; init; }

    /// <summary>What the picture shows, for those who do not see it.</summary>
    public required string Alt { get; init; }
}

/// <summary>A path, in cm.</summary>
/// <param name="Id">Name of the lure.</param>
/// <param name="X">Along the cast.</param>
/// <param name="Z">Depth.</param>
/// <param name="Start">Index at which the retrieve begins.</param>
internal sealed record LineView(string Id, IReadOnlyList<int> X, IReadOnlyList<int> Z, int Start)
{
    /// <summary>To the left, for the view from above; only for the one that is looked at.</summary>
    public IReadOnlyList<int>? Y { get; init; }

    /// <summary>Times of the points (tenths of a second); only for the one that is looked at.</summary>
    public IReadOnlyList<int>? T { get; init; }

    /// <summary>The line from rod to lure at one moment of the retrieve; only for the one that is looked at.</summary>
    public IReadOnlyList<int>? Line { get; init; }

    /// <summary>How far it is swept, in words; null where that is little.</summary>
    public string? Swept { get; init; }
}

/// <summary>What one head does.</summary>
internal sealed record RowView
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    public required int Above { get; init; }

    public required int Zone { get; init; }

    public required int Below { get; init; }

    public required int Bottom { get; init; }

    public required string Share { get; init; }

    public required string When { get; init; }

    public required string Words { get; init; }

    /// <summary>Number of the group of neighbors that do about the same; 0 for none.</summary>
    public int Tie { get; init; }

    public required string Color { get; init; }

    public required string DarkColor { get; init; }

    public required int Marker { get; init; }

    /// <summary>False where it could not be computed.</summary>
    public required bool Known { get; init; }
}

/// <summary>A table.</summary>
internal sealed record TableView(string Caption, IReadOnlyList<string> Head, IReadOnlyList<IReadOnlyList<string>> Rows);

/// <summary>How a lure swims: outlines through some frames, in tenths of a millimetre, seen from above and from the side.</summary>
internal sealed record SwimView(string Words, string Speed, string Verdict, bool Fault, int Length, IReadOnlyList<SwimFrame> Frames, IReadOnlyList<SwimFrame> Ghost, string Slow, string Note, double Period);

/// <summary>One frame: pieces seen from above, and from the side.</summary>
internal sealed record SwimFrame(IReadOnlyList<SwimPiece> Above, IReadOnlyList<SwimPiece> Side);

/// <summary>One outline: what it is (b body, t tail, m metal), and its corners as x, y, x, y.</summary>
internal sealed record SwimPiece(string Kind, IReadOnlyList<int> Points);

/// <summary>A stretch of the bottom (cm along the cast).</summary>
internal sealed record FloorPiece(int From, int To, string Bottom, int Grass);

/// <summary>Colors at depths.</summary>
internal sealed record ColorsView(string Title, IReadOnlyList<DepthColors> Depths, int Running, IReadOnlyList<SightView> Seen, string SeenTitle, string Vision);

/// <summary>The colors at one depth.</summary>
internal sealed record DepthColors(string Depth, IReadOnlyList<SwatchView> Swatches);

/// <summary>One color at one depth.</summary>
internal sealed record SwatchView(string Name, string Used, string Glance, string Word, string Ink);

/// <summary>How one color stands out where the lure runs.</summary>
/// <param name="Name">The color.</param>
/// <param name="Distance">From how far it is seen, in words.</param>
/// <param name="Share">That distance over the farthest, 0 to 100.</param>
/// <param name="Words">The same in words.</param>
/// <param name="Tie">True where none is seen from farther by more than is known.</param>
internal sealed record SightView(string Name, string Distance, int Share, string Words, bool Tie);

/// <summary>What-if tries.</summary>
internal sealed record TriesView(int Done, int Total, bool Ended, IReadOnlyList<TryHead> Heads, IReadOnlyList<IReadOnlyList<int>> Tracks, IReadOnlyList<string> Winners, string Counts, string Dots, string Matters);

/// <summary>One head over the tries: shares as counted, dots of a plot (place 0 to 100), median.</summary>
internal sealed record TryHead(string Id, string Name, int Best, IReadOnlyList<int> Dots, int Median, string MedianText, string Color, string DarkColor);

/// <summary>The choice of the program.</summary>
internal sealed record ChoiceView(string Words, IReadOnlyDictionary<string, string> State, IReadOnlyList<string> Reasons);

/// <summary>What was seen and what it changes, in words.</summary>
/// <param name="Words">The newest note and the choice now, or why it was not taken.</param>
/// <param name="Changes">What was learned, a sentence each.</param>
/// <param name="Taken">False where the note was not taken.</param>
/// <param name="Notes">The notes of the page with it, as its address has them; null where it was not taken.</param>
/// <param name="Noted">All that was seen at this spot, a line each.</param>
internal sealed record SeenView(string Words, IReadOnlyList<string> Changes, bool Taken, string? Notes, IReadOnlyList<string> Noted);

/// <summary>Writing and reading of the messages without reflection.</summary>
[JsonSourceGenerationOptions(PropertyNamingPolicy = JsonKnownNamingPolicy.CamelCase, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(PageMessage))]
[JsonSerializable(typeof(ServerMessage))]
internal sealed partial class MessageJson : JsonSerializerContext
{
    /// <summary>An answer as text that can stand in a page.</summary>
    public static string Write(ServerMessage message) => JsonSerializer.Serialize(message, Default.ServerMessage);
}
