namespace LureSim.Motion.Line;

/// <summary>Tolerances and limits of the adaptive integration. The line's own tolerances are wider: what counts of its error is what reaches the lure.</summary>
/// <param name="Position">Absolute tolerance on the lure's position per step (m).</param>
/// <param name="Velocity">Absolute tolerance on the lure's velocity per step (m/s).</param>
/// <param name="LinePosition">Absolute tolerance on the line's position per step (m).</param>
/// <param name="LineVelocity">Absolute tolerance on the line's velocity per step (m/s).</param>
/// <param name="MaximumStep">Largest step (s).</param>
/// <param name="MinimumStep">Step below which the run is given up (s).</param>
internal readonly record struct StepControl(double Position, double Velocity, double LinePosition, double LineVelocity, double MaximumStep, double MinimumStep)
{
    /// <summary>Values measured to keep the depth of a retrieve within a few millimetres (docs/motion.md).</summary>
    public static StepControl Default => new(5e-5, 2.5e-3, 6e-4, 0.12, 1, 1e-7);

    /// <summary>All tolerances multiplied by a factor.</summary>
    public StepControl Scaled(double factor) =>
        this with { Position = Position * factor, Velocity = Velocity * factor, LinePosition = LinePosition * factor, LineVelocity = LineVelocity * factor };
}
