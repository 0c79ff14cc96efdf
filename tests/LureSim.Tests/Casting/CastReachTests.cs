using LureSim.Casting;
using LureSim.Coupling;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Tackle;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Casting;

/// <summary>Each lure gets its own cast; what was given stays as it was given.</summary>
public class CastReachTests
{
    private static readonly string[] Heads = ["1/16 oz", "1/8 oz", "1/4 oz", "3/8 oz"];

    private static Scenario Box(string cast, string? rod = null, string wind = "") => TestScenario.Read(TestScenario.Text
        .Replace("cast: 60 ft", $"cast: {cast}", StringComparison.Ordinal)
        .Replace("  wind: {speed: 8 kn, direction: 225 deg}\n", wind, StringComparison.Ordinal)
        .Replace("            - unweighted\n            - 1/8 oz\n            - {weight: 1/4 oz, metal: tungsten, hook: 1.2 g}".Replace("            ", "    ", StringComparison.Ordinal), string.Join('\n', Heads.Select(head => $"    - {head}")), StringComparison.Ordinal)
        .Replace("tackle:\n", rod is null ? "tackle:\n" : $"tackle:\n  rod: {rod}\n", StringComparison.Ordinal));

    private static double[] Casts(Scenario scenario) => [.. CastTable.Of(scenario).Rows.Select(row => row.Cast.Length)];

    [Fact]
    public void Without_a_rod_and_a_known_lure_every_cast_is_as_it_was_given()
    {
        Scenario scenario = Box("60 ft");
        Assert.All(Casts(scenario), length => Assert.Equal(60 * 0.3048, length, 1e-12));
        FishingRig rig = FishingRig.Of(scenario.Tackle, scenario.Tackle.JigHeads[0], scenario.Tackle.Bodies[0]);
        Assert.Same(scenario.Presentations[0], CastReach.Own(scenario.Spot, rig, scenario.Presentations[0]));
    }

    [Fact]
    public void A_known_cast_is_met_by_its_own_lure_and_spread_by_weight()
    {
        double[] casts = Casts(Box("60 ft with 1/4 oz"));
        Assert.Equal(60 * 0.3048, casts[2], 1e-4);
        Assert.True(casts[0] < casts[1] && casts[1] < casts[2], string.Join(' ', casts));
        Assert.InRange(casts[0] / casts[2], 0.7, 0.995);
    }

    [Fact]
    public void The_simulated_track_begins_where_the_lure_comes_down()
    {
        Scenario scenario = Box("60 ft with 1/4 oz");
        FishingRig light = FishingRig.Of(scenario.Tackle, scenario.Tackle.JigHeads[0], scenario.Tackle.Bodies[0]);
        Track track = Cast.Simulate(scenario.Spot, light, scenario.Presentations[0], new SimulationOptions { FallOnly = true, FallLimit = 1 });
        Assert.Equal(Casts(scenario)[0], track.X[0], 1e-9);
    }

    [Fact]
    public void A_wanted_distance_is_met_or_fallen_short_of_and_never_passed()
    {
        Scenario scenario = Box("45 m", "7 ft medium");
        CastTable table = CastTable.Of(scenario);
        Assert.All(table.Rows, row => Assert.InRange(row.Cast.Length, 5, 45));
        Assert.Contains(table.Rows, row => row.Cast.FallsShort);
        Assert.All(CastTable.Of(Box("20 m", "7 ft medium")).Rows, row => Assert.Equal(20, row.Cast.Length, 1e-12));
    }

    [Fact]
    public void Wind_behind_helps_and_wind_ahead_takes_more_from_the_lighter_lure()
    {
        double[] still = Casts(Box("60 ft with 1/4 oz"));
        double[] behind = Casts(Box("60 ft with 1/4 oz", null, "  wind: {speed: 12 kn, direction: away}\n"));
        double[] ahead = Casts(Box("60 ft with 1/4 oz", null, "  wind: {speed: 12 kn, direction: towards}\n"));
        for (int i = 0; i < still.Length; i++) Assert.True(ahead[i] < still[i] && still[i] < behind[i]);
        Assert.True(ahead[0] / still[0] < ahead[3] / still[3]);
    }

    [Fact]
    public void Wind_from_the_side_blows_it_aside_and_mirrors()
    {
        Scenario scenario = Box("60 ft with 1/4 oz");
        PathLure lure = scenario.Tackle.Bodies[0].Kind.OnPath(scenario.Tackle.JigHeads[1], scenario.Tackle.Bodies[0]);
        var flight = new CastFlight(lure, TackleBuilder.Line(scenario.Tackle).Main);
        CastLanding left = flight.Fly(22, 2.5, CastFlight.UsualAngle, 0, 6), right = flight.Fly(22, 2.5, CastFlight.UsualAngle, 0, -6);
        Assert.Equal(left.Distance, right.Distance, 1e-9);
        Assert.Equal(left.Aside, -right.Aside, 1e-9);
        Assert.InRange(left.Aside, 0.3, 8);
    }

    [Fact]
    public void Thicker_line_and_a_longer_rod_do_what_they_do()
    {
        Scenario thin = Box("60 ft", "7 ft medium");
        Scenario thick = thin with { Tackle = thin.Tackle with { Line = thin.Tackle.Line with { Diameter = 0.0004 } } };
        Scenario longer = thin with { Tackle = thin.Tackle with { Rod = TacklePresets.Rod(2.7, RodPower.Medium) } };
        double Easy(Scenario s) => CastReach.Easy(s.Tackle, s.Tackle.JigHeads[2], s.Tackle.Bodies[0]);
        Assert.True(Easy(thick) < 0.97 * Easy(thin));
        Assert.True(Easy(longer) > 1.05 * Easy(thin));
    }

    [Fact]
    public void Halving_the_step_of_the_flight_changes_nothing_that_is_shown()
    {
        // The method is of fourth order: its error is seen against the exact vertical throw in vacuum, and in the symmetry of a throw without air.
        var stone = new ConstantDragLure { Mass = 0.02, Volume = 1e-6, AddedMassCoefficient = 0.5, ContactRadius = 0.01, Area = 0 };
        CastLanding landing = new CastFlight(stone, null).Fly(30, 0, Math.PI / 4);
        Assert.Equal(30 * 30 / PhysicalConstants.StandardGravity, landing.Distance, 1e-6);
        Assert.Equal(2 * 30 * Math.Sin(Math.PI / 4) / PhysicalConstants.StandardGravity, landing.Time, 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [InlineData(201)]
    public void A_speed_that_is_none_is_refused(double speed) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new CastFlight(SphereLure.Of(0.01, 11340), null).Fly(speed, 1));
}
