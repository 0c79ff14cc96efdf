using LureSim.Decision;
using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Puts the ranking of a tackle box into words.</summary>
public static class BoxWords
{
    /// <summary>The gaps of the box.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="first">The first choice.</param>
    /// <param name="bodies">The bodies as the rules rank them.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Sentences(BoxAdvice advice, Candidate first, BodyChoice bodies, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(bodies);
        var format = new UnitFormat(units);
        var sentences = new List<string>();
        string Label(Candidate c) => format.HeadText(c.Rig.Head);
        if (advice.Gap is { } gap)
            sentences.Add($"Gap in the box: a {Label(gap.Candidate)} head would {Against(gap.Candidate.Coverage, first.Coverage)} with the {Label(first)} head, fished the same way.");
        else if (advice.Missing.Count > 0)
            sentences.Add($"No gap in the weights: of the common sizes that the box lacks ({Grammar.Join(advice.Missing.Select(m => Label(m.Candidate)))}) none would beat {Label(first)} here by a real margin.");
        else
            sentences.Add("No gap in the weights: the box has every common size near the first choice that this line can cast.");
        if (advice.LacksBody)
            sentences.Add($"Gap in the bodies: {BodyWords.Wish(bodies, format)} would answer what the fish are likely to eat.");
        return sentences;
    }

    private static string Against(Coverage c, Coverage first)
    {
        string text = $"hold the zone {UnitFormat.Share.Text(c.ZoneShare)} of the retrieve against {UnitFormat.Share.Text(first.ZoneShare)}";
        if (first.GrassShare - c.GrassShare > TrialVerdicts.Noticeable)
            text += $", and be in the grass {UnitFormat.Share.Text(c.GrassShare)} against {UnitFormat.Share.Text(first.GrassShare)}";
        if (first.BottomShare - c.BottomShare > TrialVerdicts.Noticeable)
            text += $", and touch bottom {UnitFormat.Share.Text(c.BottomShare)} against {UnitFormat.Share.Text(first.BottomShare)}";
        return text;
    }
}
