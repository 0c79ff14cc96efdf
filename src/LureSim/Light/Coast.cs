using LureSim.Data;

namespace LureSim.Light;

/// <summary>A stretch of coast that stands for coordinates and a clock. Source: Data/rules/coasts.csv (from memory).</summary>
/// <param name="Name">State or region.</param>
/// <param name="LatitudeDegrees">Latitude, north positive (degrees).</param>
/// <param name="LongitudeDegrees">Longitude, east positive (degrees).</param>
/// <param name="StandardOffset">What its clock is ahead of UTC in standard time (h).</param>
/// <param name="Daylight">True if its clock goes forward in summer.</param>
public sealed record Coast(string Name, double LatitudeDegrees, double LongitudeDegrees, double StandardOffset, bool Daylight)
{
    /// <summary>All coasts, in the order of the table.</summary>
    public static IReadOnlyList<Coast> All { get; } = [.. ReferenceTable.Rules("coasts").Rows.Select(row => new Coast(
        row.Text("coast"), row.Number("latitude"), row.Number("longitude"), row.Number("utc_offset_h"), row.Number("daylight") > 0))];

    /// <summary>What the clock is ahead of UTC on a day (h), daylight time from the second Sunday of March to the first of November.</summary>
    /// <param name="day">The day.</param>
    public double Offset(DateOnly day) => StandardOffset + (Daylight && day >= Sunday(day.Year, 3, 2) && day < Sunday(day.Year, 11, 1) ? 1 : 0);

    private static DateOnly Sunday(int year, int month, int which)
    {
        var first = new DateOnly(year, month, 1);
        return first.AddDays(((7 - (int)first.DayOfWeek) % 7) + (7 * (which - 1)));
    }
}
