using LureSim.Stepping;

namespace LureSim.Decision.Trials;

/// <summary>What a rig does on its retrieve, by what an angler would notice first.</summary>
public enum TrialVerdict
{
    /// <summary>The run could not be computed.</summary>
    NotComputed,

    /// <summary>Never in the zone: it runs below it.</summary>
    BelowZone,

    /// <summary>It never gets down to the zone.</summary>
    NeverDownToZone,

    /// <summary>It drags in the grass.</summary>
    DragsInGrass,

    /// <summary>It is on the bottom for more than half of the retrieve.</summary>
    PlodsOnBottom,

    /// <summary>It touches the bottom now and then.</summary>
    TouchesBottom,

    /// <summary>It is above the zone for more than half of the retrieve.</summary>
    MostlyAbove,

    /// <summary>It is below the zone for more than half of the retrieve.</summary>
    MostlyBelow,

    /// <summary>In the zone for half of the retrieve or more, clear of bottom and grass.</summary>
    RunsClear,

    /// <summary>In the zone for less than that, and nothing else to be said.</summary>
    PartlyInZone,
}

/// <summary>Judges runs.</summary>
public static class TrialVerdicts
{
    /// <summary>Share of the retrieve from which a thing is noticed, a twentieth.</summary>
    public const double Noticeable = 0.05;

    /// <summary>The verdict on a run.</summary>
    /// <param name="status">How the run ended.</param>
    /// <param name="coverage">Where it spent its time.</param>
    /// <exception cref="ArgumentNullException"><paramref name="coverage"/> is null.</exception>
    public static TrialVerdict Of(SimulationStatus status, Coverage coverage)
    {
        ArgumentNullException.ThrowIfNull(coverage);
        if (status == SimulationStatus.Failed) return TrialVerdict.NotComputed;
        if (coverage.TimeToZone is null) return coverage.BelowShare > coverage.AboveShare ? TrialVerdict.BelowZone : TrialVerdict.NeverDownToZone;
        if (coverage.GrassShare > Noticeable) return TrialVerdict.DragsInGrass;
        if (coverage.BottomShare > 0.5) return TrialVerdict.PlodsOnBottom;
        if (coverage.BottomShare > Noticeable) return TrialVerdict.TouchesBottom;
        if (coverage.AboveShare > 0.5) return TrialVerdict.MostlyAbove;
        if (coverage.BelowShare > 0.5) return TrialVerdict.MostlyBelow;
        return coverage.ZoneShare >= 0.5 ? TrialVerdict.RunsClear : TrialVerdict.PartlyInZone;
    }
}
