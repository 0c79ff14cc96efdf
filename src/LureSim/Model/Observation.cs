namespace LureSim.Model;

/// <summary>Something seen, felt or timed that tells how the water and the tackle really are.</summary>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
/// <exception cref="ArgumentNullException">A required part is missing.</exception>
public sealed record Observation
{
    /// <summary>What was observed.</summary>
    public required ObservationKind Kind { get; init => field = Guard.Defined(value); }

    /// <summary>The figure, by the kind (s, whole counts, turns, radians or m), -4 to 3600.</summary>
    public required double Value { get; init => field = Limits.Observed.Check(value); }

    /// <summary>False where it did not happen: up to <see cref="Value"/> there was none.</summary>
    public bool Happened { get; init; } = true;

    /// <summary>True if it was counted in the head, not timed with a watch.</summary>
    public bool Counted { get; init; }

    /// <summary>Standard deviation of the observer's error in the unit of <see cref="Value"/>, above 0; null for that of the kind (<c>ObservationErrors</c>).</summary>
    public double? Error { get; init => field = Limits.ObservationError.Check(value); }

    /// <summary>Jig head that was fished; null where no lure was.</summary>
    public JigHead? Head { get; init; }

    /// <summary>Bait that was fished; null where none was.</summary>
    public LureBody? Body { get; init; }

    /// <summary>How it was cast and worked; null where it was not cast.</summary>
    public Presentation? Way { get; init; }

    /// <summary>Depth of the pool or distance between the marks (m), 0.1 to 500; null for other kinds.</summary>
    public double? Length { get; init => field = Limits.ObservedLength.Check(value); }

    /// <summary>Temperature of the pool (degrees Celsius), -2 to 40.</summary>
    public double TemperatureCelsius { get; init => field = Limits.Temperature.Check(value); } = 20;

    /// <summary>Practical salinity of the pool, 0 to 42.</summary>
    public double Salinity { get; init => field = Limits.Salinity.Check(value); }

    /// <summary>Day on which it was observed; null where it was not noted.</summary>
    public DateOnly? Date { get; init; }

    /// <summary>The words in which it was noted; may be empty.</summary>
    public string Note { get; init => field = Guard.Given(value); } = "";
}
