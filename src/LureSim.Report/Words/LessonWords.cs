using LureSim.Decision.Colours;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Sight;

namespace LureSim.Report.Words;

/// <summary>Puts a lesson in light and sight into words.</summary>
public static class LessonWords
{
    /// <summary>The spot of the scenario, beside the waters of the lesson.</summary>
    public const string ThisSpot = "this spot";

    /// <summary>A water of the lesson.</summary>
    /// <param name="water">Kind of water.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no kind of water.</exception>
    public static string Water(WaterKind water) => water switch
    {
        WaterKind.ClearOcean => "clear water",
        WaterKind.CoastalGreen => "green coastal water",
        WaterKind.TanninStained => "tannin-stained water",
        WaterKind.Silty => "silty water",
        _ => throw new ArgumentOutOfRangeException(nameof(water), water, "Unknown water kind."),
    };

    /// <summary>A criterion of going dark, for the head of a column.</summary>
    /// <param name="criterion">The criterion.</param>
    /// <param name="eye">The eye of the lesson.</param>
    /// <exception cref="ArgumentNullException"><paramref name="eye"/> is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">It is no criterion.</exception>
    public static string Criterion(DarkCriterion criterion, FishEye eye)
    {
        ArgumentNullException.ThrowIfNull(eye);
        return criterion switch
        {
            DarkCriterion.LuminanceAgainstWhite => "near black beside white",
            DarkCriterion.Chroma => "without hue",
            DarkCriterion.ContrastToWater => "a silhouette",
            DarkCriterion.FishCones => $"to the cones of a {eye.CommonName}{(eye.Basis == EyeBasis.StandIn ? " (stand-in)" : "")}",
            _ => throw new ArgumentOutOfRangeException(nameof(criterion), criterion, "Unknown criterion."),
        };
    }

    /// <summary>A way to be black, as a heading.</summary>
    /// <param name="criterion">The criterion.</param>
    /// <param name="fish">Everyday name of the fish.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no criterion.</exception>
    public static string Way(DarkCriterion criterion, string fish) => criterion switch
    {
        DarkCriterion.LuminanceAgainstWhite => "Black beside white",
        DarkCriterion.Chroma => "No hue left",
        DarkCriterion.ContrastToWater => "A dark silhouette",
        DarkCriterion.FishCones => $"Black to {Grammar.Article(fish)}",
        _ => throw new ArgumentOutOfRangeException(nameof(criterion), criterion, "Unknown criterion."),
    };

    /// <summary>What a way to be black means, in one sentence.</summary>
    /// <param name="criterion">The criterion.</param>
    /// <param name="format">Units, for their spelling.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no criterion.</exception>
    public static string WaySentence(DarkCriterion criterion, UnitFormat format) => criterion switch
    {
        DarkCriterion.LuminanceAgainstWhite => "Held beside white at the same depth, it sends back less than a sixteenth of what white does.",
        DarkCriterion.Chroma => format.Say($"Even a camera balanced down there finds no color in it: a gray like any other."),
        DarkCriterion.ContrastToWater => "Seen level, it is less than half as bright as the water behind it: a dark shape.",
        DarkCriterion.FishCones => "No kind of cone in the fish's eye gets more than a sixteenth of what it gets from white.",
        _ => throw new ArgumentOutOfRangeException(nameof(criterion), criterion, "Unknown criterion."),
    };

    /// <summary>From which depth red is black by a criterion.</summary>
    /// <param name="dark">The finding.</param>
    /// <param name="bottom">Depth of the bottom (m).</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string WayDepth(DarkDepth dark, double bottom, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(dark);
        ArgumentNullException.ThrowIfNull(format);
        return dark.CannotTell ? "Here: we cannot tell, its cones are not measured."
            : dark.Depth is not { } depth || depth > bottom ? "Here: not above the bottom."
            : depth < 0.01 ? "Here: from the surface down."
            : $"Here: from {format.HandText(depth)} down.";
    }

    /// <summary>Which of red, white and chartreuse goes dark in a water, and why.</summary>
    /// <param name="spot">The water.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> RedAnswer(SpotLesson spot, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(spot);
        ArgumentNullException.ThrowIfNull(format);
        int last = spot.Chart.Depths.Count - 1;
        string at = format.HandText(spot.Chart.Depths[last]);
        string red = ColourWords.Text(spot.Chart[last, SpotLesson.Red].Word), white = ColourWords.Text(spot.Chart[last, SpotLesson.White].Word), chartreuse = ColourWords.Text(spot.Chart[last, SpotLesson.Chartreuse].Word);

        // Red paint is a dark color in air already: it goes dark where its word is a darker one than at the top.
        ColourWord there = spot.Chart[last, SpotLesson.Red].Word;
        bool dark = there is (ColourWord.NearBlack or ColourWord.Dark or ColourWord.Unseen) && there != spot.Chart[0, SpotLesson.Red].Word;
        return
        [
            dark && red != white
                ? $"Red. To your eye it is {red} at {at}, where white is {white} and chartreuse {chartreuse}."
                : $"None of them. To your eye at {at} red is {red}, white {white} and chartreuse {chartreuse}.",
            Taken(spot, last, format),
            format.Say($"A camera set for the surface shows how little light is left: {UnitFormat.PercentText(spot.Plate.Rows[last].LightLeft)} at {at}. In its picture every color ends dark."),
        ];
    }

    // Which end of the rainbow the water takes first, by what is left at the deepest row.
    private static string Taken(SpotLesson spot, int row, UnitFormat format)
    {
        Spectrum top = spot.Plate.Rows[0].Illuminant, light = spot.Plate.Rows[row].Illuminant;
        double blue = Left(450), green = Left(550), red = Left(620);
        return red < blue ? format.Say($"This water takes red light first, and a red lure has only red light to send back.")
            : red > green ? format.Say($"This water is stained like tea: it takes blue and green light first and leaves red. Red keeps its color while everything fades.")
            : "This water takes blue light first, then red, and lets green through: white and chartreuse turn greenish, red has little to send back.";

        double Left(double nm) => top.At(nm) > 0 ? light.At(nm) / top.At(nm) : 0;
    }

    /// <summary>What a water does to a grey card, to sand and to itself.</summary>
    /// <param name="balance">The colours.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> BalanceAnswer(WhiteBalance balance, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(balance);
        ArgumentNullException.ThrowIfNull(format);
        BalanceRow last = balance.Rows[^1];
        return
        [
            format.Say($"At a first glance no: card and sand take on the color of the water."),
            format.Say($"After some minutes your eye makes up for part of it, here {UnitFormat.PercentText(last.Degree)} at {format.HandText(last.Depth)}. The stronger the color of the light, the less it can."),
            format.Say($"Only a camera balanced on a white card down there makes the card gray again. How far a fish's eye adapts is not known."),
        ];
    }

    /// <summary>Which colour is seen from farthest, and which from as far for all that is known.</summary>
    /// <param name="advice">The choice of colour.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> SightAnswer(ColourAdvice advice, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(format);
        ColourWorth best = advice.Colours[advice.Farthest];
        string[] tied = [.. advice.Tied.Where(i => i != advice.Farthest).Select(i => advice.Colours[i].Name)];
        string[] nearer = [.. advice.Colours.Where(worth => !worth.Tied).Select(worth => worth.Name)];
        return
        [
            $"{Grammar.Capital(best.Name)}, from about {ColourWords.SeenFrom(advice, best, format)}.",
            .. tied.Length > 0 ? [$"No real difference to it: {Grammar.Join(tied)}. Fish, water and light differ by more than that."] : Array.Empty<string>(),
            .. nearer.Length > 0 ? [$"Seen from clearly nearer: {Grammar.Join(nearer)}."] : Array.Empty<string>(),
            .. best.SeenFrom < ColourAdvice.StrikeLength ? [$"That is less than the length of a strike ({format.SeenText(ColourAdvice.StrikeLength)}): sight decides nothing here. Go dark, and add sound or scent."] : Array.Empty<string>(),
        ];
    }

    /// <summary>What is left of a lure at a distance, from the side and from below.</summary>
    /// <param name="strips">The strips.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> SilhouetteAnswer(IReadOnlyList<SilhouetteStrip> strips, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(strips);
        ArgumentNullException.ThrowIfNull(format);
        return
        [
            .. strips.Select(strip => $"{(strip.Direction == ViewDirection.Level ? "Seen level" : "Seen from below")}, it goes from {Contrast(strip.Views[0].LuminanceContrast)} close up to {Contrast(strip.Views[^1].LuminanceContrast)} at {format.SeenText(strip.Distances[^1])}."),
            format.Say($"The water puts its own light between you and the lure. From below it stands against the bright surface, so almost any color is a dark shape."),
        ];

        static string Contrast(double contrast) => Math.Abs(contrast) < 0.01 ? "nothing" : $"{UnitFormat.PercentText(Math.Abs(contrast))} {(contrast < 0 ? "darker" : "brighter")} than the water";
    }

    /// <summary>What the colours of the box look like at the deepest row, by word.</summary>
    /// <param name="chart">The chart.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> WordsAnswer(ColourChart chart, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(chart);
        ArgumentNullException.ThrowIfNull(format);
        int deepest = Enumerable.Range(0, chart.Depths.Count).MaxBy(i => chart.Depths[i]);
        return
        [
            $"At {format.HandText(chart.Depths[deepest])}: " + string.Join("; ", Enumerable.Range(0, chart.Colours.Count).GroupBy(c => chart[deepest, c].Word).OrderByDescending(group => group.Key)
                .Select(group => $"{ColourWords.Text(group.Key)}: {Grammar.Join(group.Select(c => chart.Colours[c].Name))}")) + ".",
            format.Say($"Bright means you would still name its color; light means pale or white; muted, dark and near black go the way a color goes."),
        ];
    }
}
