using LureSim.Decision.Trials;
using LureSim.Light;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Stepping;

namespace LureSim.Tests.Decision;

/// <summary>How a lure passes what stands in the water, on paths that are known.</summary>
public class StructurePassTests
{
    private static readonly Spot Still = new()
    {
        Depth = 3,
        Salinity = 25,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(1.0),
        StrikeZone = new StrikeZone(1, 3),
        TargetFish = "red drum",
    };

    private static readonly Rig Rig = new(
        new JigHead(0.00709, HeadMetal.Lead, 0.0011, "1/4 oz"), new LureBody(BodyProfile.PaddleTail, 0.1, 0.019, 0.0164, 1050, "paddle tail"), new Presentation { Name = "steady", CastLength = 20, RetrieveSpeed = 0.5 });

    // Straight in from 20 m at half a metre a second and one depth.
    private static Track Straight(double depth)
    {
        double[] time = [.. Enumerable.Range(0, 361).Select(i => 0.1 * i)], zero = new double[time.Length];
        return new Track
        {
            Status = SimulationStatus.Completed,
            Statistics = new SimulationStatistics(1, 0, 1, 0.1, 0),
            Time = time,
            X = [.. time.Select(t => 20 - (0.5 * t))],
            Y = zero,
            Z = [.. time.Select(_ => -depth)],
            VelocityX = [.. time.Select(_ => -0.5)],
            VelocityY = zero,
            VelocityZ = zero,
            SpeedThroughWater = [.. time.Select(_ => 0.5)],
            RodTension = zero,
            LureTension = zero,
            RodAngle = zero,
            LureAngle = zero,
            LineOut = [.. time.Select(t => 20 - (0.5 * t))],
            State = [.. time.Select(_ => TrackState.Reeling)],
            Events = [],
            Shapes = [],
        };
    }

    private static StructurePass Pass(SpotStructure structure, double depth = 1) => Assert.Single(StructurePass.Of(Still with { Structures = [structure] }, Rig, Straight(depth)));

    [Fact]
    public void Time_within_reach_is_the_chord_over_the_speed()
    {
        // A post 2 m to the left of the line at 10 m, reached within 2.5 m of its near face: a chord of 2 sqrt(2.5^2 - 1.95^2) and the post's own 0.1 m; other casts go nearer or farther by half a metre.
        StructurePass pass = Pass(new SpotStructure(StructureKind.Posts, 10, 10.1) { Left = 2, Width = 0.1, Reach = 2.5 });
        Assert.InRange(pass.ReachTime, 0.9 * (0.1 + (2 * Math.Sqrt((2.5 * 2.5) - (1.95 * 1.95)))) / 0.5, 1.1 * (0.1 + (2 * Math.Sqrt((2.5 * 2.5) - (1.95 * 1.95)))) / 0.5);
        Assert.Equal(1.95, pass.Nearest, 0.01);
        Assert.Equal(0, pass.SnagChance);
    }

    [Fact]
    public void A_post_on_the_line_takes_some_casts_and_one_far_off_none()
    {
        double on = Pass(new SpotStructure(StructureKind.Posts, 10, 10.3)).SnagChance, wide = Pass(new SpotStructure(StructureKind.Posts, 10, 10.3) { Width = 6 }).SnagChance;
        Assert.InRange(on, 0.1, 0.9);
        Assert.Equal(1, wide);

        // The normal distribution of the aim: within +-(0.15 m + hook) at 10 m of a spread of 3 degrees in nine of ten.
        double free = Pass(new SpotStructure(StructureKind.Posts, 10, 10.3) { Left = 5 }).SnagChance;
        Assert.Equal(0, free);
    }

    [Fact]
    public void The_line_hangs_up_on_a_post_that_the_current_carries_it_across()
    {
        Track track = Straight(1);
        Track swept = track with { Y = [.. track.Time.Select(t => 0.1 * t)] };
        Spot spot = Still with { Structures = [new SpotStructure(StructureKind.Posts, 4, 4.2) { Left = 1, Width = 0.2 }] };
        Assert.True(StructurePass.Of(spot, Rig, swept)[0].SnagChance > 0.9);
    }

    [Theory]
    [InlineData(1, 0)]
    [InlineData(2.9, 1)]
    public void A_clump_takes_what_comes_over_it_too_low(double depth, double chance) =>
        Assert.Equal(chance, Pass(new SpotStructure(StructureKind.OysterClump, 8, 12) { Width = 8, Height = 0.3 }, depth).SnagChance);

    [Fact]
    public void An_overhang_takes_the_cast_that_lands_on_it_and_shades_what_runs_under_it()
    {
        var dock = new SpotStructure(StructureKind.Overhang, 10, 16) { Width = 30, Height = 1, ShadeFrom = 10, ShadeTo = 16 };
        StructurePass pass = Pass(dock);
        Assert.Equal(0, pass.SnagChance);
        Assert.Equal(6.0 / 18, pass.ShadeShare, 0.01);
        Assert.Equal(1, Pass(dock with { To = 25 }).SnagChance);
    }

    [Theory]
    [InlineData(4, 3, 1)]
    [InlineData(10, 10, 1)]
    [InlineData(0.5, 0.5, 3)]
    public void The_sky_under_an_overhang_is_what_it_leaves_of_the_hemisphere(double length, double width, double height)
    {
        // Cosine-weighted share of the sky by quadrature over the overhang: dF = h^2/(pi r^4) dA.
        const int N = 400;
        double hidden = 0, dx = length / N, dy = width / N;
        for (int i = 0; i < N; i++)
        {
            for (int j = 0; j < N; j++)
            {
                double x = ((i + 0.5) * dx) - (0.5 * length), y = ((j + 0.5) * dy) - (0.5 * width), r2 = (x * x) + (y * y) + (height * height);
                hidden += height * height / (Math.PI * r2 * r2) * dx * dy;
            }
        }

        Assert.Equal(1 - hidden, new SpotStructure(StructureKind.Overhang, 0, length) { Width = width, Height = height }.SkyShare, 2e-4);
        Assert.Equal(1, new SpotStructure(StructureKind.Posts, 0, length).SkyShare);
    }

    [Fact]
    public void In_the_shade_the_sun_is_off_and_part_of_the_sky_is_on()
    {
        SurfaceLight open = SpotLight.Surface(Still), shade = SpotLight.Surface(Still with { ShadedSky = 0.4 });
        Assert.Equal(0, shade.Direct.Dot(Colorimetry.YBar));
        Assert.Equal(0.4 * open.Diffuse.Dot(Colorimetry.YBar), shade.Diffuse.Dot(Colorimetry.YBar), 1e-9);
        Assert.True(shade.Illuminance < 0.2 * open.Illuminance);
        Assert.Equal(shade.Diffuse.Dot(Colorimetry.YBar), shade.Total.Dot(Colorimetry.YBar), 1e-12);
    }

    [Fact]
    public void The_retrieve_by_stretch_adds_up_to_all_of_it()
    {
        // From 20 m to 2 m at an even speed: 8 m over the ledge and beyond, 6 m over the shell, 4 m of the rest.
        Spot spot = Still with { Profile = new BottomProfile { Points = [new(0, 2), new(12, 3)], Stretches = [new(6, 12) { Bottom = BottomKind.Shell, Name = "bar" }] } };
        IReadOnlyList<StretchCoverage> found = StretchCoverage.Of(spot, new Candidate(Rig, Straight(1), new Coverage(1, 0, 0, 0, 0, 0, null, 1, 1, 36, 0), 1));
        Assert.Equal([0.0, 6, 12], found.Select(stretch => stretch.From));
        Assert.Equal([4.0 / 18, 6.0 / 18, 8.0 / 18], found.Select(stretch => stretch.Share), (a, b) => Math.Abs(a - b) < 0.01);
        Assert.Equal(1, found.Sum(stretch => stretch.Share), 1e-12);
        Assert.Equal(("bar", BottomKind.Shell, 2.5), (found[1].Name, found[1].Bottom, Math.Round(found[1].NearDepth, 6)));
        Assert.Empty(StretchCoverage.Of(Still, new Candidate(Rig, Straight(1), new Coverage(1, 0, 0, 0, 0, 0, null, 1, 1, 36, 0), 1)));
    }

    [Fact]
    public void A_hang_up_costs_the_score_as_much_as_its_chance()
    {
        var scenario = new Scenario { Title = "t", Spot = Still, Tackle = Scenarios.TestScenario.Read(Scenarios.TestScenario.Text).Tackle, Presentations = [Rig.Presentation] };
        Coverage coverage = Trial.Measure(scenario, Rig, Straight(2)) with { TimeToZone = 1 };
        Assert.Equal(0, coverage.StructureSnag);
        Assert.Equal(0.7 * Ranking.Score(coverage, Still, Rig), Ranking.Score(coverage with { StructureSnag = 0.3 }, Still, Rig), 1e-12);
    }
}
