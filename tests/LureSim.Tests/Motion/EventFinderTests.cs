using LureSim.Model;
using LureSim.Motion;
using LureSim.Motion.Line;
using LureSim.Stepping;
using LureSim.Water;

namespace LureSim.Tests.Motion;

/// <summary>Events of straight paths, which are known: a lure that sinks or rises at an even speed through water 4 m deep with grass to 1 m and a zone from 1.5 to 2.5 m.</summary>
public class EventFinderTests
{
    private const double Depth = 4, Grass = 1, Radius = 0.02, Speed = 0.8;

    private static WaterColumn Water(double grass = Grass) =>
        new(Depth, 1020, 1.1e-3, new CurrentProfile(CurrentProfileKind.Uniform, 0, 0, Depth, 1e-4), BottomProperties.Of(BottomKind.Sand), grass);

    private static EventFinder Finder(double grass = Grass) => new(Water(grass), Radius, new StrikeZone(1.5, 2.5), new Rod());

    // Even steps from one height to another; the lure drifts along at 0.3 m/s, starting 12 m out.
    private static List<TrackEvent> Along(EventFinder finder, double fromZ, double toZ, double step = 0.07, double start = 0)
    {
        var found = new List<TrackEvent>();
        double rate = Math.Sign(toZ - fromZ) * Speed, time = start, z = fromZ;
        while (Math.Abs(toZ - z) > 1e-12)
        {
            double h = Math.Min(step, (toZ - z) / rate), x = 12 + (0.3 * time);
            finder.Find(new LureStep(new CubicStep(time, h, x, 0.3, x + (0.3 * h), 0.3), new CubicStep(time, h, 5, 0, 5, 0), new CubicStep(time, h, z, rate, z + (rate * h), rate)), found);
            time += h;
            z += rate * h;
        }

        return found;
    }

    [Fact]
    public void A_sinking_lure_meets_zone_grass_and_bottom_in_turn_when_it_is_there()
    {
        EventFinder finder = Finder();
        List<TrackEvent> found = Along(finder, 0, -Depth + 0.01);
        Assert.Equal(
            [TrackEventKind.EntersZone, TrackEventKind.LeavesZone, TrackEventKind.EntersGrass, TrackEventKind.BottomContact],
            found.Select(e => e.Kind));
        double[] depths = [1.5, 2.5, Depth - Grass, Depth - Radius];
        Assert.All(found.Zip(depths), pair =>
        {
            Assert.Equal(pair.Second, pair.First.Depth, 1e-6);
            Assert.Equal(pair.Second / Speed, pair.First.Time, 1e-6);

            // The rod tip stands at (1, 2).
            double along = 12 + (0.3 * pair.First.Time) - 1;
            Assert.Equal(Math.Sqrt((along * along) + 9), pair.First.Distance, 1e-6);
        });
        Assert.InRange(finder.FirstContact, found[^1].Time, found[^1].Time + (0.07 / 4));
        Assert.Equal(TrackState.OnBottom | TrackState.InGrass, finder.StateAt(12, 5, -Depth + 0.01));
    }

    [Fact]
    public void A_rising_lure_meets_them_the_other_way_round_and_breaks_the_surface()
    {
        EventFinder finder = Finder();
        Along(finder, -Depth + 0.5, -Depth + 0.01);
        List<TrackEvent> found = Along(finder, -Depth + 0.01, 0.3, start: 10);
        Assert.Equal(
            [TrackEventKind.LeavesBottom, TrackEventKind.LeavesGrass, TrackEventKind.EntersZone, TrackEventKind.LeavesZone, TrackEventKind.BreaksSurface],
            found.Select(e => e.Kind));

        // A lift of 5 mm ends a contact; it leaves the water when all of it is out.
        double[] depths = [Depth - Radius - 0.005, Depth - Grass, 2.5, 1.5, -Radius];
        Assert.All(found.Zip(depths), pair => Assert.Equal(pair.Second, pair.First.Depth, 1e-6));
    }

    [Fact]
    public void A_lure_that_trembles_on_the_bottom_touches_it_once()
    {
        EventFinder finder = Finder();
        var found = new List<TrackEvent>(Along(finder, -3.9, -3.985));
        for (int i = 0; i < 6; i++)
        {
            found.AddRange(Along(finder, -3.985, -3.978, start: 1 + i));
            found.AddRange(Along(finder, -3.978, -3.985, start: 1.5 + i));
        }

        Assert.Equal(TrackEventKind.BottomContact, Assert.Single(found, e => e.Kind != TrackEventKind.EntersGrass).Kind);
    }

    [Fact]
    public void Without_grass_nothing_is_in_it()
    {
        EventFinder finder = Finder(grass: 0);
        Assert.DoesNotContain(Along(finder, 0, -3.9), e => e.Kind is TrackEventKind.EntersGrass);
        Assert.Equal(TrackState.None, finder.StateAt(12, 5, -3.9));
    }

    [Theory]
    [InlineData(0.5, TrackState.OutOfWater)]
    [InlineData(0.021, TrackState.OutOfWater)]
    [InlineData(0.01, TrackState.None)]
    [InlineData(-1, TrackState.None)]
    [InlineData(-2, TrackState.InZone)]
    [InlineData(-3.5, TrackState.InGrass)]
    public void A_height_tells_what_the_lure_is_in(double z, TrackState state) => Assert.Equal(state, Finder().StateAt(12, 5, z));

    [Fact]
    public void The_way_to_the_bottom_takes_its_time_and_ends_just_above_it()
    {
        // 1 m above the contact at 0.5 m/s, less the last millimetre.
        EventFinder finder = Finder();
        Assert.Equal(0.999 / 0.5, finder.TimeToBottom([12, 5, -Depth + Radius + 1], [0.3, 0, -0.5]), 1e-12);
        Assert.Equal(double.PositiveInfinity, finder.TimeToBottom([12, 5, -Depth + Radius + 1], [0.3, 0, 0.5]));
        Assert.Equal(double.PositiveInfinity, finder.TimeToBottom([12, 5, -Depth + Radius], [0.3, 0, -0.5]));
    }

    [Fact]
    public void An_event_is_as_far_off_as_the_rod_tip()
    {
        TrackEvent e = Finder().At(TrackEventKind.LineIn, 3, 4, 6, -1);
        Assert.Equal(new TrackEvent(TrackEventKind.LineIn, 3, 1, 5), e);
    }

    private sealed class Rod : ILineBoundary
    {
        public void Tip(double time, Span<double> position, Span<double> velocity)
        {
            position[0] = 1;
            position[1] = 2;
            position[2] = 1.5;
        }

        public void Line(double time, out double length, out double rate, out double acceleration) => throw new NotSupportedException();
    }
}
