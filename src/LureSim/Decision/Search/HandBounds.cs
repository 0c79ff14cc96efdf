using LureSim.Data;
using LureSim.Model;

namespace LureSim.Decision.Search;

/// <summary>How far a hand may be varied. Source: Data/tackle/retrieve_hands.csv (common practice, bounds assumed).</summary>
/// <param name="Hand">The hand.</param>
/// <param name="LeastShare">Least value as a multiple of the scenario's own; NaN for none.</param>
/// <param name="MostShare">Greatest value as a multiple of the scenario's own; NaN for none.</param>
/// <param name="Least">Least value (SI); for the angle from the scenario's own.</param>
/// <param name="Most">Greatest value (SI).</param>
/// <param name="Step">What an answer is rounded to (SI).</param>
public sealed record HandBounds(Hand Hand, double LeastShare, double MostShare, double Least, double Most, double Step)
{
    private static readonly Lazy<Dictionary<Hand, HandBounds>> Table = new(() => ReferenceTable.Tackle("retrieve_hands").Rows
        .Select(row => new HandBounds(
            ReferenceWords.Parse<Hand>(row.Text("hand")), row.Number("least_share"), row.Number("most_share"), row.Number("least"), row.Number("most"), row.Number("step")))
        .ToDictionary(row => row.Hand));

    /// <summary>The bounds of a hand.</summary>
    /// <param name="hand">The hand.</param>
    public static HandBounds Of(Hand hand) => Table.Value[hand];

    /// <summary>The bounds of a hand with what the angler has stated in place of the table's.</summary>
    /// <param name="hand">The hand.</param>
    /// <param name="ranges">What the angler has stated.</param>
    /// <exception cref="ArgumentNullException"><paramref name="ranges"/> is null.</exception>
    public static HandBounds Of(Hand hand, HandRanges ranges)
    {
        ArgumentNullException.ThrowIfNull(ranges);
        HandBounds common = Of(hand);
        return ranges.Of(hand) is { } stated ? common with { LeastShare = 0, MostShare = double.PositiveInfinity, Least = stated.Least, Most = stated.Most, IsStated = true } : common;
    }

    /// <summary>True if the angler has stated them: then both ends are tried, and not only a look to either side.</summary>
    public bool IsStated { get; init; }

    /// <summary>Values that are tried about the scenario's own (SI): a look to either side, and stated ends.</summary>
    /// <param name="own">The scenario's own value (SI), above 0.</param>
    /// <param name="sides">Factors of the looks.</param>
    internal IEnumerable<double> Tried(double own, IReadOnlyList<double> sides) =>
        sides.Select(factor => Scaled(own, factor)).Concat(IsStated ? [Least, Most] : []).Distinct();

    /// <summary>The scenario's own value times a factor, inside the bounds and rounded to what a hand can keep.</summary>
    /// <param name="own">The scenario's own value (SI), above 0.</param>
    /// <param name="factor">Factor.</param>
    internal double Scaled(double own, double factor)
    {
        if (factor == 1) return own;
        double least = Math.Min(own, Math.Max(Least, LeastShare * own)), most = Math.Max(own, Math.Min(Most, MostShare * own));
        double rounded = Math.Round(own * factor / Step) * Step;
        return Math.Clamp(rounded, least, most);
    }
}
