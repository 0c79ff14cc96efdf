using LureSim.Light;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;
using LureSim.Sight;

namespace LureSim.Decision.Uncertainty;

/// <summary>The colour made out farthest in water of one clarity.</summary>
/// <param name="SecchiDepth">Secchi depth (m).</param>
/// <param name="Colour">The colour made out farthest, looking level.</param>
/// <param name="Distance">How far off (m); 0 if no colour is made out.</param>
public sealed record ClarityCase(double SecchiDepth, string Colour, double Distance);

/// <summary>What the spread of the clarity makes of the colours. Clarity moves no lure, so the motion is not computed again.</summary>
/// <param name="Murky">One draw in ten is murkier.</param>
/// <param name="Middle">The scenario's own clarity.</param>
/// <param name="Clear">One draw in ten is clearer.</param>
public sealed record ClaritySpread(ClarityCase Murky, ClarityCase Middle, ClarityCase Clear)
{
    /// <summary>True if the same colour is made out farthest in all three.</summary>
    public bool ColourHolds => Murky.Colour == Middle.Colour && Clear.Colour == Middle.Colour;

    /// <summary>Works out the colours in murkier and clearer water; null if the clarity is exact or was not given by a Secchi depth.</summary>
    /// <param name="scenario">A validated scenario.</param>
    /// <param name="middle">What was found for the scenario's own clarity.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static ClaritySpread? Of(Scenario scenario, ColourFinding middle)
    {
        ArgumentNullException.ThrowIfNull(scenario);
        ArgumentNullException.ThrowIfNull(middle);
        Spread spread = scenario.Uncertainty.Clarity;
        if (spread.IsExact || scenario.Spot.Clarity is not SecchiClarity secchi) return null;
        return new ClaritySpread(At(0.1), new ClarityCase(secchi.Depth, middle.SeenLevel[0].Name, middle.SeenLevel[0].Distance), At(0.9));

        ClarityCase At(double quantile)
        {
            double depth = Math.Clamp(spread.At(quantile, secchi.Depth), 0.05, 45);
            Spot spot = scenario.Spot with { Clarity = secchi with { Depth = depth } };
            Sighting first = new SightScene(Planner.Field(spot), middle.Eye, ViewDirection.Level, middle.RunningDepth, BodyChoice.Of(scenario).First.ApparentSize).Rank(middle.Chart.Colours)[0];
            return new ClarityCase(depth, first.Name, first.Distance);
        }
    }

    /// <summary>One sentence.</summary>
    /// <param name="units">Units of the sentence.</param>
    public string Sentence(UnitSystem units)
    {
        var show = new MeasureFormatter(units);
        string range = $"With a Secchi depth of {show.Length.Number(Murky.SecchiDepth)} to {show.Length.Text(Clear.SecchiDepth)} (eight draws of ten)";
        return ColourHolds
            ? $"{range} {Middle.Colour} stays the colour made out farthest, at {show.Length.Number(Murky.Distance)} to {show.Length.Text(Clear.Distance)}."
            : $"{range} the colour made out farthest changes: {Murky.Colour} in the murkiest ({show.Length.Text(Murky.Distance)}), {Middle.Colour} as given ({show.Length.Text(Middle.Distance)}), {Clear.Colour} in the clearest ({show.Length.Text(Clear.Distance)}).";
    }
}
