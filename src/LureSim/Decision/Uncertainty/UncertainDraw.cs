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
    // Bait labels and their factors that observations left; null where there were none.
    private IReadOnlyDictionary<string, double>? Learned { get; init; }

    // The plus-or-minus of a drag that was not measured.
    private double CommonMargin { get; init; }

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
        double[,] points = LatinHypercube.Draw(samples, UncertainInputs.All.Count + 1, u.Seed);
        double shortest = Math.Max(Math.Max(2, presentation.LineLeftAtEnd + CastBeyondEnd), (scenario.Tackle.Leader?.Length ?? 0) + CastBeyondEnd);

        // A rod that is lowered in the retrieve is not held lower than the scenario has checked.
        double lowestRod = presentation.Moves.Any(move => move.Up < 0) ? scenario.Tackle.RodTipHeight : 0.1;
        var draws = new UncertainDraw[samples];
        for (int i = 0; i < samples; i++)
        {
            LearnedTry? learned = u.Learned.Count > 0 ? u.Learned[(int)((i + 0.5) * u.Learned.Count / samples)] : null;
            double current = learned?.Current ?? Math.Clamp(u.Current.At(Q(UncertainInput.Current), spot.CurrentSpeed), 0, 3);
            double cast = Math.Clamp(u.Cast.At(Q(UncertainInput.Cast), presentation.CastLength), Math.Min(shortest, presentation.CastLength), 80);

            // A swing without reeling has no speed to be uncertain.
            double speed = presentation.RetrieveSpeed > 0
                ? Math.Clamp(u.RetrieveSpeed.At(Q(UncertainInput.RetrieveSpeed), presentation.RetrieveSpeed), Math.Min(0.02, presentation.FastestSpeed), presentation.FastestSpeed)
                : 0;
            double depth = learned?.Depth ?? u.Depth.At(Q(UncertainInput.Depth), spot.Depth);
            double rod = Math.Clamp(u.RodHeight.At(Q(UncertainInput.RodHeight), scenario.Tackle.RodTipHeight), lowestRod, Math.Max(scenario.Tackle.RodTipHeight, Math.Min(6, presentation.LineLeftAtEnd)));
            double factor = learned?.LineDrag ?? Math.Clamp(u.LineDrag.At(Q(UncertainInput.LineDrag), 1), 0.1, 5);
            double law = learned?.LineLaw ?? Q(UncertainInput.LineLaw);
            double lure = Math.Clamp(u.LureDrag.At(Q(UncertainInput.LureDrag), 1), 0.2, 5);
            Spot water = WithWater(SpotChange.WithDepth(spot, depth) with { CurrentSpeed = current }, u, i);
            if (water.StrikeZone is { AssumedBy: not null, Spread: > 0 } zone)
                water = water with { StrikeZone = Moved(zone, water.Depth * Spread.OfShare(zone.Spread).At(points[i, UncertainInputs.All.Count], 1) - water.Depth, water.Depth) };
            bool second = u.LineLaw == LineLawChoice.Either && law >= 0.5;
            draws[i] = new UncertainDraw(
                [current, cast, speed, water.Depth, rod, factor, second ? 1 : 0, learned is { LureDrags.Count: 1 } ? learned.LureDrags.Values.First() : lure],
                scenario with { Spot = water, Tackle = scenario.Tackle with { RodTipHeight = rod } },
                presentation with { CastLength = cast, RetrieveSpeed = speed },
                Law(u.LineLaw, law).Scaled(factor),
                lure)
            {
                Learned = learned?.LureDrags,
                CommonMargin = u.LureDrag.IsExact ? 0 : u.LureDrag.Low,
            };

            double Q(UncertainInput input) => points[i, (int)input];
        }

        return draws;
    }

    /// <summary>
    /// The factor on the drag of a bait beside its own measured one (<see cref="MeasuredDrag"/>): what observations left of it, otherwise the common draw, as much narrower as
    /// the bait's own number is better known.
    /// </summary>
    /// <param name="body">The bait.</param>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    public double LureDragOf(LureBody body)
    {
        ArgumentNullException.ThrowIfNull(body);
        if (Learned is not null && Learned.TryGetValue(body.Label, out double learned)) return Math.Clamp(learned / (body.Drag?.Factor ?? 1), 0.2, 5);
        return body.Drag is { } own && CommonMargin > 0 ? Math.Clamp(1 + ((LureDragFactor - 1) * Math.Min(1, own.Margin / CommonMargin)), 0.2, 5) : LureDragFactor;
    }

    // Higher or lower by an amount, with its height as far as the water has room for it.
    private static StrikeZone Moved(StrikeZone zone, double by, double depth)
    {
        double height = zone.Bottom - zone.Top, bottom = Math.Clamp(zone.Bottom + by, Math.Min(height, depth), depth);
        return zone with { Top = Math.Max(0, bottom - height), Bottom = bottom };
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

    /// <summary>The law at a quantile of a choice.</summary>
    internal static LineDragLaw Law(LineLawChoice choice, double quantile) => choice switch
    {
        LineLawChoice.Either => quantile >= 0.5 ? LineDragLaw.ChurchillBernstein : LineDragLaw.Default,
        LineLawChoice.Measured => LineDragLaw.Default,
        LineLawChoice.ChooCasarella => LineDragLaw.ChooCasarella,
        LineLawChoice.SuckerBrauer => LineDragLaw.Of(NormalDragLaw.SuckerBrauer, TangentialDragLaw.ChooCasarella),
        LineLawChoice.ChurchillBernstein => LineDragLaw.ChurchillBernstein,
        _ => throw new ArgumentOutOfRangeException(nameof(choice), choice, "Not a choice of law."),
    };
}
