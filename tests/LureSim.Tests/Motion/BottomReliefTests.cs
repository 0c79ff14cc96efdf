using System.Runtime.Intrinsics;
using LureSim.Coupling;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Water;

namespace LureSim.Tests.Motion;

/// <summary>A bottom that slopes, as the engine sees it: its table, its current, and casts over it.</summary>
public class BottomReliefTests
{
    private static readonly Spot Even = new()
    {
        Depth = 3,
        Bottom = BottomKind.Mud,
        GrassHeight = 0.2,
        CurrentSpeed = 0.3,
        CurrentDirection = 1.9,
        WindSpeed = 3,
        WindDirection = 0.4,
        Salinity = 25,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.5),
        StrikeZone = new StrikeZone(2, 3) { MovesWithBottom = true },
        TargetFish = "red drum",
    };

    private static readonly FishingRig Rig = new()
    {
        RodTipHeight = 1.5,
        Reel = new Reel(6.2, 0.045),
        Line = new LineSpecification(LineKind.Braid, 44.5, 0.00021),
        Head = new JigHead(0.00709, HeadMetal.Lead, 0.0011, "1/4 oz"),
        Body = new LureBody(BodyProfile.PaddleTail, 0.1, 0.019, 0.0164, 1050, "paddle tail"),
    };

    private static readonly Presentation Steady = new() { Name = "steady", CastLength = 16, RetrieveSpeed = 0.3, Aim = 0.3 };

    // 1 m of water to 8 m from the rod, 3 m from 10 m on.
    private static readonly Spot Ledge = Even with { GrassHeight = 0, Profile = new BottomProfile { Points = [new(0, 1), new(8, 1), new(10, 3)] } };

    [Fact]
    public void A_profile_of_one_depth_gives_the_numbers_of_even_water_bit_for_bit()
    {
        Track even = Cast.Simulate(Even, Rig, Steady);
        Track one = Cast.Simulate(Even with { Profile = new BottomProfile { Points = [new(0, 3), new(20, 3)] } }, Rig, Steady);
        Assert.Equal(even.X, one.X);
        Assert.Equal(even.Z, one.Z);
        Assert.Equal(even.RodTension, one.RodTension);
        Assert.Equal(even.Events, one.Events);
    }

    [Fact]
    public void The_way_over_slopes_gives_the_numbers_of_even_water_where_there_is_no_slope()
    {
        // A stretch of the spot's own kind sends the cast down the general way.
        Spot same = Even with { Profile = new BottomProfile { Points = [new(0, 3)], Stretches = [new(0, 5) { Bottom = BottomKind.Mud }] } };
        Assert.NotNull(WaterColumn.Of(same).Relief);
        Track even = Cast.Simulate(Even, Rig, Steady), general = Cast.Simulate(same, Rig, Steady);
        Assert.Equal(even.Count, general.Count);
        for (int i = 0; i < even.Count; i++)
        {
            Assert.Equal(even.X[i], general.X[i], 1e-5);
            Assert.Equal(even.Y[i], general.Y[i], 1e-5);
            Assert.Equal(even.Z[i], general.Z[i], 1e-5);
            Assert.Equal(even.State[i], general.State[i]);
        }

        Assert.Equal(even.Events.Select(e => e.Kind), general.Events.Select(e => e.Kind));
    }

    [Fact]
    public void Four_places_at_a_time_are_the_same_as_one()
    {
        BottomRelief relief = WaterColumn.Of(Ledge with { ProfileDirection = 0.4 }).Relief!;
        var random = new Random(3);
        for (int i = 0; i < 500; i++)
        {
            double x = -2 + (16 * random.NextDouble()), y = -3 + (6 * random.NextDouble()), z = -3.5 * random.NextDouble();
            BottomPlace place = relief.At(x, y);
            Assert.Equal(Ledge.Profile!.DepthAt((x * Math.Cos(0.4)) + (y * Math.Sin(0.4))), place.Depth, 2e-4);
            ReliefFlow one = relief.FlowAt(in place, z);
            relief.FlowAt(Vector256.Create(x), Vector256.Create(y), Vector256.Create(z), out Vector256<double> height, out Vector256<double> ratio, out Vector256<double> flowX, out Vector256<double> flowY, out Vector256<double> climb);
            Assert.Equal(one.Height, height[2], 1e-9);
            Assert.Equal(one.Ratio, ratio[0], 1e-9);
            Assert.Equal(one.X, flowX[1], 1e-9);
            Assert.Equal(one.Y, flowY[3], 1e-9);
            Assert.Equal(one.Climb, climb[2], 1e-9);
        }

        Vector256<double> no = Vector256.Create(double.NaN);
        relief.FlowAt(no, no, no, out _, out _, out _, out _, out _);
        Assert.True(double.IsFinite(relief.At(double.NaN, 0).Depth));
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.7)]
    public void As_much_water_passes_over_the_shallow_as_over_the_deep_and_none_comes_from_nowhere(double direction)
    {
        // Continuity: discharge along the profile by quadrature over the depth, and the divergence of the flow by differences.
        var water = WaterColumn.Of(Ledge with { CurrentDirection = direction, CurrentSpeed = 0.4 });
        BottomRelief relief = water.Relief!;
        double Discharge(double x)
        {
            BottomPlace place = relief.At(x, 0);
            double depth = place.Depth;
            return MathNet.Numerics.Integration.SimpsonRule.IntegrateComposite(r => U(x, -depth * (1 - (r * r))) * 2 * r * depth, 1e-6, 1, 4000);
        }

        double U(double x, double z)
        {
            BottomPlace place = relief.At(x, 0);
            ReliefFlow flow = relief.FlowAt(in place, z);
            return water.Current.Speed(flow.Height, out _) * flow.X;
        }

        double W(double x, double z)
        {
            BottomPlace place = relief.At(x, 0);
            ReliefFlow flow = relief.FlowAt(in place, z);
            return water.Current.Speed(flow.Height, out _) * flow.Climb;
        }

        double deep = Discharge(30);
        Assert.All(new[] { 2, 7.9, 8.5, 9, 9.9 }, x => Assert.Equal(deep, Discharge(x), 2e-3 * deep));
        Assert.Equal(3 * U(30, 0), U(5, 0), 1e-9);
        foreach (double x in new[] { 8.4, 9.0, 9.6 })
        {
            foreach (double z in new[] { -0.1, -0.5, -0.9 })
            {
                const double H = 1e-4;
                double divergence = ((U(x + H, z) - U(x - H, z)) / (2 * H)) + ((W(x, z + H) - W(x, z - H)) / (2 * H));
                Assert.Equal(0, divergence, 2e-3);
            }
        }

        // Along the contours the spot's own current.
        BottomPlace shallow = relief.At(3, 0);
        Assert.Equal(Math.Sin(direction), relief.FlowAt(in shallow, -0.5).Y, 1e-12);
    }

    [Fact]
    public void No_stream_outruns_a_wave()
    {
        BottomRelief relief = WaterColumn.Of(Ledge with { Depth = 9, CurrentDirection = 0, CurrentSpeed = 1, Profile = new BottomProfile { Points = [new(0, 0.25), new(8, 0.25), new(10, 9)] } }).Relief!;
        BottomPlace bar = relief.At(4, 0);
        Assert.Equal(Math.Sqrt(9.80665 * 0.25), relief.FlowAt(in bar, -0.1).X, 1e-9);
    }

    [Fact]
    public void A_lure_comes_to_rest_on_either_side_of_a_ledge_and_climbs_it_on_the_way_in()
    {
        Spot still = Ledge with { CurrentSpeed = 0, WindSpeed = 0 };
        Track far = Cast.Simulate(still, Rig, Steady with { Aim = 0, CountDown = null, RetrieveSpeed = 0.25 });
        double landed = far.Events.First(e => e.Kind == TrackEventKind.BottomContact).Depth;
        Assert.InRange(landed, 2.95, 3.0);

        // Never below the bottom by more than a penalty gives, and over the top of the ledge in the end.
        for (int i = 0; i < far.Count; i++) Assert.True(-far.Z[i] < still.DepthAt(far.X[i], far.Y[i]) + 0.01, $"{far.X[i]:F2} m: {-far.Z[i]:F3} m deep");
        Assert.Contains(Enumerable.Range(0, far.Count), i => (far.State[i] & TrackState.OnBottom) != 0 && far.X[i] is > 8.2 and < 9.8);
        Track near = Cast.Simulate(still, Rig, Steady with { Aim = 0, CastLength = 6, CountDown = null });
        Assert.InRange(near.Events.First(e => e.Kind == TrackEventKind.BottomContact).Depth, 0.95, 1.0);
    }

    [Fact]
    public void A_zone_above_the_bottom_follows_it_and_grass_grows_where_its_stretch_is()
    {
        Spot spot = Ledge with { CurrentSpeed = 0, Profile = Ledge.Profile! with { Stretches = [new(0, 8) { GrassHeight = 0.4 }] } };
        Track track = Cast.Simulate(spot, Rig, Steady with { Aim = 0, RetrieveSpeed = 0.6 });
        for (int i = 0; i < track.Count; i++)
        {
            double depth = spot.DepthAt(track.X[i], track.Y[i]), above = depth + track.Z[i];

            // The zone reaches from 0 to 1 m above the bottom.
            if (above is > 0.01 and < 0.99) Assert.True((track.State[i] & TrackState.InZone) != 0);
            if (above > 1.01) Assert.True((track.State[i] & TrackState.InZone) == 0);
            if (track.X[i] > 8.1) Assert.True((track.State[i] & TrackState.InGrass) == 0);
            if (track.X[i] < 7.9 && above < 0.39) Assert.True((track.State[i] & TrackState.InGrass) != 0);
        }

        Assert.Contains(track.Events, e => e.Kind == TrackEventKind.EntersGrass);
    }
}
