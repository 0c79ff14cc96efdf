using CsCheck;

namespace LureSim.Tests;

/// <summary>Property tests with the same draws on every run: a build passes or fails by its code, not by its luck.</summary>
/// <remarks>LURESIM_FRESH_SEEDS=1 draws anew, many threads at once, to look for new counterexamples; CsCheck names the seed of what it finds.</remarks>
internal static class Properties
{
    private const int DefaultIterations = 100;

    private static readonly bool FreshSeeds = Environment.GetEnvironmentVariable("LURESIM_FRESH_SEEDS") == "1";

    /// <summary>Checks that the assertion holds for values drawn one after another from fixed seeds.</summary>
    public static void HoldsFor<T>(this Gen<T> values, Action<T> assertion, int iterations = DefaultIterations)
    {
        if (FreshSeeds)
        {
            values.Sample(assertion, iter: iterations, threads: 1);
            return;
        }

        for (int i = 0; i < iterations; i++)
        {
            var random = new PCG((uint)i, 20_240_229);
            string seed = random.ToString();
            var value = values.Generate(random, null, out _);
            try
            {
                assertion(value);
            }
            catch (Exception)
            {
                // The library shrinks what it can from here and prints the value.
                values.Sample(assertion, seed: seed, iter: iterations, threads: 1);
                throw;
            }
        }
    }

    /// <inheritdoc cref="HoldsFor{T}(Gen{T}, Action{T}, int)"/>
    public static void HoldsFor<T1, T2>(this Gen<(T1 First, T2 Second)> values, Action<T1, T2> assertion, int iterations = DefaultIterations) =>
        values.HoldsFor(v => assertion(v.First, v.Second), iterations);

    /// <inheritdoc cref="HoldsFor{T}(Gen{T}, Action{T}, int)"/>
    public static void HoldsFor<T1, T2, T3>(this Gen<(T1 First, T2 Second, T3 Third)> values, Action<T1, T2, T3> assertion, int iterations = DefaultIterations) =>
        values.HoldsFor(v => assertion(v.First, v.Second, v.Third), iterations);

    /// <inheritdoc cref="HoldsFor{T}(Gen{T}, Action{T}, int)"/>
    public static void HoldsFor<T1, T2, T3, T4>(this Gen<(T1 First, T2 Second, T3 Third, T4 Fourth)> values, Action<T1, T2, T3, T4> assertion, int iterations = DefaultIterations) =>
        values.HoldsFor(v => assertion(v.First, v.Second, v.Third, v.Fourth), iterations);
}
