using LureSim.Decision.Colours;
using LureSim.Model;

namespace LureSim.Decision.Uncertainty;

/// <summary>The colours in water of one clarity.</summary>
/// <param name="SecchiDepth">Secchi depth (m).</param>
/// <param name="Advice">The choice there.</param>
/// <param name="Holds">True if the plan's own choice is as good there: chosen again, or tied with what is.</param>
public sealed record ClarityCase(double SecchiDepth, ColourAdvice Advice, bool Holds)
{
    /// <summary>The colours at another Secchi depth (m), kept within 0.05 to 45 m.</summary>
    internal static ClarityCase At(Scenario scenario, ColourFinding middle, SecchiClarity secchi, double secchiDepth, ParallelOptions? parallel = null)
    {
        double depth = Math.Clamp(secchiDepth, 0.05, 45);
        Spot spot = scenario.Spot with { Clarity = secchi with { Depth = depth } };
        ColourAdvice there = ColourAdvice.Of(scenario with { Spot = spot }, middle.Advice.Body, middle.Advice.Depths, SpotColours.Field(spot), middle.Eye, [.. middle.Advice.Colours.Select(worth => worth.Lure)], samples: 1, parallel);

        // One draw there: what is not known of eye and water makes the same ties as here.
        ColourWorth own = there.Colours[middle.Advice.Chosen], best = there.Colours[there.Farthest];
        double known = middle.Advice.Colours[middle.Advice.Farthest].Range is { Median: > 0 } range ? range.Low / range.Median : 1;
        bool tied = there.Reason != ColourReason.SightDecidesNothing && own.SeenFrom >= Math.Min(known, 1 / (1 + ColourAdvice.Lead)) * best.SeenFrom;
        return new ClarityCase(depth, there, there.Chosen == middle.Advice.Chosen || tied);
    }
}

/// <summary>What the spread of the clarity makes of the colours. Clarity moves no lure, so the motion is not computed again.</summary>
/// <param name="Murky">One draw in ten is murkier.</param>
/// <param name="Middle">The scenario's own clarity.</param>
/// <param name="Clear">One draw in ten is clearer.</param>
public sealed record ClaritySpread(ClarityCase Murky, ClarityCase Middle, ClarityCase Clear)
{
    /// <summary>True if the choice holds in murkier and clearer water.</summary>
    public bool ColourHolds => Murky.Holds && Clear.Holds;

    /// <summary>Works out the colours in murkier and clearer water; null if the clarity is exact or was not given by a Secchi depth.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="middle">What was found for the scenario's own clarity.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads. Null for all threads.</param>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    public static ClaritySpread? Of(Scenario scenario, ColourFinding middle, ParallelOptions? parallel = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(middle);
        Spread spread = scenario.Uncertainty.Clarity;
        if (spread.IsExact || scenario.Spot.Clarity is not SecchiClarity secchi) return null;
        double[] quantiles = [0.1, 0.9];
        var ends = new ClarityCase[quantiles.Length];
        Parallel.For(0, ends.Length, parallel ?? new ParallelOptions(), i => ends[i] = ClarityCase.At(scenario, middle, secchi, spread.At(quantiles[i], secchi.Depth), parallel));
        return new ClaritySpread(ends[0], new ClarityCase(secchi.Depth, middle.Advice, true), ends[1]);
    }
}
