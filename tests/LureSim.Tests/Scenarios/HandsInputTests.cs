using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

public class HandsInputTests
{
    private static string With(string more) => TestScenario.Text.TrimEnd() + "\n" + more + "\n";

    [Fact]
    public void Nothing_is_bounded_where_nothing_is_said() => Assert.Equal(HandRanges.None, TestScenario.Read(TestScenario.Text).Hands);

    [Fact]
    public void Every_bound_is_read()
    {
        HandRanges read = TestScenario.Read(With("""
            hands:
              weight: [unweighted, 2 oz]
              sink_count: [0 s, 60 s]
              reel_speed: [0.05 m/s, 2 m/s]
              lift: [0.02 m, 2 m]
              rest: [0.2 s, 30 s]
              cast_angle: [-10 deg, 20 deg]
            """)).Hands;
        Assert.Equal(0, read.Weight!.Value.Least);
        Assert.Equal(2 * 0.028349523, read.Weight.Value.Most, 6);
        Assert.Equal(new ValueRange(0, 60), read.SinkCount);
        Assert.Equal(new ValueRange(0.05, 2), read.ReelSpeed);
        Assert.Equal(new ValueRange(0.02, 2), read.Lift);
        Assert.Equal(new ValueRange(0.2, 30), read.Rest);
        Assert.Equal(-Math.PI / 18, read.CastAngle!.Value.Least, 9);
        Assert.Equal(Math.PI / 9, read.CastAngle.Value.Most, 9);
    }

    [Theory]
    [InlineData("hands: {reel_speed: [2 m/s, 0.1 m/s]}", "out of order")]
    [InlineData("hands: {reel_speed: [2.5 m/s, 2.8 m/s]}", "lies outside")]
    [InlineData("hands: {cast_angle: [5 deg, 20 deg]}", "0 deg, lies outside")]
    [InlineData("hands: {weight: [6 oz, 7 oz]}", "no jig head in your box lies inside")]
    [InlineData("hands: {reel_speed: [1 m/s]}", "2")]
    public void What_does_not_fit_is_an_error_with_its_place_and_a_way_out(string text, string says)
    {
        ScenarioReading reading = ScenarioReader.ReadText(With(text), "spot.yaml");
        Assert.Null(reading.Scenario);
        string problem = string.Join("\n", reading.Problems);
        Assert.Contains(says, problem, StringComparison.Ordinal);
        Assert.Contains("hands", problem, StringComparison.Ordinal);
    }
}
