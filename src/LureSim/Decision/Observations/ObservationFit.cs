using LureSim.Decision.Trials;
using LureSim.Model;

namespace LureSim.Decision.Observations;

/// <summary>An observation beside what was predicted.</summary>
/// <param name="Observation">The observation.</param>
/// <param name="Before">What would have been observed by what was known before, observer's error not counted; infinite for never.</param>
/// <param name="After">The same by what is known now.</param>
/// <param name="Conflict">Why it was left out; null where it was used.</param>
public sealed record ObservationFit(Observation Observation, Interval Before, Interval After, ObservationConflict? Conflict);
