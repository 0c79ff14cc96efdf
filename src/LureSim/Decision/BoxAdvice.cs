using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Stepping;

namespace LureSim.Decision;

/// <summary>A jig head of the box at its best here.</summary>
/// <param name="Best">Its best candidate with the chosen body.</param>
public sealed record HeadRank(Candidate Best);

/// <summary>A common weight that the box lacks, tried here.</summary>
/// <param name="Candidate">The weight with the body and the presentation of the first choice.</param>
/// <param name="Gain">Score above the first choice's; below 0 it is worse.</param>
public sealed record MissingHead(Candidate Candidate, double Gain);

/// <summary>Ranking of a tackle box for a spot, and the gap worth filling.</summary>
/// <param name="Heads">The jig heads owned, best first.</param>
/// <param name="Bodies">The bodies owned, best first.</param>
/// <param name="Missing">Common weights that were tried, light to heavy.</param>
/// <param name="Gap">The missing weight that beats the first choice by a real margin; null where none does.</param>
/// <param name="LacksBody">True if a loud rule asks for a body that the box does not have.</param>
public sealed record BoxAdvice(IReadOnlyList<HeadRank> Heads, IReadOnlyList<BodyFit> Bodies, IReadOnlyList<MissingHead> Missing, MissingHead? Gap, bool LacksBody)
{
    /// <summary>True if the fish are on the bottom and no head of the box holds it, where one on sale would.</summary>
    public bool NoneHolds { get; init; }

    /// <summary>The lightest size on sale that holds the bottom (kg); null where it was not asked, or none does.</summary>
    public double? HoldingSize { get; init; }

    /// <summary>True if nothing that the box lacks would do clearly better.</summary>
    public bool Covers => Gap is null && !NoneHolds;

    /// <summary>Gain of score that is worth buying a head for: less is within what the inputs can tell (assumed).</summary>
    public const double RealMargin = 0.08;

    // Sizes on sale everywhere (common practice), in ounces.
    private static readonly (double Ounces, string Label)[] Common =
    [
        (1.0 / 16, "1/16 oz"), (1.0 / 8, "1/8 oz"), (3.0 / 16, "3/16 oz"), (1.0 / 4, "1/4 oz"), (3.0 / 8, "3/8 oz"), (1.0 / 2, "1/2 oz"),
        (5.0 / 8, "5/8 oz"), (3.0 / 4, "3/4 oz"), (1, "1 oz"), (1.5, "1 1/2 oz"), (2, "2 oz"), (3, "3 oz"),
    ];

    // Weights nearer than this to one that is owned are not missing.
    private const double SameWeight = 0.06;

    // Rules quieter than season and cold water are too weak to buy a body for.
    private const double LoudRule = 9;

    // Missing sizes tried on each side of the first choice.
    private const int Reach = 3;

    /// <summary>The missing common sizes nearest to the first choice on either side, as far as the line can cast them.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="first">The first choice.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<JigHead> MissingSizes(Scenario scenario, Rig first)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(first);
        TackleBox tackle = scenario.Tackle;
        double weakest = Math.Min(tackle.Line.Strength, tackle.Leader?.Strength ?? double.PositiveInfinity);
        double body = first.Body.Kind.Mass(first.Body);
        double heaviest = CastLoad.MostMass(weakest) - body - first.Head.HookMass;
        JigHead[] missing =
        [
            .. Common
                .Select(size => new JigHead(size.Ounces * PhysicalConstants.Ounce, HeadMetal.Lead, first.Head.HookMass, size.Label))
                .Where(head => head.Mass <= heaviest && tackle.JigHeads.All(owned => Math.Abs(owned.Mass - head.Mass) > SameWeight * head.Mass)),
        ];
        return
        [
            .. missing.Where(head => head.Mass < first.Head.Mass).TakeLast(Reach),
            .. missing.Where(head => head.Mass > first.Head.Mass).Take(Reach),
        ];
    }

    /// <summary>Ranks the box from simulated candidates.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="first">The first choice.</param>
    /// <param name="candidates">All candidates of the box.</param>
    /// <param name="bodies">The bodies as the rules rank them.</param>
    /// <param name="tried">Missing sizes, simulated with the body and the presentation of the first choice.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static BoxAdvice Of(Scenario scenario, Candidate first, IReadOnlyList<Candidate> candidates, BodyChoice bodies, IReadOnlyList<Candidate> tried)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(candidates);
        ArgumentNullException.ThrowIfNull(bodies);
        ArgumentNullException.ThrowIfNull(tried);
        HeadRank[] heads =
        [
            .. candidates.Where(c => c.Rig.Body == first.Rig.Body).GroupBy(c => c.Rig.Head)
                .Select(group => new HeadRank(group.MaxBy(c => c.Score)!)).OrderByDescending(rank => rank.Best.Score),
        ];
        MissingHead[] missing = [.. tried.Where(c => c.Track.Status != SimulationStatus.Failed).Select(c => new MissingHead(c, c.Score - first.Score))];
        MissingHead? best = missing.MaxBy(m => m.Gain);
        return new BoxAdvice(
            heads,
            bodies.Fits,
            missing,
            best is { Gain: >= RealMargin } ? best : null,
            bodies.Spoke is { Weight: >= LoudRule } && bodies.Fits[0].Suitability < BodyChoice.PoorFit);
    }
}
