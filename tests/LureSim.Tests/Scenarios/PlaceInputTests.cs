using LureSim.Light;
using LureSim.Model;
using LureSim.Scenarios;
using LureSim.Water;

namespace LureSim.Tests.Scenarios;

/// <summary>Where and when in words, and water that nobody gave.</summary>
public class PlaceInputTests
{
    private const string Light = "light: {sun_elevation: 40 deg, cloud: 30 %}", Water = "  salinity: 24 ppt\n  temperature: 68 degF\n";

    private static Scenario With(string light) => TestScenario.Read(TestScenario.With(Light, light));

    [Theory]
    [InlineData("2026-06-14", -4)]
    [InlineData("2026-01-14", -5)]
    [InlineData("2026-03-07", -5)]
    [InlineData("2026-03-08", -4)]
    [InlineData("2026-10-31", -4)]
    [InlineData("2026-11-01", -5)]
    public void A_state_stands_for_place_and_clock_with_summer_time(string date, double offset)
    {
        SkyByClock sky = Assert.IsType<SkyByClock>(With($"light: {{date: {date}, time: \"06:20\", state: florida}}").Spot.Sky);
        Assert.Equal(offset, sky.Time.Offset.TotalHours);
        Assert.Equal(28 * Math.PI / 180, sky.Latitude, 1e-9);
    }

    [Fact]
    public void What_is_given_beside_a_state_goes_before_it()
    {
        SkyByClock sky = Assert.IsType<SkyByClock>(With("light: {date: 2026-06-14, time: \"06:20\", state: Florida, latitude: 25 deg}").Spot.Sky);
        Assert.Equal(25 * Math.PI / 180, sky.Latitude, 1e-9);
        Assert.Equal(-82 * Math.PI / 180, sky.Longitude, 1e-9);
    }

    [Theory]
    [InlineData("dawn", -3.5, -2)]
    [InlineData("sunset", -3.5, -2)]
    [InlineData("midday", 80, 90)]
    [InlineData("morning", 30, 60)]
    [InlineData("night", -60, -20)]
    public void A_time_of_the_day_is_by_the_sun(string word, double low, double high) =>
        Assert.InRange(SpotLight.SunElevationDegrees(With($"light: {{date: 2026-06-14, time: {word}, state: Florida}}").Spot), low, high);

    [Fact]
    public void Dawn_is_before_noon_and_dusk_after_it()
    {
        SkyByClock At(string word) => (SkyByClock)With($"light: {{date: 2026-06-14, time: {word}, state: Florida}}").Spot.Sky;
        Assert.True(At("dawn").Time < At("morning").Time && At("morning").Time < At("midday").Time && At("midday").Time < At("afternoon").Time && At("afternoon").Time < At("dusk").Time);

        // Civil dawn in June on that coast is about six by the clock of summer (almanac, from memory).
        Assert.InRange(At("dawn").Time.TimeOfDay.TotalHours, 5.9, 6.6);
    }

    [Fact]
    public void The_sun_may_stand_below_the_horizon()
    {
        Spot night = With("light: {sun_elevation: -12 deg}").Spot;
        Assert.Equal(-12, SpotLight.SunElevationDegrees(night), 1e-9);
        Assert.True(SpotLight.Surface(night).Illuminance < 0.02 * SpotLight.Surface(With("light: {sun_elevation: 1 deg}").Spot).Illuminance);
    }

    [Fact]
    public void Water_that_nobody_gave_is_usual_for_the_season_and_spread_in_the_tries()
    {
        ScenarioReading reading = ScenarioReader.ReadText(TestScenario.With(Water, "") + "\nseason: summer\n", "test.yaml");
        Scenario scenario = reading.Scenario!;
        var usual = WaterBySeason.Of(Season.Summer);
        Assert.Equal(usual.TemperatureCelsius, scenario.Spot.TemperatureCelsius);
        Assert.Equal(usual.Salinity, scenario.Spot.Salinity);
        Assert.Equal(Spread.OfAmount(usual.TemperatureSpread), scenario.Uncertainty.Temperature);
        Assert.Equal(2, reading.Remarks.Count(remark => remark.Key is "spot.temperature" or "spot.salinity"));
        double[] warm = [.. LureSim.Decision.Uncertainty.UncertainDraw.Draw(scenario, scenario.Presentations[0], 10).Select(draw => draw.Scenario.Spot.TemperatureCelsius)];
        Assert.Equal(3, warm.Distinct().Count());
        Assert.True(WaterBySeason.Of(Season.Winter, 26 * Math.PI / 180).TemperatureCelsius > WaterBySeason.Of(Season.Winter, 38 * Math.PI / 180).TemperatureCelsius);
        Assert.All(Enum.GetValues<Season>(), season => Assert.InRange(WaterBySeason.Of(season, 0.7).TemperatureCelsius, 2, 32));
    }

    [Fact]
    public void Water_that_was_given_is_as_it_was_given_in_every_try()
    {
        Scenario scenario = TestScenario.Read(TestScenario.Text);
        Assert.All(LureSim.Decision.Uncertainty.UncertainDraw.Draw(scenario, scenario.Presentations[0], 10), draw => Assert.Equal((scenario.Spot.TemperatureCelsius, scenario.Spot.Salinity), (draw.Scenario.Spot.TemperatureCelsius, draw.Scenario.Spot.Salinity)));
    }

    [Theory]
    [InlineData("light: {date: 2026-06-14, time: \"06:20\"}", "spot.light.latitude", "missing")]
    [InlineData("light: {date: 2026-06-14, time: noonish, state: Florida}", "spot.light.time", "time of the day")]
    [InlineData("light: {date: 2026-06-14, time: dawn, state: Atlantis}", "spot.light.state", "unknown word")]
    [InlineData("light: {sun_elevation: 10 deg, state: Florida}", "spot.light.state", "different forms")]
    [InlineData("light: {sun_elevation: -95 deg}", "spot.light.sun_elevation", "too small")]
    public void What_is_wrong_is_said_at_its_key(string light, string key, string message)
    {
        ScenarioProblem problem = Assert.Single(TestScenario.Problems(TestScenario.With(Light, light)), item => item.Key == key);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.True(problem.Fix.Length > 0);
    }
}
