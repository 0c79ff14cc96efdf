using LureSim.Decision.Baits;
using LureSim.Decision.Colours;
using LureSim.Decision.Inverse;
using LureSim.Decision.Observations;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;

namespace LureSim.Decision;

/// <summary>The answer to a scenario.</summary>
/// <param name="Scenario">The question.</param>
/// <param name="Candidates">The choice with every head of the box, worked the same way; then the second choice, and of every bait with every presentation the best of the first look.</param>
/// <param name="Choice">The recommendation.</param>
/// <param name="FallTable">Count-down table.</param>
/// <param name="Grid">Share in the zone by head and retrieve speed, for the chosen presentation.</param>
/// <param name="Colours">Colours.</param>
public sealed record Plan(
    Scenario Scenario,
    IReadOnlyList<Candidate> Candidates,
    Choice Choice,
    FallTable FallTable,
    CoverageGrid Grid,
    ColourFinding Colours)
{
    /// <summary>How the first choice swims, and what to mend; null where it was not computed.</summary>
    public RigFocus? RigCheck { get; init; }

    /// <summary>All heads of the chosen presentation over draws of what is not known well; null if no draws were asked for.</summary>
    public UncertaintyStudy? Uncertainty { get; init; }

    /// <summary>The colours in murkier and clearer water; null if the clarity is known, or was not given by a Secchi depth.</summary>
    public ClaritySpread? Clarity { get; init; }

    /// <summary>Questions asked backwards: the head that holds the bottom, and speed and count-down for the first choice.</summary>
    public IReadOnlyList<InverseAnswer> Answers { get; init; } = [];

    /// <summary>The choice of the body, or null where it was not asked for.</summary>
    public BodyChoice? Body { get; init; }

    /// <summary>Ranking of the tackle box, or null where it was not asked for.</summary>
    public BoxAdvice? Box { get; init; }

    /// <summary>What observations did to the choice; null where there were none. The scenario of the plan is then the calibrated one.</summary>
    public CalibratedChoice? Seen { get; init; }

    /// <summary>What to look at next, the most telling first; empty where nothing would change the choice.</summary>
    public IReadOnlyList<NextLook> LookNext { get; init; } = [];

    /// <summary>Everything that was compared, by the numbers of the tries, the choice first; by those of its single runs for a plan that was not sought.</summary>
    public IReadOnlyList<TriedRig> Compared { get => field ?? TriedRig.Of(Choice.First, Candidates); init; }

    /// <summary>The candidates of the chosen presentation, one a jig head: what the side view draws.</summary>
    public IReadOnlyList<Candidate> OfChosenPresentation =>
        [.. Candidates.Where(c => Choice.SameWay(c.Rig, Choice.First.Rig)).DistinctBy(c => c.Rig.Head)];
}
