using LureSim.Decision.Search;
using LureSim.Decision.Trials;
using LureSim.Motion;
using LureSim.Report.Units;
using LureSim.Stepping;

namespace LureSim.Report.Words;

/// <summary>Puts runs and what they come to into words.</summary>
public static class TrackWords
{
    private static readonly (TrackState Flag, string Word)[] StateWords =
    [
        (TrackState.Falling, "sinking"),
        (TrackState.Reeling, "reeling"),
        (TrackState.InZone, "in zone"),
        (TrackState.OnBottom, "on bottom"),
        (TrackState.InGrass, "in grass"),
        (TrackState.OutOfWater, "out of water"),
    ];

    /// <summary>What a rig does, as a clause without units.</summary>
    /// <param name="candidate">Its run.</param>
    /// <exception cref="ArgumentNullException"><paramref name="candidate"/> is null.</exception>
    public static string Verdict(Candidate candidate)
    {
        ArgumentNullException.ThrowIfNull(candidate);
        Coverage c = candidate.Coverage;
        string zone = $"in the strike zone {UnitFormat.PercentText(c.ZoneShare)} of the retrieve";
        return candidate.Verdict switch
        {
            TrialVerdict.NotComputed => $"could not be computed: {End(candidate.Track.End)}",
            TrialVerdict.BelowZone => "never in the strike zone: runs below it",
            TrialVerdict.NeverDownToZone => "never gets down to the strike zone",
            TrialVerdict.DragsInGrass => $"{zone}, drags through grass {UnitFormat.PercentText(c.GrassShare)} of the time",

            // Where the zone reaches down to the bottom, time on it is time in the zone and no fault.
            TrialVerdict.PlodsOnBottom => c.BelowShare < c.BottomShare ? OnBottom() : $"{zone}, drags bottom {UnitFormat.PercentText(c.BottomShare)} of the time",
            TrialVerdict.TouchesBottom => OnBottom(),
            TrialVerdict.MostlyAbove => $"mostly above the strike zone, in it {UnitFormat.PercentText(c.ZoneShare)} of the retrieve",
            TrialVerdict.MostlyBelow => $"mostly below the strike zone, in it {UnitFormat.PercentText(c.ZoneShare)} of the retrieve",
            TrialVerdict.RunsClear => $"{zone}, runs clean: no grass, no bottom",
            TrialVerdict.PartlyInZone => zone,
            _ => throw new ArgumentOutOfRangeException(nameof(candidate), candidate.Verdict, "Not a verdict."),
        };

        string OnBottom() => $"{zone}, on bottom {UnitFormat.PercentText(c.BottomShare)}";
    }

    /// <summary>The verdict on a rig by the typical numbers of its tries; where these never reach the zone, that of its single run.</summary>
    internal static string Verdict(TryNumbers tries, Candidate run)
    {
        double share = tries.ZoneShare.Median, bottom = tries.BottomShare.Median, grass = tries.GrassShare.Median;
        if (!(share > 0)) return run.Coverage.ZoneShare > 0 ? "in most tries never in the strike zone" : Verdict(run);
        string zone = $"in the strike zone {UnitFormat.PercentText(share)} of the retrieve";
        if (grass > TrialVerdicts.Noticeable) return $"{zone}, drags through grass {UnitFormat.PercentText(grass)} of the time";
        if (bottom > TrialVerdicts.Noticeable) return $"{zone}, on bottom {UnitFormat.PercentText(bottom)}";
        return share >= 0.5 ? $"{zone}, runs clean: no grass, no bottom" : zone;
    }

    /// <summary>Why a run ended otherwise than planned, or what to doubt of it, in one or two sentences; empty where there is nothing to say.</summary>
    /// <param name="end">The end of the run, or null.</param>
    /// <exception cref="ArgumentOutOfRangeException">It has no reason.</exception>
    public static string End(SimulationEnd? end) => end?.Reason switch
    {
        null => "",
        SimulationEndReason.Cancelled => $"Stopped {At(end)}.",
        SimulationEndReason.StepTooSmall when end.Node == 0 => $"The lure could not be followed past {At(end)}: it is jerked about faster than the model can follow. Take a heavier lure or gentler rod work, and check the lure's size and weight in the scenario for a slip.",
        SimulationEndReason.StepTooSmall => $"The line could not be followed past {At(end)}: {Where(end)} it goes slack and snaps tight faster than the model can follow. Take a shorter cast, a lower rod tip, thinner line or a heavier head, or less wind, and check the line's diameter in the scenario for a slip.",
        SimulationEndReason.OutOfSteps => $"Given up {At(end)}: the line goes slack and snaps tight over and over, too often and too hard to follow. Take gentler twitches or slower lifts, thinner line, or a heavier head.",
        SimulationEndReason.LineNotIn => $"Given up after {UnitFormat.Counted(end.Time / 60, "minute")} of retrieve: the line does not come in. Reel faster or feed less line, or end the retrieve earlier with time_limit or line_left.",
        SimulationEndReason.EnergyOpen => $"Take this track as a rough one: its energy is {F(100 * end.Energy.Residual, 1)}% off, where up to {F(100 * end.Energy.Limit, 0)}% is fine; most often the line snaps tight too hard. Gentler twitches or slower lifts give a surer one.",
        _ => throw new ArgumentOutOfRangeException(nameof(end), end.Reason, "Not a reason."),
    };

    /// <summary>What is shown of a run that gave up.</summary>
    public const string PartBefore = "What is shown is the part before that.";

    /// <summary>How a run ended that did not complete: the reason, or what its status says where none is known.</summary>
    /// <param name="track">The track.</param>
    /// <exception cref="ArgumentNullException"><paramref name="track"/> is null.</exception>
    public static string EndOrStatus(Track track)
    {
        ArgumentNullException.ThrowIfNull(track);
        return track.End is { } end ? End(end) : Status(track.Status);
    }

    /// <summary>The words of a state.</summary>
    /// <param name="state">The state.</param>
    /// <param name="separator">What stands between the words.</param>
    public static string State(TrackState state, string separator) =>
        string.Join(separator, StateWords.Where(pair => state.HasFlag(pair.Flag)).Select(pair => pair.Word));

    /// <summary>An event.</summary>
    /// <param name="kind">What happened.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no event.</exception>
    public static string Event(TrackEventKind kind) => kind switch
    {
        TrackEventKind.EntersZone => "enters the strike zone",
        TrackEventKind.LeavesZone => "leaves the strike zone",
        TrackEventKind.BottomContact => "touches the bottom",
        TrackEventKind.LeavesBottom => "leaves the bottom",
        TrackEventKind.EntersGrass => "enters the grass",
        TrackEventKind.LeavesGrass => "leaves the grass",
        TrackEventKind.RetrieveStarts => "retrieve starts",
        TrackEventKind.LineIn => "lure at the rod tip",
        TrackEventKind.BreaksSurface => "breaks the surface",
        TrackEventKind.SwingEnds => "hangs straight downcurrent",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a kind of event."),
    };

    /// <summary>Where a run spent its time, two sentences.</summary>
    /// <param name="coverage">Where it spent its time.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static IReadOnlyList<string> Coverage(Coverage coverage, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(coverage);
        ArgumentNullException.ThrowIfNull(format);
        string zone = coverage.TimeToZone is { } time ? $"reaches the strike zone {UnitFormat.SecondsText(time)} after it hits the water" : "never reaches the strike zone";
        string bottom = coverage.TimeToBottom is { } until ? $"the bottom after {UnitFormat.SecondsText(until)}" : "not the bottom";
        return
        [
            $"Of the retrieve ({UnitFormat.HoldText(coverage.RetrieveTime)}): {UnitFormat.PercentText(coverage.ZoneShare)} in the strike zone, {UnitFormat.PercentText(coverage.AboveShare)} above, {UnitFormat.PercentText(coverage.BelowShare)} below; {UnitFormat.PercentText(coverage.BottomShare)} on bottom, {UnitFormat.PercentText(coverage.GrassShare)} in grass.",
            $"It {zone}, {bottom}; typical depth {format.HandText(coverage.MedianDepth)}, deepest {format.HandText(coverage.DeepestDepth)}; the current carries it {format.HandText(coverage.DriftAcross)} sideways.",
        ];
    }

    private static string Status(SimulationStatus status) => status switch
    {
        SimulationStatus.Completed => "Complete.",
        SimulationStatus.TimeLimit => "Ended by its time limit before the line was in.",
        SimulationStatus.Cancelled => "Stopped.",
        SimulationStatus.StepLimit => "Given up: the line is pulled about too often and too hard to follow.",
        SimulationStatus.Failed => "The track could not be computed.",
        _ => throw new ArgumentOutOfRangeException(nameof(status), status, "Not a status."),
    };

    private static string At(SimulationEnd end) => $"{F(end.Time, 1)} s after it hits the water";

    // Nodes count from the lure to the rod tip.
    private static string Where(SimulationEnd end) => end switch
    {
        { NodeDepth: < 0 } => "above the water",
        _ when 2 * end.Node <= end.Nodes => "near the lure",
        _ => "under water near the rod",
    };

    private static string F(double value, int decimals) => UnitFormat.Fixed(value, decimals);
}
