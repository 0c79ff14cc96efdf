using LureSim.Data;
using LureSim.Model;

namespace LureSim.Water;

/// <summary>How warm and salty the water of an inshore spot usually is. Source: Data/rules/water_by_season.csv (assumed).</summary>
/// <param name="TemperatureCelsius">Temperature (degrees Celsius).</param>
/// <param name="TemperatureSpread">Plus or minus, nine in ten (K).</param>
/// <param name="Salinity">Practical salinity.</param>
/// <param name="SalinitySpread">Plus or minus, nine in ten.</param>
public sealed record WaterBySeason(double TemperatureCelsius, double TemperatureSpread, double Salinity, double SalinitySpread)
{
    // Latitude to which the table refers, and how far from it the trend holds (degrees).
    private const double Middle = 32;
    private const double Farthest = 12;
    private const double Coldest = 2;
    private const double Warmest = 32;

    /// <summary>Usual water of a season.</summary>
    /// <param name="season">Season; null for the year round.</param>
    /// <param name="latitude">Latitude (radians); null where it is not known.</param>
    public static WaterBySeason Of(Season? season, double? latitude = null)
    {
        string word = season is { } known ? ReferenceWords.Of(known) : "any";
        ReferenceRow row = ReferenceTable.Rules("water_by_season").Rows.First(item => item.Text("season") == word);
        double south = latitude is { } place ? Math.Clamp(Middle - Math.Abs(place * 180 / Math.PI), -Farthest, Farthest) : 0;
        return new WaterBySeason(
            Math.Clamp(row.Number("temperature") + (south * row.Number("south_per_degree")), Coldest, Warmest),
            row.Number("temperature_spread"),
            row.Number("salinity"),
            row.Number("salinity_spread"));
    }
}
