using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;

namespace LureSim.Swimming;

/// <summary>Settings of a run.</summary>
public sealed record ActionOptions
{
    /// <summary>Length of the window (s), 0.01 to 120.</summary>
    public double Duration { get; init; } = 5;

    /// <summary>Time before the part that is judged (s), 0 to 60, at most half of the window; ignored for twitches.</summary>
    public double SettlingTime { get; init; } = 2;

    /// <summary>Sampling of the trace (s), 1e-4 to 1.</summary>
    public double OutputInterval { get; init; } = 0.005;

    /// <summary>Relative tolerance of a step, 1e-13 to 1e-2.</summary>
    public double Tolerance { get; init; } = 1e-4;

    /// <summary>Steps after which the run is given up, 10 to 10,000,000.</summary>
    public int MaximumSteps { get; init; } = 60_000;

    /// <summary>True to end a steady tow as soon as it has gone over twice after the settling time, or goes on in one way: the trace is then shorter than the window.</summary>
    public bool StopsWhenClear { get; init; }

    /// <summary>Forces that act.</summary>
    public ActionTerms Terms { get; init; } = ActionTerms.All;

    /// <summary>Disturbance of the heading at the start (radians), -pi to pi: water is never quite still, and a symmetric lure needs a push to leave an unstable rest.</summary>
    public double InitialYaw { get; init; } = 0.03;

    /// <summary>Disturbance of the roll at the start (radians), -pi to pi.</summary>
    public double InitialRoll { get; init; } = 0.03;

    /// <summary>Pitch at the start on top of the line's angle (radians), -pi/2 to pi/2.</summary>
    public double InitialPitch { get; init; }

    /// <summary>
    /// Amplitude of the lift coefficient of the vortices behind the paddle of a tail at rest, 0 to 2. Default that of the oscillator's own paper, 0.3 for a round cylinder
    /// (Facchinetti et al. 2004); a square prism has 1.8 (Vickery 1966).
    /// </summary>
    public double WakeLift { get; init; } = WakeOscillator.Lift;

    /// <summary>Throws unless every member lies in its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A member is out of range.</exception>
    public void Validate()
    {
        Guard.InRange(Duration, 0.01, 120, unit: "s");
        Guard.InRange(SettlingTime, 0, 60, unit: "s");
        Guard.InRange(OutputInterval, 1e-4, 1, unit: "s");
        Guard.InRange(Tolerance, 1e-13, 1e-2);
        Guard.InRange(MaximumSteps, 10, 10_000_000);
        Guard.InRange(InitialYaw, -Math.PI, Math.PI, unit: "rad");
        Guard.InRange(InitialRoll, -Math.PI, Math.PI, unit: "rad");
        Guard.InRange(InitialPitch, -Math.PI / 2, Math.PI / 2, unit: "rad");
        Guard.InRange(WakeLift, 0, 2);
    }
}
