using LureSim.Model;

namespace LureSim.Decision.Search;

/// <summary>What a choice is held to; what is null is free.</summary>
/// <param name="Head">The jig head.</param>
/// <param name="Body">The soft bait or the lure without a head.</param>
/// <param name="Presentation">The presentation of the scenario; its hands stay free.</param>
/// <param name="Colour">The colour.</param>
public sealed record ChoiceLimits(JigHead? Head = null, LureBody? Body = null, Presentation? Presentation = null, string? Colour = null);
