using LureSim.Casting;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Tackle;

namespace LureSim.Scenarios;

/// <content>Rod, reel, place to stand and cast in the words of the trade.</content>
internal sealed partial class ScenarioBuilder
{
    // Shares of a hand's strength that no cast takes: with the angler's own rod, and where the rod is not known.
    private const double MostEffort = 1.5;
    private const double MostEffortOfAnyRod = 2;

    /// <summary>Height of the rod tip (m), given or usual for the place to stand; null for neither.</summary>
    internal static double? TipHeight(ReadValue? tackle) => Number(tackle?["rod_tip_height"]) ?? (tackle?["stand"]?.Word?.Meaning as StandHeight)?.TipHeight;

    /// <summary>The reel by its figures or its size; null where either figure is missing.</summary>
    internal static Reel? ReelOf(ReadValue? reel)
    {
        Reel? usual = (reel?["size"]?.Word?.Meaning as ReelSize)?.Reel;
        return (Number(reel?["gear_ratio"]) ?? usual?.GearRatio) is { } ratio && (Number(reel?["spool_diameter"]) ?? usual?.SpoolDiameter) is { } spool
            ? new Reel(ratio, spool, Number(reel?["line_capacity"]) ?? usual?.LineCapacity ?? Reel.CommonCapacity)
            : null;
    }

    private static Rod? RodOf(ReadValue? rod) => Number(rod?["length"]) is not { } length ? null
        : rod!["lures"] is { Items: [{ } light, { } heavy] } ? new Rod(length, light.Number, heavy.Number)
        : TacklePresets.Rod(length, Meaning(rod["power"], RodPower.Medium));

    private void CheckGear(ReadValue tackle)
    {
        if (tackle["reel"] is { } reel && reel["size"] is null && !problems.HasUnder(YamlTreeBuilder.Join(reel.Path, "size")))
        {
            foreach (string key in (string[])["gear_ratio", "spool_diameter"])
            {
                GrammarValue value = ScenarioGrammar.ReelKeys.First(known => known.Name == key).Value;
                if (reel[key] is null && !problems.HasUnder(YamlTreeBuilder.Join(reel.Path, key)))
                    problems.Add(reel.Line, reel.Column, YamlTreeBuilder.Join(reel.Path, key), "", "the key is missing", GrammarReader.Allowed(value), $"add \"{key}: {GrammarReader.Example(value)}\", or the size that is printed on the reel, such as \"reel: 3000\"");
            }
        }

        if (tackle["rod"]?["lures"] is { Items: [{ } light, { } heavy] } && light.Number >= heavy.Number)
            Add(light, "the lightest lure is no lighter than the heaviest", "the smaller number first", "give the lighter lure first");
    }

    // A length that is known with a lure must be one that some hand can throw.
    private void CheckThrow(ReadValue? cast, ReadValue? tackle)
    {
        if (cast?["length"] is not { } length || tackle is not { IsWhole: true } || problems.HasUnder(tackle.Path))
            return;
        if (length.Word is not null && cast["with"] is { } useless)
        {
            Add(useless, "a full cast is as long as each lure flies", "a length with a lure, or a full cast alone", "remove \"with\", or write the length of the cast");
            return;
        }

        if (length.Word is not null && tackle["rod"] is null)
        {
            Add(length, "a full cast needs a rod", "a length, or a rod in the tackle", "add \"rod: 7 ft medium\" to the tackle, or write the length of the cast");
            return;
        }

        if (cast["with"] is not { } with || double.IsNaN(length.Number))
            return;
        TackleBox box = BuildTackle(tackle);
        CastAnchor known = AnchorOf(with, box);
        double most = box.Rod is null ? MostEffortOfAnyRod : MostEffort;
        if (CastReach.Effort(box, known, length.Number) <= most)
            return;
        double low = Limits.CastLength.Least, high = length.Number;
        for (int turn = 0; turn < 30; turn++)
        {
            double middle = (low + high) / 2;
            if (CastReach.Effort(box, known, middle) <= most) low = middle;
            else high = middle;
        }

        Add(length, $"no {(box.Rod is null ? "rod" : "such rod")} throws {with.Text.Trim()} so far on this line", $"up to {Length(low)} with this lure", "correct the length or the weight");
    }

    private static CastAnchor AnchorOf(ReadValue with, TackleBox box) =>
        box.JigHeads.Count > 0 && box.Bodies.FirstOrDefault(body => body.NeedsHead) is { } soft
            ? new CastAnchor(box.JigHeads.FirstOrDefault(head => Math.Abs(head.Mass - with.Number) <= Rounding * head.Mass) ?? new JigHead(with.Number, HeadMetal.Lead, HookWire.CommonMass(soft.Length), with.Text.Trim()), soft)
            : new CastAnchor(JigHead.None(box.Bodies[0]), box.Bodies[0]) { Mass = with.Number };

    private static (double Length, CastAnchor? With, bool Full) CastOf(ReadValue cast, TackleBox box, double lineLeft)
    {
        if (cast.At("length") is { Word: null } length)
            return (length.Number, cast["with"] is { } with ? AnchorOf(with, box) : null, false);
        JigHead[] heads = [.. box.JigHeads.OrderBy(head => head.Mass)];
        LureBody? soft = box.Bodies.FirstOrDefault(body => body.NeedsHead);
        double easy = heads.Length > 0 && soft is not null ? CastReach.Easy(box, heads[heads.Length / 2], soft) : CastReach.Easy(box, JigHead.None(box.Bodies[0]), box.Bodies[0]);
        return (Math.Min(Limits.CastLength.Most, Math.Max(easy, Math.Max(lineLeft, box.Leader?.Length ?? 0) + LineLeftAboveTip)), null, true);
    }
}
