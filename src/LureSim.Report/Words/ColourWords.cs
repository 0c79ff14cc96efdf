using LureSim.Decision.Colours;
using LureSim.Decision.Uncertainty;
using LureSim.Light;
using LureSim.Report.Units;
using LureSim.Sight;

namespace LureSim.Report.Words;

/// <summary>Puts the choice of colour, and what becomes of colours, into words.</summary>
public static class ColourWords
{
    // Directions from which fewer fish look are not named.
    private const double Noticeable = 0.05;

    private const string NotKnown = "The cones are not measured, and within the peaks that they may have this depth cannot be told.";

    /// <summary>What was chosen and why, the three strategies by the one measure, from where fish look, and where practice disagrees.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="fish">Name of the fish.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Sentences(ColourAdvice advice, string fish, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(fish);
        var format = new UnitFormat(units);
        return
        [
            Reason(advice, Grammar.Article(FishWords.Everyday(fish)), format),
            .. advice.Reason == ColourReason.SightDecidesNothing || advice.Colours.Count < 2 ? Array.Empty<string>() : [Strategies(advice, format)],
            $"Fish in the strike zone look {Directions(advice)}.",
            .. Disagreement(advice, format),
        ];
    }

    /// <summary>How far off a color is seen, in words: as far as a fish comes for a lure where it is seen from so far.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="worth">The color.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string SeenFrom(ColourAdvice advice, ColourWorth worth, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(worth);
        ArgumentNullException.ThrowIfNull(format);
        return format.SeenText(worth.SeenFrom) + (worth.SeenFrom >= 0.95 * advice.Reach ? " or more" : "");
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
        var format = new UnitFormat(units);
        return format.Say($"{Grammar.Capital(parts.Pattern.Name)}: its parts {How(parts.ToPerson, parts.Person)} to a person, {How(parts.ToFish, parts.Fish)} in color to {Grammar.Article(FishWords.Everyday(fish))}.");

        string How(PartsApart state, double? depth) => state switch
        {
            PartsApart.OneColour => format.Say($"are of one color"),
            PartsApart.ToADepth when depth is 0.0 => "are alike from the surface on",
            PartsApart.ToADepth => $"look alike from {format.Length.Text(depth!.Value)} on",
            PartsApart.AsDeepAsThereIsLight => $"stay apart to {format.Length.Text(parts.DeepestSearched)} and beyond",
            _ => throw new ArgumentOutOfRangeException(nameof(parts), state, "Unknown state."),
        };
    }

    /// <summary>What the colors look like to a person where the lure runs, and where red goes dark.</summary>
    /// <param name="colours">What was found.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="colours"/> is null.</exception>
    public static IEnumerable<string> Seen(ColourFinding colours, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(colours);
        var format = new UnitFormat(units);
        ColourChart here = colours.AtRunningDepth;
        string[] gone = [.. Enumerable.Range(0, here.Colours.Count).Where(i => here[0, i].Word is ColourWord.NearBlack or ColourWord.Unseen).Select(i => here.Colours[i].Name)];
        if (gone.Length > 0)
            yield return $"To a person's eye {Grammar.Join(gone)} {(gone.Length == 1 ? "is" : "are")} near black at {format.HandText(colours.RunningDepth)}.";
        yield return RedDarkens(colours, format);
    }

    /// <summary>The color in murkier and clearer water, in one sentence.</summary>
    /// <param name="spread">What the spread of the clarity makes of the colors.</param>
    /// <param name="units">Units of the sentence.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spread"/> is null.</exception>
    public static string Clarity(ClaritySpread spread, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(spread);
        var format = new UnitFormat(units);
        string own = spread.Middle.Advice.Choice.Name;
        string murky = format.SeenText(spread.Murky.SecchiDepth), clear = format.SeenText(spread.Clear.SecchiDepth);
        string range = $"If a white plate is gone at {murky} to {clear} (8 times in 10)";
        return spread.ColourHolds
            ? $"{range}, {own} stays as good as any."
            : $"{range}: {(spread.Murky.Holds ? $"{own} down to {murky}" : $"{spread.Murky.Advice.Choice.Name} at {murky}")}, {(spread.Clear.Holds ? $"{own} up to {clear}" : $"{spread.Clear.Advice.Choice.Name} at {clear}")}.";
    }

    /// <summary>What common practice takes.</summary>
    /// <param name="practice">The practice.</param>
    /// <param name="format">Units, for their spelling.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no practice.</exception>
    public static string Practice(ColourPractice practice, UnitFormat format) => practice switch
    {
        ColourPractice.NaturalInClear => format.Say($"natural or light colors in clear water"),
        ColourPractice.MetalInStained => "gold, copper or root-beer brown in tannin water",
        ColourPractice.BrightOrDarkInDirty => "bright, or the darkest for its silhouette, in dirty water",
        ColourPractice.DarkInDim => "a dark silhouette in dim light",
        _ => throw new ArgumentOutOfRangeException(nameof(practice), practice, "Not a practice."),
    };

    /// <summary>A colour word as people write it.</summary>
    /// <param name="word">The word.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no word.</exception>
    public static string Text(ColourWord word) => word switch
    {
        ColourWord.Unseen => "unseen",
        ColourWord.NearBlack => "near black",
        ColourWord.Dark => "dark",
        ColourWord.Muted => "muted",
        ColourWord.Light => "light",
        ColourWord.Bright => "bright",
        _ => throw new ArgumentOutOfRangeException(nameof(word), word, "Not a colour word."),
    };

    /// <summary>Where an eye looks.</summary>
    /// <param name="direction">The direction.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no direction.</exception>
    public static string Looking(ViewDirection direction) => direction switch
    {
        ViewDirection.Up => "looking up",
        ViewDirection.SlantUp => "looking up at a slant",
        ViewDirection.Level => "looking level",
        ViewDirection.Down => "looking down",
        _ => throw new ArgumentOutOfRangeException(nameof(direction), direction, "Not a direction."),
    };

    /// <summary>What stands behind the figures of an eye, in one sentence.</summary>
    /// <param name="eye">The eye.</param>
    /// <exception cref="ArgumentNullException"><paramref name="eye"/> is null.</exception>
    public static string Basis(FishEye eye)
    {
        ArgumentNullException.ThrowIfNull(eye);
        return eye.Basis == EyeBasis.Measured
            ? $"Cone peaks measured in {eye.CommonName}: {string.Join("; ", eye.Cones.Select(c => c.Source).Distinct())}."
            : $"No published cone peaks of {eye.CommonName} were found: stand-in values of like coastal fish are used.";
    }

    /// <summary>Where a colour goes dark by a criterion, in one sentence.</summary>
    /// <param name="colour">Name of the colour.</param>
    /// <param name="dark">The result.</param>
    /// <param name="eye">The eye for the cone criterion.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Dark(string colour, DarkDepth dark, FishEye eye)
    {
        ArgumentNullException.ThrowIfNull(dark);
        ArgumentNullException.ThrowIfNull(eye);
        string what = dark.Criterion switch
        {
            DarkCriterion.LuminanceAgainstWhite => "near black beside white",
            DarkCriterion.Chroma => "without hue",
            DarkCriterion.ContrastToWater => "less than half as bright as the water behind it",
            DarkCriterion.FishCones => $"dark to the cones of a {eye.CommonName}{(eye.Basis == EyeBasis.StandIn ? " (eye data borrowed)" : "")}",
            _ => throw new ArgumentOutOfRangeException(nameof(dark), dark.Criterion, "Not a criterion."),
        };
        string depth = dark.Depth switch
        {
            null => $"{colour} is not {what} before a person sees no colour at all, {UnitFormat.Fixed(dark.DeepestSearched, 1)} m.",
            0.0 => $"{colour} is {what} from the surface on.",
            { } met => $"{colour} is {what} from {UnitFormat.Fixed(met, 1)} m.",
        };
        return dark.CannotTell ? $"{depth} {NotKnown}" : depth;
    }

    private static string Reason(ColourAdvice advice, string fish, UnitFormat format)
    {
        ColourWorth chosen = advice.Choice, farthest = advice.Colours[advice.Farthest];
        string where = advice.Depths.Count > 1 ? format.HandBand(advice.Depths.Min(at => at.Depth), advice.Depths.Max(at => at.Depth)) : format.HandText(advice.Depths[0].Depth);
        string seen = $"Where the lure runs ({where}) {fish} sees it from about {SeenFrom(advice, chosen, format)}";
        string forage = $"{advice.Forage}{(advice.ForageSeen ? "" : ", assumed: you listed no bait")}";
        string tied = chosen.Name == farthest.Name ? "" : $"; {farthest.Name}, from {SeenFrom(advice, farthest, format)}, is no real difference";
        return advice.Reason switch
        {
            ColourReason.OnlyColour => format.Say($"Color: {chosen.Name}, the one in your box. {seen}."),
            ColourReason.SeenFarthest => format.Say($"Color: {chosen.Name}, {How(chosen.Seen.Mode)}. {seen}, {Next(advice, format)}."),
            ColourReason.Likeness => format.Say($"Color: {chosen.Name}, like the bait ({forage}; a fish can hardly tell them apart). {seen}{tied}."),
            ColourReason.CommonPractice => format.Say($"Color: {chosen.Name}, the usual choice: {Practice(advice.Practice.Practice, format)}. {seen}; {Others(advice)} no real difference{Unlike(advice)}."),
            ColourReason.NoRealDifference => format.Say($"Color: {chosen.Name}, as good as any. {seen}; {Others(advice)} no real difference{Unlike(advice)}."),
            ColourReason.SightDecidesNothing => format.Say($"Color: {chosen.Name}, the usual choice where sight decides nothing: a dark silhouette, with sound or scent. Where the lure runs ({where}) {fish} sees the best, {farthest.Name}, from {format.SeenText(farthest.SeenFrom)} only, less than the length of a strike ({format.SeenText(ColourAdvice.StrikeLength)})."),
            ColourReason.Given => format.Say($"Color: {chosen.Name}, as you asked. {seen}{(chosen.Tied ? tied : $"; {farthest.Name} shows from {SeenFrom(advice, farthest, format)}")}."),
            _ => throw new ArgumentOutOfRangeException(nameof(advice), advice.Reason, "Not a reason."),
        };
    }

    // The runner-up of the one that leads.
    private static string Next(ColourAdvice advice, UnitFormat format)
    {
        ColourWorth next = advice.Colours.Where((_, i) => i != advice.Chosen).MaxBy(worth => worth.SeenFrom)!;
        return $"farther than anything else in your box (next: {next.Name}, {SeenFrom(advice, next, format)})";
    }

    private static string Others(ColourAdvice advice)
    {
        string[] others = [.. advice.Tied.Where(i => i != advice.Chosen).Select(i => advice.Colours[i].Name)];
        return others.Length == advice.Colours.Count - 1 && others.Length > 1 ? "the others in your box are" : $"{Grammar.Join(others)} {(others.Length == 1 ? "is" : "are")}";
    }

    private static string Unlike(ColourAdvice advice) => advice.ForageSeen ? $", and none looks like the bait ({advice.Forage})" : "";

    private static string Strategies(ColourAdvice advice, UnitFormat format) => "By strategy, " + string.Join("; ", advice.Strategies.Select(strategy => strategy.Best is { } best
        ? $"{Strategy(strategy.Strategy)}: {advice.Colours[best].Name}, {SeenFrom(advice, advice.Colours[best], format)}"
        : $"{Strategy(strategy.Strategy)}: none in your box")) + ".";

    private static string Strategy(ColourStrategy strategy) => strategy switch
    {
        ColourStrategy.Bright => "bright",
        ColourStrategy.DarkSilhouette => "dark silhouette",
        ColourStrategy.Natural => "nearest to the bait",
        _ => throw new ArgumentOutOfRangeException(nameof(strategy), strategy, "Not a strategy."),
    };

    private static IEnumerable<string> Disagreement(ColourAdvice advice, UnitFormat format)
    {
        PracticeFinding found = advice.Practice;
        string rule = $"The usual rule ({Practice(found.Practice, format)})";
        switch (found.Outcome)
        {
            case PracticeOutcome.Decides:
                yield break;
            case PracticeOutcome.Agrees:
                yield return $"{rule} agrees.";
                break;
            case PracticeOutcome.NotInBox:
                yield return $"{rule} has nothing in your box.";
                break;
            case PracticeOutcome.Parts:
                ColourWorth best = advice.Colours[found.Best!.Value];
                string shows = $"{best.Name} shows from {SeenFrom(advice, best, format)}, {advice.Choice.Name} from {SeenFrom(advice, advice.Choice, format)}";
                yield return advice.Reason switch
                {
                    ColourReason.Likeness => $"{rule} disagrees here: {best.Name}{(best.Tied ? $" shows as far but" : "")} does not look like the bait.",
                    ColourReason.SightDecidesNothing => $"{rule} is about color, and no color is seen here: go by the dark silhouette.",
                    ColourReason.Given => $"{rule} would take {best.Name}.",
                    ColourReason.SeenFarthest or ColourReason.NoRealDifference or ColourReason.OnlyColour => $"{rule} disagrees here: {shows}.",
                    _ => throw new ArgumentOutOfRangeException(nameof(advice), advice.Reason, "Practice cannot part from that."),
                };
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(advice), found.Outcome, "Not an outcome.");
        }
    }

    private static string RedDarkens(ColourFinding colours, UnitFormat format)
    {
        // Deeper than the spot nothing can be shown: the chart ends at the bottom.
        double bottom = colours.Chart.Depths.Max();
        string[] dark = [.. colours.RedDarkens.Where(d => d.Depth <= bottom && !d.CannotTell).OrderBy(d => d.Depth).Select(d => $"{Criterion(d.Criterion)} from {(d.Depth < 0.01 ? "the surface" : format.HandText(d.Depth!.Value))} down")];
        string[] notYet = [.. colours.RedDarkens.Where(d => !(d.Depth <= bottom) && !d.CannotTell).Select(d => Criterion(d.Criterion))];
        string[] unknown = [.. colours.RedDarkens.Where(d => d.CannotTell).Select(d => Criterion(d.Criterion))];
        string[] parts =
        [
            .. dark.Length > 0 ? [Grammar.Join(dark)] : Array.Empty<string>(),
            .. notYet.Length > 0 ? [$"not {Grammar.Join(notYet, "or")} above the bottom"] : Array.Empty<string>(),
            .. unknown.Length > 0 ? [$"{Grammar.Join(unknown)}: its cones are not measured, so we cannot tell"] : Array.Empty<string>(),
        ];
        return $"Red here is {string.Join("; ", parts)}.";
    }

    // How fish look, such as "straight across at it 63% of the time, up at an angle 37%".
    private static string Directions(ColourAdvice advice)
    {
        LookShare[] looks = [.. advice.Looks.Where(look => look.Weight >= Noticeable)];
        return looks.Length == 1
            ? $"{Way(looks[0].Direction)} at it"
            : string.Join(", ", looks.Select((look, i) => $"{Way(look.Direction)}{(i == 0 ? " at it" : "")} {UnitFormat.PercentText(look.Weight)}{(i == 0 ? " of the time" : "")}"));
    }

    private static string Way(ViewDirection direction) => direction switch
    {
        ViewDirection.Up => "straight up",
        ViewDirection.SlantUp => "up at an angle",
        ViewDirection.Down => "down",
        ViewDirection.Level => "straight across",
        _ => throw new ArgumentOutOfRangeException(nameof(direction), direction, "Not a direction."),
    };

    private static string How(SightMode mode) => mode switch
    {
        SightMode.Reflects => "brighter than the water",
        SightMode.MatchesBackground => "by hue alone",
        SightMode.Silhouettes or SightMode.GoneDark => "a dark silhouette",
        _ => throw new ArgumentOutOfRangeException(nameof(mode), mode, "Not a mode."),
    };

    private static string Criterion(DarkCriterion criterion) => criterion switch
    {
        DarkCriterion.LuminanceAgainstWhite => "near black beside white",
        DarkCriterion.Chroma => "without hue",
        DarkCriterion.ContrastToWater => "a dark silhouette against the water",
        DarkCriterion.FishCones => "near black to the fish",
        _ => throw new ArgumentOutOfRangeException(nameof(criterion), criterion, "Not a criterion."),
    };
}
