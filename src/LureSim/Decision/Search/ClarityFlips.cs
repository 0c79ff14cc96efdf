using LureSim.Decision.Colours;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;

namespace LureSim.Decision.Search;

/// <summary>Finds how clear or murky the water must be for another color to be the choice, by a scan and bisection over the Secchi depth. Clarity moves no lure: no cast is run.</summary>
public static class ClarityFlips
{
    // Places of the scan, as multiples of the scenario's own Secchi depth, and the bisections after it: to a thirtieth of it or finer.
    private static readonly double[] Down = [0.65, 0.4];
    private static readonly double[] Up = [1.5, 2.5];
    private const int Halvings = 3;

    /// <summary>Finds the conditions; none where the clarity was not given by a Secchi depth, or the box has one color.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="rig">The rig of the choice.</param>
    /// <param name="middle">What was found for the scenario's own clarity.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public static IReadOnlyList<ChoiceFlip> Of(Scenario scenario, Rig rig, ColourFinding middle, ParallelOptions parallel)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(rig);
        ArgumentNullException.ThrowIfNull(middle);
        ArgumentNullException.ThrowIfNull(parallel);
        if (scenario.Spot.Clarity is not SecchiClarity secchi || middle.Advice.Colours.Count < 2) return [];
        var found = new ChoiceFlip?[2];
        Parallel.For(0, 2, parallel, i => found[i] = Side(i == 0));
        return [.. found.OfType<ChoiceFlip>()];

        ChoiceFlip? Side(bool over)
        {
            double inside = 1;
            foreach (double factor in over ? Up : Down)
            {
                ClarityCase there = At(factor);
                if (there.Holds)
                {
                    inside = factor;
                    continue;
                }

                double outside = factor;
                for (int k = 0; k < Halvings; k++)
                {
                    double place = 0.5 * (inside + outside);
                    ClarityCase here = At(place);
                    if (here.Holds) inside = place;
                    else (outside, there) = (place, here);
                }

                return new ChoiceFlip(FlipCondition.Clarity, over, secchi.Depth * 0.5 * (inside + outside), rig) { Colour = there.Advice.Choice.Name };
            }

            return null;
        }

        ClarityCase At(double factor)
        {
            parallel.CancellationToken.ThrowIfCancellationRequested();
            return ClarityCase.At(scenario, middle, secchi, secchi.Depth * factor);
        }
    }
}
