namespace LureSim.Swimming;

/// <summary>Forces that can be switched off one by one, to see what each does.</summary>
[Flags]
public enum ActionTerms
{
    /// <summary>A rigid body in empty space.</summary>
    None = 0,

    /// <summary>Added mass and with it the Munk moment.</summary>
    AddedMass = 1,

    /// <summary>Weight.</summary>
    Weight = 2,

    /// <summary>Buoyancy.</summary>
    Buoyancy = 4,

    /// <summary>Drag across the body, strip by strip, and roll damping.</summary>
    CrossFlow = 8,

    /// <summary>Drag along the body: skin friction and form.</summary>
    AxialDrag = 16,

    /// <summary>Lift of the trailing edges.</summary>
    Edges = 32,

    /// <summary>Drag of hooks and rings.</summary>
    Appendages = 64,

    /// <summary>Diving lip.</summary>
    Lip = 128,

    /// <summary>Forces of water and hinge on the soft tail.</summary>
    Tail = 256,

    /// <summary>The vortices behind the tail's paddle and the lip; they act through <see cref="Tail"/> and <see cref="Lip"/>.</summary>
    Wake = 512,

    /// <summary>Forces of a plate.</summary>
    Plate = 1024,

    /// <summary>Pull of the line.</summary>
    Line = 2048,

    /// <summary>Moment of a snug knot; it acts through <see cref="Line"/>.</summary>
    Knot = 4096,

    /// <summary>Side force of a head that sits askew.</summary>
    Head = 8192,

    /// <summary>Everything.</summary>
    All = 16383,
}

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

    /// <summary>Forces that act.</summary>
    public ActionTerms Terms { get; init; } = ActionTerms.All;

    /// <summary>Disturbance of the heading at the start (radians), -pi to pi: water is never quite still, and a symmetric lure needs a push to leave an unstable rest.</summary>
    public double InitialYaw { get; init; } = 0.03;

    /// <summary>Disturbance of the roll at the start (radians), -pi to pi.</summary>
    public double InitialRoll { get; init; } = 0.03;

    /// <summary>Pitch at the start on top of the line's angle (radians), -pi/2 to pi/2.</summary>
    public double InitialPitch { get; init; }

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
    }
}
