using CsCheck;

namespace LureSim.Fuzz;

/// <summary>Random choices from a seed: the same seed and the same number give the same draws on every machine.</summary>
/// <param name="seed">Seed of the run.</param>
/// <param name="number">Number of the draw in the run.</param>
internal sealed class Draws(int seed, int number)
{
    private readonly PCG random = new((uint)number, (ulong)seed);

    /// <summary>A whole number from 0 to one less than the bound.</summary>
    public int Below(int bound) => (int)random.Next((uint)bound);

    /// <summary>A number from 0 to 1.</summary>
    public double Unit() => random.Next() / (double)uint.MaxValue;

    /// <summary>True with a probability.</summary>
    public bool Chance(double probability) => Unit() < probability;

    /// <summary>One of a list.</summary>
    public T Of<T>(IReadOnlyList<T> items) => items[Below(items.Count)];

    /// <summary>A number between two, by magnitude where both have the same sign.</summary>
    public double Between(double least, double most) =>
        least > 0 && most / least > 20 ? least * Math.Pow(most / least, Unit()) : least + ((most - least) * Unit());
}
