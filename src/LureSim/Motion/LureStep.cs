using LureSim.Motion.Line;
using LureSim.Stepping;

namespace LureSim.Motion;

/// <summary>Where the lure is inside a step (m).</summary>
/// <param name="X">Along the cast.</param>
/// <param name="Y">To the left.</param>
/// <param name="Z">Above the surface.</param>
internal readonly record struct LureStep(CubicStep X, CubicStep Y, CubicStep Z)
{
    /// <summary>Start of the step (s).</summary>
    public double Start => Z.Start;

    /// <summary>The step (s).</summary>
    public double Length => Z.Length;

    /// <summary>The trial step of an integrator, before it is accepted.</summary>
    public static LureStep Of(LineIntegrator integrator, double step)
    {
        return new LureStep(Axis(0), Axis(1), Axis(2));

        CubicStep Axis(int i) => new(integrator.Time, step, integrator.Position[i], integrator.Velocity[i], integrator.NextPosition[i], integrator.NextVelocity[i]);
    }
}
