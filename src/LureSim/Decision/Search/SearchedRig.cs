using LureSim.Decision.Baits;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;

namespace LureSim.Decision.Search;

/// <summary>A rig over the tries that it was given.</summary>
/// <param name="Rig">The rig.</param>
/// <param name="Own">The presentation of the scenario that its hands vary.</param>
/// <param name="Outcomes">Coverage in each try.</param>
/// <param name="Scores">Score in each try.</param>
/// <param name="Appeal">What season and forage make of the scores of its bait, 0 to 1 (<see cref="BodyFit.Appeal"/>).</param>
public sealed record SearchedRig(Rig Rig, Presentation Own, IReadOnlyList<Coverage> Outcomes, IReadOnlyList<double> Scores, double Appeal)
{
    /// <summary>The runs of the tries; empty where there was one run only.</summary>
    internal IReadOnlyList<UncertaintyStudy.DrawRun> Runs { get; init; } = [];

    /// <summary>The tries; empty where there was one run only.</summary>
    public IReadOnlyList<UncertainDraw> Draws { get; init; } = [];

    /// <summary>Where its count aims.</summary>
    internal SinkTarget Target { get; init; }

    /// <summary>The same runs under other weights.</summary>
    internal SearchedRig Weighed(Scenario scenario, ScoreWeights weights) => this with
    {
        Scores = [.. Outcomes.Select((coverage, t) => Draws.Count == 0
            ? Ranking.Score(coverage, scenario.Spot, Rig, weights)
            : Runs[t].Failed ? 0 : Ranking.Score(coverage, Draws[t].Scenario.Spot, Rig with { Presentation = Draws[t].Presentation }, weights))],
    };

    /// <summary>Mean score over the tries.</summary>
    public double Mean => Scores.Average();

    /// <summary>Mean score times the appeal of the bait: what baits are weighed by.</summary>
    public double Value => Mean * Appeal;

    /// <summary>Standard error of the mean by which another rig leads this one, try by try; 0 for a single try.</summary>
    /// <param name="other">A rig of the same tries.</param>
    /// <exception cref="ArgumentNullException"><paramref name="other"/> is null.</exception>
    public double StandardErrorTo(SearchedRig other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return StandardError(other.Scores, 1, Scores, 1);
    }

    /// <summary>The same of their values: scores times the appeal of their baits.</summary>
    internal double ValueErrorTo(SearchedRig other) => StandardError(other.Scores, other.Appeal, Scores, Appeal);

    /// <summary>Standard error of the mean difference of paired scores, each with its factor; 0 for fewer than two pairs.</summary>
    internal static double StandardError(IReadOnlyList<double> ahead, double factorAhead, IReadOnlyList<double> behind, double factorBehind)
    {
        int n = Math.Min(ahead.Count, behind.Count);
        if (n < 2) return 0;
        double sum = 0, squares = 0;
        for (int i = 0; i < n; i++) sum += (factorAhead * ahead[i]) - (factorBehind * behind[i]);
        double mean = sum / n;
        for (int i = 0; i < n; i++)
        {
            double off = (factorAhead * ahead[i]) - (factorBehind * behind[i]) - mean;
            squares += off * off;
        }

        return Math.Sqrt(squares / (n - 1) / n);
    }
}
