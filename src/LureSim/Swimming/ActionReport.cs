namespace LureSim.Swimming;

/// <summary>What the lure does, in one word.</summary>
public enum ActionVerdict
{
    /// <summary>Its tail or body beats.</summary>
    Swims,

    /// <summary>It should beat and hardly does.</summary>
    Muted,

    /// <summary>It darts from side to side under twitches.</summary>
    Darts,

    /// <summary>It slides forwards or to the sides without beating.</summary>
    Glides,

    /// <summary>It turns over and over about its long axis and twists the line.</summary>
    Spins,

    /// <summary>It rocks from side to side as it falls.</summary>
    Flutters,

    /// <summary>It turns end over end.</summary>
    Tumbles,

    /// <summary>It follows the line without any motion of its own.</summary>
    Still,

    /// <summary>The computation did not finish.</summary>
    Unknown,
}

/// <summary>One twitch and what followed it.</summary>
/// <param name="Start">Start of the pull (s).</param>
/// <param name="Angle">Angle between the lure's path over ground from above and the pull, at the end of its travel (radians), positive to the left.</param>
/// <param name="Heading">Greatest heading away from the pull during the twitch (radians), signed, positive to the left.</param>
/// <param name="Travel">Length of the path until the next twitch or the end of the window (m).</param>
/// <param name="SideTravel">Sideways displacement, positive to the left (m).</param>
/// <param name="Glide">Way made after the line has gone slack (m).</param>
public sealed record DartResult(double Start, double Angle, double Heading, double Travel, double SideTravel, double Glide);

/// <summary>What a window of action comes to. Amplitudes are half of peak to peak in the part that is judged.</summary>
public sealed record ActionReport
{
    /// <summary>The verdict.</summary>
    public required ActionVerdict Verdict { get; init; }

    /// <summary>Why, in words with figures; at least one sentence.</summary>
    public required IReadOnlyList<string> Reasons { get; init; }

    /// <summary>Frequency of the tail beat or wobble (Hz), 0 when there is none.</summary>
    public double Frequency { get; init; }

    /// <summary>Amplitude of the heading (radians).</summary>
    public double YawAmplitude { get; init; }

    /// <summary>Amplitude of the roll (radians).</summary>
    public double RollAmplitude { get; init; }

    /// <summary>Amplitude of the pitch (radians).</summary>
    public double PitchAmplitude { get; init; }

    /// <summary>Amplitude of the tail relative to the body (radians).</summary>
    public double TailAmplitude { get; init; }

    /// <summary>Path of the tail's tip to each side (m).</summary>
    public double TailTipAmplitude { get; init; }

    /// <summary>Strouhal number f W/U by the paddle's width; 0 without a beat.</summary>
    public double Strouhal { get; init; }

    /// <summary>Mean heading off the path (radians), positive to the left.</summary>
    public double MeanYaw { get; init; }

    /// <summary>Mean roll (radians); not meaningful when it spins.</summary>
    public double MeanRoll { get; init; }

    /// <summary>Mean pitch (radians): on the fall the attitude, negative nose down.</summary>
    public double MeanPitch { get; init; }

    /// <summary>Mean speed through the water (m/s).</summary>
    public double MeanSpeed { get; init; }

    /// <summary>Mean speed downwards (m/s).</summary>
    public double SinkRate { get; init; }

    /// <summary>Mean displacement to the left of the line's far end (m): the bait that planes to one side.</summary>
    public double SideOffset { get; init; }

    /// <summary>Radius of the spiral on the fall (m), 0 for a straight fall.</summary>
    public double SpiralRadius { get; init; }

    /// <summary>Turns of the spiral a second (Hz), signed, positive to the left.</summary>
    public double SpiralRate { get; init; }

    /// <summary>Mean rate of turn about the long axis (turns/s), signed: positive lifts the left side.</summary>
    public double SpinRate { get; init; }

    /// <summary>Twists in the line per metre travelled.</summary>
    public double LineTwistsPerMetre { get; init; }

    /// <summary>Twitches one by one; empty for a steady retrieve.</summary>
    public IReadOnlyList<DartResult> Darts { get; init; } = [];

    /// <summary>Mean size of the dart angle (radians).</summary>
    public double DartAngle { get; init; }

    /// <summary>Mean path per twitch (m).</summary>
    public double DartTravel { get; init; }

    /// <summary>Mean glide on the slack line (m).</summary>
    public double Glide { get; init; }

    /// <summary>Share of darts that go to the other side than the one before, 0 to 1.</summary>
    public double Alternation { get; init; }

    /// <summary>Mean drag along the path over the drag of the same body held straight, for <c>Motion</c>; 1 on a fall without line.</summary>
    public double DragFactor { get; init; } = 1;

    /// <summary>
    /// Mean lift over 1/2 rho U^2 A with the frontal area A of the ellipsoid (dimensionless, positive up): the force of the water across the mean flow in its vertical
    /// plane, from the balance of line, wet weight and buoyancy; 0 on a fall without line.
    /// </summary>
    public double LiftCoefficient { get; init; }

    /// <summary>Mean tension (N).</summary>
    public double MeanTension { get; init; }
}
