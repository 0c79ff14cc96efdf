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
        var sentences = new List<string> { Confidence(study, format) };
        HeadUncertainty best = study.Best;
        Interval zone = best.ZoneShare;
        string zoneText = $"Over {study.Draws.Count} draws of what is not known well, {format.HeadText(best.Head)} is in the zone {UnitFormat.Share.Text(zone.Median)} of the retrieve, and in eight draws of ten between {UnitFormat.Share.Text(zone.Low)} and {UnitFormat.Share.Text(zone.High)}.";
        if (best.ReachesZone < 1) zoneText += $" In {OutOfTen(1 - best.ReachesZone)} of 10 it never gets there.";
        if (best.Drivers.Decisive is { } driver)
            zoneText += $" Most of that spread comes from the {Name(driver.Input)}: {Direction(driver.Input, driver.RankCorrelation > 0 ? "longer in the zone" : "shorter in the zone")}.";
        sentences.Add(zoneText);
        if (best.Fouls >= OftenFouled) sentences.Add($"In {OutOfTen(best.Fouls)} of 10 draws it collects grass.");
        int failed = study.Heads.Sum(h => h.Failed);
        if (failed > 0) sentences.Add($"{failed} of {study.Draws.Count * study.Heads.Count} runs could not be computed; they count as never in the zone.");
        return sentences;
    }

    /// <summary>An input, for sentences and axes.</summary>
    /// <param name="input">The input.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no input.</exception>
    public static string Name(UncertainInput input) => input switch
    {
        UncertainInput.Current => "current",
        UncertainInput.Cast => "length of the cast",
        UncertainInput.RetrieveSpeed => "retrieve speed",
        UncertainInput.Depth => "depth of the water",
        UncertainInput.RodHeight => "height of the rod tip",
        UncertainInput.LineDrag => "drag of the line",
        UncertainInput.LureDrag => "drag of the lure",
        UncertainInput.LineLaw => "drag law of the line",
        _ => throw new ArgumentOutOfRangeException(nameof(input), input, "Not an input."),
    };

    // How often which head is best, and what decides, in one sentence.
    private static string Confidence(UncertaintyStudy study, UnitFormat format)
    {
        HeadUncertainty best = study.Best;
        HeadUncertainty[] others = [.. study.Heads.Where(h => h != best && h.ChanceBest >= Noticeable).OrderByDescending(h => h.ChanceBest)];
        string first = study.NoneBest >= 1 - 1e-9 ? "No head of this box gets into the zone in any draw" : $"{format.HeadText(best.Head)} is best in {OutOfTen(best.ChanceBest)} of 10 draws";
        string rest = others.Length == 0 ? "" : "; " + string.Join(", ", others.Select(h => $"{format.HeadText(h.Head)} in {OutOfTen(h.ChanceBest)}"));
        if (others.Length > 0 && others[0].ChanceBest > best.ChanceBest)
            rest += $". {format.HeadText(best.Head)} stays the choice because its mean score is higher: it loses less where it is not best";
        string none = study.NoneBest >= Noticeable && study.NoneBest < 1 - 1e-9 ? $"; no head reaches the zone in {OutOfTen(study.NoneBest)}" : "";
        string decides = others.Length > 0 && study.ChoiceDrivers.Decisive is { } driver
            ? $". The {Name(driver.Input)} decides: {Direction(driver.Input, driver.RankCorrelation > 0 ? "a heavier head" : "a lighter head")}."
            : ".";
        return first + rest + none + decides;
    }

    private static string Direction(UncertainInput input, string effect) => input switch
    {
        UncertainInput.Current => $"more current, {effect}",
        UncertainInput.Cast => $"a longer cast, {effect}",
        UncertainInput.RetrieveSpeed => $"a faster retrieve, {effect}",
        UncertainInput.Depth => $"deeper water, {effect}",
        UncertainInput.RodHeight => $"a higher rod, {effect}",
        UncertainInput.LineDrag => $"more drag on the line, {effect}",
        UncertainInput.LureDrag => $"more drag on the lure, {effect}",
        UncertainInput.LineLaw => $"with the second law, {effect}",
        _ => throw new ArgumentOutOfRangeException(nameof(input), input, "Not an input."),
    };

    // Tenths, without saying none or all where it is not.
    private static string OutOfTen(double share)
    {
        double tenths = Math.Round(10 * share);
        return tenths == 0 && share > 0 ? "less than 1" : tenths == 10 && share < 1 ? "more than 9" : UnitFormat.Fixed(tenths, 0);
    }
}
