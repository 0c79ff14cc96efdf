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

    /// <summary>What was chosen, on what ground, from where fish look, and where practice agrees or parts.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="fish">Name of the fish.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Sentences(ColourAdvice advice, string fish, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(fish);
        var format = new UnitFormat(units);
        ColourWorth chosen = advice.Colours[advice.Chosen], nearest = advice.Colours[advice.Nearest], farthest = advice.Colours[advice.Farthest];
        string forage = $"{advice.Forage} forage{(advice.ForageSeen ? "" : " (none was named; this is the usual one for the body)")}";
        string where = advice.Depths.Count > 1
            ? $"{format.Length.Number(advice.Depths[0].Depth)} to {format.Length.Text(advice.Depths[^1].Depth)}"
            : format.Length.Text(advice.Depths[0].Depth);
        string reason = advice.Ground switch
        {
            ColourGround.NaturalMatch => $"Colour: {chosen.Name}. Where the lure runs ({where}) {Grammar.Article(fish)} makes it out at {format.Length.Text(chosen.Distance)}, {Compared(chosen, farthest, advice.Reach, format)}, so the nearest to the {forage} wins: it differs by {Steps(chosen)}{Against(chosen, farthest)}.",
            ColourGround.Brightness => $"Colour: {chosen.Name}, for its brightness. {Visible()}",
            ColourGround.Silhouette => $"Colour: {chosen.Name}, for its dark shape. {Visible()}",
            ColourGround.Unseen => $"Colour: where the lure runs ({where}) {Grammar.Article(fish)} makes out no colour of this box by sight; noise and scent decide.",
            _ => throw new ArgumentOutOfRangeException(nameof(advice), advice.Ground, "Not a ground."),
        };
        string practice = Practice(advice.Practice);
        return
        [
            reason,
            $"Fish in the strike zone see it {Directions(advice)}.",
            advice.PracticeAgrees switch
            {
                true => $"Common practice takes {practice}: it agrees.",
                false when advice.Ground == ColourGround.NaturalMatch => $"Common practice takes {practice}. Computed, the match is still made out far enough here, so practice and computation part.",
                false => $"Common practice takes {practice}. Computed, {chosen.Name} carries farther here, so practice and computation part.",
                null => $"Common practice takes {practice}; the box has none of those.",
            },
            .. advice.Certainty == EyeCertainty.CannotTell ? [CannotTell()] : Array.Empty<string>(),
        ];

        string CannotTell()
        {
            IEnumerable<string> others = advice.ChosenAtEnds.Where(index => index != advice.Chosen).Distinct().Select(index => advice.Colours[index].Name);
            return $"The cones of {Grammar.Article(fish)} are not measured: within the peaks that they may have, {Grammar.Join([.. others])} would be taken as well. Which of them cannot be told.";
        }

        string Visible()
        {
            string best = farthest.Name == chosen.Name ? "no colour of the box farther" : $"the best, {farthest.Name}, at {format.Length.Text(farthest.Distance)}";
            return $"Where the lure runs ({where}) {Grammar.Article(fish)} makes it out at {format.Length.Text(chosen.Distance)}, {best}. {Grammar.Capital(nearest.Name)} would be nearest to the {forage}, but is made out at {format.Length.Text(nearest.Distance)} only; "
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
        var format = new UnitFormat(units);
        return $"{Grammar.Capital(parts.Pattern.Name)}: its parts {How(parts.ToPerson, parts.Person)} to a person, {How(parts.ToFish, parts.Fish)} in colour to {Grammar.Article(fish)}.";

        string How(PartsApart state, double? depth) => state switch
        {
            PartsApart.OneColour => "are of one colour",
            PartsApart.ToADepth when depth is 0.0 => "are alike from the surface on",
            PartsApart.ToADepth => $"look alike from {format.Length.Text(depth!.Value)} on",
            PartsApart.AsDeepAsThereIsLight => $"stay apart to {format.Length.Text(parts.DeepestSearched)} and beyond",
            _ => throw new ArgumentOutOfRangeException(nameof(parts), state, "Unknown state."),
        };
    }

    /// <summary>The colour to use and why in one sentence, for the card; null if there is no colour.</summary>
    /// <param name="finding">What was found about the colours.</param>
    /// <param name="units">Units of the sentence.</param>
    /// <exception cref="ArgumentNullException"><paramref name="finding"/> is null.</exception>
    public static (string Name, string Reason)? Choice(ColourFinding finding, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ColourChart here = finding.AtRunningDepth;
        if (here.Colours.Count == 0)
            return null;

        var format = new UnitFormat(units);
        string depth = format.LengthText(finding.RunningDepth);
        Sighting level = finding.SeenLevel[0], below = finding.SeenFromBelow[0];
        if (finding.Advice is { } advice)
            return (advice.Colours[advice.Chosen].Name, Ground(advice, format));

        string reason = level.Distance > 0
            ? $"Made out farthest by the {finding.Eye.CommonName} looking level at {depth}: {format.LengthText(level.Distance)}."
            : $"No colour of the box is made out at {depth}; this one is brightest.";
        if (here.Colours.Count > 1 && below.Name != level.Name && below.Distance > 0)
            reason += $" {Grammar.Capital(below.Name)} gives the strongest silhouette from below.";
        return (here.Colours[level.Distance > 0 ? finding.Chosen : finding.Brightest].Name, reason);
    }

    /// <summary>What the colours look like where the lure runs, and where red goes dark.</summary>
    /// <param name="colours">What was found.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="colours"/> is null.</exception>
    public static IEnumerable<string> Seen(ColourFinding colours, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(colours);
        var format = new UnitFormat(units);
        ColourChart here = colours.AtRunningDepth;
        string depth = format.Length.Text(colours.RunningDepth);
        Sighting first = colours.SeenLevel[0];
        string fish = $"{Grammar.Article(colours.Eye.CommonName)}{(colours.Eye.Basis == EyeBasis.StandIn ? " (by a stand-in eye)" : "")}";
        if (first.Distance > 0)
        {
            IEnumerable<string> next = colours.SeenLevel.Skip(1).Take(2).Where(x => x.Distance > 0).Select(x => $"{x.Name} {format.Length.Text(x.Distance)}");
            string others = string.Join(", ", next);
            string end = colours.SeenLevel[^1] is { } last && last != first
                ? last.Distance > 0 ? $"; {last.Name} is made out last, at {format.Length.Text(last.Distance)}" : $"; {last.Name} is not made out at all"
                : "";
            yield return $"At {depth}, looking level, {fish} makes out {first.Name} farthest, {How(first)}: {format.Length.Text(first.Distance)}{(others.Length > 0 ? $" (then {others})" : "")}{end}.";
        }
        else
        {
            yield return $"At {depth} {fish} makes out no colour of this box by sight, looking level.";
        }

        if (colours.SeenFromBelow[0].Distance > 0)
            yield return $"From below every lure is darker than the light above it; {colours.SeenFromBelow[0].Name} makes the strongest silhouette.";
        string[] gone = [.. Enumerable.Range(0, here.Colours.Count).Where(i => here[0, i].Word is ColourWord.NearBlack or ColourWord.Unseen).Select(i => here.Colours[i].Name)];
        if (gone.Length > 0)
            yield return $"To a person's eye {Grammar.Join(gone)} {(gone.Length == 1 ? "is" : "are")} near black there.";
        yield return RedDarkens(colours, format);
    }

    /// <summary>The colour in murkier and clearer water, in one sentence.</summary>
    /// <param name="spread">What the spread of the clarity makes of the colours.</param>
    /// <param name="units">Units of the sentence.</param>
    /// <exception cref="ArgumentNullException"><paramref name="spread"/> is null.</exception>
    public static string Clarity(ClaritySpread spread, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(spread);
        DisplayUnit length = new UnitFormat(units).Length;
        ClarityCase murky = spread.Murky, middle = spread.Middle, clear = spread.Clear;
        string range = $"With a Secchi depth of {length.Number(murky.SecchiDepth)} to {length.Text(clear.SecchiDepth)} (eight draws of ten)";
        return spread.ColourHolds
            ? $"{range} {middle.Colour} stays the colour made out farthest, at {length.Number(murky.Distance)} to {length.Text(clear.Distance)}."
            : $"{range} the colour made out farthest changes: {murky.Colour} in the murkiest ({length.Text(murky.Distance)}), {middle.Colour} as given ({length.Text(middle.Distance)}), {clear.Colour} in the clearest ({length.Text(clear.Distance)}).";
    }

    /// <summary>What common practice takes.</summary>
    /// <param name="practice">The practice.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no practice.</exception>
    public static string Practice(ColourPractice practice) => practice switch
    {
        ColourPractice.NaturalInClear => "natural colours in clear water",
        ColourPractice.BrightInMurky => "white or chartreuse, or another bright colour, in murky water",
        ColourPractice.DarkInDim => "a dark lure in dim light, for its silhouette",
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
            DarkCriterion.FishCones => $"dark to the cones of a {eye.CommonName}{(eye.Basis == EyeBasis.StandIn ? " (stand-in eye)" : "")}",
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

    // One sentence; the section on colours has the rest.
    private static string Ground(ColourAdvice advice, UnitFormat format)
    {
        ColourWorth chosen = advice.Colours[advice.Chosen];
        return advice.Ground switch
        {
            ColourGround.NaturalMatch => $"Nearest to {advice.Forage} forage, and made out far enough: {format.LengthText(chosen.Distance)}.",
            ColourGround.Brightness => $"For its brightness: made out at {format.LengthText(chosen.Distance)}.",
            ColourGround.Silhouette => $"For its dark shape: made out at {format.LengthText(chosen.Distance)}.",
            ColourGround.Unseen => "No colour of the box is made out there by sight.",
            _ => throw new ArgumentOutOfRangeException(nameof(advice), advice.Ground, "Not a ground."),
        };
    }

    private static string RedDarkens(ColourFinding colours, UnitFormat format)
    {
        // Deeper than the spot nothing can be shown: the chart ends at the bottom.
        double bottom = colours.Chart.Depths.Max();
        string[] deeper = [.. colours.RedDarkens.Where(d => d.Depth > bottom).Select(d => Criterion(d.Criterion))];
        string[] dark = [.. colours.RedDarkens.Where(d => d.Depth <= bottom).Select(d => $"{Criterion(d.Criterion)} {(d.Depth < 0.01 ? "from the surface on" : $"at {format.Length.Text(d.Depth!.Value)}")}")];
        string[] never = [.. colours.RedDarkens.Where(d => d.Depth is null).Select(d => Criterion(d.Criterion))];
        string unknown = colours.RedDarkens.Any(d => d.CannotTell) ? " To the cones of the fish it cannot be told within the peaks that they may have." : "";
        if (dark.Length == 0)
        {
            string until = deeper.Length == 0 ? "before all light is gone" : never.Length == 0 ? "before the bottom" : "before the bottom, or before all light is gone";
            return $"Red does not go dark in this water {until}.{unknown}";
        }

        return $"Red goes dark in this water {Grammar.Join(dark)}"
            + (deeper.Length > 0 ? $"; {Grammar.Join(deeper)} not before the bottom" : "")
            + (never.Length > 0 ? $"; {Grammar.Join(never)} not before all light is gone" : "") + $".{unknown}";
    }

    // Where fish look from, such as "level (63 %) and from below at a slant (37 %)".
    private static string Directions(ColourAdvice advice) =>
        Grammar.Join(advice.Looks.Where(look => look.Weight >= Noticeable).Select(look => $"{From(look.Direction)} ({UnitFormat.Share.Text(look.Weight)})"));

    private static string From(ViewDirection direction) => direction switch
    {
        ViewDirection.Up => "from below",
        ViewDirection.SlantUp => "from below at a slant",
        ViewDirection.Down => "from above",
        ViewDirection.Level => "level",
        _ => throw new ArgumentOutOfRangeException(nameof(direction), direction, "Not a direction."),
    };

    private static string How(Sighting sighting) => sighting.Mode switch
    {
        SightMode.Reflects => sighting.Channel == SightChannel.ConeColour ? "by its colour" : "as a bright shape",
        SightMode.MatchesBackground => "by its colour",
        SightMode.Silhouettes or SightMode.GoneDark => "as a dark shape",
        _ => throw new ArgumentOutOfRangeException(nameof(sighting), sighting.Mode, "Not a mode."),
    };

    private static string Criterion(DarkCriterion criterion) => criterion switch
    {
        DarkCriterion.LuminanceAgainstWhite => "to a person beside white",
        DarkCriterion.Chroma => "in hue",
        DarkCriterion.ContrastToWater => "against the water behind it",
        DarkCriterion.FishCones => "to the cones of the fish",
        _ => throw new ArgumentOutOfRangeException(nameof(criterion), criterion, "Not a criterion."),
    };

    // Farther than it will come counts as no farther.
    private static string Compared(ColourWorth chosen, ColourWorth farthest, double reach, UnitFormat format) =>
        chosen.Name == farthest.Name ? "farther than any other colour of the box"
        : chosen.Distance >= reach ? "farther than it will come for a lure"
        : $"nearly as far as the best for that, {farthest.Name} ({format.Length.Text(farthest.Distance)})";

    private static string Steps(ColourWorth worth) => $"{UnitFormat.Fixed(worth.DifferenceToForage, 0)} just-noticeable steps";

    private static string Against(ColourWorth chosen, ColourWorth farthest) =>
        farthest.Name == chosen.Name ? "" : $", {farthest.Name} by {UnitFormat.Fixed(farthest.DifferenceToForage, 0)}";
}
