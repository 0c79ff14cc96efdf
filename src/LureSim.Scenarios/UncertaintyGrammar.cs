using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>The part of the grammar that says how well inputs are known.</summary>
internal static class UncertaintyGrammar
{
    private static readonly QuantityValue Share = new(QuantityKind.Percentage, Limits.Share) { Example = "20 %" };

    private static readonly MapValue LineDrag = new("line_drag", "The drag of the line.",
    [
        new("law", new WordValue(
        [
            new("either", LineLawChoice.Either, "half of the tries with measured, half with churchill bernstein"),
            new("measured", LineLawChoice.Measured, "the cylinder as measured by Wieselsberger 1922 across, Choo & Casarella 1971 with an axial boundary layer along; the law of single runs"),
            new("choo casarella", LineLawChoice.ChooCasarella, "Choo & Casarella 1971 across and along, with an axial boundary layer"),
            new("sucker brauer", LineLawChoice.SuckerBrauer, "Sucker & Brauer 1975 across, Choo & Casarella 1971 with an axial boundary layer along"),
            new("churchill bernstein", LineLawChoice.ChurchillBernstein, "Choo & Casarella 1971 across, Churchill & Bernstein 1977 along"),
        ]), "Which published law the tries use.") { Default = "either, or measured where others is exact" },
        new("factor", Share, "Plus or minus on all the drag of the line; 0 % takes the law as it is.") { Default = "15 %, assumed, or 0 % where others is exact" },
    ]);

    /// <summary>How well the inputs are known.</summary>
    public static MapValue Uncertainty { get; } = new("uncertainty", "How well the inputs are known. The plan is computed for many tries drawn from these spreads, and says how sure its choice is. A percentage alone is a plus-or-minus; 0 % means known exactly.",
    [
        new("current", Spread("current", QuantityKind.Speed, Limits.CurrentSpeed), "Current at the surface.") { Default = "25 %, assumed" },
        new("cast", Spread("cast", QuantityKind.Length, Limits.CastLength), "Length of the cast.") { Default = "10 %, assumed" },
        new("retrieve_speed", Spread("retrieve_speed", QuantityKind.Speed, Limits.LineSpeed), "Speed of the line coming in.") { Default = "15 %, assumed" },
        new("depth", Spread("depth", QuantityKind.Length, Limits.Depth), "Depth of the water.") { Default = "10 %, assumed" },
        new("clarity", Spread("clarity", QuantityKind.Length, Limits.SecchiDepth), "Secchi depth, for light and sight alone.") { Default = "25 %, assumed" },
        new("rod_tip_height", Spread("rod_tip_height", QuantityKind.Length, Limits.RodTipHeight), "Height of the rod tip.") { Default = "15 %, assumed" },
        new("line_drag", LineDrag, "The drag of the line.") { Default = "either law, 15 %, assumed" },
        new("lure_drag", Share, "Plus or minus on the drag of the lure; 0 % takes it as computed.") { Default = "40 %, or 0 % where others is exact" },
        new("sight", new WordValue(
        [
            new("drawn", false, "drawn for sighting distances: contrast that a fish needs, smallest target, peaks of borrowed cones, attenuation of light at the Secchi depth"),
            new("exact", true, "taken as the model has them"),
        ]), "What is not known of the eye and of the water's optics.") { Default = "drawn, or exact where others is exact" },
        new("others", new WordValue(
        [
            new("assumed", true, "the assumed spread of each"),
            new("exact", false, "known exactly: with this word alone there is no uncertainty"),
        ]), "What holds for the inputs that are not named here.") { Default = "assumed" },
        new("samples", new IntegerValue(0, ScenarioUncertainty.MostSamples), "What-if tries for each jig head; 0 for none.") { Default = "24" },
        new("seed", new IntegerValue(0, 1_000_000), "Seed of the tries; another seed gives other tries.") { Default = "1" },
    ]);

    private static ShortOrMapValue Spread(string name, QuantityKind kind, ValueRange range)
    {
        var value = new QuantityValue(kind, range);
        return new ShortOrMapValue("plus_or_minus", new MapValue(name, "How well it is known, in one of three forms.",
        [
            new("plus_or_minus", new ShareOrAmountValue(Share, new QuantityValue(kind, 0.0, range.Most)), "Nine tries in ten lie within this of the value: a normal distribution, cut at twice the margin.") { OneOf = "form" },
            new("between", new ListValue(value, 2, 2), "Anywhere between the two, all alike.") { OneOf = "form" },
            new("triangular", new ListValue(value, 3, 3), "Least, likeliest and greatest value.") { OneOf = "form" },
        ]));
    }
}
