namespace LureSim.Swimming.Bodies;

/// <summary>What the far end of the line does.</summary>
public enum TowMode
{
    /// <summary>It is drawn along by reel and rod: steady, or with <see cref="TowInput.Strokes"/> and <see cref="TowInput.SpeedChanges"/>.</summary>
    Pulled,

    /// <summary>The lure falls and draws slack line behind it.</summary>
    SlackFall,

    /// <summary>No line at all.</summary>
    Free,
}

/// <summary>A twitch of the rod tip: out by a length along the pull, and back, which leaves slack.</summary>
/// <param name="Start">When it begins (s), 0 or more.</param>
/// <param name="Length">Travel of the tip (m), 0 to 3.</param>
/// <param name="Duration">Time of the pull (s), 0.02 to 10.</param>
/// <param name="Return">Share of the travel that the tip gives back, 0 to 1; the rest is reeled in.</param>
/// <param name="ReturnDuration">Time in which it gives back (s), 0.02 to 10.</param>
public sealed record TowStroke(double Start, double Length, double Duration, double Return = 1, double ReturnDuration = 0.3)
{
    /// <summary>End of the pull (s).</summary>
    public double PullEnd => Start + Duration;

    /// <summary>End of the stroke (s).</summary>
    public double End => PullEnd + ReturnDuration;
}

/// <summary>A change of the reel's speed.</summary>
/// <param name="Time">When it begins (s), 0 or more; in rising order, at least <see cref="TowInput.SpeedRamp"/> apart.</param>
/// <param name="Speed">Speed after it (m/s), 0 to 5.</param>
public sealed record SpeedChange(double Time, double Speed);

/// <summary>How the lure is towed, seen from the water at its depth.</summary>
/// <remarks>Water axes move with the water: x along the pull (horizontal), y to the left, z up. A steady current only adds to <see cref="Speed"/>.</remarks>
public sealed record TowInput
{
    /// <summary>Time that a change of the reel's speed takes (s).</summary>
    public const double SpeedRamp = 0.1;

    // Share of a stroke that the tip gives back, of a twitch and of a tap; and two thirds of a turn a second on a common reel (common practice; the figures are assumed).
    private const double GivenBack = 0.5, TapBack = 0.8, TwitchTakeUp = 0.6;

    /// <summary>What the line does.</summary>
    public TowMode Mode { get; init; } = TowMode.Pulled;

    /// <summary>Speed of the line's far end through the water at the start (m/s), 0 to 5.</summary>
    public double Speed { get; init; }

    /// <summary>Angle of the line above the level at the lure (radians), -1.5 to 1.5. The far end moves along x; the line then finds its own angle.</summary>
    public double LineElevation { get; init; }

    /// <summary>Length of line that swings with the lure (m), 0.05 to 20.</summary>
    public double LineLength { get; init; } = 1;

    /// <summary>Spring of the line and the rod tip in a row (N/m), 1 to 2000.</summary>
    public double LineStiffness { get; init; } = 30;

    /// <summary>Damping of the line's stretch as a ratio of the critical, 0 to 2.</summary>
    public double LineDampingRatio { get; init; } = 0.5;

    /// <summary>Slack at the start (m), 0 to 5.</summary>
    public double InitialSlack { get; init; }

    /// <summary>True for a lure that floats at rest at the start, with air over it: what is out of the water has no buoyancy and no drag. False far under the surface.</summary>
    public bool AtSurface { get; init; }

    /// <summary>Speed at which the reel takes up line that hangs slack by more than <see cref="SlackLeft"/> (m/s), 0 to 5: between twitches a hand winds in what the lure has coasted.</summary>
    public double TakeUp { get; init; }

    /// <summary>Slack that the reel leaves (m), 0 to 5.</summary>
    public double SlackLeft { get; init; }

    /// <summary>Twitches of the rod, at most 64.</summary>
    public IReadOnlyList<TowStroke> Strokes { get; init; } = [];

    /// <summary>Changes of the reel's speed (pauses), at most 64.</summary>
    public IReadOnlyList<SpeedChange> SpeedChanges { get; init; } = [];

    /// <summary>Density of the water (kg/m3), 900 to 1100.</summary>
    public double WaterDensity { get; init; } = 1020;

    /// <summary>Kinematic viscosity of the water (m2/s), 5e-7 to 3e-6.</summary>
    public double KinematicViscosity { get; init; } = 1.1e-6;

    /// <summary>Gravity (m/s2), 0 to 20.</summary>
    public double Gravity { get; init; } = PhysicalConstants.StandardGravity;

    /// <summary>A steady retrieve.</summary>
    /// <param name="speed">Speed through the water (m/s), 0 to 5.</param>
    /// <param name="lineElevation">Angle of the line above the level at the lure (radians).</param>
    public static TowInput Steady(double speed, double lineElevation = 0.1) => new() { Speed = speed, LineElevation = lineElevation };

    /// <summary>
    /// Twitches in a row and a pause, repeated: the rod gives back half of each stroke, and the reel takes in what hangs slack until the line is straight. Without that the lure, which
    /// coasts farther than the stroke, is not reached by the next twitch.
    /// </summary>
    /// <param name="stroke">Travel of the rod tip (m).</param>
    /// <param name="duration">Time of a pull (s).</param>
    /// <param name="interval">From twitch to twitch (s).</param>
    /// <param name="twitches">Twitches before each pause, 1 to 10.</param>
    /// <param name="pause">Pause after them (s).</param>
    /// <param name="repeats">How often, 1 to 6.</param>
    /// <param name="reelSpeed">Steady speed of the line beside the twitches (m/s).</param>
    public static TowInput Twitching(
        double stroke = 0.3, double duration = 0.15, double interval = 0.7, int twitches = 2, double pause = 1.5, int repeats = 2, double reelSpeed = 0)
    {
        Guard.InRange(twitches, 1, 10);
        Guard.InRange(repeats, 1, 6);
        Guard.InRange(interval, 0.05, 20);
        Guard.InRange(pause, 0, 60);
        var strokes = new List<TowStroke>();
        double t = 0.3;
        for (int r = 0; r < repeats; r++)
        {
            for (int k = 0; k < twitches; k++)
            {
                // The reel has taken in the rest.
                strokes.Add(new(t, stroke, duration, GivenBack, Math.Clamp(interval - duration, 0.02, 0.3)));
                t += interval;
            }

            t += pause;
        }

        return new() { Speed = reelSpeed, Strokes = strokes, LineElevation = 0.1, TakeUp = TwitchTakeUp };
    }

    /// <summary>
    /// Taps of the rod tip on a slack line, for a lure that floats: most of each stroke is given back and stays slack, so that a tap is short and the lure is free to swing after it
    /// (common practice; the share is assumed).
    /// </summary>
    /// <param name="stroke">Travel of the rod tip (m), 0 to 3.</param>
    /// <param name="duration">Time of a tap (s), 0.02 to 10.</param>
    /// <param name="interval">From tap to tap (s), 0.05 to 20.</param>
    /// <param name="taps">How many, 1 to 60.</param>
    public static TowInput Tapping(double stroke = 0.08, double duration = 0.15, double interval = 0.7, int taps = 10)
    {
        Guard.InRange(taps, 1, 60);
        Guard.InRange(interval, 0.05, 20);
        return new()
        {
            Strokes = [.. Enumerable.Range(0, taps).Select(i => new TowStroke(0.3 + (i * interval), stroke, duration, TapBack, Math.Clamp(interval - duration, 0.02, 0.3)))],
            LineElevation = 0.1,
            TakeUp = TwitchTakeUp,
            SlackLeft = TapBack * stroke,
            AtSurface = true,
        };
    }

    /// <summary>A fall on slack line that trails behind the lure.</summary>
    /// <param name="trailingLength">Length of line drawn through the water (m).</param>
    public static TowInput SlackFall(double trailingLength = 2) => new() { Mode = TowMode.SlackFall, LineLength = trailingLength, LineElevation = 1.2 };

    /// <summary>Throws unless every member lies in its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A member is out of range.</exception>
    /// <exception cref="ArgumentNullException">A list is null.</exception>
    public void Validate()
    {
        Guard.InRange((int)Mode, 0, (int)TowMode.Free, nameof(Mode));
        Guard.InRange(Speed, 0, 5, unit: "m/s");
        Guard.InRange(LineElevation, -1.5, 1.5, unit: "rad");
        Guard.InRange(LineLength, 0.05, 20, unit: "m");
        Guard.InRange(LineStiffness, 1, 2000, unit: "N/m");
        Guard.InRange(LineDampingRatio, 0, 2);
        Guard.InRange(InitialSlack, 0, 5, unit: "m");
        Guard.InRange(TakeUp, 0, 5, unit: "m/s");
        Guard.InRange(SlackLeft, 0, 5, unit: "m");
        Guard.InRange(WaterDensity, 900, 1100, unit: "kg/m3");
        Guard.InRange(KinematicViscosity, 5e-7, 3e-6, unit: "m2/s");
        Guard.InRange(Gravity, 0, 20, unit: "m/s2");
        ArgumentNullException.ThrowIfNull(Strokes);
        ArgumentNullException.ThrowIfNull(SpeedChanges);
        Guard.InRange(Strokes.Count, 0, 64);
        Guard.InRange(SpeedChanges.Count, 0, 64);
        foreach (TowStroke s in Strokes)
        {
            Guard.InRange(s.Start, 0, 600, "TowStroke.Start", "s");
            Guard.InRange(s.Length, 0, 3, "TowStroke.Length", "m");
            Guard.InRange(s.Duration, 0.02, 10, "TowStroke.Duration", "s");
            Guard.InRange(s.Return, 0, 1, "TowStroke.Return");
            Guard.InRange(s.ReturnDuration, 0.02, 10, "TowStroke.ReturnDuration", "s");
        }

        double earliest = 0;
        foreach (SpeedChange c in SpeedChanges)
        {
            Guard.InRange(c.Time, earliest, 600, "SpeedChange.Time", "s");
            Guard.InRange(c.Speed, 0, 5, "SpeedChange.Speed", "m/s");
            earliest = c.Time + SpeedRamp;
        }
    }
}
