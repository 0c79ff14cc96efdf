using LureSim.Model;

namespace LureSim.Scenarios;

/// <content>Forage and the two rigs to compare.</content>
internal sealed partial class ScenarioBuilder
{
    private void CheckCompare(ReadValue root)
    {
        if (root["compare"] is not { } list)
            return;
        ReadValue? tackle = root["tackle"];
        CheckRepeated([.. list.Items.Where(item => item["name"] is not null)], item => item.At("name").Text, "name", item => item.At("name"));
        double? tip = TipHeight(tackle);
        foreach (ReadValue item in list.Items)
        {
            CheckDiameter(item["line"]);
            CheckDiameter(item["leader"]);
            if (item["body"] is { } body)
                CheckSides(body);
            RiggingReader.CheckRigging(item["rigging"], [.. new[] { item["body"] ?? (tackle?["bodies"]?.Items is { Count: > 0 } bodies ? bodies[0] : null) }.OfType<ReadValue>()], Add);
            CheckCastLoads(item, tackle);
            CheckHandle(item["retrieve"]?["handle_turns"], tackle?["reel"]);
            ReadValue? way = Presentation(item, root);
            if (way is null && item["presentation"] is { } name && root["presentations"] is { Items.Count: > 0 } known)
            {
                string[] names = [.. known.Items.Where(entry => entry["name"] is not null).Select(entry => entry.At("name").Text)];
                string? nearest = GrammarReader.Nearest(name.Text, names);
                Add(name, "there is no presentation of this name", string.Join(", ", names), nearest is null ? "write the name of one of the presentations" : $"write \"{nearest}\"");
            }

            ReadValue? cast = item["cast"] ?? way?["cast"]?["length"];
            if (cast is null || double.IsNaN(cast.Number) || tip is not { } height)
                continue;
            double left = Number(way?["line_left"]) ?? LineLeft(height);
            double leader = Number((item["leader"] ?? tackle?["leader"])?["length"]) ?? 0.0;
            if (item["cast"] is not null && cast.Number <= left)
                Add(cast, $"the cast is no longer than the line left at the end, {Length(left)}", $"more than {Length(left)}", "cast farther");
            else if ((item["cast"] ?? item["leader"]) is { } place && cast.Number <= leader)
                Add(place, "the cast is no longer than the leader", $"a cast of more than {Length(leader)}", "cast farther or shorten the leader");
        }
    }

    private void CheckSides(ReadValue body)
    {
        foreach (string side in (string[])["height", "width", "thickness"])
        {
            if (Number(body["length"]) is { } length && body[side] is { } value && value.Number > length)
                Add(value, $"the {side} is more than the length", $"at most the length, {Length(length)}", $"correct the {side} or the length");
        }
    }

    private static ReadValue? Presentation(ReadValue rig, ReadValue root)
    {
        IReadOnlyList<ReadValue> all = root["presentations"]?.Items ?? [];
        return rig["presentation"] is { } name ? all.FirstOrDefault(item => item["name"]?.Text == name.Text) : all.Count > 0 ? all[0] : null;
    }

    private static ForageSighting BuildForage(ReadValue item) => new(
        Meaning(item["kind"], ForageKind.SmallBaitFish),
        Number(item["length"]),
        Meaning(item["seen"], ForageSeen.Present),
        item["colour"]?.Text);

    private ComparedRig BuildCompared(ReadValue item, ReadValue root)
    {
        TackleBox tackle = BuildTackle(root.At("tackle"));
        LureBody body = item["body"] is { } own ? BuildBody(own) : tackle.Bodies[0];
        Presentation way = BuildPresentation(Presentation(item, root)!, root.At("tackle"), tackle);
        ReadValue? line = item["line"], leader = item["leader"], countDown = item["count_down"], retrieve = item["retrieve"];
        return new ComparedRig(
            item.At("name").Text,
            BuildHead(item.At("jig_head"), body.Length),
            body,
            item["colour"]?.Text ?? tackle.Colours[0],
            line is null ? tackle.Line : new LineSpecification(Meaning(line["kind"], LineKind.Braid), line.NumberAt("strength"), Diameter(line)),
            leader is null
                ? tackle.Leader
                : new LeaderSpecification(Meaning(leader["kind"], LineKind.Fluorocarbon), leader.NumberAt("strength"), Diameter(leader), leader.NumberAt("length")),
            way with
            {
                CastLength = Number(item["cast"]) ?? way.CastLength,
                CastWith = item["cast"] is null ? way.CastWith : null,
                FullCast = item["cast"] is null && way.FullCast,
                CountDown = countDown is null ? way.CountDown : Seconds(countDown),
                RetrieveSpeed = retrieve is null ? way.RetrieveSpeed : retrieve["speed"]?.Number ?? (retrieve.NumberAt("handle_turns") * tackle.Reel.LinePerTurn),
            })
        {
            Rigging = item["rigging"] is { } rigging ? RiggingReader.Build(rigging, body) : tackle.Rigging,
        };
    }
}
