using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;
using MathNet.Numerics.Distributions;

namespace LureSim.Decision.Colours;

/// <summary>
/// What is not known makes of the sighting distance of each colour. All colours meet the same draws (common random numbers), so that what differs between two
/// colours in one draw is the colour. A lure of several colours counts as a whole or by a part, whichever carries farther in the draw (<see cref="LureSights"/>).
/// </summary>
/// <remarks>
/// Drawn by a Latin hypercube: the Secchi depth, by the scenario's own spread, in <see cref="ClarityClasses"/> classes of equal probability, each with its own
/// radiative transfer; beam attenuation at that Secchi depth (a factor of <see cref="OpticalWater.AttenuationSpread"/> holds nine waters in ten); diffuse attenuation
/// (<see cref="OpticalWater.DiffuseAttenuationSpread"/>, likewise); the contrast of a large target (<see cref="TargetThreshold.ContrastSpread"/>, likewise); the smallest angle
/// at full contrast (<see cref="TargetThreshold.AngleSpread"/>, one standard deviation of the logarithm); the peaks of borrowed cones, evenly over their range; the reaction distance
/// (<see cref="ReactionDistance.Spread"/>, one standard deviation of the logarithm). Factors are normal in the logarithm and independent of each other: whether c and Kd go together
/// at a given Secchi depth is not known.
/// </remarks>
public sealed class SightSpread
{
    /// <summary>Draws unless another number is asked for.</summary>
    public const int DefaultSamples = 40;

    /// <summary>Classes of the Secchi depth, each one light field.</summary>
    public const int ClarityClasses = 5;

    private const double NineInTen = 1.6448536269514722; // quantile 0.95 of the standard normal distribution
    private const int Inputs = 7;
    private const int SeedOfSight = 104729; // keeps these streams apart from those of the motion

    private readonly double[][] distances;
    private readonly double[][] swaths;

    private SightSpread(IReadOnlyList<LurePattern> colours, double[][] distances, double[][] swaths)
    {
        this.distances = distances;
        this.swaths = swaths;
        Colours = [.. colours.Select(colour => colour.Name)];
        Distance = [.. Enumerable.Range(0, colours.Count).Select(c => Interval.Of(distances.Select(draw => draw[c])))];
        Swath = [.. Enumerable.Range(0, colours.Count).Select(c => Interval.Of(swaths.Select(draw => draw[c])))];
    }

    /// <summary>Names of the colours, in the order in which they were given.</summary>
    public IReadOnlyList<string> Colours { get; }

    /// <summary>Number of draws; 1 where nothing is uncertain.</summary>
    public int Samples => distances.Length;

    /// <summary>Sighting distance of each colour (m), mean over the looks: 10 %, 50 % and 90 % points over the draws.</summary>
    public IReadOnlyList<Interval> Distance { get; }

    /// <summary>The same with every distance cut at the reaction distance (m).</summary>
    public IReadOnlyList<Interval> Swath { get; }

    /// <summary>Sighting distance of each colour (m) in one draw.</summary>
    /// <param name="draw">Index of the draw, from 0.</param>
    public IReadOnlyList<double> DistancesIn(int draw) => distances[draw];

    /// <summary>The same cut at the reaction distance (m).</summary>
    /// <param name="draw">Index of the draw, from 0.</param>
    public IReadOnlyList<double> SwathsIn(int draw) => swaths[draw];

    /// <summary>Share of the draws, 0 to 1, in which one colour is made out farther than another by a margin; a tie counts for neither.</summary>
    /// <param name="first">Index of the one.</param>
    /// <param name="second">Index of the other.</param>
    /// <param name="margin">Share by which it must be farther, 0 or more: 0.1 for a tenth.</param>
    /// <exception cref="ArgumentOutOfRangeException">The margin is negative.</exception>
    public double ShareFarther(int first, int second, double margin = 0.0)
    {
        Guard.InRange(margin, 0.0, double.MaxValue);
        return distances.Count(draw => draw[first] > (1.0 + margin) * draw[second]) / (double)Samples;
    }

    /// <summary>Works the spread out.</summary>
    /// <param name="scenario">A validated scenario: its spot, its spread of the clarity, its seed.</param>
    /// <param name="eye">The eye of the fish.</param>
    /// <param name="colours">The colours, or lures of several colours; at least one.</param>
    /// <param name="targetSize">Size of the target (m), 0.001-2.</param>
    /// <param name="preyLength">Length of the lure for the reaction distance (m), above 0.</param>
    /// <param name="looks">From where it is looked at; at least one.</param>
    /// <param name="samples">Draws, 1 or more.</param>
    /// <param name="field">Light of the scenario itself, if it is there already; it saves one radiative transfer.</param>
    /// <param name="parallel">Threads and cancellation; the result does not depend on the number of threads. Null for all threads.</param>
    /// <returns>One draw, the scenario itself, where neither clarity nor sight is uncertain.</returns>
    /// <exception cref="ArgumentNullException">A required argument is null.</exception>
    /// <exception cref="ArgumentException">There is no colour or no look.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A number is outside its range.</exception>
    public static SightSpread Of(
        Scenario scenario,
        FishEye eye,
        IReadOnlyList<LurePattern> colours,
        double targetSize,
        double preyLength,
        IReadOnlyList<SightLook> looks,
        int samples = DefaultSamples,
        LightField? field = null,
        ParallelOptions? parallel = null)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(eye);
        ArgumentNullException.ThrowIfNull(colours);
        ArgumentNullException.ThrowIfNull(looks);
        Guard.That(colours.Count > 0, "At least one colour.", nameof(colours));
        Guard.That(looks.Count > 0, "At least one look.", nameof(looks));
        ScenarioUncertainty known = scenario.Uncertainty;
        Spread clarity = scenario.Spot.Clarity is SecchiClarity ? known.Clarity : Spread.Exact;
        LightField own = field ?? SpotColours.Field(scenario.Spot);
        if (clarity.IsExact && known.SightIsKnown) samples = 1;
        double[,] points = LatinHypercube.Draw(samples, Inputs, unchecked(known.Seed + SeedOfSight));
        double[][] distances = new double[samples][], swaths = new double[samples][];
        int[] classes = [.. Enumerable.Range(0, samples).Select(i => clarity.IsExact ? ClarityClasses / 2 : (int)(points[i, 0] * ClarityClasses))];
        Parallel.ForEach(Enumerable.Range(0, samples).GroupBy(i => classes[i]).ToArray(), parallel ?? new ParallelOptions(), group =>
        {
            // The light of a class is that of its middle; what the eye sees there before its own draw is shared.
            LightField light = group.Key == ClarityClasses / 2 ? own : SpotColours.Field(WithClarity(scenario.Spot, clarity, (group.Key + 0.5) / ClarityClasses));
            SightScene[] scenes = [.. looks.Select(look => new SightScene(light, eye, look.Direction, look.Depth, targetSize))];
            IReadOnlyList<SightTarget>[][] targets = [.. looks.Select(look => colours.Select(colour => LureSights.Targets(light, look.Direction, look.Depth, targetSize, colour)).ToArray())];
            double[] reaction = [.. looks.Select(look => ReactionDistance.In(light, look.Depth, preyLength))];
            foreach (int i in group)
            {
                bool exact = known.SightIsKnown;
                SightFactors factors = exact ? SightFactors.Own : new SightFactors(
                    Factor(OpticalWater.AttenuationSpread, NineInTen, points[i, 1]),
                    Factor(OpticalWater.DiffuseAttenuationSpread, NineInTen, points[i, 2]),
                    Factor(TargetThreshold.ContrastSpread, NineInTen, points[i, 3]),
                    Factor(TargetThreshold.AngleSpread, 1.0, points[i, 4]));
                FishEye drawn = exact ? eye : eye.Between(points[i, 5]);
                double reach = exact ? 1.0 : Factor(ReactionDistance.Spread, 1.0, points[i, 6]);
                distances[i] = new double[colours.Count];
                swaths[i] = new double[colours.Count];
                for (int l = 0; l < looks.Count; l++)
                {
                    SightScene scene = exact ? scenes[l] : scenes[l].With(factors, drawn);
                    for (int c = 0; c < colours.Count; c++)
                    {
                        double distance = 0;
                        foreach (SightTarget target in targets[l][c])
                            distance = Math.Max(distance, scene.QuickDistance(target.Inherent, target.Size));
                        distances[i][c] += looks[l].Weight * distance;
                        swaths[i][c] += looks[l].Weight * Math.Min(distance, reach * reaction[l]);
                    }
                }
            }
        });

        return new SightSpread(colours, distances, swaths);
    }

    // Normal in the logarithm, cut at twice nine in ten as every spread is.
    private static double Factor(double spread, double deviations, double quantile) =>
        Math.Pow(spread, Math.Clamp(Normal.InvCDF(0.0, 1.0, quantile), -2.0 * NineInTen, 2.0 * NineInTen) / deviations);

    private static Spot WithClarity(Spot spot, Spread clarity, double quantile)
    {
        var secchi = (SecchiClarity)spot.Clarity;
        return spot with { Clarity = secchi with { Depth = Math.Clamp(clarity.At(quantile, secchi.Depth), Limits.SecchiDepth.Least, Limits.SecchiDepth.Most) } };
    }
}
