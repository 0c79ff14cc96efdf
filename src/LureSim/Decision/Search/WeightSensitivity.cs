using LureSim.Decision.Trials;

namespace LureSim.Decision.Search;

/// <summary>A weight of the score that would change the choice.</summary>
/// <param name="Weight">The weight.</param>
/// <param name="Factor">What it was multiplied by: 0.5 or 2.</param>
/// <param name="Rig">The choice then.</param>
public sealed record WeightSensitivity(ScoreWeight Weight, double Factor, Rig Rig)
{
    // These are measured on the track and not weighed afterwards.
    private static readonly string[] Measured = ["feel_tension", "hook_length", "crawl", "settle_time"];

    private static readonly double[] Factors = [0.5, 2];

    /// <summary>Names of the weights that are measured on the track, and are not tried here.</summary>
    public static IReadOnlyList<string> NotTried => Measured;

    /// <summary>Every weight, halved and doubled, that would make another of the finalists the choice. The runs are weighed again, not run again.</summary>
    /// <param name="search">A search.</param>
    /// <exception cref="ArgumentNullException"><paramref name="search"/> is null.</exception>
    public static IReadOnlyList<WeightSensitivity> Of(ChoiceSearch search)
    {
        ArgumentNullException.ThrowIfNull(search);
        List<WeightSensitivity> found = [];
        foreach (ScoreWeight weight in ScoreWeights.Default.All.Where(weight => !Measured.Contains(weight.Name)))
        {
            foreach (double factor in Factors)
            {
                ScoreWeights weights = ScoreWeights.Default.Scaled(weight.Name, factor);
                SearchedRig then = BaitPick.Of([.. search.Finalists.Select(rig => rig.Weighed(search.Scenario, weights))], search.Bodies, weights);
                if (then.Rig != search.First.Rig) found.Add(new WeightSensitivity(weight, factor, then.Rig));
            }
        }

        return found;
    }
}
