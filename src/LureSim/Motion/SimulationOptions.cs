using LureSim.Hydrodynamics;

namespace LureSim.Motion;

/// <summary>Numerical and physical settings of a simulation; the defaults are what the commands use.</summary>
public sealed record SimulationOptions
{
    /// <summary>Line segments, 4 to 400.</summary>
    public int Segments { get; init; } = 40;

    /// <summary>Node grading exponent, 1 (uniform) to 3 (gathered at the lure).</summary>
    public double Grading { get; init; } = 1.5;

    /// <summary>Drag law of the line.</summary>
    public LineDragLaw LineDrag { get; init; } = LineDragLaw.Default;

    /// <summary>Factor on the drag of the lure, 0.1 to 10: what its parts leave open.</summary>
    public double LureDragFactor { get; init; } = 1;

    /// <summary>Interval between samples of the track (s), 0.01 to 1.</summary>
    public double SampleInterval { get; init; } = 0.1;

    /// <summary>Factor on the error tolerances (0.08 mm and 4 mm/s a step), 1e-3 to 10.</summary>
    public double ToleranceFactor { get; init; } = 1;

    /// <summary>
    /// Damping ratio of axial vibration of a segment, 0 to 2. At 1 a snatch does not ring at kilohertz; against 0.2 it moves the depth of a hard twitch by 2 mm at the most.
    /// </summary>
    public double AxialDampingRatio { get; init; } = 1;

    /// <summary>
    /// Upper limit of the line's axial stiffness EA (N), 20 to 1e6. Braid has 1 to 3 kN; above 1.5 kN nothing moves the lure by a millimetre any more.
    /// </summary>
    public double StiffnessLimit { get; init; } = 1500;

    /// <summary>
    /// Stiffness of the rod tip (N/m), 1 to 1e9: a light rod's tip gives 4 cm under 100 gram-force. Assumed; it softens snatches and hardly moves the track.
    /// </summary>
    public double RodTipStiffness { get; init; } = 25;

    /// <summary>
    /// Tension at which line leaves an open spool (N), 0 to 1: coils lifting off a fixed spool and through the guides; about 1 gram-force, assumed.
    /// </summary>
    public double SpoolFriction { get; init; } = 0.008;

    /// <summary>Further tension for each m/s of line leaving the spool (N s/m), 0 to 1; assumed.</summary>
    public double SpoolDamping { get; init; } = 0.01;

    /// <summary>Longest fall that an angler waits for when the count-down is 'to the bottom' (s).</summary>
    public double FallLimit { get; init; } = 45;

    /// <summary>Line on the spool (m): the fall ends when this much is out.</summary>
    public double LineCapacity { get; init; } = 150;

    /// <summary>Slack in the line at splash-down as a share of the distance, 1e-4 to 0.2; assumed.</summary>
    public double SplashSlack { get; init; } = 0.005;

    /// <summary>End the run with the first sample after the lure has touched the bottom: for count-down tables.</summary>
    public bool FallOnly { get; init; }

    /// <summary>Throws if a value is outside its range.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range or not a number.</exception>
    public void Validate()
    {
        Guard.InRange(Segments, 4, 400);
        Guard.InRange(Grading, 1, 3);
        Guard.InRange(SampleInterval, 0.01, 1);
        Guard.InRange(ToleranceFactor, 1e-3, 10);
        Guard.InRange(AxialDampingRatio, 0, 2);
        Guard.InRange(LureDragFactor, 0.1, 10);
        Guard.InRange(StiffnessLimit, 20, 1e6);
        Guard.InRange(RodTipStiffness, 1, 1e9);
        Guard.InRange(SpoolFriction, 0, 1);
        Guard.InRange(SpoolDamping, 0, 1);
        Guard.InRange(FallLimit, 0, 3600);
        Guard.InRange(LineCapacity, 5, 1000);
        Guard.InRange(SplashSlack, 1e-4, 0.2);
        ArgumentNullException.ThrowIfNull(LineDrag);
    }
}
