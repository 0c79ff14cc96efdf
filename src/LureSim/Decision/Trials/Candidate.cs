using LureSim.Motion;

namespace LureSim.Decision.Trials;

/// <summary>A simulated rig with its coverage.</summary>
/// <param name="Rig">The rig.</param>
/// <param name="Track">Its computed path.</param>
/// <param name="Coverage">Where it spent its time.</param>
/// <param name="Score">Ranking value, 0 to 1, larger is better; see the user guide for its parts.</param>
public sealed record Candidate(Rig Rig, Track Track, Coverage Coverage, double Score)
{
    /// <summary>Length of its cast (m): its own where the scenario gives it by weight, or the rod limits it.</summary>
    public double CastLength => Coverage.CastLength > 0 ? Coverage.CastLength : Rig.Presentation.CastLength;

    /// <summary>What this rig does here.</summary>
    public TrialVerdict Verdict => TrialVerdicts.Of(Track.Status, Coverage);
}
