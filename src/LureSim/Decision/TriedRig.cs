using LureSim.Decision.Search;
using LureSim.Decision.Trials;

namespace LureSim.Decision;

/// <summary>A rig beside the choice, with the numbers that it is compared by.</summary>
/// <param name="Rig">The rig.</param>
/// <param name="Numbers">Its numbers over the tries, or those of its one run.</param>
/// <param name="Run">A single run of it; null where none was made at the settings of single runs.</param>
/// <param name="IsJudged">True if it ran all that the choice ran, so that its score can stand beside the choice's; false for a rig that was looked at once.</param>
public sealed record TriedRig(Rig Rig, TryNumbers Numbers, Candidate? Run, bool IsJudged)
{
    /// <summary>
    /// Everything that was compared: the choice first, then what ran all tries by falling mean score, then what was looked at once. A head with a lure and a
    /// retrieve has one row, worked as suits it best: two that differ in count, speed or angle alone read the same.
    /// </summary>
    /// <param name="search">The search.</param>
    /// <param name="candidates">Single runs.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<TriedRig> Of(ChoiceSearch search, IReadOnlyList<Candidate> candidates)
    {
        ArgumentNullException.ThrowIfNull(search);
        ArgumentNullException.ThrowIfNull(candidates);
        IEnumerable<TriedRig> tried = search.Finalists.DistinctBy(rig => rig.Rig)
            .Select(rig => new TriedRig(rig.Rig, TryNumbers.Of(rig), candidates.FirstOrDefault(c => c.Rig == rig.Rig), true));
        IEnumerable<TriedRig> once = candidates.DistinctBy(c => c.Rig).Where(c => search.Finalists.All(rig => rig.Rig != c.Rig))
            .Select(c => new TriedRig(c.Rig, TryNumbers.Of([c.Coverage], [c.Score]), c, search.Tries == 1));
        return
        [
            .. tried.Concat(once).OrderByDescending(row => row.Rig == search.First.Rig).ThenByDescending(row => row.IsJudged).ThenByDescending(row => row.Numbers.Score.Mean)
                .DistinctBy(row => (row.Rig.Head, row.Rig.Body, row.Rig.Presentation.Name)),
        ];
    }

    /// <summary>Runs that no search has weighed: the first choice, then the others by falling score.</summary>
    /// <param name="first">The first choice.</param>
    /// <param name="candidates">Single runs.</param>
    internal static IReadOnlyList<TriedRig> Of(Candidate first, IReadOnlyList<Candidate> candidates) =>
    [
        .. candidates.Select(run => new TriedRig(run.Rig, TryNumbers.Of([run.Coverage], [run.Score]), run, true))
            .OrderByDescending(row => row.Rig == first.Rig).ThenByDescending(row => row.Numbers.Score.Mean),
    ];
}
