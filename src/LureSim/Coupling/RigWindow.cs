using System.Diagnostics;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;
using LureSim.Swimming.Forces;
using LureSim.Water;

namespace LureSim.Coupling;

/// <summary>Runs a rigged lure about its tow point for some seconds, in the water of one spot.</summary>
public sealed class RigWindow
{
    // What a start leaves behind has died away after this time (s).
    private const double Settling = 2;

    // Twitch, twitch, pause for a retrieve that has none: travel (m), pull and interval (s), pause (s); common practice.
    private const double PlainStroke = 0.3;
    private const double PlainPull = 0.15;
    private const double PlainInterval = 0.7;
    private const double PlainPause = 1.6;

    // The tip of a rod lifted up pulls the line by less than it travels; the part along the line (assumed).
    private const double StrokeAlongLine = 0.7;

    // Taps from which it is seen whether a walker walks.
    private const int LeastTaps = 6;

    // A pause may be long; the motion has died away after this time (s).
    private const double LongestPause = 3;

    // Tries end sooner than single windows: the start is far from rest, and what goes on in one way is seen at once (s). Steps to 1e-3: verdicts do not hang on the fourth digit.
    private const double TryWindow = 5;
    private const double TrySettling = 1.5;
    private const double TryInterval = 0.01;
    private const double TryTolerance = 1e-3;

    // Stop and go: pull and pause (s), common practice.
    private const double GoTime = 1;
    private const double StopTime = 1.2;
    private const int Stops = 2;

    // Leader without one of its own: fluorocarbon (Pa), from memory.
    private const double LeaderModulus = 2e9;

    // Steepest angle of the line at which a lure is towed for its drag (radians): beyond, it hangs rather than swims.
    private const double SteepestElevation = 1.2;

    private readonly ActionBody body;
    private readonly Outfit tackle;
    // Speeds at which it is asked whether a hard lure swims (m/s): what a hand reels, and tries at each.
    private static readonly double[] RangeSpeeds = [0.15, 0.3, 0.45, 0.6, 0.8, 1, 1.25, 1.5, 2];
    private const int RangeTries = 3;

    private readonly bool onTop;
    private readonly double density;
    private readonly double viscosity;
    private readonly CancellationToken cancellation;

    /// <summary>Prepares the windows of one rig.</summary>
    /// <param name="tackle">The tackle, for rigging and leader.</param>
    /// <param name="spot">The spot, for the density and the viscosity of its water.</param>
    /// <param name="head">Head.</param>
    /// <param name="lure">Body.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <example><code>
    /// using LureSim.Coupling;
    /// using LureSim.Model;
    /// var spot = new Spot { Depth = 4, Salinity = 30, TemperatureCelsius = 20, Clarity = new SecchiClarity(2, WaterKind.CoastalGreen), Sky = new SkyByElevation(0.8), StrikeZone = new StrikeZone(2, 4), TargetFish = "red drum" };
    /// var rig = new FishingRig
    /// {
    ///     RodTipHeight = 1.5, Reel = new Reel(6.2, 0.045), Line = new LineSpecification(LineKind.Braid, 44.5, 0.00021),
    ///     Head = new JigHead(0.00709, HeadMetal.Lead, 0.0011, "1/4 oz"), Body = new LureBody(BodyProfile.PaddleTail, 0.1, 0.019, 0.0164, 1050, "paddle tail"),
    /// };
    /// var window = new RigWindow(rig, spot, rig.Head, rig.Body);
    /// Console.WriteLine(window.Steady(0.5, 0.3, 4).Report.Frequency);
    /// </code></example>
    public RigWindow(Outfit tackle, Spot spot, JigHead head, LureBody lure, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        ArgumentNullException.ThrowIfNull(spot);
        this.tackle = tackle;
        body = ActionBodyBuilder.Of(head, lure, tackle.Rigging);
        onTop = lure.Kind.OnTop;
        var water = WaterColumn.Of(spot);
        density = water.Density;
        viscosity = Math.Clamp(water.KinematicViscosity, 5e-7, 3e-6);
        this.cancellation = cancellation;
    }

    /// <summary>True if the lure has a tail that swings by itself.</summary>
    public bool HasTail => body.Tail is not null;

    /// <summary>True if a retrieve has twitches: others are judged by a plain twitch, twitch, pause.</summary>
    /// <param name="presentation">The retrieve.</param>
    /// <exception cref="ArgumentNullException"><paramref name="presentation"/> is null.</exception>
    public static bool Twitches(Presentation presentation) => TwitchingOf(presentation) is not null;

    /// <summary>The angle of the line (radians, upward positive) at which it holds wet weight and drag: towed otherwise, the lure would sink or rise all through the window.</summary>
    /// <param name="lure">The lure on its path.</param>
    /// <param name="speed">Speed through the water (m/s), above 0.</param>
    /// <exception cref="ArgumentNullException"><paramref name="lure"/> is null.</exception>
    public double HeldElevation(LureProperties lure, double speed) => HeldElevation(lure, density, viscosity, speed);

    /// <summary>A steady pull.</summary>
    /// <param name="speed">Speed through the water (m/s), 0 to 5.</param>
    /// <param name="elevation">Angle of the line above the path (radians).</param>
    /// <param name="window">Length of the window (s).</param>
    /// <param name="terms">Forces that act.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public ActionAssessment Steady(double speed, double elevation, double window, ActionTerms terms = ActionTerms.All) =>
        Run(TowInput.Steady(speed, elevation), null, new ActionOptions { Duration = window, SettlingTime = Math.Min(Settling, window / 2), Terms = terms });

    /// <summary>A fall on a slack line.</summary>
    /// <param name="window">Length of the window (s).</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public ActionAssessment Fall(double window) =>
        Run(TowInput.SlackFall(), null, new ActionOptions { Duration = window, SettlingTime = Math.Min(Settling, window / 2) });

    /// <summary>The first twitches of a retrieve and the pause after them; two plain twitches where it has none.</summary>
    /// <param name="presentation">The retrieve.</param>
    /// <param name="knot">The knot; null for the tackle's own.</param>
    /// <exception cref="ArgumentNullException"><paramref name="presentation"/> is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public ActionAssessment Twitch(Presentation presentation, KnotStyle? knot = null)
    {
        TowInput tow = PullOf(TwitchingOf(presentation));
        return Run(tow, knot, new ActionOptions { Duration = tow.Strokes[^1].End + 1, SettlingTime = 0 });
    }

    /// <summary>A steady pull, tried with other starts and other values of what nobody measures.</summary>
    /// <param name="speed">Speed through the water (m/s), 0 to 5.</param>
    /// <param name="elevation">Angle of the line above the path (radians).</param>
    /// <param name="tries">Number of tries, 1 to 12.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public EnsembleAssessment SteadyTries(double speed, double elevation, int tries = ActionEnsemble.Tries) =>
        Try(TowInput.Steady(speed, elevation), Knot(null), Trying(TryWindow), tries);

    /// <summary>The speeds at which the lure swims on a steady pull.</summary>
    /// <param name="elevation">Angle of the line above the path (radians).</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public SwimRange Range(double elevation) => SwimRange.Of(body, Knot(null), InWater(TowInput.Steady(RangeSpeeds[0], elevation)), RangeSpeeds, RangeTries, cancellation);

    /// <summary>The twitches of <see cref="Twitch"/>, tried so.</summary>
    /// <param name="presentation">The retrieve.</param>
    /// <param name="knot">The knot; null for the tackle's own.</param>
    /// <exception cref="ArgumentNullException"><paramref name="presentation"/> is null.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public EnsembleAssessment TwitchTries(Presentation presentation, KnotStyle? knot = null)
    {
        TowInput tow = PullOf(TwitchingOf(presentation));
        return Try(tow, Knot(knot), Trying(tow.Strokes[^1].End + 1), ActionEnsemble.Tries);
    }

    /// <summary>A fall on a slack line, tried so.</summary>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public EnsembleAssessment FallTries() => Try(TowInput.SlackFall(), Knot(null), Trying(TryWindow), ActionEnsemble.Tries);

    /// <summary>One of the retrieves on which knots are compared, on a knot and a leader of their own, tried so.</summary>
    /// <param name="retrieve">The retrieve.</param>
    /// <param name="speed">Speed of the pull through the water (m/s), above 0 to 5.</param>
    /// <param name="elevation">Angle of the line above the path (radians).</param>
    /// <param name="knot">The knot.</param>
    /// <param name="leaderDiameter">Diameter of the leader (m), 5e-5 to 2e-3.</param>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public EnsembleAssessment KnotTries(TriedRetrieve retrieve, double speed, double elevation, KnotStyle knot, double leaderDiameter)
    {
        TowInput tow = retrieve switch
        {
            TriedRetrieve.Steady => TowInput.Steady(speed, elevation),
            TriedRetrieve.StopAndGo => TowInput.Steady(speed, elevation) with { SpeedChanges = [.. Enumerable.Range(0, 2 * Stops).Select(i => new SpeedChange(GoTime + (i / 2 * (GoTime + StopTime)) + (i % 2 * StopTime), i % 2 == 0 ? 0 : speed))] },
            TriedRetrieve.TwitchTwitchPause => PullOf(null),
            TriedRetrieve.Fall => TowInput.SlackFall(),
            _ => throw new ArgumentOutOfRangeException(nameof(retrieve), retrieve, "Not a retrieve."),
        };
        double window = retrieve switch
        {
            TriedRetrieve.StopAndGo => GoTime + (Stops * (GoTime + StopTime)),
            TriedRetrieve.TwitchTwitchPause => tow.Strokes[^1].End + 1,
            TriedRetrieve.Steady or TriedRetrieve.Fall => TryWindow,
            _ => throw new UnreachableException(),
        };
        Knot tied = Knot(knot) with { LeaderDiameter = leaderDiameter };
        if (tackle.Leader is null) tied = tied with { LeaderModulus = LeaderModulus };
        ActionOptions options = Trying(window);
        return Try(tow, tied, retrieve == TriedRetrieve.StopAndGo ? options with { SettlingTime = GoTime / 2 } : options, ActionEnsemble.Tries);
    }

    internal static double HeldElevation(LureProperties lure, double density, double viscosity, double speed)
    {
        ArgumentNullException.ThrowIfNull(lure);
        double wet = (lure.Mass - (density * lure.Volume)) * PhysicalConstants.StandardGravity;
        double drag = 0.5 * density * speed * lure.DragAreaTimesSpeed(speed, viscosity, out _);
        return Math.Clamp(Math.Atan2(wet, drag), -SteepestElevation, SteepestElevation);
    }

    // The first twitches of a retrieve and the pause after them; null where the rod only lifts, sweeps or rests.
    private static (int Count, double Height, double Period, double Pause)? TwitchingOf(Presentation presentation)
    {
        ArgumentNullException.ThrowIfNull(presentation);
        IReadOnlyList<Move> cycle = presentation.Moves;
        for (int i = 0; i < cycle.Count; i++)
        {
            Move move = cycle[i];
            if (move.Kind != MoveKind.Twitch || move.Beats < 1) continue;
            double height = Math.Sqrt((move.Up * move.Up) + (move.Left * move.Left) + (move.Out * move.Out));
            Move next = cycle[(i + 1) % cycle.Count];
            double pause = next.Kind == MoveKind.Pause && double.IsFinite(next.Duration) ? next.Duration : 0;
            return (Math.Min(10, move.Beats), height, move.Duration / move.Beats, Math.Clamp(pause, 0.5, LongestPause));
        }

        return null;
    }

    // A lure that floats is walked: taps on slack line, one after the other.
    private TowInput PullOf((int Count, double Height, double Period, double Pause)? twitches) => onTop
        ? twitches is { } tap ? TowInput.Tapping(Math.Min(3, StrokeAlongLine * tap.Height), Math.Max(0.05, tap.Period / 2), Math.Max(0.1, tap.Period), Math.Max(tap.Count, LeastTaps)) : TowInput.Tapping()
        : twitches is { } t ? TowInput.Twitching(Math.Min(3, StrokeAlongLine * t.Height), Math.Max(0.05, t.Period / 2), Math.Max(0.1, t.Period), t.Count, t.Pause)
        : TowInput.Twitching(PlainStroke, PlainPull, PlainInterval, 2, PlainPause);

    private static ActionOptions Trying(double window) =>
        new() { Duration = window, SettlingTime = TrySettling, OutputInterval = TryInterval, Tolerance = TryTolerance, StopsWhenClear = true };

    private Knot Knot(KnotStyle? knot) => ActionBodyBuilder.KnotOf(knot is { } style && style != tackle.Rigging.Knot
        ? tackle with { Rigging = tackle.Rigging with { Knot = style, LoopLength = style == KnotStyle.Snug ? 0 : new Rigging().LoopLength } }
        : tackle);

    private TowInput InWater(TowInput tow) => tow with { WaterDensity = density, KinematicViscosity = viscosity, AtSurface = onTop && tow.Mode == TowMode.Pulled };

    private EnsembleAssessment Try(TowInput tow, Knot knot, ActionOptions options, int tries) => ActionEnsemble.Assess(body, knot, InWater(tow), options, tries, cancellation);

    private ActionAssessment Run(TowInput tow, KnotStyle? knot, ActionOptions options)
    {
        cancellation.ThrowIfCancellationRequested();
        ActionAssessment found = LureActionModel.Assess(body, Knot(knot), InWater(tow), options, cancellation);
        cancellation.ThrowIfCancellationRequested();
        return found;
    }
}
