using LureSim.Decision;
using LureSim.Decision.Colours;
using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Model;
using LureSim.Report.Units;
using LureSim.Sight;
using LureSim.Swimming;

namespace LureSim.Report.Words;

/// <summary>The rows of a card in words.</summary>
internal static class CardWords
{
    /// <summary>Why a color was taken where common practice alone speaks for it.</summary>
    public const string UsualChoice = "usual choice here";

    /// <summary>Depth, bottom, current, fish, and what was assumed of the water.</summary>
    public static string Spot(Scenario scenario, UnitFormat format, bool assumedWater = true)
    {
        Spot spot = scenario.Spot;
        bool slopes = spot.Profile is { IsEven: false };
        string grass = slopes ? SpotWords.GrassText(spot, format) is { Length: > 0 } beds ? $", {beds}" : "" : spot.GrassHeight > 0 ? $", grass {format.HandText(spot.GrassHeight)} high" : "";
        string flow = spot.CurrentSpeed > 0 ? $"{Stage(spot.TideStage)}current {format.FlowText(spot.CurrentSpeed)} {SpotWords.Direction(spot.CurrentDirection, format.System)}" : "no current";
        return $"{SpotWords.Depth(spot, format)}, {SpotWords.Bottoms(spot)}{grass}, {flow}, {FishWords.Everyday(spot.TargetFish)}{Assumed(spot, format)}{(assumedWater ? Water(spot, format) : "")}";
    }

    // Where they hold, if nobody said.
    private static string Assumed(Spot spot, UnitFormat format) => spot.StrikeZone.AssumedBy is null ? ""
        : $", assumed to hold {(spot.StrikeZone.MovesWithBottom ? $"{format.HandBand(spot.Depth - spot.StrikeZone.Bottom, spot.Depth - spot.StrikeZone.Top)} above bottom" : $"{format.HandBand(spot.StrikeZone.Top, spot.StrikeZone.Bottom)} deep")}";

    // How warm the water is, if nobody said.
    private static string Water(Spot spot, UnitFormat format) =>
        spot.Assumed.HasFlag(SpotAssumptions.Temperature) ? $", water assumed {format.TemperatureText(spot.TemperatureCelsius)}" : "";

    private static string Stage(TideStage? stage) => stage switch
    {
        TideStage.Outgoing => "outgoing ",
        TideStage.Incoming => "incoming ",
        TideStage.Slack or null => "",
        _ => throw new ArgumentOutOfRangeException(nameof(stage), stage, "Not a stage of the tide."),
    };

    /// <summary>Weight, knot, leader.</summary>
    public static string TieOn(Rig rig, TackleBox tackle, UnitFormat format)
    {
        string leader = tackle.Leader is { } l ? $", {format.StrengthText(l.Strength)} {TackleWords.LineName(l.Kind)} leader" : "";
        return $"{Head(rig, format)}{TackleWords.KnotName(tackle.Rigging.Knot)}{leader}";
    }

    /// <summary>Weight of a rig as it is asked for in a shop.</summary>
    public static string Weight(JigHead head, UnitFormat format) => head.IsNone ? ""
        : format.HeadText(head) + (head.Mass > 0 && head.Place == WeightPlace.Nose ? " head" : head.Mass > 0 ? " weighted hook" : " hook");

    /// <summary>The retrieve in hands with its name before it, where it has several moves and the name of a ready-made one.</summary>
    public static string Named(Presentation p, string hands) =>
        p.Style is not null && p.Name == p.Style && p.Moves.Count > 1 ? $"{Grammar.Capital(p.Name)}: {char.ToLowerInvariant(hands[0])}{hands[1..]}" : hands;

    /// <summary>Whether it tracks straight, or what to fix first.</summary>
    public static string Rig(RigFocus check, UnitFormat format)
    {
        if (check.Fixes.Count > 0)
        {
            // What to do; by how much stands in the details.
            string fix = Grammar.Capital(SwimmingWords.Fix(check.Fixes[0], format.System));
            int end = fix.AsSpan().IndexOfAny(':', '.', ',');
            return end > 0 ? fix[..end] : fix;
        }

        ActionReport report = check.Action.Retrieve.Report;
        return report.Verdict switch
        {
            ActionVerdict.Swims => $"OK, swims, {UnitFormat.Counted(report.Frequency, "beat")} a second",
            ActionVerdict.Still or ActionVerdict.Glides => report.YawAmplitude > ActionReport.Noticeable
                ? "OK, tracks straight with a slight wag"
                : "OK, no action on a straight pull: work the rod",
            ActionVerdict.Muted => "dead: almost no action",
            ActionVerdict.Unknown => "could not be computed",
            _ => (report.IsFault ? "watch it: " : "OK, ") + SwimmingWords.Word(report.Verdict),
        };
    }

    /// <summary>What to change to, and at what current or depth.</summary>
    public static string Backup(CardFacts facts, UnitFormat format, bool flip)
    {
        Candidate first = facts.First;
        string rig = facts.Backup is { } other
            ? string.Join(", ", ((string?[])
            [
                other.Rig.Head.IsNone ? null : format.HeadText(other.Rig.Head),
                other.Rig.Body == first.Rig.Body ? null : format.LureText(other.Rig.Body),
                other.Rig.Presentation == first.Rig.Presentation ? null : other.Rig.Presentation.Name,
            ]).Where(part => part is not null))
            : "";
        string same = rig.Length > 0 && facts.Backup!.Rig.Presentation == first.Rig.Presentation ? ", worked the same" : "";
        string change = flip && facts.Choice is { } choice && ChoiceWords.Flips(choice, facts.Scenario.Tackle.Reel, format) is [var nearest, ..] ? nearest : "";
        return string.Join("; ", new[] { rig + same, change }.Where(part => part.Length > 0));
    }

    /// <summary>Of how many tries it came out best or as good, and what to check first; empty where all is known.</summary>
    public static string HowSure(CardFacts facts, UnitFormat format, bool look)
    {
        string tries = facts.Choice is { Numbers: not null } choice ? ChoiceWords.HowSure(choice) : facts.Uncertainty is { } study ? UncertaintyWords.BestIn(study) : "";
        if (facts.Observed is { } seen && facts.Choice is { Numbers.Tries: > 1 } && tries.Length > 0) tries += seen.Moved ? $"; was {(seen.Before.First.Rig.Head.IsNone || seen.Before.First.Rig.Body.Label != facts.First.Rig.Body.Label ? ChoiceWords.Lure(seen.Before.First.Rig, format) : format.HeadText(seen.Before.First.Rig.Head))}" : $", {seen.BestBefore} before what you saw";
        if (look && tries.Length > 0 && facts.LookNext.Count > 0) return $"{tries}; {ObservationWords.First(facts.LookNext[0], format)}";
        return look && tries.Length > 0 && facts.Uncertainty is { IsExact: false } all && UncertaintyWords.CheckFirst(all) is { Length: > 0 } check ? $"{tries}; {check}" : tries;
    }

    /// <summary>What to watch out for in a few words each, what the run found first.</summary>
    public static IEnumerable<string> Watch(Scenario scenario, JigHead head, double snag, IReadOnlyList<ChoiceWarning> warnings)
    {
        if (StructureWords.Brief(scenario.Spot, snag) is { Length: > 0 } structure)
            yield return structure;
        if (warnings.Any(warning => warning.Kind == ChoiceWarningKind.TouchesShell))
            yield return "shell: check the leader often";
        if (warnings.Any(warning => warning.Kind == ChoiceWarningKind.InGrass))
            yield return "grass: rig it weedless";
        if (warnings.Any(warning => warning.Kind == ChoiceWarningKind.SweptAcross))
            yield return "the bow in the line hides bites";
        foreach (CautionKind kind in Cautions.Of(scenario, head).Where(kind => kind <= CautionKind.Lightning))
            yield return Cautions.Brief(kind);
    }

    /// <summary>The card on one line: weight, lure, color, sink, retrieve.</summary>
    public static string Line(CardFacts facts, UnitFormat format)
    {
        Rig rig = facts.First.Rig;
        string weight = rig.Head.IsNone ? "" : format.HeadText(rig.Head) + ", ";
        string color = facts.Colour is { } choice ? $", {choice.Name}" : "";
        return $"{weight}{format.LureText(rig.Body)}{color}; {Sink(rig.Presentation, facts.First.Coverage)}; {rig.Presentation.Name}";
    }

    /// <summary>Why this color in a few words.</summary>
    public static string Why(ColourAdvice advice) => advice.Reason switch
    {
        ColourReason.OnlyColour => "the one in your box",
        ColourReason.SeenFarthest => advice.Choice.Seen.Mode is SightMode.Silhouettes or SightMode.GoneDark ? "best dark silhouette" : "shows farthest",
        ColourReason.Likeness => "looks like the bait",
        ColourReason.CommonPractice => UsualChoice,
        ColourReason.NoRealDifference => "as good as any",
        ColourReason.SightDecidesNothing => "dark silhouette; add sound or scent",
        ColourReason.Given => "your choice",
        _ => throw new ArgumentOutOfRangeException(nameof(advice), advice.Reason, "Not a reason."),
    };

    private static string Head(Rig rig, UnitFormat format) => Weight(rig.Head, format) is { Length: > 0 } weight ? weight + ", " : "";

    /// <summary>Bail and count in a few words.</summary>
    public static string Sink(Presentation p, Coverage coverage)
    {
        string bail = p.Fall == FallMode.SlackLine ? "bail open" : "bail closed";
        return p.CountDown switch
        {
            null => coverage.TimeToBottom is { } seconds ? $"{bail}, to bottom, about {RetrieveWords.Count(seconds)}" : $"{bail}, let it sink; it never reaches bottom",
            < 0.5 => "no count: start as it hits the water",
            { } count => $"{bail}, {RetrieveWords.Count(count)}",
        };
    }
}
