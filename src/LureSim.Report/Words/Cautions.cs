using System.Text.RegularExpressions;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>
/// What to watch out for at a spot, found from its bottom, depth, current, light and temperature, the weight thrown, and what title and notes say of boat and structure.
/// The thresholds are common practice; where the scenario does not say how the angler stands there, the danger that may be there is named.
/// </summary>
public static partial class Cautions
{
    // Heads that fly back hard when a snag lets go (kg): a quarter ounce and more.
    private const double Heavy = 0.007;

    // Depth that people wade (m).
    private const double WadingDepth = 1.4;

    // Water that takes strength fast, and water over which the sun is hot (degrees Celsius).
    private const double Cold = 15;
    private const double Hot = 26;

    // Height of the sun below which it is soon dark (degrees).
    private const double LowSun = 5;

    /// <summary>What to watch out for, the closest danger first; what holds everywhere comes last.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="head">The head that is thrown; null for the heaviest of the box.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    public static IReadOnlyList<CautionKind> Of(Scenario scenario, JigHead? head = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        Spot spot = scenario.Spot;
        string told = $"{scenario.Title} {scenario.Notes}";
        bool boat = Boat().IsMatch(told), onFoot = OnFoot().IsMatch(told), channel = Channel().IsMatch(told);
        bool structure = channel || Structures().IsMatch(told) || spot.Structures.Count > 0, rocks = Rocks().IsMatch(told);
        bool snags = structure || rocks || spot.Bottom is BottomKind.Shell or BottomKind.Hard || spot.Profile?.Stretches.Any(stretch => stretch.Bottom is BottomKind.Shell or BottomKind.Hard) == true;
        double mass = head?.Mass ?? scenario.Tackle.JigHeads.Select(item => item.Mass).DefaultIfEmpty(Heavy).Max();
        List<CautionKind> found = [];
        if (channel && (boat || !onFoot))
            found.Add(CautionKind.BoatAtBridge);
        else if (structure && spot.CurrentSpeed > 0)
            found.Add(CautionKind.Structure);
        if (snags && mass >= Heavy)
            found.Add(CautionKind.SnagComesBack);
        if (Wading().IsMatch(told) || (spot.Depth <= WadingDepth && !boat && !Dock().IsMatch(told)))
            found.Add(CautionKind.Wading);
        if (rocks)
            found.Add(CautionKind.SlickRocks);
        if (IsDark(spot))
            found.Add(CautionKind.Night);
        if (spot.TemperatureCelsius <= Cold)
            found.Add(CautionKind.ColdWater);
        if (spot.TemperatureCelsius >= Hot && !IsDark(spot))
            found.Add(CautionKind.Heat);
        found.AddRange([CautionKind.Cast, CautionKind.Lightning, CautionKind.Alone]);
        if (scenario.Tackle.JigHeads.Any(item => item.Mass > 0 && item.Metal == HeadMetal.Lead))
            found.Add(CautionKind.Lead);
        found.AddRange([CautionKind.Rules, CautionKind.Model]);
        return found;
    }

    /// <summary>True at dusk, at dawn and at night: pages for it are dark.</summary>
    /// <param name="spot">The spot.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spot"/> is null.</exception>
    public static bool IsDark(Spot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        return SpotLight.SunElevationDegrees(spot) < LowSun;
    }

    /// <summary>A caution in full.</summary>
    /// <param name="kind">The caution.</param>
    /// <param name="units">Units of the text.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no caution.</exception>
    public static string Sentence(CautionKind kind, UnitSystem units) => units.Spell(kind switch
    {
        CautionKind.BoatAtBridge => "Do not anchor in a channel or tie up to a bridge or a mark: many places forbid it, and an anchored boat in current can swamp. Keep clear of traffic.",
        CautionKind.Structure => "The current sets you onto pilings and structure: keep off them, and off other people's lines.",
        CautionKind.SnagComesBack => "Snagged? Never yank. Point the rod at it and turn your face away: a freed jig comes back like a shot. No bare hand on braid.",
        CautionKind.Wading => "Wading: shuffle your feet (stingrays). Watch for oyster cuts, soft mud, current and tide. Never wade alone.",
        CautionKind.SlickRocks => "Wet rocks are slick and wakes climb them: shoes that grip, both hands free.",
        CautionKind.Night => "Low light: headlamp, boat lights, slick docks.",
        CautionKind.ColdWater => "Cold water takes your strength in minutes: life jacket on, dry clothes along.",
        CautionKind.Heat => "Sun and heat: hat, sleeves, shade and drinking water.",
        CautionKind.Cast => "Wear glasses. Look behind you and up before each cast: people, hooks, power lines. Life jacket on.",
        CautionKind.Lightning => "Thunder: get off the water, and stay off for 30 minutes after the last of it.",
        CautionKind.Alone => "Tell somebody where you are and when you are back.",
        CautionKind.Lead => "Lead is restricted in places; leave none behind.",
        CautionKind.Rules => "License, season, size and bag rules are local: follow them, and the captain's or guide's word aboard.",
        CautionKind.Model => "This is a model, not a promise, and no aid to navigation.",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a caution."),
    });

    /// <summary>A caution in a few words, for a card or the last line of a terminal.</summary>
    /// <param name="kind">The caution.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no caution.</exception>
    public static string Brief(CautionKind kind) => kind switch
    {
        CautionKind.BoatAtBridge => "don't anchor in the channel or tie up to the bridge",
        CautionKind.Structure => "keep off the pilings",
        CautionKind.SnagComesBack => "snagged: never yank, face away",
        CautionKind.Wading => "shuffle your feet, never wade alone",
        CautionKind.SlickRocks => "slick rocks",
        CautionKind.Night => "headlamp and boat lights",
        CautionKind.ColdWater => "cold water: life jacket",
        CautionKind.Heat => "sun and heat",
        CautionKind.Cast => "glasses on, look behind you and up before each cast",
        CautionKind.Lightning => "off the water at thunder",
        CautionKind.Alone => "tell somebody where you are",
        CautionKind.Lead => "lead is restricted in places",
        CautionKind.Rules => "local rules",
        CautionKind.Model => "a model, not a promise, no aid to navigation",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a caution."),
    };

    /// <summary>The last line of a terminal: what this spot asks for, and what a model is worth.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="head">The head that is thrown; null for the heaviest of the box.</param>
    public static string Line(Scenario scenario, JigHead? head = null)
    {
        IReadOnlyList<CautionKind> all = Of(scenario, head);
        IEnumerable<CautionKind> here = all.Where(kind => kind < CautionKind.Cast).Take(3).DefaultIfEmpty(CautionKind.Cast);
        return $"Watch out: {string.Join("; ", here.Concat([CautionKind.Lightning, CautionKind.Rules, CautionKind.Model]).Select(Brief))}.";
    }

    [GeneratedRegex(@"\b(boat|skiff|kayak|canoe|anchor(ed)?|drift(ing)?)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Boat();

    [GeneratedRegex(@"\b(shore|wad(e|ing)|dock|pier|jetty|beach|steps|on foot)\b", RegexOptions.IgnoreCase)]
    private static partial Regex OnFoot();

    [GeneratedRegex(@"\b(channel|bridge|marker)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Channel();

    [GeneratedRegex(@"\b(pilings?|dock|pier|jetty|wreck|timber)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Structures();

    [GeneratedRegex(@"\b(jetty|rocks?|riprap|ledge)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Rocks();

    [GeneratedRegex(@"\bwad(e|ing)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Wading();

    [GeneratedRegex(@"\b(dock|pier|bridge)\b", RegexOptions.IgnoreCase)]
    private static partial Regex Dock();
}
