namespace LureSim.Decision.Trials;

/// <summary>Where one track spent its time; shares are of the retrieve (from the first turn of the handle to the end), 0 to 1.</summary>
/// <param name="ZoneShare">Share of the retrieve inside the strike zone.</param>
/// <param name="AboveShare">Share above the zone.</param>
/// <param name="BelowShare">Share below the zone.</param>
/// <param name="BottomShare">Share in contact with the bottom.</param>
/// <param name="GrassShare">Share inside the grass canopy.</param>
/// <param name="TimeToZone">Seconds from splash-down to the first entry into the zone; null if it never gets there.</param>
/// <param name="TimeToBottom">Seconds from splash-down to the first bottom contact; null if it never gets there.</param>
/// <param name="MedianDepth">Median depth during the retrieve (m).</param>
/// <param name="DeepestDepth">Greatest depth (m).</param>
/// <param name="RetrieveTime">Duration of the retrieve (s).</param>
/// <param name="DriftAcross">Greatest sideways displacement by the current (m).</param>
public sealed record Coverage(
    double ZoneShare,
    double AboveShare,
    double BelowShare,
    double BottomShare,
    double GrassShare,
    double? TimeToZone,
    double? TimeToBottom,
    double MedianDepth,
    double DeepestDepth,
    double RetrieveTime,
    double DriftAcross);
