namespace LureSim.Cli.Hosting;

/// <summary>A trip with its pages, not yet written.</summary>
/// <param name="Trip">The trip.</param>
/// <param name="Spots">The plans with their colours; their own sheets are not drawn.</param>
/// <param name="Pages">Files of the trip.</param>
internal sealed record TripOutcome(Report.Trips.Trip Trip, IReadOnlyList<PlanOutcome> Spots, IReadOnlyList<OutputFile> Pages);
