using LureSim.Decision.Trials;
using LureSim.Hydrodynamics;
using LureSim.Model;

namespace LureSim.Decision.Uncertainty;

/// <summary>One draw of all inputs of the motion.</summary>
/// <param name="Values">Value of each input as it was used (SI), by <see cref="UncertainInputs.All"/>.</param>
/// <param name="Scenario">The scenario with the drawn water and rod.</param>
/// <param name="Presentation">The presentation with the drawn cast and speed.</param>
/// <param name="LineDrag">The drawn drag law of the line.</param>
/// <param name="LureDragFactor">The drawn factor on the drag of the lure.</param>
public sealed record UncertainDraw(IReadOnlyList<double> Values, Scenario Scenario, Presentation Presentation, LineDragLaw LineDrag, double LureDragFactor)
{
    // A cast is at least this much longer than the line left at its end (m).
    private const double CastBeyondEnd = 0.5;

    /// <summary>Draws the inputs by a Latin hypercube; one draw, the scenario itself, where everything is exact.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="presentation">The presentation.</param>
    /// <param name="samples">Draws wanted, 1 or more.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There is no draw.</exception>
    public static IReadOnlyList<UncertainDraw> Draw(Scenario scenario, Presentation presentation, int samples)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(presentation);
        ScenarioUncertainty u = scenario.Uncertainty;
        Spot spot = scenario.Spot;
        LineDragLaw nominal = Law(u.LineLaw, 0.25);
        if (u.IsExactInMotion)
            return [new([spot.CurrentSpeed, presentation.CastLength, presentation.RetrieveSpeed, spot.Depth, scenario.Tackle.RodTipHeight, 1, 0, 1], scenario, presentation, nominal, 1)];
        double[,] points = LatinHypercube.Draw(samples, UncertainInputs.All.Count, u.Seed);
        double shortest = Math.Max(Math.Max(2, presentation.LineLeftAtEnd + CastBeyondEnd), (scenario.Tackle.Leader?.Length ?? 0) + CastBeyondEnd);

        // A rod that is lowered in the retrieve is not held lower than the scenario has checked.
        double lowestRod = presentation.Moves.Any(move => move.Up < 0) ? scenario.Tackle.RodTipHeight : 0.1;
        var draws = new UncertainDraw[samples];
        for (int i = 0; i < samples; i++)
        {
            double current = Math.Clamp(u.Current.At(Q(UncertainInput.Current), spot.CurrentSpeed), 0, 3);
            double cast = Math.Clamp(u.Cast.At(Q(UncertainInput.Cast), presentation.CastLength), Math.Min(shortest, presentation.CastLength), 80);

            // A swing without reeling has no speed to be uncertain.
            double speed = presentation.RetrieveSpeed > 0
                ? Math.Clamp(u.RetrieveSpeed.At(Q(UncertainInput.RetrieveSpeed), presentation.RetrieveSpeed), Math.Min(0.02, presentation.FastestSpeed), presentation.FastestSpeed)
                : 0;
            double depth = u.Depth.At(Q(UncertainInput.Depth), spot.Depth);
            double rod = Math.Clamp(u.RodHeight.At(Q(UncertainInput.RodHeight), scenario.Tackle.RodTipHeight), lowestRod, Math.Max(scenario.Tackle.RodTipHeight, Math.Min(6, presentation.LineLeftAtEnd)));
            double factor = Math.Clamp(u.LineDrag.At(Q(UncertainInput.LineDrag), 1), 0.1, 5);
            double law = Q(UncertainInput.LineLaw);
            double lure = Math.Clamp(u.LureDrag.At(Q(UncertainInput.LureDrag), 1), 0.2, 5);
            Spot water = WithWater(SpotChange.WithDepth(spot, depth) with { CurrentSpeed = current }, u, i);
            bool second = u.LineLaw == LineLawChoice.Either && law >= 0.5;
            draws[i] = new UncertainDraw(
                [current, cast, speed, water.Depth, rod, factor, second ? 1 : 0, lure],
                scenario with { Spot = water, Tackle = scenario.Tackle with { RodTipHeight = rod } },
                presentation with { CastLength = cast, RetrieveSpeed = speed },
                Law(u.LineLaw, law).Scaled(factor),
                lure);

            double Q(UncertainInput input) => points[i, (int)input];
        }

        return draws;
    }

    // Water that was not given: usual, colder, warmer, fresher and saltier by turns. Five waters rather than one a try, because how a lure swims is worked out anew for each.
    private static Spot WithWater(Spot spot, ScenarioUncertainty u, int draw)
    {
        if (u.Temperature.IsExact && u.Salinity.IsExact) return spot;
        (double warm, double salt) = (draw % 5) switch
        {
            1 => (Low, 0.5),
            2 => (High, 0.5),
            3 => (0.5, Low),
            4 => (0.5, High),
            _ => (0.5, 0.5),
        };
        return spot with
        {
            TemperatureCelsius = Math.Clamp(u.Temperature.At(warm, spot.TemperatureCelsius), 0, Limits.Temperature.Most),
            Salinity = Math.Clamp(u.Salinity.At(salt, spot.Salinity), 0, Limits.Salinity.Most),
        };
    }

    private const double Low = 0.15;
    private const double High = 0.85;

    private static LineDragLaw Law(LineLawChoice choice, double quantile) => choice switch
    {
        LineLawChoice.Either => quantile >= 0.5 ? LineDragLaw.ChurchillBernstein : LineDragLaw.Default,
        LineLawChoice.Measured => LineDragLaw.Default,
        LineLawChoice.ChooCasarella => LineDragLaw.ChooCasarella,
        LineLawChoice.SuckerBrauer => LineDragLaw.Of(NormalDragLaw.SuckerBrauer, TangentialDragLaw.ChooCasarella),
        LineLawChoice.ChurchillBernstein => LineDragLaw.ChurchillBernstein,
        _ => throw new ArgumentOutOfRangeException(nameof(choice), choice, "Not a choice of law."),
    };
}
