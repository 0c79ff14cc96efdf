using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;
using LureSim.Decision.Trials;

namespace LureSim.Decision.Observations;

/// <summary>
/// A sample of what observations leave of standard normal inputs. Where the weights of the first sample are worth half of it or more, it is resampled by them. Where
/// they collapse, the likelihood comes in by steps (tempering: Neal 2001, neal2001annealed; steps chosen so that each leaves half of the sample: Jasra et al. 2011,
/// jasra2011inference), each followed by moves that leave the distribution as it is: a proposal sqrt(1 - b^2) z + b xi keeps the normal numbers normal, so that the
/// likelihood alone decides whether it is taken (Cotter et al. 2013, cotter2013mcmc, eq. 4.2).
/// </summary>
/// <param name="Points">Equally likely states, each a row of normal numbers.</param>
/// <param name="Effective">What the first weights were worth, of <see cref="Size"/>.</param>
/// <param name="Steps">Steps of the tempering; 0 where the weights sufficed.</param>
/// <param name="LogEvidence">Logarithm of the mean likelihood over what was possible before.</param>
internal sealed record TemperedSample(double[][] Points, double Effective, int Steps, double LogEvidence)
{
    /// <summary>States of a sample.</summary>
    public const int Size = 1024;

    // Each step of the tempering leaves this share of the sample.
    private const double Left = 0.5;
    private const int MovesPerStep = 6;
    private const int MostSteps = 60;

    /// <summary>The sample before any observation.</summary>
    public static double[][] Before(int dimensions, int seed, int size = Size)
    {
        double[,] quantiles = LatinHypercube.Draw(size, dimensions, seed);
        double[][] points = new double[size][];
        for (int i = 0; i < size; i++)
        {
            points[i] = new double[dimensions];
            for (int d = 0; d < dimensions; d++) points[i][d] = Normal.InvCDF(0, 1, quantiles[i, d]);
        }

        return points;
    }

    /// <summary>Draws.</summary>
    /// <param name="dimensions">Inputs.</param>
    /// <param name="logLikelihood">Logarithm of the likelihood of a state.</param>
    /// <param name="seed">Seed: the same seed gives the same sample.</param>
    public static TemperedSample Draw(int dimensions, Func<double[], double> logLikelihood, int seed)
    {
        double[][] points = Before(dimensions, seed);
        double[] logs = [.. points.Select(logLikelihood)];
        var random = new MersenneTwister(unchecked((seed * 104729) + 17), threadSafe: false);
        double effective = EffectiveSize.Of(EffectiveSize.Weights(logs)), evidence = 0, power = 0, step = 0.5;
        int steps = 0;
        bool collapsed = effective < Left * Size;
        while (power < 1)
        {
            double next = collapsed && steps < MostSteps ? power + Increment(logs, 1 - power) : 1;
            evidence += MeanLog(logs, next - power);
            double[] weights = EffectiveSize.Weights(logs, next - power);
            int[] picked = EffectiveSize.Resample(weights, Size, random.NextDouble());
            points = [.. picked.Select(i => (double[])points[i].Clone())];
            logs = [.. picked.Select(i => logs[i])];
            power = next;
            if (!collapsed) break;
            steps++;
            for (int move = 0; move < MovesPerStep; move++) step = Move(points, logs, power, step, logLikelihood, random);
        }

        return new TemperedSample(points, effective, steps, evidence);
    }

    // The greatest step that leaves half of the sample; the rest where it leaves more.
    private static double Increment(double[] logs, double rest)
    {
        if (EffectiveSize.Of(EffectiveSize.Weights(logs, rest)) >= Left * Size) return rest;
        double low = 0, high = rest;
        for (int i = 0; i < 50; i++)
        {
            double middle = 0.5 * (low + high);
            if (EffectiveSize.Of(EffectiveSize.Weights(logs, middle)) >= Left * Size) low = middle;
            else high = middle;
        }

        return Math.Max(low, 1e-6);
    }

    private static double MeanLog(double[] logs, double power)
    {
        double most = logs.Max(), sum = 0;
        foreach (double log in logs) sum += Math.Exp(power * (log - most));
        return (power * most) + Math.Log(sum / logs.Length);
    }

    // One proposal for each state; returns the next size of proposals, drawn toward one in three taken.
    private static double Move(double[][] points, double[] logs, double power, double step, Func<double[], double> logLikelihood, MersenneTwister random)
    {
        double keep = Math.Sqrt(1 - (step * step));
        int taken = 0;
        for (int i = 0; i < points.Length; i++)
        {
            double[] proposal = new double[points[i].Length];
            for (int d = 0; d < proposal.Length; d++) proposal[d] = (keep * points[i][d]) + (step * Normal.Sample(random, 0, 1));
            double log = logLikelihood(proposal);
            if (Math.Log(1 - random.NextDouble()) >= power * (log - logs[i])) continue;
            points[i] = proposal;
            logs[i] = log;
            taken++;
        }

        double share = (double)taken / points.Length;
        return Math.Clamp(step * Math.Exp(share - 0.33), 0.02, 0.98);
    }
}
