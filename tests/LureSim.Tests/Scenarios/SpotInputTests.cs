using LureSim.Decision.Colours;
using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Report.Words;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

/// <summary>The forms in which water and light may be given, and that each reaches the model.</summary>
public class SpotInputTests
{
    private const string GivenClarity = "{secchi: 6 ft, water: coastal green}";
    private const string GivenLight = "{sun_elevation: 40 deg, cloud: 30 %}";
    private const string Moment = "date: 2026-06-14, time: \"18:45\", utc_offset: -4 h, latitude: 27.5 deg, longitude: -82.6 deg";
    private const string Constituents = "chlorophyll: 5 mg/m3, dissolved_440: 0.8 1/m, mineral: 3 g/m3";

    public static TheoryData<string, JerlovType> JerlovWords => new()
    {
        { "I", JerlovType.I },
        { "IA", JerlovType.IA },
        { "IB", JerlovType.IB },
        { "II", JerlovType.II },
        { "III", JerlovType.III },
        { "1C", JerlovType.Coastal1 },
        { "3C", JerlovType.Coastal3 },
        { "5C", JerlovType.Coastal5 },
        { "7C", JerlovType.Coastal7 },
        { "9C", JerlovType.Coastal9 },
    };

    // Good texts in place of the whole mapping of clarity.
    public static TheoryData<string, double, double, double> ConstituentTexts => new()
    {
        { Constituents, 5.0, 0.8, 3.0 },
        { "chlorophyll: 5 ug/L, dissolved_440: 4/5 1/m, mineral: 3 mg/L", 5.0, 0.8, 3.0 },
        { "chlorophyll: 0 mg/m3, dissolved_440: 0 1/m, mineral: 0 g/m3", 0.0, 0.0, 0.0 },
        { "chlorophyll: 300 mg/m3, dissolved_440: 50 1/m, mineral: 2000 g/m3", 300.0, 50.0, 2000.0 },
    };

    // Text in place of the mapping of clarity, key of the problem (below spot), part of the message, part of the fix.
    public static TheoryData<string, string, string, string> BadClarity => new()
    {
        { "{}", "clarity", "keys of one form are missing", "secchi" },
        { "{secchi: 6 ft}", "clarity.water", "missing", "add \"water:" },
        { "{water: silty}", "clarity.secchi", "missing", "add \"secchi:" },
        { "{secchi: 6 ft, water: coastal green, jerlov: 3C}", "clarity.jerlov", "secchi is given as well", "keep the keys of one form" },
        { "{jerlov: 3C, secchi: 6 ft}", "clarity.secchi", "jerlov is given as well", "keep the keys of one form" },
        { "{secchi: 6 ft, water: coastal green, mineral: 3 g/m3}", "clarity.mineral", "secchi is given as well", "keep the keys of one form" },
        { "{jerlov: 3C, " + Constituents + "}", "clarity.chlorophyll", "jerlov is given as well", "keep the keys of one form" },
        { "{chlorophyll: 5 mg/m3, dissolved_440: 0.8 1/m}", "clarity.mineral", "missing", "add \"mineral: 3 g/m3\"" },
        { "{jerlov: 4C}", "clarity.jerlov", "unknown word", "write" },
        { "{jerlov: 3c}", "clarity.jerlov", "unknown word", "write \"3C\"" },
        { "{jerlof: 3C}", "clarity.jerlof", "unknown key", "write \"jerlov\"" },
        { "{chlorophyll: 5, dissolved_440: 0.8 1/m, mineral: 3 g/m3}", "clarity.chlorophyll", "no unit", "mg/m3" },
        { "{chlorophyll: 5 g/m3, dissolved_440: 0.8 1/m, mineral: 3 g/m3}", "clarity.chlorophyll", "too large", "300 mg/m3" },
        { "{chlorophyll: -1 mg/m3, dissolved_440: 0.8 1/m, mineral: 3 g/m3}", "clarity.chlorophyll", "too small", "300 mg/m3" },
        { "{chlorophyll: 5 mg/m3, dissolved_440: 0.8, mineral: 3 g/m3}", "clarity.dissolved_440", "no unit", "1/m" },
        { "{chlorophyll: 5 mg/m3, dissolved_440: 0.8 m-1, mineral: 3 g/m3}", "clarity.dissolved_440", "write ", "write \"0.8 1/m\"" },
        { "{chlorophyll: 5 mg/m3, dissolved_440: 80 1/m, mineral: 3 g/m3}", "clarity.dissolved_440", "too large", "50 1/m" },
        { "{chlorophyll: 5 mg/m3, dissolved_440: 0.8 m, mineral: 3 g/m3}", "clarity.dissolved_440", "unit of length", "1/m" },
        { "{chlorophyll: 5 mg/m3, dissolved_440: 0.8 1/m, mineral: 3 ppm}", "clarity.mineral", "write ", "write \"3 mg/L\"" },
        { "{chlorophyll: 5 mg/m3, dissolved_440: 0.8 1/m, mineral: 3 kg}", "clarity.mineral", "unit of mass", "g/m3" },
    };

    public static TheoryData<string, string, string, string> BadLight => new()
    {
        { "{}", "light", "keys of one form are missing", "sun_elevation" },
        { "{cloud: 30 %}", "light", "keys of one form are missing", "sun_elevation" },
        { "{sun_elevation: 40 deg, " + Moment + "}", "light.date", "sun_elevation is given as well", "keep the keys of one form" },
        { "{" + Moment + ", sun_elevation: 40 deg}", "light.sun_elevation", "date is given as well", "keep the keys of one form" },
        { "{" + Moment.Replace("date: 2026-06-14, ", "", StringComparison.Ordinal) + "}", "light.date", "missing", "add \"date: 2026-06-14\"" },
        { "{" + Moment.Replace("time: \"18:45\", ", "", StringComparison.Ordinal) + "}", "light.time", "missing", "add \"time: 06:20\"" },
        { "{" + Moment.Replace("utc_offset: -4 h, ", "", StringComparison.Ordinal) + "}", "light.utc_offset", "missing", "-4 h" },
        { "{" + Moment.Replace(", longitude: -82.6 deg", "", StringComparison.Ordinal) + "}", "light.longitude", "missing", "-75 deg" },
        { "{" + Moment.Replace("latitude", "lattitude", StringComparison.Ordinal) + "}", "light.lattitude", "unknown key", "write \"latitude\"" },
        { "{" + Moment.Replace("2026-06-14", "2026-02-30", StringComparison.Ordinal) + "}", "light.date", "no such day", "year-month-day" },
        { "{" + Moment.Replace("2026-06-14", "2025-02-29", StringComparison.Ordinal) + "}", "light.date", "no such day", "year-month-day" },
        { "{" + Moment.Replace("2026-06-14", "2026-13-01", StringComparison.Ordinal) + "}", "light.date", "no such day", "year-month-day" },
        { "{" + Moment.Replace("2026-06-14", "2026-00-10", StringComparison.Ordinal) + "}", "light.date", "no such day", "year-month-day" },
        { "{" + Moment.Replace("2026-06-14", "06/14/2026", StringComparison.Ordinal) + "}", "light.date", "year first", "2026-06-14" },
        { "{" + Moment.Replace("2026-06-14", "1950-12-31", StringComparison.Ordinal) + "}", "light.date", "too early", "1951-01-01" },
        { "{" + Moment.Replace("2026-06-14", "2050-01-01", StringComparison.Ordinal) + "}", "light.date", "too late", "2049-12-31" },
        { "{" + Moment.Replace("18:45", "6:45", StringComparison.Ordinal) + "}", "light.time", "time of the day", "write \"06:45\"" },
        { "{" + Moment.Replace("18:45", "24:00", StringComparison.Ordinal) + "}", "light.time", "time of the day", "24-hour clock" },
        { "{" + Moment.Replace("18:45", "18:60", StringComparison.Ordinal) + "}", "light.time", "time of the day", "24-hour clock" },
        { "{" + Moment.Replace("18:45", "6:45 pm", StringComparison.Ordinal) + "}", "light.time", "time of the day", "24-hour clock" },
        { "{" + Moment.Replace("-4 h", "-4", StringComparison.Ordinal) + "}", "light.utc_offset", "no unit", "h" },
        { "{" + Moment.Replace("-4 h", "-13 h", StringComparison.Ordinal) + "}", "light.utc_offset", "too small", "-12 h to 14 h" },
        { "{" + Moment.Replace("-4 h", "-4.1 h", StringComparison.Ordinal) + "}", "light.utc_offset", "no clock differs", "correct the offset" },
        { "{" + Moment.Replace("27.5 deg", "97.5 deg", StringComparison.Ordinal) + "}", "light.latitude", "too large", "-90 deg to 90 deg" },
        { "{" + Moment.Replace("27.5 deg", "27.5 N", StringComparison.Ordinal) + "}", "light.latitude", "unit of line strength", "deg" },
        { "{" + Moment.Replace("-82.6 deg", "-182.6 deg", StringComparison.Ordinal) + "}", "light.longitude", "too small", "-180 deg to 180 deg" },
        { "{" + Moment.Replace("-82.6 deg", "-82.6", StringComparison.Ordinal) + "}", "light.longitude", "no unit", "deg" },
    };

    [Theory]
    [MemberData(nameof(BadClarity))]
    public void A_mistake_in_the_clarity_is_reported_once(string clarity, string key, string message, string fix) =>
        Refused(WithClarity(clarity), key, message, fix);

    [Theory]
    [MemberData(nameof(BadLight))]
    public void A_mistake_in_the_light_is_reported_once(string light, string key, string message, string fix) =>
        Refused(WithLight(light), key, message, fix);

    [Theory]
    [MemberData(nameof(JerlovWords))]
    public void A_Jerlov_type_reaches_the_water(string word, JerlovType type)
    {
        Spot spot = TestScenario.Read(WithClarity($"{{jerlov: {word}}}")).Spot;
        Assert.Equal(new JerlovClarity(type), spot.Clarity);
        OpticalWater water = SpotLight.Water(spot), expected = OpticalWater.FromJerlov(type);
        Assert.Equal(word, OpticalWater.Label(type));
        Assert.Equal(expected.Optics.Absorption.ToArray(), water.Optics.Absorption.ToArray());
        Assert.Equal(expected.Optics.Scattering.ToArray(), water.Optics.Scattering.ToArray());
    }

    [Theory]
    [MemberData(nameof(ConstituentTexts))]
    public void Constituents_reach_the_water(string text, double milligramChlorophyll, double dissolved, double gramMineral)
    {
        Spot spot = TestScenario.Read(WithClarity($"{{{text}}}")).Spot;
        WaterConstituents found = SpotLight.Water(spot).Constituents!;
        Assert.Equal(milligramChlorophyll, found.ChlorophyllMilligramPerCubicMetre, 1e-9);
        Assert.Equal(dissolved, found.DissolvedAbsorption440PerMetre, 1e-12);
        Assert.Equal(gramMineral, found.MineralGramPerCubicMetre, 1e-9);
    }

    [Fact]
    public void A_Secchi_depth_reaches_the_water()
    {
        OpticalWater water = SpotLight.Water(TestScenario.Read(TestScenario.Text).Spot);
        Assert.Equal(6 * 0.3048, water.SecchiDepth, 1e-6);
        Assert.Equal(WaterFitStatus.Matched, water.Status);
    }

    [Theory]
    [InlineData("{jerlov: 7C}")]
    [InlineData("{" + Constituents + "}")]
    public void The_colours_are_those_of_the_water_given(string clarity)
    {
        Scenario scenario = TestScenario.Read(WithClarity(clarity));
        OpticalWater used = SpotColours.At(scenario, 1.0, LengthScale.Metres).Chart.Field.Water;
        Assert.Equal(SpotLight.Water(scenario.Spot).Optics.Absorption.ToArray(), used.Optics.Absorption.ToArray());
        Assert.NotEqual(SpotLight.Water(TestScenario.Read(TestScenario.Text).Spot).Optics.Absorption.ToArray(), used.Optics.Absorption.ToArray());
    }

    [Fact]
    public void A_moment_and_place_become_records_in_SI()
    {
        Spot spot = TestScenario.Read(WithLight($"{{{Moment}, cloud: 30 %}}")).Spot;
        SkyByClock clock = Assert.IsType<SkyByClock>(spot.Sky);
        Assert.Equal(new DateTimeOffset(2026, 6, 14, 18, 45, 0, TimeSpan.FromHours(-4)), clock.Time);
        Assert.Equal(TimeSpan.FromHours(-4), clock.Time.Offset);
        Assert.Equal(27.5 * Math.PI / 180, clock.Latitude, 1e-12);
        Assert.Equal(-82.6 * Math.PI / 180, clock.Longitude, 1e-12);
        Assert.Equal(0.3, spot.CloudCover, 1e-12);
    }

    [Theory]
    [InlineData("18:45")]
    [InlineData("20:10")]
    [InlineData("13:30")]
    public void The_same_sun_by_either_form_gives_the_same_light(string time)
    {
        Spot clock = TestScenario.Read(WithLight($"{{{Moment.Replace("18:45", time, StringComparison.Ordinal)}, cloud: 30 %}}")).Spot;
        string elevation = SpotLight.SunElevationDegrees(clock).ToString("0.#########", System.Globalization.CultureInfo.InvariantCulture);
        Spot stated = TestScenario.Read(WithLight($"{{sun_elevation: {elevation} deg, cloud: 30 %}}")).Spot;
        SurfaceLight byClock = SpotLight.Surface(clock), byElevation = SpotLight.Surface(stated);
        Assert.Equal(byElevation.Regime, byClock.Regime);
        Assert.Equal(byElevation.ZenithAngle, byClock.ZenithAngle, 1e-9);
        // The angle is written with nine decimals; a level that falls by a tenth a degree differs by less than 1e-8.
        Assert.All(byElevation.Direct.ToArray().Zip(byClock.Direct.ToArray()), pair => Assert.Equal(pair.First, pair.Second, 1e-7 * Math.Max(pair.First, 1e-12)));
        Assert.All(byElevation.Diffuse.ToArray().Zip(byClock.Diffuse.ToArray()), pair => Assert.Equal(pair.First, pair.Second, 1e-7 * Math.Max(pair.First, 1e-12)));
    }

    // At an equinox the noon sun stands overhead at the equator, whatever the zone, within the equation of time (7.5
    // minutes, 1.9 degrees, on this day) and the declination (below 0.3 degrees): a wrong sign would give another time of day.
    [Theory]
    [InlineData("0 h", "0 deg")]
    [InlineData("-6 h", "-90 deg")]
    [InlineData("5.5 h", "82.5 deg")]
    [InlineData("-12 h", "180 deg")]
    [InlineData("12 h", "-180 deg")]
    public void Offset_and_longitude_have_the_signs_they_are_said_to_have(string offset, string longitude) =>
        Assert.InRange(SpotLight.SunElevationDegrees(TestScenario.Read(WithLight($"{{date: 2026-03-20, time: \"12:00\", utc_offset: {offset}, latitude: 0 deg, longitude: {longitude}}}")).Spot), 87.5, 90.0);

    // In June the noon sun stands higher at 27.5 degrees north than at 27.5 degrees south.
    [Fact]
    public void North_is_positive()
    {
        string noon = Moment.Replace("18:45", "13:30", StringComparison.Ordinal);
        double north = SpotLight.SunElevationDegrees(TestScenario.Read(WithLight($"{{{noon}}}")).Spot);
        double south = SpotLight.SunElevationDegrees(TestScenario.Read(WithLight($"{{{noon.Replace("latitude: ", "latitude: -", StringComparison.Ordinal)}}}")).Spot);
        // 90 less latitude and declination, 23.3 degrees on 14 June.
        Assert.Equal(90 - (27.5 - 23.3), north, 0.3);
        Assert.Equal(90 - (27.5 + 23.3), south, 0.3);
    }

    // The moon is full on 3 January and new on 15 June 2026 (dates of the almanacs, from memory).
    [Theory]
    [InlineData("2026-06-14", "20:35", LightRegime.Twilight)]
    [InlineData("2026-06-14", "23:30", LightRegime.Night)]
    [InlineData("2026-01-03", "23:30", LightRegime.Night)]
    public void Below_the_horizon_there_are_colours_without_NaN(string date, string time, LightRegime regime)
    {
        string moment = Moment.Replace("2026-06-14", date, StringComparison.Ordinal).Replace("18:45", time, StringComparison.Ordinal);
        Scenario scenario = TestScenario.Read(WithLight($"{{{moment}}}"));
        ColourFinding finding = SpotColours.At(scenario, 1.0, LengthScale.Metres);
        Assert.Equal(regime, finding.Chart.Field.Surface.Regime);
        Assert.NotEmpty(LightWords.Note(finding.Chart.Field.Surface, UnitSystem.Us));
        Assert.All(finding.Advice.Colours, worth => Assert.True(double.IsFinite(worth.SeenFrom) && worth.SeenFrom >= 0 && double.IsFinite(worth.DifferenceToForage)));
        for (int row = 0; row < finding.Chart.Depths.Count; row++)
        {
            for (int column = 0; column < finding.Chart.Colours.Count; column++)
                Assert.True(double.IsFinite(finding.Chart[row, column].RelativeLuminance));
        }
    }

    [Fact]
    public void A_full_moon_lights_the_night()
    {
        double dark = SpotLight.Surface(TestScenario.Read(WithLight($"{{{Moment.Replace("18:45", "23:30", StringComparison.Ordinal)}}}")).Spot).Illuminance;
        Spot moonlit = TestScenario.Read(WithLight($"{{{Moment.Replace("2026-06-14", "2026-01-03", StringComparison.Ordinal).Replace("18:45", "23:30", StringComparison.Ordinal)}}}")).Spot;
        Assert.True(SpotLight.Moon(moonlit)!.Value.LitShare > 0.97);
        Assert.InRange(SpotLight.Surface(moonlit).Illuminance, 100 * dark, 1.0);
    }

    [Theory]
    [InlineData("{chlorophyll: 0 mg/m3, dissolved_440: 0 1/m, mineral: 0 g/m3}")]
    [InlineData("{chlorophyll: 300 mg/m3, dissolved_440: 50 1/m, mineral: 2000 g/m3}")]
    [InlineData("{chlorophyll: 0 mg/m3, dissolved_440: 0 1/m, mineral: 2000 g/m3}")]
    public void The_corners_of_the_constituents_give_colours_without_NaN(string clarity)
    {
        ColourFinding finding = SpotColours.At(TestScenario.Read(WithClarity(clarity)), 1.0, LengthScale.Metres);
        Assert.True(double.IsFinite(finding.Chart.Field.Water.SecchiDepth));
        Assert.All(finding.Advice.Colours, worth => Assert.True(double.IsFinite(worth.SeenFrom) && worth.SeenFrom >= 0 && double.IsFinite(worth.DifferenceToForage)));
        for (int column = 0; column < finding.Chart.Colours.Count; column++)
            Assert.True(double.IsFinite(finding.Chart[finding.Chart.Depths.Count - 1, column].RelativeLuminance));
    }

    internal static string WithClarity(string clarity) => TestScenario.With(GivenClarity, clarity);

    internal static string WithLight(string light) => TestScenario.With(GivenLight, light);

    private static void Refused(string text, string key, string message, string fix)
    {
        IReadOnlyList<ScenarioProblem> problems = TestScenario.Problems(text);
        Assert.True(problems.Count == 1, string.Join('\n', problems));
        Assert.Equal("spot." + key, problems[0].Key);
        Assert.Contains(message, problems[0].Message, StringComparison.Ordinal);
        Assert.Contains(fix, problems[0].Fix, StringComparison.Ordinal);
    }
}
