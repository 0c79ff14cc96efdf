using LureSim.Decision.Trials;
using LureSim.Motion;

namespace LureSim.Decision.Search;

/// <summary>Settings of a search for a choice.</summary>
public sealed record ChoiceSearchOptions
{
    /// <summary>Tries of the uncertain inputs, 0 for the scenario's single run; null for what the scenario asks for.</summary>
    public int? Samples { get; init; }

    /// <summary>What the choice is held to.</summary>
    public ChoiceLimits Limits { get; init; } = new();

    /// <summary>Settings of single runs; the search takes coarser ones (<see cref="Trial.ForLook"/>, <see cref="Trial.ForSearch"/>).</summary>
    public SimulationOptions Simulation { get; init; } = new();

    /// <summary>True to run every rig with every variation of the hands over all tries: what the race is measured against.</summary>
    public bool Exhaustive { get; init; }

    /// <summary>Told the best rig of the first look, before the tries.</summary>
    public IProgress<Candidate>? FirstLook { get; init; }
}
