using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;

namespace LureSim.Decision.Search;

/// <summary>
/// The choice of a box: soft bait, head, presentation and what the hands are free to do in it, sought together. The objective is the mean score over the tries, with
/// the same random numbers for every rig. Rigs are looked at once by coarse runs; those that may still be the best go on to more tries, fewer of them each time (successive halving: Jamieson
/// and Talwalkar 2016, jamieson2016nonstochastic; optimal allocation of a computing budget: Chen et al. 2000, chen2000simulation; bounds and rungs as in Li et al. 2018, li2018hyperband). Of scores that differ by less than
/// the model knows the lightest head and the simplest retrieve wins (<see cref="Preference"/>).
/// </summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="Bodies">What the rules of season, forage and fish want.</param>
/// <param name="First">The choice.</param>
/// <param name="Finalists">The rigs that ran all tries, the choice first, then by falling value.</param>
/// <param name="Heads">The choice with every head of the box, worked the same way, in the order of the box; sink counts that aim at the zone follow the head.</param>
/// <param name="FirstLook">Every bait with every presentation and the heads near the best of them, run once, coarsely: a sink count that is free follows the strike zone.</param>
/// <param name="Draws">The tries of the choice.</param>
/// <param name="Considered">Rigs that were run, variations of the hands counted.</param>
/// <param name="Runs">Casts simulated.</param>
public sealed record ChoiceSearch(
    Scenario Scenario,
    BodyChoice Bodies,
    SearchedRig First,
    IReadOnlyList<SearchedRig> Finalists,
    IReadOnlyList<Rig> Heads,
    IReadOnlyList<Candidate> FirstLook,
    IReadOnlyList<UncertainDraw> Draws,
    int Considered,
    int Runs)
{
    /// <summary>Longest fall that is counted down (s).</summary>
    internal const double LongestCount = 60;

    /// <summary>Tries behind the numbers; 1 where everything is known.</summary>
    public int Tries => First.Scores.Count;

    /// <summary>Searches.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="options">Settings; null for the defaults.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads. Null for all threads.</param>
    /// <param name="progress">Told the share of the work done, from several threads.</param>
    /// <exception cref="ArgumentNullException"><paramref name="scenario"/> is null.</exception>
    /// <exception cref="ArgumentException">What the choice is held to is not in the scenario.</exception>
    /// <exception cref="OperationCanceledException">The search was cancelled.</exception>
    public static ChoiceSearch Find(Scenario scenario, ChoiceSearchOptions? options = null, ParallelOptions? parallel = null, IProgress<double>? progress = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        return new ChoiceRace(scenario, options ?? new ChoiceSearchOptions(), parallel ?? new ParallelOptions(), progress).Run();
    }

    /// <summary>The best rig of another head or another bait; null where there is none.</summary>
    public SearchedRig? RunnerUp => Finalists.Where(rig => rig.Rig.Head != First.Rig.Head || rig.Rig.Body != First.Rig.Body).MaxBy(rig => rig.Value);

    /// <summary>Rules and runs together.</summary>
    public BaitOutcome Bait => BaitPick.Outcome(First, Finalists, Scenario, Bodies);
}
