namespace LureSim.Model;

/// <summary>A point of the tide.</summary>
/// <param name="Hours">Time since midnight (h), 0 to 48; past midnight it goes on above 24.</param>
/// <param name="Current">Current at the surface (m/s), -3 to 3; negative against the direction of the spot's current.</param>
/// <param name="DepthChange">Change of the depth against the spot's (m), -20 to 20.</param>
/// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
public sealed record TidePoint(double Hours, double Current, double DepthChange)
{
    private static readonly ValueRange TwoDays = new(0, 48);

    /// <summary>Time since midnight (h), 0 to 48.</summary>
    public double Hours { get; init => field = TwoDays.Check(value); } = TwoDays.Check(Hours);

    /// <summary>Current at the surface (m/s), -3 to 3.</summary>
    public double Current { get; init => field = Limits.TidalCurrent.Check(value); } = Limits.TidalCurrent.Check(Current);

    /// <summary>Change of the depth against the spot's (m), -20 to 20.</summary>
    public double DepthChange { get; init => field = Limits.DepthChange.Check(value); } = Limits.DepthChange.Check(DepthChange);
}
