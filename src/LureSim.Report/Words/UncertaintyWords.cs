using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>How sure a choice is, in plain sentences.</summary>
public static class UncertaintyWords
{
    // Chances below this are not worth a clause.
    private const double Noticeable = 0.05;
    private const double OftenFouled = 0.1;

    /// <summary>The sentences.</summary>
    /// <param name="study">The study.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="study"/> is null.</exception>
    public static IReadOnlyList<string> Sentences(UncertaintyStudy study, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(study);
        if (study.IsExact) return [];
        var format = new UnitFormat(units);
        HeadUncertainty best = study.Best;
        List<string> sentences = [Confidence(study, format)];
        Interval zone = best.ZoneShare;
        string expect = $"With those varied, expect {format.HeadText(best.Head)} in the strike zone {UnitFormat.PercentText(zone.Low)} to {UnitFormat.PercentText(zone.High)} of the retrieve (8 times in 10).";
        if (best.ReachesZone < 1) expect += $" In {Tries(1 - best.ReachesZone, study)} it never gets there.";
        if (best.Drivers.Decisive is { } driver)
            expect += $" The {Name(driver.Input)} matters most: {Direction(driver.Input, driver.RankCorrelation > 0 ? "more time in the zone" : "less time in the zone")}.";
        sentences.Add(expect);
        if (best.Fouls >= OftenFouled) sentences.Add($"In {Tries(best.Fouls, study)} it picks up grass.");
        int failed = study.Heads.Sum(h => h.Failed);
        if (failed > 0) sentences.Add($"{failed} of {study.Draws.Count * study.Heads.Count} runs could not be computed; they count as never in the zone.");
        return sentences;
    }

    /// <summary>A typical figure with its range, as "71% (37 to 90)"; the figure alone where they do not differ when written.</summary>
    /// <param name="interval">The figure over the tries.</param>
    /// <param name="unit">Its unit.</param>
    /// <param name="marked">True to write the unit behind the typical figure.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    public static string Band(Interval interval, DisplayUnit unit, bool marked = false)
    {
        ArgumentNullException.ThrowIfNull(interval);
        ArgumentNullException.ThrowIfNull(unit);
        string typical = marked ? unit.Text(interval.Median) : unit.Number(interval.Median), low = unit.Number(interval.Low), high = unit.Number(interval.High);
        return low == high ? typical : $"{typical} ({low} to {high})";
    }

    /// <summary>How often the best head came out best, for a card; nothing where all is known.</summary>
    /// <param name="study">The study.</param>
    /// <exception cref="ArgumentNullException"><paramref name="study"/> is null.</exception>
    public static string BestIn(UncertaintyStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        if (study.IsExact) return "";
        return study.NoneBest >= 1 - 1e-9 ? $"no head reaches the zone in any of {study.Draws.Count} tries" : $"best in {Tries(study.Best.ChanceBest, study)}";
    }

    /// <summary>What to check first at the water; empty where nothing stands out.</summary>
    /// <param name="study">The study.</param>
    /// <exception cref="ArgumentNullException"><paramref name="study"/> is null.</exception>
    public static string CheckFirst(UncertaintyStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return (study.ChoiceDrivers.Decisive ?? study.Best.Drivers.Decisive) is { } driver ? $"check the {Name(driver.Input)} first" : "";
    }

    /// <summary>A share of the tries as a count: "23 of 24 tries".</summary>
    /// <param name="share">The share.</param>
    /// <param name="study">The study.</param>
    /// <exception cref="ArgumentNullException"><paramref name="study"/> is null.</exception>
    public static string Tries(double share, UncertaintyStudy study)
    {
        ArgumentNullException.ThrowIfNull(study);
        return $"{UnitFormat.Number(share * study.Draws.Count, 0)} of {study.Draws.Count} tries";
    }

    /// <summary>An input, for sentences and axes.</summary>
    /// <param name="input">The input.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no input.</exception>
    public static string Name(UncertainInput input) => input switch
    {
        UncertainInput.Current => "current",
        UncertainInput.Cast => "length of the cast",
        UncertainInput.RetrieveSpeed => "reel speed",
        UncertainInput.Depth => "depth",
        UncertainInput.RodHeight => "height of the rod tip",
        UncertainInput.LineDrag => "drag of the line",
        UncertainInput.LureDrag => "drag of the lure",
        UncertainInput.LineLaw => "way the line's drag is computed",
        _ => throw new ArgumentOutOfRangeException(nameof(input), input, "Not an input."),
    };

    // How often which head is best, and what decides, in one sentence.
    private static string Confidence(UncertaintyStudy study, UnitFormat format)
    {
        const string varied = "with the current, cast, speed and depth varied as far as they may be off";
        HeadUncertainty best = study.Best;
        HeadUncertainty[] others = [.. study.Heads.Where(h => h != best && h.ChanceBest >= Noticeable).OrderByDescending(h => h.ChanceBest)];
        if (study.NoneBest >= 1 - 1e-9)
            return $"No head in your box gets into the zone in any of {study.Draws.Count} tries {varied}.";
        string text = $"{format.HeadText(best.Head)} came out best in {Tries(best.ChanceBest, study)} {varied}";
        if (others.Length > 0)
            text += $"; {Grammar.Join(others.Select(h => $"{format.HeadText(h.Head)} in {UnitFormat.Number(h.ChanceBest * study.Draws.Count, 0)}"))}";
        if (study.NoneBest >= Noticeable)
            text += $"; in {UnitFormat.Number(study.NoneBest * study.Draws.Count, 0)} no head reaches the zone";
        if (others.Length > 0 && others[0].ChanceBest > best.ChanceBest)
            text += $". {format.HeadText(best.Head)} stays the choice: it loses less where it is not best";
        return others.Length > 0 && study.ChoiceDrivers.Decisive is { } driver
            ? $"{text}. The {Name(driver.Input)} decides: {Direction(driver.Input, driver.RankCorrelation > 0 ? "a heavier head" : "a lighter head")}."
            : text + ".";
    }

    private static string Direction(UncertainInput input, string effect) => input switch
    {
        UncertainInput.Current => $"more current, {effect}",
        UncertainInput.Cast => $"a longer cast, {effect}",
        UncertainInput.RetrieveSpeed => $"faster reeling, {effect}",
        UncertainInput.Depth => $"deeper water, {effect}",
        UncertainInput.RodHeight => $"a higher rod, {effect}",
        UncertainInput.LineDrag => $"more drag on the line, {effect}",
        UncertainInput.LureDrag => $"more drag on the lure, {effect}",
        UncertainInput.LineLaw => $"computed the other way, {effect}",
        _ => throw new ArgumentOutOfRangeException(nameof(input), input, "Not an input."),
    };
}
