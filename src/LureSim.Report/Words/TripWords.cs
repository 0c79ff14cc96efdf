using LureSim.Decision.Trips;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>A day by the clock with what its words need.</summary>
/// <param name="Day">The day.</param>
/// <param name="Scenarios">Its spots, in their order.</param>
/// <param name="Bodies">The bait of the choice at each.</param>
/// <param name="Units">Units.</param>
public sealed record DayFacts(TripDay Day, IReadOnlyList<Scenario> Scenarios, IReadOnlyList<LureBody> Bodies, UnitSystem Units);

/// <summary>A day by the clock in words.</summary>
public static class TripWords
{
    // A loss below this is none (h).
    private const double Nothing = 2.0 / 60;

    /// <summary>Time fished and on the way, one line.</summary>
    /// <param name="day">The day.</param>
    /// <exception cref="ArgumentNullException"><paramref name="day"/> is null.</exception>
    public static string Total(TripDay day)
    {
        ArgumentNullException.ThrowIfNull(day);
        double fished = day.Stops.Sum(stop => stop.Leave - stop.Arrive), way = day.Stops.Sum(stop => stop.Travel) + (day.Clock.Back && day.Stops.Count > 0 ? day.Clock.Travel[day.Stops[^1].Spot + 1, 0] : 0);
        return day.Stops.Count == 0 ? "no spot is worth a stop in these hours" : $"{TideWords.Clock(day.Clock.Start)} to {TideWords.Clock(day.Clock.End)}: {Time(fished)} fishing, {Time(way)} on the way";
    }

    /// <summary>The rig of a stop, and where the weight changes: "3/8 oz, from 08:30 1/2 oz".</summary>
    /// <param name="facts">The day.</param>
    /// <param name="stop">The stop.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Heads(DayFacts facts, TripStop stop)
    {
        ArgumentNullException.ThrowIfNull(facts);
        ArgumentNullException.ThrowIfNull(stop);
        var format = new UnitFormat(facts.Units);
        LureBody body = facts.Bodies[stop.Spot];
        return string.Join(", ", stop.Heads.Select((from, i) => $"{(i > 0 ? $"from {TideWords.Clock(from.Hours)} " : "")}{(from.Head.IsNone ? format.LureText(body) : format.HeadText(from.Head))}"));
    }

    /// <summary>What swapping and leaving out would cost, and what the day takes for granted; plain sentences.</summary>
    /// <param name="facts">The day.</param>
    /// <exception cref="ArgumentNullException"><paramref name="facts"/> is null.</exception>
    public static IReadOnlyList<string> Remarks(DayFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        TripDay day = facts.Day;
        List<string> said = [];
        foreach (TripSwap swap in day.Swaps)
        {
            said.Add(swap.Cost is not { } cost ? $"{Name(swap.First)} and {Name(swap.Second)} can't be swapped: the other order doesn't fit into the day."
                : cost < Nothing ? $"Swapping {Name(swap.First)} and {Name(swap.Second)} makes no real difference."
                : $"Swapping {Name(swap.First)} and {Name(swap.Second)} costs {Time(cost)} of good fishing.");
        }

        foreach (TripSkip skip in day.Skips.Where(_ => day.Skips.Count > 1))
            said.Add(skip.Cost < Nothing ? $"Leaving out {Name(skip.Spot)} loses next to nothing." : $"Leaving out {Name(skip.Spot)} loses {Time(skip.Cost)} of good fishing.");
        foreach (int spot in day.LeftOut) said.Add($"{Name(spot)} has no stop: the other spots are better in these hours.");
        foreach (int spot in Enumerable.Range(0, facts.Scenarios.Count).Where(spot => facts.Scenarios[spot].Tide.Count == 0)) said.Add($"{Name(spot)} has no tide: it counts the same at every hour.");
        said.Add("An hour of good fishing is an hour with the best rig in the strike zone all the time; fish, crowds and weather are not in it. Stays of 30 minutes to 2 hours and 20 minutes between spots are assumed where you gave none. Tides here are no navigation aid.");
        return said;

        string Name(int spot) => Place(facts, spot);
    }

    /// <summary>Name of a spot without what stands after its first comma.</summary>
    /// <param name="facts">The day.</param>
    /// <param name="spot">The spot, from 0.</param>
    /// <exception cref="ArgumentNullException"><paramref name="facts"/> is null.</exception>
    public static string Place(DayFacts facts, int spot)
    {
        ArgumentNullException.ThrowIfNull(facts);
        string title = facts.Scenarios[spot].Title;
        string place = title.Split(',')[0].Trim();
        return place.Length == 0 || facts.Scenarios.Count(scenario => scenario.Title.Split(',')[0].Trim() == place) > 1 ? title : place;
    }

    /// <summary>A length of time: "1 h 15 min".</summary>
    /// <param name="hours">Hours.</param>
    public static string Time(double hours)
    {
        int minutes = (int)Math.Round(hours * 60);
        return minutes < 60 ? $"{UnitFormat.Number(minutes, 0)} min" : minutes % 60 == 0 ? $"{UnitFormat.Number(minutes / 60, 0)} h" : $"{UnitFormat.Number(minutes / 60, 0)} h {UnitFormat.Number(minutes % 60, 0)} min";
    }
}
