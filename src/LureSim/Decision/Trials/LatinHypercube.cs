using MathNet.Numerics;
using MathNet.Numerics.Random;

namespace LureSim.Decision.Trials;

/// <summary>
/// Latin hypercube (McKay, Beckman and Conover 1979, mckay1979comparison): each input has exactly one point in each of n equal slices of its probability, and
/// the slices of different inputs are paired at random.
/// </summary>
public static class LatinHypercube
{
    // Keeps the streams of neighbouring seeds apart.
    private const int SeedStride = 7919;

    /// <summary>Draws points.</summary>
    /// <param name="samples">Number of points n, 1 or more.</param>
    /// <param name="dimensions">Number of inputs, 1 or more. Each has its own stream of random numbers: a further input leaves the others as they are.</param>
    /// <param name="seed">Seed; the same seed gives the same points.</param>
    /// <returns>Quantiles above 0 and below 1, [sample, input].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A number is below 1.</exception>
    public static double[,] Draw(int samples, int dimensions, int seed)
    {
        Guard.InRange(samples, 1, int.MaxValue);
        Guard.InRange(dimensions, 1, int.MaxValue);
        double[,] points = new double[samples, dimensions];
        for (int d = 0; d < dimensions; d++)
        {
            var random = new MersenneTwister(unchecked((seed * SeedStride) + d), threadSafe: false);
            int[] slices = Combinatorics.GeneratePermutation(samples, random);
            for (int i = 0; i < samples; i++)
                points[i, d] = Math.Clamp((slices[i] + random.NextDouble()) / samples, 1e-12, 1 - 1e-12);
        }

        return points;
    }
}
