using LureSim.Decision.Trials;
using LureSim.Model;

namespace LureSim.Decision.Observations;

/// <summary>An input that observations can tell about.</summary>
public enum LearnedInputKind
{
    /// <summary>Current at the surface (m/s).</summary>
    Current,

    /// <summary>Depth of the water (m).</summary>
    Depth,

    /// <summary>Factor on the drag of a bait.</summary>
    LureDrag,

    /// <summary>Factor on the drag of the line.</summary>
    LineDrag,

    /// <summary>Secchi depth (m).</summary>
    Clarity,
}

/// <summary>What was known of an input, and what observations left of it.</summary>
/// <param name="Kind">The input.</param>
/// <param name="Body">The bait whose drag it is; null for other inputs.</param>
/// <param name="Before">What was known before.</param>
/// <param name="After">What is known now.</param>
/// <param name="BeforeValues">Equally likely values before.</param>
/// <param name="AfterValues">Equally likely values now.</param>
public sealed record LearnedInput(LearnedInputKind Kind, LureBody? Body, Interval Before, Interval After, IReadOnlyList<double> BeforeValues, IReadOnlyList<double> AfterValues)
{
    // What is narrower by less than this was not learned.
    private const double Noticeable = 0.9;

    /// <summary>Width of the range in which eight in ten lie, now over before; 1 where nothing was uncertain.</summary>
    public double Narrowed => Before.High > Before.Low ? (After.High - After.Low) / (Before.High - Before.Low) : 1;

    /// <summary>True if the observations told something: the range is narrower by a tenth, or its middle moved by a fifth of it.</summary>
    public bool Learned => Before.High > Before.Low && (Narrowed < Noticeable || Math.Abs(After.Median - Before.Median) > 0.2 * (Before.High - Before.Low));
}
