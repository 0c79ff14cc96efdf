using System.Collections.Concurrent;
using LureSim.Decision.Colours;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Sight;

namespace LureSim.Tests.Report;

/// <summary>Lessons of the hard cases, computed once.</summary>
internal static class Lessons
{
    private static readonly ConcurrentDictionary<(string, UnitSystem), Lesson> Done = new();

    public static Lesson Of(Scenario scenario, string name, UnitSystem units = UnitSystem.Us) =>
        Done.GetOrAdd((name, units), key => Lesson.Compute(
            scenario with
            {
                // Only fish with an eye have a lesson.
                Spot = scenario.Spot with { TargetFish = FishEyes.TryFind(scenario.Spot.TargetFish, out _) ? scenario.Spot.TargetFish : "red drum" },
                Tackle = scenario.Tackle with { Colours = Colours(name) },
            },
            new UnitFormat(key.Item2).LengthScale));

    // One colour, the usual handful, and as many as a box may have.
    private static IReadOnlyList<string> Colours(string name) => name switch
    {
        "one" => ["red"],
        "twelve" or "flat" => [.. LureColours.All.Select(c => c.Name)],
        _ => ["white", "chartreuse", "red", "dark purple", "black", "natural silver side"],
    };
}
