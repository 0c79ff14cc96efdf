namespace LureSim.Model;

/// <summary>The strike zone as a band of depth below the surface (m), resolved at reading from either form of input.</summary>
/// <param name="Top">Depth of the upper edge (m), 0 to 60.</param>
/// <param name="Bottom">Depth of the lower edge (m), 0 to 60; in a spot more than <paramref name="Top"/>, in a scenario at most the water depth.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record StrikeZone(double Top, double Bottom)
{
    /// <summary>Depth of the upper edge (m), 0 to 60.</summary>
    public double Top { get; init => field = Limits.WithinWater.Check(value); } = Limits.WithinWater.Check(Top);

    /// <summary>Depth of the lower edge (m), 0 to 60.</summary>
    public double Bottom { get; init => field = Limits.WithinWater.Check(value); } = Limits.WithinWater.Check(Bottom);

    /// <summary>True if it was given by heights above the bottom: it then moves with the bottom where the depth changes.</summary>
    public bool MovesWithBottom { get; init; }

    /// <summary>The rule by which it was filled in where nobody gave one (Data/rules/holding_rules.csv); null for a zone that was given.</summary>
    public string? AssumedBy { get; init; }

    /// <summary>How far an assumed zone lies higher or lower in nine tries of ten, as a share of the depth, 0 to 1.</summary>
    public double Spread { get; init => field = Limits.Share.Check(value); }

    /// <summary>How much deeper (m) the band lies over another depth: by the difference where it moves with the bottom, not at all otherwise.</summary>
    /// <param name="depth">Depth of the spot, which the edges are stated for (m).</param>
    /// <param name="here">Depth at the place (m).</param>
    public double Shift(double depth, double here) => MovesWithBottom ? here - depth : 0;

    /// <summary>True if the depth (m) is inside the band, edges included.</summary>
    /// <param name="depth">Depth below the surface (m).</param>
    public bool Contains(double depth) => depth >= Top && depth <= Bottom;
}
