using LureSim.Decision.Observations;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Motion;
using LureSim.Scenarios;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Random;

namespace LureSim.Tests.Decision.Observations;

/// <summary>A spot whose water is drawn from what the scenario says of it, and what an angler would observe there, errors and all.</summary>
internal static class Truths
{
    public const string Text = """
        title: Made-up channel
        spot:
          depth: 14 ft
          bottom: shell
          current: {speed: 0.8 kn, direction: left}
          salinity: 26 ppt
          temperature: 72 degF
          clarity: {secchi: 5 ft, water: coastal green}
          light: {sun_elevation: 40 deg}
          strike_zone: {above_bottom: [0.5 ft, 4 ft]}
          target: red drum
        tackle:
          rod_tip_height: 5 ft
          reel: {gear_ratio: 6.2, spool_diameter: 45 mm}
          line: {kind: braid, strength: 10 lb}
          leader: {kind: fluorocarbon, strength: 20 lb, length: 24 in}
          jig_heads: [1/8 oz, 3/16 oz, 1/4 oz, 3/8 oz, 1/2 oz, 3/4 oz]
          bodies: [{profile: paddle tail, length: 4 in}]
          colours: [white, chartreuse]
        presentations:
          - {name: slow, cast: 60 ft, count_down: to bottom, retrieve: {speed: 1 ft/s}}
        fixed: [all]
        uncertainty: {current: 60 %, samples: 24}
        """;

    public static Scenario Scenario { get; } = ScenarioReader.ReadText(Text, "truths.yaml").Scenario!;

    /// <summary>The state of a truth, the scenario in it, and what is observed there.</summary>
    public static (InputState State, Scenario World, SimulationOptions Drags, Observation[] Seen) Of(int number)
    {
        Scenario scenario = Scenario;
        var random = new MersenneTwister(1000 + number, threadSafe: false);
        var space = new InputSpace(scenario, scenario.Tackle.Bodies);
        double[] numbers = [.. Enumerable.Range(0, space.Dimensions).Select(_ => Normal.Sample(random, 0, 1))];
        InputState state = space.At(numbers);
        Scenario world = scenario with { Spot = space.Water(state) with { Clarity = (SecchiClarity)scenario.Spot.Clarity with { Depth = state.Secchi } }, Uncertainty = ScenarioUncertainty.None };
        SimulationOptions drags = new() { LineDrag = space.Law(state), LureDragFactor = state.LureDrags[0] };
        Presentation way = scenario.Presentations[0];
        JigHead quarter = scenario.Tackle.JigHeads[2], heavy = scenario.Tackle.JigHeads[4];
        Observation[] wanted =
        [
            new() { Kind = ObservationKind.BottomTime, Value = 0, Head = heavy, Body = scenario.Tackle.Bodies[0], Way = way },
            new() { Kind = ObservationKind.LineAngle, Value = 0, Head = quarter, Body = scenario.Tackle.Bodies[0], Way = way with { CountDown = 5 } },
            new() { Kind = ObservationKind.FloatDrift, Value = 0, Length = 8 },
            new() { Kind = ObservationKind.WhiteVanishes, Value = 0 },
        ];
        List<Observation> seen = [];
        foreach (Observation one in wanted)
        {
            double exact = one.Kind switch
            {
                ObservationKind.FloatDrift => 8 / state.Current,
                ObservationKind.WhiteVanishes => state.Secchi,
                _ => ObservedRun.Predict(
                    world, one, way with { CastLength = scenario.Uncertainty.Cast.At(random.NextDouble(), way.CastLength), CountDown = one.Way!.CountDown }, Trial.ForSearch(drags), CancellationToken.None),
            };
            if (!double.IsFinite(exact) || exact > 300)
            {
                seen.Add(one with { Value = one.Kind == ObservationKind.FloatDrift ? 120 : 30, Happened = false });
                continue;
            }

            double value = exact + (ObservationErrors.Of(one with { Value = exact }) * Normal.Sample(random, 0, 1));
            seen.Add(one with { Value = one.Kind == ObservationKind.LineAngle ? value : Math.Max(0.1, value) });
        }

        return (state, world, drags, [.. seen]);
    }
}
