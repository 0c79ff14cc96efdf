using LureSim.Decision;
using LureSim.Decision.Observations;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>A row of a card: a label and what to do.</summary>
/// <param name="Label">Label in capitals, such as "TIE ON".</param>
/// <param name="Text">What to do.</param>
public sealed record CardRow(string Label, string Text);

/// <summary>What a card is made of. What is not known is left out of it.</summary>
/// <param name="Scenario">The scenario.</param>
/// <param name="First">The rig to fish, with its run.</param>
public sealed record CardFacts(Scenario Scenario, Candidate First)
{
    /// <summary>The color to use, or null.</summary>
    public ColourChoice? Colour { get; init; }

    /// <summary>What to change to, or null.</summary>
    public Candidate? Backup { get; init; }

    /// <summary>The choice behind it, with its tries and the conditions at which it flips; null for a rig that was given.</summary>
    public Choice? Choice { get; init; }

    /// <summary>How sure the choice is, or null.</summary>
    public UncertaintyStudy? Uncertainty { get; init; }

    /// <summary>What observations did to the choice, or null.</summary>
    public CalibratedChoice? Observed { get; init; }

    /// <summary>What to look at next, the most telling first.</summary>
    public IReadOnlyList<NextLook> LookNext { get; init; } = [];

    /// <summary>How the rig swims, or null.</summary>
    public RigFocus? RigCheck { get; init; }

    /// <summary>What may go wrong with the choice.</summary>
    public IReadOnlyList<ChoiceWarning> Warnings { get; init; } = [];
}

/// <summary>What a guide needs in ten seconds: finished strings, the same on every page, on paper and in the terminal.</summary>
/// <param name="Title">The spot.</param>
/// <param name="Rows">The rows in their order.</param>
/// <param name="Night">True where the page should be dark.</param>
/// <param name="Units">Units of everything on it.</param>
public sealed record Card(string Title, IReadOnlyList<CardRow> Rows, bool Night, UnitSystem Units)
{
    /// <summary>Most words on a card, its labels included, its title not.</summary>
    public const int MostWords = 120;

    /// <summary>Words on the card under its title, as spaces part them.</summary>
    public int Words => Rows.Sum(row => WordsIn(row.Label) + WordsIn(row.Text));

    /// <summary>The card on one line, for the top of a terminal.</summary>
    public string Line { get; private init; } = "";

    /// <summary>The card as plain text, a row a line.</summary>
    public string Text => string.Join('\n', [Title, .. Rows.Select(row => $"{row.Label,-10} {row.Text}")]) + "\n";

    /// <summary>Makes a card.</summary>
    /// <param name="facts">What it is made of.</param>
    /// <param name="units">Units.</param>
    /// <exception cref="ArgumentNullException"><paramref name="facts"/> is null.</exception>
    public static Card Of(CardFacts facts, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var format = new UnitFormat(units);
        Scenario scenario = facts.Scenario;
        Rig rig = facts.First.Rig;
        string[] watch = [.. CardWords.Watch(scenario, rig.Head, facts.Choice?.Numbers?.Snag ?? facts.First.Coverage.StructureSnag, facts.Warnings)];
        string hands = RetrieveWords.Retrieve(rig.Presentation, scenario.Tackle.Reel, format);

        // Where a card is too long it loses words in this order: all but two cautions, the name of the retrieve, one more caution, what is only usual or assumed, when to change, what to check, the retrieve move by move.
        // What was seen goes last: it is the one row that the water itself wrote.
        IEnumerable<Card> tries =
        [
            .. Enumerable.Range(0, watch.Length).Select(fewer => Make(CardWords.Named(rig.Presentation, hands), watch.Length - fewer)).TakeWhile((_, fewer) => watch.Length - fewer >= Math.Min(2, watch.Length)),
            Make(hands, 2),
            Make(hands, 1),
            Make(hands, 1, losses: 1),
            Make(hands, 1, losses: 2),
            Make(hands, 1, losses: 3),
            Make(rig.Presentation.Name, 1, losses: 3),
            Make(rig.Presentation.Name, 1, losses: 4),
        ];
        return tries.FirstOrDefault(card => card.Words <= MostWords) ?? tries.Last();

        Card Make(string retrieve, int items, int losses = 0)
        {
            string lure = facts.Colour is { } colour
                ? $"{format.LureText(rig.Body)}, {colour.Name}{(colour.Reason.Length > 0 && (losses < 1 || colour.Reason != CardWords.UsualChoice) ? $" ({colour.Reason})" : "")}"
                : format.LureText(rig.Body);
            List<CardRow> rows =
            [
                new("SPOT", CardWords.Spot(scenario, format, assumedWater: losses < 1)),
                new("TIE ON", CardWords.TieOn(rig, scenario.Tackle, format)),
                new("LURE", lure),
                new("THROW", RetrieveWords.Throw(facts.First, scenario.Spot, format)),
                new("SINK", CardWords.Sink(rig.Presentation, facts.First.Coverage)),
                new("WORK IT", retrieve.TrimEnd('.')),
                .. facts.RigCheck is { } check ? [new("RIG", CardWords.Rig(check, format))] : Array.Empty<CardRow>(),
                .. CardWords.Backup(facts, format, flip: losses < 2) is { Length: > 0 } backup ? [new("BACKUP", backup)] : Array.Empty<CardRow>(),
                .. CardWords.HowSure(facts, format, look: losses < 3) is { Length: > 0 } sure ? [new("HOW SURE", sure)] : Array.Empty<CardRow>(),
                .. facts.Observed is { } seen && losses < 4 && ObservationWords.Brief(seen.Update, format, 1) is { Length: > 0 } learned ? [new("YOU SAW", learned)] : Array.Empty<CardRow>(),
                new("WATCH OUT", string.Join("; ", watch.Take(items))),
            ];
            return new Card(scenario.Title, [.. rows.Select(row => row with { Text = Grammar.Capital(row.Text) })], Cautions.IsDark(scenario.Spot), units)
            {
                Line = CardWords.Line(facts, format),
            };
        }
    }

    private static int WordsIn(string text) => text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length;
}
