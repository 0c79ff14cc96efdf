using LureSim.Decision;
using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Says what a tackle box lacks at a spot.</summary>
public static class BoxWords
{
    /// <summary>What is worth adding.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="first">The first choice.</param>
    /// <param name="bodies">The lures as the rules rank them.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Sentences(BoxAdvice advice, Candidate first, BodyChoice bodies, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(bodies);
        var format = new UnitFormat(units);
        List<string> sentences =
        [
            advice.Gap is { } gap
                ? $"Worth adding: {Grammar.Article(format.HeadText(gap.Candidate.Rig.Head))} head ({Against(gap.Candidate.Coverage, first.Coverage)})."
                : advice.NoneHolds
                    ? $"None of your heads holds bottom here{(advice.HoldingSize is { } size ? $"; {format.Weight(size)} would" : "")}, but none would fish clearly better either."
                    : "Your weights cover this spot: nothing you're missing would do clearly better.",
        ];
        if (advice.LacksBody)
            sentences.Add($"Worth adding: {BodyWords.Wish(bodies, format)}, closer to what fish eat here.");
        return sentences;
    }

    private static string Against(Coverage c, Coverage first)
    {
        string text = $"{UnitFormat.PercentText(c.ZoneShare)} in the zone instead of {UnitFormat.PercentText(first.ZoneShare)}";
        if (first.GrassShare - c.GrassShare > TrialVerdicts.Noticeable)
            text += $", {UnitFormat.PercentText(c.GrassShare)} in grass instead of {UnitFormat.PercentText(first.GrassShare)}";
        if (first.BottomShare - c.BottomShare > TrialVerdicts.Noticeable)
            text += $", {UnitFormat.PercentText(c.BottomShare)} on bottom instead of {UnitFormat.PercentText(first.BottomShare)}";
        return text;
    }
}
