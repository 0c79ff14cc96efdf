using LureSim.Decision.Trips;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>What was read of a trip file.</summary>
/// <param name="File">The file as it was named.</param>
/// <param name="Trip">The trip, or null where there are problems.</param>
/// <param name="Problems">All problems, those of the scenarios among them.</param>
public sealed record TripReading(string File, TripFile? Trip, IReadOnlyList<ScenarioProblem> Problems);

/// <summary>A trip as it was given.</summary>
/// <param name="Title">Name of the day.</param>
/// <param name="Scenarios">The spots in the order of the file.</param>
/// <param name="Clock">Hours, stays and ways.</param>
public sealed record TripFile(string Title, IReadOnlyList<Scenario> Scenarios, TripClock Clock);
