using System.Globalization;
using LureSim.Scenarios;

namespace LureSim.Fuzz;

/// <summary>
/// Draws scenarios from the grammar: every key, every form, every unit, both ends of each range. What the reader refuses, because values do
/// not fit each other, is drawn again until it takes the whole.
/// </summary>
/// <param name="draws">Random choices.</param>
/// <param name="size">How much the scenarios ask for.</param>
/// <param name="wanted">Keys of the first level that must be there, for commands that need them.</param>
internal sealed class GrammarDraw(Draws draws, DrawSize size, params string[] wanted)
{
    private const int MostRepairs = 60;

    // A table that lies beside the program, for the key that names one.
    private static readonly string Reflectance = Path.Combine(AppContext.BaseDirectory, "Scenarios", "reflectance.csv");

    // What anglers meet (SI): most draws are there, so that values fit each other and runs end soon; the others are anywhere in the range.
    private static readonly Dictionary<string, (double Least, double Most)> Usual = new()
    {
        ["depth"] = (0.6, 12),
        ["grass_height"] = (0.05, 0.6),
        ["secchi"] = (0.4, 6),
        ["cast"] = (6, 30),
        ["line_left"] = (2, 5),
        ["rod_tip_height"] = (0.5, 2.5),
        ["strength"] = (30, 130),
        ["line_capacity"] = (100, 300),
        ["weight"] = (0.001, 0.02),
        ["hook"] = (0.0003, 0.003),
        ["temperature"] = (5, 30),
        ["spool_diameter"] = (0.035, 0.06),
        ["gear_ratio"] = (4, 8),
        ["time_limit"] = (10, 120),
        ["count_down"] = (0, 12),
        ["length"] = (0.04, 0.15),
        ["height"] = (0.01, 0.02),
        ["width"] = (0.01, 0.02),
        ["speed"] = (0.1, 1),
        ["handle_turns"] = (0.4, 1.5),
        ["above_bottom"] = (0, 1.5),
        ["exit_sideways"] = (-0.003, 0.003),
        ["exit_above"] = (-0.003, 0.003),
        ["swing"] = (10, 60),
        ["depth_change"] = (-0.3, 0.5),
        ["every"] = (1, 5),
        ["for"] = (0.5, 4),
        ["time"] = (0.4, 2),
        ["samples"] = (0, 8),
        ["distance"] = (0.1, 1),
    };

    // What is soon computed (SI): short casts into shallow water.
    private static readonly Dictionary<string, (double Least, double Most)> Short = new()
    {
        ["depth"] = (0.6, 3),
        ["cast"] = (5, 9),
        ["line_left"] = (2, 3),
        ["rod_tip_height"] = (0.5, 1.5),
        ["time_limit"] = (10, 25),
        ["count_down"] = (0, 3),
        ["swing"] = (10, 20),
        ["samples"] = (0, 2),
    };

    // Probability that a value is an end of its range, or lies anywhere in it.
    private double AtEnd => size == DrawSize.Extreme ? 0.25 : 0.04;

    private double Anywhere => size == DrawSize.Small ? 0.02 : 0.15;

    private bool IsSmall => size != DrawSize.Usual;

    /// <summary>A scenario that the reader takes, as text.</summary>
    /// <param name="tries">How many texts the reader was given for it.</param>
    public string Accepted(out int tries)
    {
        tries = 0;
        while (true)
        {
            ScenarioNode.Map root = Root();
            for (int repair = 0; repair < MostRepairs; repair++)
            {
                string text = root.Yaml();
                ScenarioReading reading = ScenarioReader.ReadText(text, "drawn.yaml");
                tries++;
                if (reading.IsValid)
                    return text;
                foreach (ScenarioProblem problem in reading.Problems.Take(8))
                    Repair(root, problem.Key);
            }
        }
    }

    /// <summary>A scenario along the grammar, whether its values fit each other or not.</summary>
    public ScenarioNode.Map Root() => (ScenarioNode.Map)Draw(ScenarioGrammar.Root, "");

    private ScenarioNode Draw(GrammarValue grammar, string name)
    {
        switch (grammar)
        {
            case MapValue map:
                return DrawMap(map);
            case ListValue when IsSmall && name == "fixed" && draws.Chance(0.8):
                // Nothing to try of the hands.
                var nothing = new ScenarioNode.Sequence();
                nothing.Items.Add(new ScenarioNode.Leaf("all"));
                return nothing;
            case ListValue list:
                var sequence = new ScenarioNode.Sequence();
                int count = list.Minimum;
                while (count < list.Maximum && draws.Chance(IsSmall ? 0.12 : count < 2 ? 0.45 : 0.25))
                    count++;
                for (int i = 0; i < count; i++)
                    sequence.Items.Add(Draw(list.Item, name));
                return sequence;
            case ListOrMapValue either:
                return Draw(draws.Chance(0.6) ? either.List : either.Map, name);
            case PairsOrMapValue either:
                return draws.Chance(0.6) ? Pairs(either.Pairs) : DrawMap(either.Map);
            case ShortOrMapValue { Phrase: { } phrase } when draws.Chance(0.15):
                return new ScenarioNode.Leaf(phrase.Example, quoted: true);
            case ShortOrMapValue either:
                // What the key of the whole is known for holds for its one value too: a cast is its length.
                return draws.Chance(0.6) ? Draw(either.Short, Usual.ContainsKey(name) ? name : either.Key) : DrawMap(either.Map, either.Key, name);
            case ShareOrAmountValue either:
                return Draw(draws.Chance(0.5) ? either.Share : either.Amount, name);
            case QuantityValue { Words.Count: > 0 } quantity when draws.Chance(IsSmall && name == "cast" ? 0.05 : 0.4):
                return new ScenarioNode.Leaf(Word(quantity.Words, quantity.Names));
            case QuantityValue quantity:
                return new ScenarioNode.Leaf(Quantity(quantity, name));
            case NumberValue number:
                return new ScenarioNode.Leaf(InRange(name, number.Minimum, number.Maximum).ToString("0.###", CultureInfo.InvariantCulture));
            case IntegerValue whole:
                return new ScenarioNode.Leaf(Math.Clamp((int)Math.Round(InRange(name, whole.Minimum, whole.Maximum)), whole.Minimum, whole.Maximum).ToString(CultureInfo.InvariantCulture));
            case TextValue when name == "reflectance":
                return new ScenarioNode.Leaf(Reflectance, quoted: true);
            case TextValue text:
                string said = draws.Chance(0.15) ? string.Concat(Enumerable.Repeat(draws.Of(Texts.Names), 1 + draws.Below(20))) : draws.Of(Texts.Names);
                return new ScenarioNode.Leaf(said[..Math.Min(said.Length, text.MaximumLength)], quoted: true);
            case DateValue date:
                return new ScenarioNode.Leaf(date.Minimum.AddDays(draws.Below(date.Maximum.DayNumber - date.Minimum.DayNumber + 1)).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
            case ClockValue:
                return new ScenarioNode.Leaf(string.Create(CultureInfo.InvariantCulture, $"{draws.Below(24):00}:{draws.Below(60):00}"), quoted: true);
            case WordValue word:
                return new ScenarioNode.Leaf(Word(word.Words, word.Names));
            case ColourValue colour:
                return new ScenarioNode.Leaf(draws.Chance(0.2) ? $"#{draws.Below(0x1000000):x6}" : draws.Of(colour.Names), quoted: true);
            default:
                throw new InvalidOperationException($"The grammar has a value that is not drawn: {grammar.GetType().Name}.");
        }
    }

    // Mostly in order and of a size that fits a cast.
    private ScenarioNode.Sequence Pairs(PairsValue pairs)
    {
        var sequence = new ScenarioNode.Sequence();
        int count = Math.Clamp(1 + draws.Below(4), pairs.Minimum, pairs.Maximum);
        double along = 0;
        for (int i = 0; i < count; i++)
        {
            var pair = new ScenarioNode.Map();
            string place = draws.Chance(0.9) ? along.ToString("0.##", CultureInfo.InvariantCulture) + " ft" : Quantity(pairs.First, pairs.FirstName);
            pair.Entries.Add(new(place, new ScenarioNode.Leaf(draws.Chance(0.9) ? draws.Between(2, 20).ToString("0.#", CultureInfo.InvariantCulture) + " ft" : Quantity(pairs.Second, pairs.SecondName))));
            sequence.Items.Add(pair);
            along += draws.Between(2, 25);
        }

        return sequence;
    }

    // The key that the short form stands for is drawn as the whole is.
    private ScenarioNode.Map DrawMap(MapValue map, string shortKey = "", string whole = "")
    {
        var node = new ScenarioNode.Map();
        string? form = map.Forms.Count > 0 ? draws.Of(map.Forms).Key : null;
        Dictionary<string, string> chosen = map.Groups.ToDictionary(group => group.Key, group => draws.Of(group.ToArray()).Name);
        bool isRoot = map == ScenarioGrammar.Root;
        foreach (GrammarKey key in map.Keys)
        {
            bool given = key.OneOf is { } group ? chosen[group] == key.Name
                : key.Form is { } own ? own == form
                : key.Required || key.Name is "count_down" or "jig_heads" || (isRoot && wanted.Contains(key.Name)) || draws.Chance(Given(key, isRoot));
            if (given)
                node.Entries.Add(new(key.Alias is { } alias && draws.Chance(0.3) ? alias : key.Name, Draw(key.Value, key.Name == shortKey && Usual.ContainsKey(whole) ? whole : key.Name)));
        }

        return node;
    }

    // Small scenarios end their casts by the clock, and leave out what is tried many times over unless a command needs it.
    private double Given(GrammarKey key, bool isRoot) => (IsSmall, key.Name) switch
    {
        (true, "time_limit") => 0.9,
        (true, "compare" or "seen" or "include") => 0.03,
        (true, "fixed") => 0.75,
        (true, _) => isRoot ? 0.15 : 0.25,
        _ => isRoot ? 0.25 : 0.35,
    };

    private string Word(IReadOnlyList<GrammarWord> words, EverydayNames names)
    {
        string[] everyday = [.. names.All];
        return everyday.Length > 0 && draws.Chance(0.2) ? draws.Of(everyday) : draws.Of(words).Text;
    }

    private string Quantity(QuantityValue quantity, string name)
    {
        double value = InRange(name, quantity.Minimum, quantity.Maximum);
        for (int decimals = 1 + draws.Below(4); decimals <= 9; decimals++)
        {
            UnitOfMeasure unit = draws.Of(UnitTable.Of(quantity.Kind).Units);
            string text = unit.FromSi(value).ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
            double back = unit.ToSi(double.Parse(text, CultureInfo.InvariantCulture));
            if (back >= quantity.Minimum && back <= quantity.Maximum)
                return $"{text} {unit.Symbol}";
        }

        return $"{value.ToString("R", CultureInfo.InvariantCulture)} {UnitTable.Of(quantity.Kind).Units.First(unit => unit.ToSi(1) == 1 && unit.ToSi(0) == 0).Symbol}";
    }

    private double InRange(string name, double least, double most)
    {
        if (draws.Chance(AtEnd))
            return draws.Chance(0.5) ? least : most;
        if (((IsSmall && Short.TryGetValue(name, out (double Least, double Most) usual)) || Usual.TryGetValue(name, out usual)) && !draws.Chance(Anywhere) && Math.Max(usual.Least, least) < Math.Min(usual.Most, most))
            return draws.Between(Math.Max(usual.Least, least), Math.Min(usual.Most, most));
        return draws.Between(least, most);
    }

    // Draws again, adds or leaves out what a problem is about; the grammar knows what may stand there.
    private void Repair(ScenarioNode.Map root, string path)
    {
        ScenarioNode node = root;
        GrammarValue grammar = ScenarioGrammar.Root;
        (Action<ScenarioNode?> Put, GrammarValue Grammar, string Name, bool MayGo)? place = null;
        foreach (string part in path.Replace("[", ".[", StringComparison.Ordinal).Split('.', StringSplitOptions.RemoveEmptyEntries))
        {
            if (part[0] == '[' && grammar is ListValue list && node is ScenarioNode.Sequence items && int.TryParse(part.Trim('[', ']'), CultureInfo.InvariantCulture, out int index) && index < items.Items.Count)
            {
                place = (value =>
                {
                    if (value is null)
                        items.Items.RemoveAt(index);
                    else
                        items.Items[index] = value;
                }, list.Item, place?.Name ?? "", items.Items.Count > Math.Max(1, list.Minimum));
                (node, grammar) = (items.Items[index], list.Item);
                continue;
            }

            MapValue? map = grammar as MapValue ?? (grammar as ShortOrMapValue)?.Map;
            GrammarKey? key = map?.Keys.FirstOrDefault(known => known.Name == part || known.Alias == part);
            if (key is null || node is not ScenarioNode.Map owner)
                break;
            string written = owner[key.Name] is null && key.Alias is { } alias && owner[alias] is not null ? alias : key.Name;
            place = (value => owner[written] = value, key.Value, key.Name, !key.Required && key.OneOf is null && key.Form is null);
            if (owner[written] is not { } next)
                break;
            (node, grammar) = (next, key.Value);
        }

        if (place is { } found)
            found.Put(found.MayGo && draws.Chance(0.5) ? null : Draw(found.Grammar, found.Name));
    }
}
