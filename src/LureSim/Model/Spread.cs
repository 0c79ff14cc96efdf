using System.Diagnostics;
using MathNet.Numerics.Distributions;

namespace LureSim.Model;

/// <summary>Form in which a spread was given.</summary>
public enum SpreadForm
{
    /// <summary>The value is taken as known.</summary>
    Exact,

    /// <summary>A share of the value up and down, normally distributed.</summary>
    Share,

    /// <summary>An amount up and down, normally distributed.</summary>
    Amount,

    /// <summary>Anywhere between two values, all alike.</summary>
    Between,

    /// <summary>Between two values, a third one being likeliest.</summary>
    Triangular,
}

/// <summary>
/// How well an input is known. Plus-or-minus means that nine draws in ten lie within it: a normal distribution of standard deviation 1/1.645 of it, cut at
/// twice the margin.
/// </summary>
/// <param name="Form">Form.</param>
/// <param name="Low">Least value, or the margin of plus-or-minus (SI, or a share).</param>
/// <param name="Likeliest">Likeliest value of a triangular spread (SI).</param>
/// <param name="High">Greatest value (SI).</param>
/// <exception cref="ArgumentOutOfRangeException">A value is not finite, or there is no such form.</exception>
public sealed record Spread(SpreadForm Form, double Low, double Likeliest, double High)
{
    // Quantile 0.95 of the standard normal distribution.
    private const double NineInTen = 1.6448536269514722;

    // Draws beyond this multiple of the margin are cut to it.
    private const double Cut = 2.0;

    /// <summary>Form.</summary>
    public SpreadForm Form { get; init => field = Guard.Defined(value); } = Guard.Defined(Form);

    /// <summary>Least value, or the margin of plus-or-minus (SI, or a share).</summary>
    public double Low { get; init => field = Guard.Finite(value); } = Guard.Finite(Low);

    /// <summary>Likeliest value of a triangular spread (SI).</summary>
    public double Likeliest { get; init => field = Guard.Finite(value); } = Guard.Finite(Likeliest);

    /// <summary>Greatest value (SI).</summary>
    public double High { get; init => field = Guard.Finite(value); } = Guard.Finite(High);

    /// <summary>A value that is known.</summary>
    public static Spread Exact { get; } = new(SpreadForm.Exact, 0, 0, 0);

    /// <summary>True if every draw gives the value of the scenario.</summary>
    public bool IsExact => Form == SpreadForm.Exact || (Form is SpreadForm.Share or SpreadForm.Amount && Low == 0);

    /// <summary>Plus or minus a share of the value, 0 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside 0 to 1.</exception>
    public static Spread OfShare(double share)
    {
        Guard.InRange(share, 0, 1);
        return new(SpreadForm.Share, share, 0, 0);
    }

    /// <summary>Plus or minus an amount (SI), 0 or more.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The amount is negative or not a number.</exception>
    public static Spread OfAmount(double amount)
    {
        Guard.InRange(amount, 0, double.MaxValue);
        return new(SpreadForm.Amount, amount, 0, 0);
    }

    /// <summary>Anywhere between two values (SI).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The values are out of order.</exception>
    public static Spread OfBand(double low, double high)
    {
        Guard.InRange(high, low, double.MaxValue);
        return new(SpreadForm.Between, low, 0, high);
    }

    /// <summary>Between two values (SI), a third one being likeliest.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The values are out of order.</exception>
    public static Spread OfTriangle(double low, double likeliest, double high)
    {
        Guard.InRange(likeliest, low, double.MaxValue);
        Guard.InRange(high, likeliest, double.MaxValue);
        return new(SpreadForm.Triangular, low, likeliest, high);
    }

    /// <summary>The value at a quantile; not limited to what is physically possible.</summary>
    /// <param name="quantile">Quantile, above 0 and below 1.</param>
    /// <param name="nominal">Value of the scenario (SI).</param>
    /// <exception cref="ArgumentOutOfRangeException">The quantile is outside 0 to 1.</exception>
    public double At(double quantile, double nominal)
    {
        Guard.InRange(quantile, double.Epsilon, 1 - 1e-16);
        if (IsExact) return nominal;
        return Form switch
        {
            SpreadForm.Share => nominal * (1 + (Low * Margin(quantile))),
            SpreadForm.Amount => nominal + (Low * Margin(quantile)),
            SpreadForm.Between => ContinuousUniform.InvCDF(Low, High, quantile),
            SpreadForm.Triangular => High > Low ? Triangular.InvCDF(Low, High, Likeliest, quantile) : Low,
            _ => throw new UnreachableException(),
        };
    }

    private static double Margin(double quantile) => Math.Clamp(Normal.InvCDF(0, 1, quantile) / NineInTen, -Cut, Cut);
}
