using System.Diagnostics;
using System.Globalization;
using LureSim.Light;
using LureSim.Model;

namespace LureSim.Scenarios.Interview;

/// <summary>How answers that hang together become values of a scenario.</summary>
internal static class Writing
{
    private const double Foot = 0.3048;

    // Grass that fills the water leaves nothing to fish in.
    private const double MostGrass = 0.8;

    // A lure of the common weights sinks about a foot a second (assumed): counts are so many feet.
    private const double SinkRate = Foot;

    private const double GearRatio = 6.2;

    // A cast longer than this may be more than a rod throws a weight (m): it is then taken for every lure.
    private const double LongestKnown = 100 * Foot;

    // Longest of the coasts from Greenwich (deg): those of the east coast and the Gulf, assumed.
    private const double Longitude = -80.0;

    // The bottom that hangs up most speaks for a mixed one.
    private static readonly string[] Snaggiest = ["shell", "hard", "mud", "sand"];

    /// <summary>The bottom.</summary>
    public static void Bottom(ScenarioDraft draft, Given given)
    {
        string worst = Snaggiest.First(bottom => given.Pieces.Any(piece => piece.Yaml == bottom));
        draft.Set("spot.bottom", worst, given, given.Pieces.Count > 1 ? "the one that snags most" : "");
    }

    /// <summary>The grass, which is lower than the water is deep.</summary>
    public static void Grass(ScenarioDraft draft, Given given)
    {
        double height = given.First.Number, most = MostGrass * Depth(draft);
        if (height > most)
            draft.Set("spot.grass_height", Feet(most), given, "lower than the water is deep");
        else if (height > 0.0)
            draft.Set("spot.grass_height", given.First.Yaml, given);
    }

    /// <summary>How clear the water is, within what such water can be.</summary>
    public static void Clarity(ScenarioDraft draft, Given given)
    {
        Given water = draft.Sheet["water"];
        WaterKind kind = (WaterKind)((WordValue)Clear("water")).Words.First(word => word.Text == water.First.Yaml).Meaning!;
        (double least, double most) = ScenarioBuilder.SecchiRange[kind];

        // Seen on the bottom, the water is clearer than it is deep: by half, assumed.
        bool bottom = double.IsNaN(given.First.Number);
        double seen = bottom ? 1.5 * Depth(draft) : given.First.Number;
        double taken = Math.Clamp(seen, least, most);
        string text = taken != seen ? string.Create(CultureInfo.InvariantCulture, $"{taken:0.##} m") : bottom ? Feet(seen) : given.First.Yaml;
        draft.Set("spot.clarity.secchi", text, given, taken != seen ? "as near as such water comes" : bottom ? "clearer than it is deep" : "");
        draft.Set("spot.clarity.water", water.First.Yaml, water);
    }

    /// <summary>The light: the sun's height, or by night a moment.</summary>
    public static void Light(ScenarioDraft draft, Given given)
    {
        AnswerSheet sheet = draft.Sheet;
        int month = (int)sheet.Number("month");
        double latitude = sheet.Number("coast");
        string cloud = sheet["sky"].First.Yaml;
        if (given.First.Shown == "night")
        {
            string place = string.Create(CultureInfo.InvariantCulture, $"{{date: {sheet.Today.Year}-{month:00}-15, time: \"22:30\", utc_offset: -5 h, latitude: {latitude:0} deg, longitude: {Longitude:0} deg, cloud: {cloud}}}");
            draft.Set("spot.light", place, given, "the moon is that of this date");
            return;
        }

        double elevation = Elevation(sheet.Today.Year, month, latitude, given.First.Shown);
        draft.Set("spot.light", string.Create(CultureInfo.InvariantCulture, $"{{sun_elevation: {elevation:0} deg, cloud: {cloud}}}"), given);
    }

    /// <summary>The strike zone.</summary>
    public static void Zone(ScenarioDraft draft, Given given)
    {
        double depth = Depth(draft), grass = GrassHeight(draft);
        (string key, double from, double to) = given.First.Shown switch
        {
            "on the bottom" => ("above_bottom", 0.0, 0.5 * Foot),
            "off the bottom" => ("above_bottom", 0.0, Math.Min(2.0 * Foot, depth)),
            "middle" => ("depth", depth / 3.0, 2.0 * depth / 3.0),
            "near the top" => ("depth", 0.0, Math.Min(2.0 * Foot, 0.5 * depth)),
            "over the grass" => ("above_bottom", grass, Math.Min(grass + (1.5 * Foot), depth)),
            _ => throw new ArgumentOutOfRangeException(nameof(given), given.First.Shown, "There is no such zone."),
        };
        draft.Set($"spot.strike_zone.{key}", $"[{Feet(from)}, {Feet(to)}]", given);
    }

    /// <summary>What is eaten.</summary>
    public static void Forage(ScenarioDraft draft, Given given)
    {
        Piece[] eaten = [.. given.Pieces.Where(piece => piece.Yaml.Length > 0)];
        if (eaten.Length == 0)
            return;
        string seen = draft.Sheet["seen"].First.Yaml, size = draft.Sheet["bait_size"].First.Yaml;
        string length = size.Length > 0 ? $", length: {size}" : "";
        draft.Set("forage", $"[{string.Join(", ", eaten.Select(piece => $"{{kind: {piece.Yaml}, seen: {seen}{length}}}"))}]", given);
    }

    /// <summary>The leader.</summary>
    public static void Leader(ScenarioDraft draft, Given given)
    {
        if (given.First.Yaml.Length > 0)
            draft.Set("tackle.leader", $"{{kind: {draft.Sheet["leader_kind"].First.Yaml}, strength: {given.First.Yaml}, length: {draft.Sheet["leader_length"].First.Yaml}}}", given);
    }

    /// <summary>The reel.</summary>
    public static void Reel(ScenarioDraft draft, Given given)
    {
        double perTurn = draft.Sheet.Number("inches_per_turn");
        string spool = double.IsNaN(perTurn) ? given.First.Yaml : string.Create(CultureInfo.InvariantCulture, $"{1000.0 * perTurn / (Math.PI * GearRatio):0.0} mm");
        draft.Set("tackle.reel", string.Create(CultureInfo.InvariantCulture, $"{{gear_ratio: {GearRatio}, spool_diameter: {spool}}}"), given, given.Source == GivenSource.Said ? "gear ratio assumed" : "");
    }

    /// <summary>The jig heads, light to heavy.</summary>
    public static void Heads(ScenarioDraft draft, Given given) =>
        draft.Set("tackle.jig_heads", $"[{string.Join(", ", given.Pieces.DistinctBy(piece => Math.Round(1e6 * piece.Number)).OrderBy(piece => piece.Number).Select(piece => piece.Yaml))}]", given with { Written = "" });

    /// <summary>The presentations.</summary>
    public static void Presentations(ScenarioDraft draft, Given given)
    {
        Given cast = draft.Sheet["cast"];
        string assumed = given.Source == GivenSource.Said ? "" : "assumed";
        string with = draft.Sheet["cast_with"].First.Yaml, thrown = with.Length > 0 && cast.First.Number <= LongestKnown ? $"{cast.First.Yaml} with {with}" : cast.First.Yaml;
        string castRemark = cast.Source == GivenSource.Said ? "" : "assumed";
        foreach (string way in given.Pieces.Select(piece => piece.Shown))
        {
            (string style, bool counts, bool reels) = way switch
            {
                "steady" => ("steady", true, true),
                "slow along the bottom" => ("slow roll", true, false),
                "lift and drop" => ("lift and drop", false, false),
                "twitch-twitch-pause" => (RetrieveStyle.All.First(item => item.Name.StartsWith("twitch", StringComparison.Ordinal)).Name, true, false),
                "stop and go" => ("stop and go", true, true),
                "swing" => ("swing", false, false),
                _ => throw new ArgumentOutOfRangeException(nameof(given), way, "There is no such way to work a lure."),
            };
            (string count, string remark) = counts ? way == "slow along the bottom" ? ("to bottom", "") : Count(draft) : ("", "");
            draft.Present(("name", way, assumed), ("cast", thrown, castRemark), ("count_down", count, remark), ("style", style.Contains(',', StringComparison.Ordinal) ? ScenarioDraft.Quoted(style) : style, ""), ("retrieve", reels ? Turns(draft) : "", ""));
        }
    }

    // Down to where the fish are; over grass not into it.
    private static (string Yaml, string Remark) Count(ScenarioDraft draft)
    {
        double depth = Depth(draft), grass = GrassHeight(draft);
        double? to = draft.Sheet.Word("zone") switch
        {
            "middle" => 0.5 * depth,
            "near the top" => Math.Min(Foot, 0.25 * depth),
            "over the grass" => Math.Max(0.0, depth - grass - Foot),
            "on the bottom" or "off the bottom" => grass > 0.0 ? depth - grass : null,
            string zone => throw new UnreachableException($"\"{zone}\" is not a place in the water."),
        };
        return to is { } far ? (string.Create(CultureInfo.InvariantCulture, $"{Math.Round(2.0 * far / SinkRate) / 2.0:0.#} s"), "a foot a second, assumed") : ("to bottom", "");
    }

    // What the hand did, within what the model takes.
    private static string Turns(ScenarioDraft draft)
    {
        double turns = draft.Sheet.Number("turns") / 10.0;
        if (double.IsNaN(turns))
            return "";
        double perTurn = draft.Sheet.Number("inches_per_turn");
        double line = double.IsNaN(perTurn) ? GearRatio * Math.PI * draft.Sheet.Number("reel") : perTurn;
        double rate = Math.Floor(100.0 * Math.Min(turns, 0.99 * Limits.LineSpeed.Most / line)) / 100.0;
        return string.Create(CultureInfo.InvariantCulture, $"{{handle_turns: {rate:0.##} turns/s}}");
    }

    // Height of the sun (deg) in the middle of a month: a quarter of an hour from rise or set, half-way to noon, or at noon.
    private static double Elevation(int year, int month, double latitude, string time)
    {
        const int Step = 5;
        double[] day = [.. Enumerable.Range(0, 24 * 60 / Step).Select(step =>
            Ephemeris.Sun(new DateTimeOffset(year, month, 15, 5, 0, 0, TimeSpan.Zero).AddMinutes(Step * step), latitude, Longitude).ElevationDegrees)];
        int noon = Array.IndexOf(day, day.Max()), rise = Array.FindIndex(day, elevation => elevation > 0.0);
        int at = time switch
        {
            "dawn" or "dusk" => rise + (15 / Step),
            "morning" or "afternoon" => (rise + noon) / 2,
            "midday" => noon,
            _ => throw new ArgumentOutOfRangeException(nameof(time), time, "There is no such time of the day."),
        };
        return Math.Clamp(day[at], 1.0, 90.0);
    }

    private static double Depth(ScenarioDraft draft) => draft.Sheet.Number("depth");

    private static double GrassHeight(ScenarioDraft draft) => Math.Min(draft.Sheet.Number("grass"), MostGrass * Depth(draft));

    private static GrammarValue Clear(string key) => ((MapValue)((MapValue)ScenarioGrammar.Root.Keys.First(item => item.Name == "spot").Value).Keys.First(item => item.Name == "clarity").Value).Keys.First(item => item.Name == key).Value;

    // Rounded down, so that what lay inside the water stays there.
    private static string Feet(double metres) => string.Create(CultureInfo.InvariantCulture, $"{Math.Floor((100.0 * metres / Foot) + 1e-6) / 100.0:0.##} ft");
}
