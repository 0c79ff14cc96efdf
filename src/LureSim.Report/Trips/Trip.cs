using LureSim.Decision;
using LureSim.Decision.Trials;
using LureSim.Decision.Trips;
using LureSim.Model;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Report.Trips;

/// <summary>A spot of a trip on one line.</summary>
/// <param name="Number">Place in the order, from 1.</param>
/// <param name="Title">Name of the spot.</param>
/// <param name="Weight">Jig head.</param>
/// <param name="Body">Body.</param>
/// <param name="Colour">Colour.</param>
/// <param name="CountDown">Count-down in words.</param>
/// <param name="Retrieve">Retrieve in words.</param>
/// <param name="Fallback">Second choice, or empty.</param>
public sealed record TripLine(int Number, string Title, string Weight, string Body, string Colour, string CountDown, string Retrieve, string Fallback);

/// <summary>What to pack: each thing with the numbers of the spots that use it.</summary>
/// <param name="What">Heads, lures, colors or lines.</param>
/// <param name="Things">The things in the order of first use.</param>
public sealed record PackingList(string What, IReadOnlyList<PackedThing> Things);

/// <summary>A thing to pack.</summary>
/// <param name="Name">The thing.</param>
/// <param name="Spots">Numbers of the spots whose first choice uses it.</param>
/// <param name="Spare">Numbers of the spots whose second choice uses it.</param>
public sealed record PackedThing(string Name, IReadOnlyList<int> Spots, IReadOnlyList<int> Spare)
{
    /// <summary>How many to take, spares counted; empty where one is enough.</summary>
    public string Amount { get; init; } = "";
}

/// <summary>Several spots in one: a cover and a page a spot.</summary>
/// <param name="Title">Heading of the cover.</param>
/// <param name="Sheets">The spots in their order; at least one.</param>
/// <param name="Units">Units of everything.</param>
public sealed record Trip(string Title, IReadOnlyList<Sheet> Sheets, UnitSystem Units)
{
    /// <summary>A trip of plans.</summary>
    /// <param name="plans">The plans in the order of the trip; at least one.</param>
    /// <param name="units">Units.</param>
    /// <param name="day">The day by the clock, or null.</param>
    /// <param name="title">Name of the trip; null for one by its spots.</param>
    /// <exception cref="ArgumentException">There is no plan.</exception>
    public static Trip Of(IReadOnlyList<Plan> plans, UnitSystem units, TripDay? day = null, string? title = null)
    {
        ArgumentNullException.ThrowIfNull(plans);
        if (plans.Count == 0)
            throw new ArgumentException("A trip needs a spot.", nameof(plans));
        return new Trip(title ?? $"Trip plan, {plans.Count} spot{(plans.Count == 1 ? "" : "s")}", [.. plans.Select(plan => Sheet.Of(plan, units))], units) { Day = day };
    }

    /// <summary>The day by the clock; null where neither tide nor hours were given.</summary>
    public TripDay? Day { get; init; }

    /// <summary>The day with what its words need; null where there is none.</summary>
    public DayFacts? Facts => Day is null ? null : new DayFacts(Day, [.. Sheets.Select(sheet => sheet.Scenario)], [.. Sheets.Select(sheet => sheet.Choice.First.Rig.Body)], Units);

    /// <summary>The order of the spots, one line each.</summary>
    public IReadOnlyList<TripLine> Lines
    {
        get
        {
            UnitFormat format = new(Units);
            return [.. Sheets.Select((sheet, i) =>
            {
                Candidate first = sheet.Choice.First;
                return new TripLine(
                    i + 1,
                    sheet.Scenario.Title,
                    format.HeadText(first.Rig.Head),
                    format.LureText(first.Rig.Body),
                    sheet.Colour?.Name ?? sheet.Scenario.Tackle.Colours[0],
                    RetrieveWords.CountDown(first.Rig.Presentation, first.Coverage),
                    first.Rig.Presentation.Name,
                    sheet.Choice.Fallback is { } other ? $"{format.HeadText(other.Rig.Head)}, {other.Rig.Presentation.Name}" : "");
            })];
        }
    }

    /// <summary>What to pack for the first and the second choices.</summary>
    public IReadOnlyList<PackingList> Pack
    {
        get
        {
            UnitFormat format = new(Units);
            return
            [
                List("jig heads", c => c.Rig.Head.IsNone ? [] : [format.HeadText(c.Rig.Head)], _ => [], i => Heads(i).Select(format.HeadText), things => PackWords.Heads(things.Sum(thing => thing.Hours * PackWords.LostAnHour(Sheets[thing.Spot].Scenario.Spot.Bottom)))),
                List("lures", c => [format.LureText(c.Rig.Body)], _ => [], null, things => PackWords.Baits(things.Sum(thing => thing.Hours))),
                List(Units.Spell("colors"), _ => [], sheet => sheet.Colour is { } colour ? [colour.Name] : []),
                List("line", _ => [], sheet => [Line(sheet.Scenario.Tackle, format)]),
            ];

            // Heads that the hours of the stop ask for beside the first choice's.
            IEnumerable<JigHead> Heads(int i) => Day?.Stops.Where(stop => stop.Spot == i).SelectMany(stop => stop.Heads).Select(from => from.Head).Where(head => !head.IsNone) ?? [];

            // Hours that a spot is fished: by the clock, or what is usual where there is none.
            double Hours(int i) => Day is null ? PackWords.UsualHours : Day.Stops.Where(stop => stop.Spot == i).Sum(stop => stop.Leave - stop.Arrive);

            PackingList List(string what, Func<Candidate, IEnumerable<string>> ofRig, Func<Sheet, IEnumerable<string>> ofSheet, Func<int, IEnumerable<string>>? more = null, Func<IReadOnlyList<(int Spot, double Hours)>, string>? amount = null)
            {
                var things = new Dictionary<string, (List<int> Spots, List<int> Spare)>();
                for (int i = 0; i < Sheets.Count; i++)
                {
                    foreach (string name in ofRig(Sheets[i].Choice.First).Concat(ofSheet(Sheets[i])).Concat(more?.Invoke(i) ?? []).Distinct())
                        Entry(name).Spots.Add(i + 1);
                    foreach (string name in Sheets[i].Choice.Fallback is { } other ? ofRig(other) : [])
                        Entry(name).Spare.Add(i + 1);
                }

                return new PackingList(what, [.. things.Select(pair => new PackedThing(pair.Key, pair.Value.Spots, [.. pair.Value.Spare.Except(pair.Value.Spots)])
                {
                    Amount = amount?.Invoke([.. pair.Value.Spots.Select(number => (number - 1, Hours(number - 1)))]) ?? "",
                })]);

                (List<int> Spots, List<int> Spare) Entry(string name)
                {
                    if (!things.TryGetValue(name, out (List<int>, List<int>) entry))
                        things[name] = entry = ([], []);
                    return entry;
                }
            }
        }
    }

    private static string Line(TackleBox tackle, UnitFormat format)
    {
        string leader = tackle.Leader is { } l ? $", leader {format.StrengthText(l.Strength)} {TackleWords.LineName(l.Kind)} {format.SizeText(l.Length)} long" : ", no leader";
        return $"{format.StrengthText(tackle.Line.Strength)} {TackleWords.LineName(tackle.Line.Kind)}{leader}";
    }
}
