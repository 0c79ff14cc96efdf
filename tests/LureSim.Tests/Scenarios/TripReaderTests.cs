using LureSim.Decision.Trips;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

/// <summary>Trip files: what they say, and what is wrong with them.</summary>
public class TripReaderTests
{
    private const string Text = "title: A day\nfrom: \"06:00\"\nto: \"13:00\"\ntravel: 20 min\nlegs:\n  - {from: ramp, to: one, time: 5 min}\nspots:\n  - {file: one.yaml, name: one, most_stay: 3 h}\n  - {file: two.yaml, least_stay: 45 min, worth: 80 %}\n";

    private static TripReading Read(string text)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllText(Path.Combine(folder.Path, "one.yaml"), TestScenario.Text);
        File.WriteAllText(Path.Combine(folder.Path, "two.yaml"), TestScenario.Text);
        File.WriteAllText(Path.Combine(folder.Path, "bad.yaml"), TestScenario.With("depth: 12 ft", "depth: 12"));
        string file = Path.Combine(folder.Path, "day.yaml");
        File.WriteAllText(file, text);
        return TripReader.Read(file);
    }

    [Fact]
    public void A_trip_file_gives_hours_ways_and_stays()
    {
        TripReading reading = Read(Text.Replace("3 h", "180 min", StringComparison.Ordinal));
        Assert.True(reading.Trip is not null, string.Join('\n', reading.Problems));
        TripClock clock = reading.Trip!.Clock;
        Assert.Equal((6, 13, true), (clock.Start, clock.End, clock.Back));
        Assert.Equal(5.0 / 60, clock.Travel[1, 0], 1e-12);
        Assert.Equal(20.0 / 60, clock.Travel[2, 1], 1e-12);
        Assert.Equal(new TripSpotTime(0.5, 3, 1), clock.Spots[0]);
        Assert.Equal(0.8, clock.Spots[1].Worth);
        Assert.Equal(2, reading.Trip.Scenarios.Count);
    }

    [Theory]
    [InlineData("most_stay: 3 h", "most_stay: 10 min", "spots[0].most_stay", "too small")]
    [InlineData("most_stay: 3 h", "least_stay: 90 min, most_stay: 60 min", "spots[0].most_stay", "shorter than the shortest")]
    [InlineData("to: one", "to: won", "legs[0].to", "no place")]
    [InlineData("file: two.yaml", "file: three.yaml", "spots[1].file", "no such scenario")]
    [InlineData("file: two.yaml", "file: bad.yaml", "spot.depth", "")]
    [InlineData("file: two.yaml", "file: two.yaml, name: one", "spots[1].name", "another spot")]
    [InlineData("to: \"13:00\"", "to: \"06:30\"", "to", "shorter than an hour")]
    [InlineData("travel: 20 min", "travel: soon", "travel", "")]
    [InlineData("title: A day\n", "", "title", "missing")]
    public void What_is_wrong_is_said_at_its_key(string old, string now, string key, string message)
    {
        string text = Text.Replace(old, now, StringComparison.Ordinal).Replace("3 h", "180 min", StringComparison.Ordinal);
        TripReading reading = Read(text);
        Assert.Null(reading.Trip);
        ScenarioProblem problem = Assert.Single(reading.Problems, item => item.Key == key);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.True(problem.Fix.Length > 0 && problem.Line > 0);
    }

    [Theory]
    [InlineData("")]
    [InlineData("[1, 2")]
    [InlineData("- a")]
    [InlineData("spots: {}")]
    [InlineData("spots: [{file: ../../../../etc}]")]
    public void Anything_else_is_refused_without_a_crash(string text)
    {
        TripReading reading = Read(text);
        Assert.Null(reading.Trip);
        Assert.NotEmpty(reading.Problems);
    }

    [Fact]
    public void A_scenario_is_no_trip_and_the_demo_trip_is_one()
    {
        Assert.False(TripReader.IsTrip(Repository.File("scenarios", "bridge-channel.yaml")));
        Assert.False(TripReader.IsTrip(Repository.File("scenarios", "nowhere.yaml")));
        string demo = Repository.File("scenarios", "trips", "saturday.yaml");
        Assert.True(TripReader.IsTrip(demo));
        TripReading reading = TripReader.Read(demo);
        Assert.True(reading.Trip is not null, string.Join('\n', reading.Problems));
    }
}
