using LureSim.Decision;
using LureSim.Decision.Holding;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>What stands in the water, its shade, and where fish were taken to hold, in words.</summary>
internal static class StructureWords
{
    // Chance of a hang-up from which the card says so.
    private const double Noticeable = 0.05;

    /// <summary>A structure within a sentence.</summary>
    public static string Name(SpotStructure structure) => structure.Kind switch
    {
        StructureKind.Posts => "posts",
        StructureKind.Overhang => "overhang",
        StructureKind.OysterClump => "oyster clump",
        _ => throw new ArgumentOutOfRangeException(nameof(structure), structure.Kind, "Not a structure."),
    };

    /// <summary>Where it stands across the cast, and what is wanted of it.</summary>
    public static string Side(SpotStructure structure, UnitFormat format)
    {
        string side = Math.Abs(structure.Left) < 0.05 ? "on the line of the cast" : $"{format.HandText(Math.Abs(structure.Left))} to your {(structure.Left > 0 ? "left" : "right")}";
        return $"{side}, {(structure.Role == StructureRole.PassClose ? "pass close by" : "keep off")}";
    }

    /// <summary>All structures of a spot, for a list of what was given; empty for none.</summary>
    public static string All(Spot spot, UnitFormat format) =>
        string.Join("; ", spot.Structures.Select(structure => $"{Name(structure)}, {format.HandBand(structure.From, structure.To)} out, {Side(structure, format)}"));

    /// <summary>The chance of a hang-up in a few words; empty where it is small.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="snag">Chance that a cast hangs up, 0 to 1.</param>
    public static string Brief(Spot spot, double snag)
    {
        if (spot.Structures.Count == 0 || snag < Noticeable) return "";
        string what = Grammar.Join(spot.Structures.Select(Name).Distinct(), "and");
        return $"{what}: about {Math.Max(1, Math.Round(10 * snag)):0} of 10 casts hang up";
    }

    /// <summary>What a plan took for granted of fish, structure and shade; plain sentences.</summary>
    public static IEnumerable<string> Notes(Plan plan, UnitFormat format)
    {
        Spot spot = plan.Scenario.Spot;
        if (HoldingRule.Named(spot.StrikeZone.AssumedBy) is { } rule)
        {
            string spread = rule.Spread > 0 && plan.Uncertainty is { IsExact: false } ? $" The tries move it up and down by {format.HandText(rule.Spread * spot.Depth)}." : "";
            yield return $"You gave no strike zone, so we assumed one: {rule.Says}{(rule.IsPractice ? " (common practice)" : "")}.{spread}";
        }

        if (SpotWords.Assumed(spot, format) is { Length: > 0 } water)
            yield return $"You did not give {water}, so we assumed what is usual.{(plan.Uncertainty is { IsExact: false } ? " The tries vary what is assumed of the water." : "")}";
        if (spot.Structures.Count == 0) yield break;
        if (plan.Choice.Numbers is { Tries: > 1, Snag: var snag, Near: var near })
        {
            yield return $"Over the tries about {UnitFormat.PercentText(snag)} of casts hang up on what stands in the water"
                + (spot.Structures.Any(structure => structure.Role == StructureRole.PassClose) ? $", and the lure is within reach of it for {UnitFormat.SecondsText(near.Median)}." : ".");
        }

        yield return "Posts and docks do not stop the lure in this model: the chance of a hang-up is that of its path in open water.";
        if (StructurePass.MainShade(spot, plan.Choice.First) is { } shade)
            yield return format.Say($"The choice runs in the shade most of the time: its colors are judged with the sun off and {UnitFormat.PercentText(shade.SkyShare)} of the sky on.");
    }
}
