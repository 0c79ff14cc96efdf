using LureSim.Model;
using LureSim.Tides;

namespace LureSim.Scenarios;

/// <summary>The part of the grammar that says the tide.</summary>
internal static class TideGrammar
{
    private static readonly ListValue Points = new(new MapValue("tide", "A point of the tide; between the points runs a smooth curve that does not overshoot them.",
    [
        new("time", new ClockValue("06:20"), "Time by the local clock, in quotes; the times run on, past midnight if need be.") { Required = true },
        new("current", new QuantityValue(QuantityKind.Speed, Limits.TidalCurrent), "Current at the surface; negative where it flows against spot.current.direction.") { Required = true },
        new("depth_change", new QuantityValue(QuantityKind.Length, Limits.DepthChange), "What the water is deeper than spot.depth; negative for shallower.") { Default = "0 m" },
    ]), 3, 96);

    private static readonly MapValue Constituent = new("constituent", "A harmonic constituent of the place, as lists of tide stations give it.",
    [
        new("name", new WordValue([.. TidalConstituent.All.Select(item => new GrammarWord(item.Name, item, ""))]) { Names = EverydayNames.Constituent }, "Its standard name.") { Required = true },
        new("amplitude", new QuantityValue(QuantityKind.Length, Limits.TidalAmplitude) { Example = "1.6 ft" }, "Amplitude: half of what it moves the water.") { Required = true },
        new("phase", new QuantityValue(QuantityKind.Angle, 0, 2 * Math.PI) { Example = "181 deg" }, "Phase lag on Greenwich (GMT), not the local one.") { Required = true },
    ]);

    private static readonly MapValue Harmonic = new("tide", "The tide of a day worked out from harmonic constituents: heights with node factors and arguments after Schureman 1940, the current from how fast the water rises or falls. No navigation aid: take times that matter from the tables of the harbor.",
    [
        new("constituents", new ListValue(new ShortOrMapValue("name", Constituent) { Phrase = PhraseBook.Constituent }, 1, 37), "The constituents, each with amplitude and phase: M2 1.6 ft 181 deg.") { Required = true },
        new("date", new DateValue(Limits.FirstDay, Limits.LastDay, "2026-06-14"), "Day by the local calendar.") { Default = "the date of the light" },
        new("utc_offset", new QuantityValue(QuantityKind.UtcOffset, -12.0 * 3600.0, 14.0 * 3600.0), "What the local clock is ahead of UTC, summer time included.") { Default = "that of the light" },
        new("from", new ClockValue("06:00"), "First hour of interest, in quotes.") { Default = "midnight" },
        new("to", new ClockValue("14:00"), "Last hour of interest, in quotes; an earlier time than from is on the next day.") { Default = "a day later" },
        new("level", new QuantityValue(QuantityKind.Length, Limits.TideLevel) { Example = "1 ft" }, "What the water is deeper than spot.depth when the tide is at its mean level; where spot.depth is that of a chart, the height of mean level above chart datum.") { Default = "0 m" },
        new("strongest_current", new QuantityValue(QuantityKind.Speed, Limits.CurrentSpeed), "Current at the surface when the water rises or falls fastest that day.") { Default = "that of the spot" },
        new("slack_after", new QuantityValue(QuantityKind.Duration, 0, 6 * 3600) { Example = "40 min" }, "How long after high and low water the current turns.") { Default = "0 min: it turns with the height, assumed" },
        new("runs", new WordValue(
        [
            new("outgoing", TideStage.Outgoing, "the water goes in spot.current.direction while the tide falls"),
            new("incoming", TideStage.Incoming, "it does while the tide rises"),
        ]) { Names = EverydayNames.Runs }, "Which tide the spot's current belongs to.") { Default = "as spot.current.tide says" },
    ]);

    /// <summary>The tide.</summary>
    public static ListOrMapValue Tide { get; } = new(Points, Harmonic);
}
