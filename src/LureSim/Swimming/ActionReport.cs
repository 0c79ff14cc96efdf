
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

    /// <summary>It lies over to one side all the while.</summary>
    Leans,

    /// <summary>It runs off to one side of the line.</summary>
    RunsOff,

    /// <summary>It rolls far to both sides without going over.</summary>
    Rolls,
}

/// <summary>One twitch and what followed it.</summary>
/// <param name="Start">Start of the pull (s).</param>
/// <param name="Angle">Angle between the lure's path over ground from above and the pull, at the end of its travel (radians), positive to the left.</param>
/// <param name="Heading">Greatest heading away from the pull once the pull is over (radians), signed, positive to the left.</param>
/// <param name="Travel">Length of the path until the next twitch or the end of the window (m).</param>
/// <param name="SideTravel">Sideways displacement, positive to the left (m).</param>
/// <param name="Glide">Way made after the line has gone slack (m).</param>
public sealed record DartResult(double Start, double Angle, double Heading, double Travel, double SideTravel, double Glide);

/// <summary>What a verdict on a window of action rests on.</summary>
public enum ActionFindingKind
{
    /// <summary>The window could not be computed to its end: cancelled; value is the time reached (s).</summary>
    Cancelled,

    /// <summary>The window could not be computed to its end: out of steps; values are the time reached and the time asked for (s).</summary>
    OutOfSteps,

    /// <summary>The motion could not be followed; value is the time reached (s).</summary>
    Lost,

    /// <summary>The window has too few samples to judge.</summary>
    WindowTooShort,

    /// <summary>It turns over and over: <see cref="ActionReport.SpinRate"/>, <see cref="ActionReport.LineTwistsPerMetre"/>.</summary>
    TurnsOver,

    /// <summary>The body is bent on the hook; value is the angle (radians).</summary>
    BodyBent,

    /// <summary>The head points to the side; value is the angle (radians).</summary>
    HeadTurned,

    /// <summary>What each twitch does: <see cref="ActionReport.DartTravel"/>, <see cref="ActionReport.DartAngle"/>, <see cref="ActionReport.Glide"/>; value is the mean heading off the pull (radians).</summary>
    Twitched,

    /// <summary>How darts change sides: <see cref="ActionReport.Alternation"/>.</summary>
    ChangesSides,

    /// <summary>It turns by too little for a dart; value is the heading that counts as one (radians).</summary>
    TooLittleForDart,

    /// <summary>The tail beats: <see cref="ActionReport.Frequency"/>, <see cref="ActionReport.TailAmplitude"/>, yaw and roll.</summary>
    TailBeats,

    /// <summary>The tail hardly moves: <see cref="ActionReport.TailAmplitude"/>; value is the amplitude that counts as swimming (radians).</summary>
    TailHardlyMoves,

    /// <summary>Little of the body is free to bend; value is the share of its length, 0 to 1.</summary>
    LittleIsFree,

    /// <summary>It wobbles: <see cref="ActionReport.Frequency"/>, yaw and roll.</summary>
    Wobbles,

    /// <summary>It runs to one side of the line: <see cref="ActionReport.CourseSlope"/>.</summary>
    RunsAside,

    /// <summary>It follows the line straight: yaw and roll.</summary>
    RunsStraight,

    /// <summary>It lies over: <see cref="ActionReport.MeanRoll"/>.</summary>
    LiesOver,

    /// <summary>It rolls far: <see cref="ActionReport.RollAmplitude"/>.</summary>
    RollsFar,

    /// <summary>It turns end over end as it falls: <see cref="ActionReport.SinkRate"/>; value is turns a second.</summary>
    EndOverEnd,

    /// <summary>It rocks as it falls: <see cref="ActionReport.Frequency"/>, <see cref="ActionReport.SinkRate"/>, pitch, roll and yaw.</summary>
    Rocks,

    /// <summary>It slides away as it falls: <see cref="ActionReport.SinkRate"/>, <see cref="ActionReport.MeanPitch"/>, <see cref="ActionReport.SpiralRadius"/>.</summary>
    SlidesAway,

    /// <summary>It sinks straight: <see cref="ActionReport.SinkRate"/>, <see cref="ActionReport.MeanPitch"/>.</summary>
    SinksStraight,

    /// <summary>It runs on its back: <see cref="ActionReport.MeanRoll"/>.</summary>
    UpsideDown,
}

/// <summary>One thing that a verdict rests on.</summary>
/// <param name="Kind">What.</param>
/// <param name="Value">The figure that the report does not have, by the kind; 0 for none.</param>
/// <param name="Other">A second one; 0 for none.</param>
public readonly record struct ActionFinding(ActionFindingKind Kind, double Value = 0, double Other = 0);

/// <summary>What a window of action comes to. Amplitudes are half of peak to peak in the part that is judged.</summary>
public sealed record ActionReport
{
    /// <summary>Amplitude below which a motion is not seen, 1.5 degrees (radians; assumed).</summary>
    public const double Noticeable = 1.5 * Math.PI / 180;

    /// <summary>The verdict.</summary>
    public required ActionVerdict Verdict { get; init; }

    /// <summary>What the verdict rests on; at least one thing.</summary>
    public required IReadOnlyList<ActionFinding> Findings { get; init; }

    /// <summary>True for what nobody wants.</summary>
    public bool IsFault => Verdict is ActionVerdict.Spins or ActionVerdict.Rolls or ActionVerdict.Leans or ActionVerdict.RunsOff or ActionVerdict.Muted or ActionVerdict.Tumbles;

    /// <summary>True for what a crooked or ill-balanced lure does on the way: it spins, rolls, leans or runs off.</summary>
    public bool GoesAstray => Verdict is ActionVerdict.Spins or ActionVerdict.Rolls or ActionVerdict.Leans or ActionVerdict.RunsOff;

    /// <summary>True if it lies on its back all the while and does not go round.</summary>
    public bool UpsideDown => Findings.Any(finding => finding.Kind == ActionFindingKind.UpsideDown);

    /// <summary>True if its tail beats as far as it should, whatever else it does.</summary>
    public bool TailSwims => TailAmplitude >= ActionAnalysis.SwimTail;

    /// <summary>True if it beats visibly: tail, nose or roll by more than <see cref="Noticeable"/> to each side.</summary>
    public bool Beats => Frequency > 0 && Math.Max(TailAmplitude, Math.Max(YawAmplitude, RollAmplitude)) > Noticeable;

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

    /// <summary>Mean roll (radians, -pi to pi), left side up positive: it leans to the right. Not meaningful when it spins.</summary>
    public double MeanRoll { get; init; }

    /// <summary>Mean pitch (radians): on the fall the attitude, negative nose down.</summary>
    public double MeanPitch { get; init; }

    /// <summary>Mean speed through the water (m/s).</summary>
    public double MeanSpeed { get; init; }

    /// <summary>Mean speed downwards (m/s).</summary>
    public double SinkRate { get; init; }

    /// <summary>Mean displacement to the left of the line's far end (m): the bait that planes to one side.</summary>
    public double SideOffset { get; init; }

    /// <summary>
    /// How far it runs to the left of the line for each metre of way, on a line much longer than the way (m/m): the tangent of the angle between the line and the course of the lure, which
    /// its side force makes whatever the length of the line. 0 on a fall or under twitches.
    /// </summary>
    public double CourseSlope { get; init; }

    /// <summary>Angle from its mean direction within which the nose keeps nine tenths of the time (radians), whichever way it points.</summary>
    public double NoseSwing { get; init; }

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
