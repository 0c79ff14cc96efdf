using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Hydrodynamics;
using LureSim.Model;
using MathNet.Numerics.Distributions;

namespace LureSim.Decision.Observations;

/// <summary>The inputs that observations can tell about, and their values in one state.</summary>
/// <param name="Current">Current at the surface (m/s).</param>
/// <param name="Depth">Depth (m).</param>
/// <param name="LineDrag">Factor on the drag of the line.</param>
/// <param name="LineLaw">Quantile of the law of the line's drag.</param>
/// <param name="Secchi">Secchi depth (m); NaN where the clarity was given otherwise.</param>
/// <param name="LureDrags">Factor on the computed drag of each observed bait.</param>
internal readonly record struct InputState(double Current, double Depth, double LineDrag, double LineLaw, double Secchi, double[] LureDrags);

/// <summary>
/// The uncertain inputs as standard normal numbers: whatever the form of a spread, its quantile is that of a normal number, so that before any observation all numbers are
/// independent and of the same distribution.
/// </summary>
/// <param name="scenario">A validated scenario.</param>
/// <param name="bodies">Baits that were observed.</param>
internal sealed class InputSpace(Scenario scenario, IReadOnlyList<LureBody> bodies)
{
    // Current, depth, drag and law of the line, clarity.
    private const int Common = 5;

    /// <summary>Number of the first bait.</summary>
    public const int FirstBody = Common;

    // Numbers beyond this are the same as at it: a spread is cut at twice its margin, 3.3 standard deviations.
    private const double Farthest = 5;

    /// <summary>Numbers of a state.</summary>
    public int Dimensions => Common + bodies.Count;

    /// <summary>The baits with a drag of their own.</summary>
    public IReadOnlyList<LureBody> Bodies => bodies;

    /// <summary>The state of some numbers.</summary>
    public InputState At(ReadOnlySpan<double> numbers)
    {
        ScenarioUncertainty u = scenario.Uncertainty;
        double[] drags = new double[bodies.Count];
        for (int b = 0; b < drags.Length; b++)
        {
            double q = Quantile(numbers[Common + b]);
            MeasuredDrag? own = bodies[b].Drag;
            drags[b] = Math.Clamp((own is null ? u.LureDrag : Spread.OfShare(own.Margin)).At(q, own?.Factor ?? 1), 0.2, 5);
        }

        double depth = u.Depth.At(Quantile(numbers[1]), scenario.Spot.Depth);
        return new InputState(
            Math.Clamp(u.Current.At(Quantile(numbers[0]), scenario.Spot.CurrentSpeed), 0, 3),
            SpotChange.WithDepth(scenario.Spot, depth).Depth,
            Math.Clamp(u.LineDrag.At(Quantile(numbers[2]), 1), 0.1, 5),
            Quantile(numbers[3]),
            scenario.Spot.Clarity is SecchiClarity secchi ? Math.Clamp(u.Clarity.At(Quantile(numbers[4]), secchi.Depth), Limits.SecchiDepth.Least, Limits.SecchiDepth.Most) : double.NaN,
            drags);
    }

    /// <summary>The line's drag law in a state.</summary>
    public LineDragLaw Law(InputState state) => UncertainDraw.Law(scenario.Uncertainty.LineLaw, state.LineLaw).Scaled(state.LineDrag);

    /// <summary>The spot in a state.</summary>
    public Spot Water(InputState state) => SpotChange.WithDepth(scenario.Spot, state.Depth) with { CurrentSpeed = state.Current };

    /// <summary>The drag of a bait in a state, beside its own measured one.</summary>
    public double RelativeDrag(InputState state, LureBody body)
    {
        for (int b = 0; b < bodies.Count; b++)
        {
            if (bodies[b] == body) return Math.Clamp(state.LureDrags[b] / (body.Drag?.Factor ?? 1), 0.2, 5);
        }

        return 1;
    }

    /// <summary>Quantile of a number.</summary>
    public static double Quantile(double number) => Normal.CDF(0, 1, Math.Clamp(number, -Farthest, Farthest));
}
