using System.Globalization;
using LureSim.Light;
using LureSim.Model;
using LureSim.Water;

namespace LureSim.Scenarios;

/// <content>Where and when, and the water there where a scenario does not say it.</content>
internal sealed partial class ScenarioBuilder
{
    private const double Degree = Math.PI / 180;
    private static readonly string[] Place = ["utc_offset", "latitude", "longitude"];

    // A moment needs a place; a height of the sun needs none.
    private void CheckPlace(ReadValue? light)
    {
        if (light is null || problems.HasUnder(light.Path))
            return;
        if (light["sun_elevation"] is not null)
        {
            foreach (ReadValue useless in Place.Append("state").Select(key => light[key]).OfType<ReadValue>())
                Add(useless, "sun_elevation is given as well, and the two belong to different forms", "the keys sun_elevation and cloud, or a moment with its place", "keep the keys of one form and remove the others");
            return;
        }

        if (light["state"] is not null || problems.HasUnder(YamlTreeBuilder.Join(light.Path, "state")) || (light["date"] is null && light["time"] is null))
            return;
        foreach (string key in Place.Where(key => light[key] is null && !problems.HasUnder(YamlTreeBuilder.Join(light.Path, key))))
        {
            GrammarValue value = ScenarioGrammar.LightKeys.First(known => known.Name == key).Value;
            problems.Add(light.Line, light.Column, YamlTreeBuilder.Join(light.Path, key), "", "the key is missing", GrammarReader.Allowed(value), $"add \"{key}: {GrammarReader.Example(value)}\", or name the coast: \"state: Florida\"");
        }
    }

    private static SkyByClock SkyAt(ReadValue light)
    {
        var coast = light["state"]?.Word?.Meaning as Coast;
        var day = DateOnly.FromDayNumber((int)light.NumberAt("date"));
        double latitude = Number(light["latitude"]) ?? (coast!.LatitudeDegrees * Degree), longitude = Number(light["longitude"]) ?? (coast!.LongitudeDegrees * Degree);
        TimeSpan offset = QuarterHour * Math.Round((Number(light["utc_offset"]) ?? (coast!.Offset(day) * 3600)) / QuarterHour.TotalSeconds);
        var midnight = new DateTimeOffset(day.ToDateTime(TimeOnly.MinValue), offset);
        ReadValue time = light.At("time");
        DateTimeOffset moment = time.Word?.Meaning is DayTime word ? midnight.AddMinutes(DayTimes.Minute(word, midnight, latitude / Degree, longitude / Degree)) : midnight.AddSeconds(time.Number);
        return new SkyByClock(moment, latitude, longitude);
    }

    private static WaterBySeason WaterOf(ReadValue root)
    {
        ReadValue? light = root["spot"]?["light"];
        double? latitude = Number(light?["latitude"]) ?? ((light?["state"]?.Word?.Meaning as Coast)?.LatitudeDegrees * Degree);
        Season? season = root["season"]?.Word?.Meaning as Season? ?? (Number(light?["date"]) is { } day ? Seasons.Of(DateOnly.FromDayNumber((int)day).Month, latitude < 0) : null);
        return WaterBySeason.Of(season, latitude);
    }

    private static SpotAssumptions Assumed(ReadValue spot) =>
        (spot["temperature"] is null ? SpotAssumptions.Temperature : SpotAssumptions.None)
        | (spot["salinity"] is null ? SpotAssumptions.Salinity : SpotAssumptions.None)
        | (spot["light"]?["state"] is not null && spot["light"]?["latitude"] is null ? SpotAssumptions.Place : SpotAssumptions.None);

    // What is not said is not known: its usual spread goes into the tries, and the reader is told what was taken.
    private ScenarioUncertainty WithWater(ScenarioUncertainty uncertainty, ReadValue root)
    {
        ReadValue spot = root.At("spot");
        WaterBySeason water = WaterOf(root);
        bool others = root["uncertainty"]?["others"]?.Word?.Meaning is not false;
        if (spot["temperature"] is null)
        {
            problems.AddTaken(spot.Line, spot.Column, "spot.temperature", "no temperature given", $"{QuantityText.Both(QuantityKind.Temperature, water.TemperatureCelsius)}, usual for the season; give or take {water.TemperatureSpread.ToString("0.#", CultureInfo.InvariantCulture)} degC in the tries");
            if (others) uncertainty = uncertainty with { Temperature = Spread.OfAmount(water.TemperatureSpread) };
        }

        if (spot["salinity"] is null)
        {
            problems.AddTaken(spot.Line, spot.Column, "spot.salinity", "no salinity given", $"{QuantityText.Plain(QuantityKind.Salinity, water.Salinity)}, usual inshore; give or take {water.SalinitySpread.ToString("0.#", CultureInfo.InvariantCulture)} ppt in the tries");
            if (others) uncertainty = uncertainty with { Salinity = Spread.OfAmount(water.SalinitySpread) };
        }

        return uncertainty;
    }
}
