using System.Text.Json.Serialization;
using LureSim.Decision;
using LureSim.Decision.Holding;
using LureSim.Decision.Trials;
using LureSim.Model;

namespace LureSim.Cli.Output;

/// <summary>What a plan found along the cast, in JSON; null over even water without structure whose zone was given.</summary>
internal sealed record SpotJson(IReadOnlyList<SpotJson.Stretch> Stretches, IReadOnlyList<SpotJson.Pass> Structures, SpotJson.Zone? AssumedZone, [property: JsonPropertyName("snag_chance_tries")] double? SnagChance)
{
    public static SpotJson? Of(Plan plan)
    {
        Spot spot = plan.Scenario.Spot;
        IReadOnlyList<StretchCoverage> stretches = StretchCoverage.Of(spot, plan.Choice.First);
        IReadOnlyList<StructurePass> passes = StructurePass.Of(spot, plan.Choice.First.Rig, plan.Choice.First.Track);
        HoldingRule? rule = HoldingRule.Named(spot.StrikeZone.AssumedBy);
        if (stretches.Count == 0 && passes.Count == 0 && rule is null) return null;
        return new SpotJson(
            [.. stretches.Select(s => new Stretch(s.From, s.To, s.NearDepth, s.FarDepth, s.Bottom, s.Grass, s.Name, s.Share, s.ZoneShare, s.BottomShare, s.GrassShare))],
            [.. passes.Select(p => new Pass(p.Structure.Kind, p.Structure.From, p.Structure.To, p.Structure.Left, p.Structure.Role, p.ReachTime, p.Nearest, p.ShadeShare, p.SnagChance))],
            rule is null ? null : new Zone(rule.Id, rule.Source, rule.Says, spot.StrikeZone.Top, spot.StrikeZone.Bottom, spot.StrikeZone.MovesWithBottom, rule.Spread),
            passes.Count > 0 ? plan.Choice.Numbers?.Snag : null);
    }

    internal sealed record Stretch(
        [property: JsonPropertyName("from_m")] double From,
        [property: JsonPropertyName("to_m")] double To,
        [property: JsonPropertyName("near_depth_m")] double NearDepth,
        [property: JsonPropertyName("far_depth_m")] double FarDepth,
        BottomKind Bottom,
        [property: JsonPropertyName("grass_m")] double Grass,
        string? Name,
        double Share,
        double ZoneShare,
        double BottomShare,
        double GrassShare);

    internal sealed record Pass(
        StructureKind Kind,
        [property: JsonPropertyName("from_m")] double From,
        [property: JsonPropertyName("to_m")] double To,
        [property: JsonPropertyName("left_m")] double Left,
        StructureRole Role,
        [property: JsonPropertyName("within_reach_s")] double WithinReach,
        [property: JsonPropertyName("nearest_m")] double Nearest,
        double ShadeShare,
        double SnagChance);

    internal sealed record Zone(
        string Rule,
        string Source,
        string Says,
        [property: JsonPropertyName("top_m")] double Top,
        [property: JsonPropertyName("bottom_m")] double Bottom,
        bool MovesWithBottom,
        double Spread);
}
