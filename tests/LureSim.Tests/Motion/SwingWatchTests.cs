using LureSim.Motion;

namespace LureSim.Tests.Motion;

/// <summary>When a swing is over: a lure that hangs down the current, still, for two seconds, and none before.</summary>
public class SwingWatchTests
{
    // The current goes along x; the swing begins at 10 s.
    private static SwingWatch Watch(double streamX = 0.5, double streamY = 0) => new(10, 60, streamX, streamY);

    // Seconds from the start of the swing until a lure that stays as it is has swung out; NaN if it never has.
    private static double Over(SwingWatch watch, double x, double y, double vx = 0, double vy = 0)
    {
        for (int i = 0; i <= 1000; i++)
        {
            if (watch.IsOver(10 + (0.05 * i), x, y, vx, vy)) return 0.05 * i;
        }

        return double.NaN;
    }

    [Fact]
    public void A_lure_that_hangs_still_is_done_two_seconds_after_the_first_four() => Assert.Equal(6, Over(Watch(), 15, 0), 1e-9);

    [Theory]
    [InlineData(29, true)]
    [InlineData(-29, true)]
    [InlineData(31, false)]
    [InlineData(90, false)]
    [InlineData(180, false)]
    public void Only_within_thirty_degrees_of_down_current_does_it_hang(double degrees, bool hangs)
    {
        (double sine, double cosine) = Math.SinCos(degrees * Math.PI / 180);
        Assert.Equal(hangs, double.IsFinite(Over(Watch(), 15 * cosine, 15 * sine)));

        // The same with the current the other way across.
        Assert.Equal(hangs, double.IsFinite(Over(Watch(0, -0.5), 15 * sine, -15 * cosine)));
    }

    [Theory]
    [InlineData(0.4, true)]
    [InlineData(0.6, false)]
    [InlineData(-0.6, false)]
    public void Half_a_degree_a_second_is_still(double degrees, bool done) => Assert.Equal(done, double.IsFinite(Over(Watch(), 15, 0, 0, 15 * degrees * Math.PI / 180)));

    [Theory]
    [InlineData(-0.09, true)]
    [InlineData(-0.11, false)]
    [InlineData(0.11, false)]
    public void It_may_come_no_nearer_than_at_a_tenth_of_a_metre_a_second(double rate, bool done) => Assert.Equal(done, double.IsFinite(Over(Watch(), 15, 0, rate)));

    [Fact]
    public void Slack_water_has_no_direction_to_hang_in() => Assert.Equal(6, Over(Watch(0.01), -15, 3), 1e-9);

    [Fact]
    public void A_moment_of_unrest_begins_the_wait_anew()
    {
        SwingWatch watch = Watch();
        Assert.False(watch.IsOver(15, 15, 0, 0, 0));
        Assert.False(watch.IsOver(16.9, 15, 0, 0, 1));
        Assert.False(watch.IsOver(17.1, 15, 0, 0, 0));
        Assert.False(watch.IsOver(19, 15, 0, 0, 0));
        Assert.True(watch.IsOver(19.1 + 1e-9, 15, 0, 0, 0));
    }

    [Fact]
    public void After_its_time_it_is_the_schedule_that_ends_it() => Assert.False(new SwingWatch(10, 15, 0.5, 0).IsOver(20, 15, 0, 0, 0));
}
