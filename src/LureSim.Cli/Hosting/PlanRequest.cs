using LureSim.Decision.Search;
using LureSim.Decision.Trips;
using LureSim.Report.Units;

namespace LureSim.Cli.Hosting;

/// <summary>What a plan or a lesson is asked for beside the scenario.</summary>
/// <param name="Units">Units of the drawings.</param>
/// <param name="Pdf">True to draw them as PDF as well.</param>
/// <param name="Samples">Draws of the uncertain inputs for each jig head; null for what the scenario asks for.</param>
internal sealed record PlanRequest(UnitSystem Units, bool Pdf, int? Samples = null)
{
    /// <summary>Hours of a trip; null for none.</summary>
    public TripClock? Clock { get; init; }

    /// <summary>Name of a trip; null for one by its spots.</summary>
    public string? Title { get; init; }

    /// <summary>What the choice is held to.</summary>
    public ChoiceLimits Limits { get; init; } = new();
}
