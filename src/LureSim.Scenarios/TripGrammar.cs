using LureSim.Decision.Trips;

namespace LureSim.Scenarios;

/// <summary>The grammar of trip files: hours, ways and spots, each spot a scenario of its own.</summary>
internal static class TripGrammar
{
    /// <summary>File name of the schema, which trips point their editors to.</summary>
    public const string SchemaFileName = "luresim-trip.schema.json";

    /// <summary>Name of the place where the trip begins.</summary>
    public const string Ramp = "ramp";

    private static readonly QuantityValue Way = new(QuantityKind.Duration, 0, 6 * 3600) { Example = "15 min" };

    private static readonly QuantityValue Stay = new(QuantityKind.Duration, 900, 24 * 3600) { Example = "45 min" };

    private static readonly MapValue Spot = new("spot", "A spot of the trip.",
    [
        new("file", new TextValue(300, false), "Its scenario, by its path from this file.") { Required = true },
        new("name", new TextValue(40, false), "A short name for the ways.") { Default = "the file without its ending" },
        new("least_stay", Stay, "Shortest visit.") { Default = "30 min, assumed" },
        new("most_stay", Stay, "Longest visit.") { Default = "2 h, assumed" },
        new("worth", new QuantityValue(QuantityKind.Percentage, 0.05, 10) { Example = "120 %" }, "How good you hold the spot to be against the others.") { Default = "100 %" },
    ]);

    private static readonly MapValue Leg = new("leg", "A way between two places, both ways.",
    [
        new("from", new TextValue(40, false), "Name of a spot, or ramp.") { Required = true },
        new("to", new TextValue(40, false), "Name of a spot, or ramp.") { Required = true },
        new("time", Way, "How long it takes.") { Required = true },
    ]);

    /// <summary>The whole file.</summary>
    public static MapValue Root { get; } = new("trip", "A day on the water: hours, ways and spots.",
    [
        new("title", new TextValue(120, false), "Name of the day.") { Required = true },
        new("from", new ClockValue("06:00"), "When you leave the ramp, in quotes.") { Required = true },
        new("to", new ClockValue("14:00"), "When you are back or have made the last cast, in quotes; an earlier time than from is on the next day.") { Required = true },
        new("travel", Way, "Time between any two places that no leg names.") { Default = "20 min, assumed" },
        new("legs", new ListValue(Leg, 1, 78), "Ways that take another time.") { Default = "none" },
        new("back", new WordValue(
        [
            new("by then", true, "back at the ramp by the end"),
            new("later", false, "the last cast is made by the end"),
        ]), "Whether the way back belongs into the hours.") { Default = "by then" },
        new("spots", new ListValue(Spot, 1, TripProblem.MostSpots), "The spots, in any order.") { Required = true },
    ]);
}
