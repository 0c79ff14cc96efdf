using LureSim.Light;
using LureSim.Scenarios;
using LureSim.Sight;

namespace LureSim.Decision;

/// <summary>Puts the choice of colour into words.</summary>
public static class ColourWording
{
    /// <summary>What was chosen, on what ground, from where fish look, and where practice agrees or parts.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="fish">Name of the fish.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Sentences(ColourAdvice advice, string fish, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(fish);
        var show = new MeasureFormatter(units);
        ColourWorth chosen = advice.Colours[advice.Chosen], nearest = advice.Colours[advice.Nearest], farthest = advice.Colours[advice.Farthest];
        string forage = $"{advice.Forage} forage{(advice.ForageSeen ? "" : " (none was named; this is the usual one for the body)")}";
        string where = advice.Depths.Count > 1
            ? $"{show.Length.Number(advice.Depths[0].Depth)} to {show.Length.Text(advice.Depths[^1].Depth)}"
            : show.Length.Text(advice.Depths[0].Depth);
        string reason = advice.Ground switch
        {
            ColourGround.NaturalMatch => $"Colour: {chosen.Name}. Where the lure runs ({where}) {Wording.Article(fish)} makes it out at {show.Length.Text(chosen.Distance)}, {Compared(chosen, farthest, advice.Reach, show)}, so the nearest to the {forage} wins: it differs by {Steps(chosen)}{Against(chosen, farthest)}.",
            ColourGround.Brightness => $"Colour: {chosen.Name}, for its brightness. {Visible()}",
            ColourGround.Silhouette => $"Colour: {chosen.Name}, for its dark shape. {Visible()}",
            _ => $"Colour: where the lure runs ({where}) {Wording.Article(fish)} makes out no colour of this box by sight; noise and scent decide.",
        };
        var sentences = new List<string> { reason, $"Fish in the strike zone see it {Directions(advice)}." };
        string practice = advice.PracticeAgrees switch
        {
            true => $"Common practice takes {advice.Practice}: it agrees.",
            false when advice.Ground == ColourGround.NaturalMatch => $"Common practice takes {advice.Practice}. Computed, the match is still made out far enough here, so practice and computation part.",
            false => $"Common practice takes {advice.Practice}. Computed, {chosen.Name} carries farther here, so practice and computation part.",
            null => $"Common practice takes {advice.Practice}; the box has none of those.",
        };
        sentences.Add(practice);
        if (advice.Certainty == EyeCertainty.CannotTell)
        {
            string[] others = [.. advice.ChosenAtEnds.Where(c => c != advice.Chosen).Distinct().Select(c => advice.Colours[c].Name)];
            sentences.Add($"The cones of {Wording.Article(fish)} are not measured: within the peaks that they may have, {Wording.Join(others)} would be taken as well. Which of them cannot be told.");
        }

        return sentences;

        string Visible()
        {
            string best = farthest.Name == chosen.Name ? "no colour of the box farther" : $"the best, {farthest.Name}, at {show.Length.Text(farthest.Distance)}";
            return $"Where the lure runs ({where}) {Wording.Article(fish)} makes it out at {show.Length.Text(chosen.Distance)}, {best}. {Wording.Capital(nearest.Name)} would be nearest to the {forage}, but is made out at {show.Length.Text(nearest.Distance)} only; "
                + $"of the colours seen nearly as far as the best, {chosen.Name} is nearest to it.";
        }
    }

    /// <summary>How deep the parts of a lure of several colours can be told apart.</summary>
    /// <param name="parts">What was found.</param>
    /// <param name="fish">Name of the fish.</param>
    /// <param name="units">Units of the sentence.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Parts(PatternParts parts, string fish, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(parts);
        ArgumentNullException.ThrowIfNull(fish);
        var show = new MeasureFormatter(units);
        return $"{Wording.Capital(parts.Pattern.Name)}: its parts {How(parts.ToPerson, parts.Person)} to a person, {How(parts.ToFish, parts.Fish)} in colour to {Wording.Article(fish)}.";

        string How(PartsApart state, double? depth) => state switch
        {
            PartsApart.OneColour => "are of one colour",
            PartsApart.ToADepth when depth is 0.0 => "are alike from the surface on",
            PartsApart.ToADepth => $"look alike from {show.Length.Text(depth ?? 0.0)} on",
            PartsApart.AsDeepAsThereIsLight => $"stay apart to {show.Length.Text(parts.DeepestSearched)} and beyond",
            _ => throw new ArgumentOutOfRangeException(nameof(parts), state, "Unknown state."),
        };
    }

    /// <summary>Where fish look from, such as "level (63 %) and from below at a slant (37 %)".</summary>
    /// <param name="advice">The advice.</param>
    /// <exception cref="ArgumentNullException"><paramref name="advice"/> is null.</exception>
    public static string Directions(ColourAdvice advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        return Wording.Join(advice.Looks.Where(look => look.Weight >= 0.05).Select(look => $"{Word(look.Direction)} ({Wording.Percent(look.Weight)})"));
    }

    private static string Word(ViewDirection direction) => direction switch
    {
        ViewDirection.Up => "from below",
        ViewDirection.SlantUp => "from below at a slant",
        ViewDirection.Down => "from above",
        _ => "level",
    };

    // Farther than it will come counts as no farther.
    private static string Compared(ColourWorth chosen, ColourWorth farthest, double reach, MeasureFormatter show) =>
        chosen.Name == farthest.Name ? "farther than any other colour of the box"
        : chosen.Distance >= reach ? "farther than it will come for a lure"
        : $"nearly as far as the best for that, {farthest.Name} ({show.Length.Text(farthest.Distance)})";

    private static string Steps(ColourWorth worth) => FormattableString.Invariant($"{worth.DifferenceToForage:F0} just-noticeable steps");

    private static string Against(ColourWorth chosen, ColourWorth farthest) =>
        farthest.Name == chosen.Name ? "" : FormattableString.Invariant($", {farthest.Name} by {farthest.DifferenceToForage:F0}");
}
