using System.Globalization;
using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>Checks and builds what was seen, felt and timed.</summary>
/// <param name="root">The scenario as it was read.</param>
/// <param name="add">Told each problem: where, what is wrong, what is allowed, what to do.</param>
internal sealed class ObservationBuilder(ReadValue root, Action<ReadValue, string, string, string> add)
{
    // Nothing of a tackle box falls or drifts faster (m/s): three times the fastest sinker.
    private const double Fastest = 6.0;

    // Quantile 0.95 of the standard normal distribution: nine in ten lie within it.
    private const double NineInTen = 1.6448536269514722;

    private static readonly string[] Angles = ["line_angle", "came_out"];
    private static readonly string[] Countable = ["bottom", "bottom_count", "first_tick", "turns_to_tick"];
    private static readonly string[] WithoutLure = ["plate_gone", "lure_gone", "float"];

    private static readonly Dictionary<string, ObservationKind> Kinds = new()
    {
        ["bottom"] = ObservationKind.BottomTime,
        ["bottom_count"] = ObservationKind.BottomTime,
        ["first_tick"] = ObservationKind.FirstTick,
        ["turns_to_tick"] = ObservationKind.TurnsToTick,
        ["turns_to_clear"] = ObservationKind.TurnsToClear,
        ["line_angle"] = ObservationKind.LineAngle,
        ["came_out"] = ObservationKind.ExitAngle,
        ["line_out"] = ObservationKind.LineOut,
        ["plate_gone"] = ObservationKind.WhiteVanishes,
        ["lure_gone"] = ObservationKind.LureVanishes,
        ["float"] = ObservationKind.FloatDrift,
        ["pool"] = ObservationKind.PoolFall,
    };

    private IReadOnlyList<ReadValue> Items => root["seen"]?.Items ?? [];

    /// <summary>Checks what hangs on several values.</summary>
    public void Check()
    {
        foreach (ReadValue item in Items) Check(item);
    }

    /// <summary>Builds what was seen here.</summary>
    /// <param name="root">The scenario as it was read.</param>
    /// <param name="tackle">The box.</param>
    /// <param name="ways">The presentations, in the order of the file.</param>
    public static IReadOnlyList<Observation> BuildAll(ReadValue root, TackleBox tackle, IReadOnlyList<Presentation> ways) => [.. root.At("seen").Items.Select(item => Build(item, tackle, ways))];

    private void Check(ReadValue item)
    {
        if (What(item) is not { } what) return;
        ReadValue figure = item.At(what);
        CheckLure(item, what);
        if (item["spot"] is { } spot && root["title"] is { } title && spot.Text.Trim() != title.Text.Trim())
            add(spot, "this was observed at another spot", $"the title of this scenario, {title.Text.Trim()}, or no spot", "move the observation into the scenario of that spot");
        if (item["presentation"] is { } name && root["presentations"] is { Items.Count: > 0 } known)
        {
            string[] names = [.. known.Items.Select(entry => entry["name"]?.Text).OfType<string>()];
            if (!names.Contains(name.Text))
                add(name, "there is no presentation of this name", string.Join(", ", names), Nearest(name.Text, names, "write the name of one of the presentations"));
        }

        if (item["happened"]?.Word?.Meaning is false && !Countable.Contains(what))
            add(item.At("happened"), "only what comes after a time, a count or some turns can have failed to happen so far", $"happened: no with {string.Join(", ", Countable)}", "remove happened");
        bool angle = Angles.Contains(what);
        if (angle && item["side"] is null && figure.Number > 0)
            add(figure, "it is not said to which side", "side: left or side: right beside it", "add side");
        if (!angle && item["side"] is { } side)
            add(side, "there is no angle that could have a side", "with line_angle or came_out", "remove side");
        if (what != "line_angle" && item["after"] is { } after)
            add(after, "only line_angle is seen at a moment", "with line_angle", "remove after");
        CheckFigure(item, what, figure);
    }

    private void CheckLure(ReadValue item, string what)
    {
        ReadValue[] bodies = [.. root["tackle"]?["bodies"]?.Items ?? []], heads = [.. root["tackle"]?["jig_heads"]?.Items ?? []];
        if (WithoutLure.Contains(what))
        {
            if ((item["jig_head"] ?? item["bait"]) is { } lure) add(lure, $"{what} needs no lure", "no jig_head and no bait", "remove it");
            return;
        }

        string[] names = [.. bodies.Where(ScenarioBuilder.IsComplete).Select(ScenarioBuilder.BodyLabel)];
        if (item["bait"] is { } bait && names.Length > 0 && !names.Contains(bait.Text.Trim()))
        {
            add(bait, "this bait is not in your box", string.Join(", ", names), Nearest(bait.Text, names, "write the name of one of the bodies, or add it to them"));
            return;
        }

        if (BodyAt(item, bodies) is not { } body) return;
        bool needs = NeedsHead(body);
        if (item["jig_head"] is not { } head)
        {
            if (needs && heads.Length > 0) add(item, "the weight that was fished is missing", Weights(heads), $"add for example \"jig_head: {heads[0]["weight"]?.Text.Trim()}\"");
            return;
        }

        if (!needs) add(head, "this bait takes no head", "no jig_head with it", "remove jig_head, or name a soft bait");
        else if (heads.Length > 0 && !heads.Any(own => own["weight"] is { } weight && Same(weight.Number, head.Number)))
            add(head, "there is no head of this weight in your box", Weights(heads), "write a weight of your box, or add the head to it");
    }

    private void CheckFigure(ReadValue item, string what, ReadValue figure)
    {
        double? depth = root["spot"]?["depth"]?.Number, cast = item["cast"]?.Number ?? WayAt(item)?["cast"]?["length"]?.Number;
        ReadValue? clarity = root["spot"]?["clarity"];
        bool happened = item["happened"]?.Word?.Meaning is not false;
        switch (what)
        {
            case "bottom" or "bottom_count" or "first_tick" when happened && depth / figure.Number > Fastest:
                add(figure, $"nothing falls {QuantityText.Both(QuantityKind.Length, depth!.Value)} so fast", $"{QuantityText.Plain(QuantityKind.Duration, depth.Value / Fastest)} or more at this depth", "correct the time or the depth of the spot");
                break;
            case "float" when figure["distance"] is { } distance && figure["time"] is { } time && distance.Number / time.Number > Limits.CurrentSpeed.Most:
                add(time, $"that would be a current of {QuantityText.Both(QuantityKind.Speed, distance.Number / time.Number)}", $"up to {QuantityText.Both(QuantityKind.Speed, Limits.CurrentSpeed.Most)}", "correct the distance or the time");
                break;
            case "pool" when figure["depth"] is { } pool && figure["time"] is { } time && pool.Number / time.Number > Fastest:
                add(time, "nothing falls so fast", $"{QuantityText.Plain(QuantityKind.Duration, pool.Number / Fastest)} or more for this depth", "correct the depth or the time");
                break;
            case "plate_gone" or "lure_gone" when depth is { } water && figure.Number > water * (1.0 + 1e-9):
                add(figure, "it would have lain on the bottom", $"up to the depth, {QuantityText.Both(QuantityKind.Length, water)}", "leave it out where the bottom is in sight");
                break;
            case "plate_gone" or "lure_gone" when clarity is { } given && given["secchi"] is null:
                add(figure, "the clarity of the spot is not given by a Secchi depth, so there is nothing to correct", "clarity: {secchi: ..., water: ...}", "give the clarity of the spot by a Secchi depth");
                break;
            case "line_out" when depth is { } water && figure.Number < water:
                add(figure, "a lure on the bottom has more line out than the water is deep", $"more than {QuantityText.Both(QuantityKind.Length, water)}", "correct the line or the depth of the spot");
                break;
            case "turns_to_tick" or "turns_to_clear" when cast is { } far && PerTurn() is { } perTurn && figure.Number * perTurn > 1.6 * far:
                add(figure, "so many turns take in more line than the cast has out", string.Create(CultureInfo.InvariantCulture, $"up to {1.6 * far / perTurn:0} turns with this cast and reel"), "correct the turns, or give the cast");
                break;
            default:
                break;
        }
    }

    private double? PerTurn() => ScenarioBuilder.ReelOf(root["tackle"]?["reel"])?.LinePerTurn;

    private static Observation Build(ReadValue item, TackleBox tackle, IReadOnlyList<Presentation> ways)
    {
        string what = What(item)!;
        ReadValue figure = item.At(what);
        bool lure = !WithoutLure.Contains(what);
        LureBody? body = lure ? tackle.Bodies.FirstOrDefault(b => b.Label == item["bait"]?.Text.Trim()) ?? (item["jig_head"] is null ? tackle.Bodies.FirstOrDefault(b => !b.NeedsHead) : null) ?? tackle.Bodies.FirstOrDefault(b => b.NeedsHead) ?? tackle.Bodies[0] : null;
        JigHead? head = body is null ? null : !body.NeedsHead ? JigHead.None(body) : tackle.JigHeads.First(own => Same(own.Mass, item.NumberAt("jig_head")));
        double value = what is "float" or "pool" ? figure.NumberAt("time") : figure.Number * (item["side"]?.Word?.Meaning is double side ? side : 1.0);
        Presentation way = ways.FirstOrDefault(known => known.Name == item["presentation"]?.Text) ?? ways[0];
        double cast = item["cast"]?.Number ?? way.CastLength;
        return new Observation
        {
            Kind = Kinds[what],
            Value = value,
            Happened = item["happened"]?.Word?.Meaning is not false,
            Counted = what == "bottom_count",
            Error = item["plus_or_minus"] is { } share ? Math.Max(share.Number * Math.Abs(value) / NineInTen, Limits.ObservationError.Least) : null,
            Head = head,
            Body = body,
            Way = !lure || what == "pool" ? null : way with
            {
                CastLength = cast,
                LineLeftAtEnd = Math.Min(way.LineLeftAtEnd, 0.9 * cast),
                Fall = item["fall"]?.Word?.Meaning is FallMode fall ? fall : way.Fall,
                CountDown = what == "line_angle" ? item["after"]?.Number : item["count_down"] is { } count ? (count.Word is null ? count.Number : null) : way.CountDown,
            },
            Length = what switch { "float" => figure.NumberAt("distance"), "pool" => figure.NumberAt("depth"), _ => null },
            TemperatureCelsius = what == "pool" && figure["temperature"] is { } warm ? warm.Number : 20.0,
            Salinity = what == "pool" && figure["salinity"] is { } salt ? salt.Number : 0.0,
            Date = item["date"] is { } day ? DateOnly.FromDayNumber((int)day.Number) : null,
            Note = item["note"]?.Text ?? "",
        };
    }

    private ReadValue? WayAt(ReadValue item) => (root["presentations"]?.Items ?? []).FirstOrDefault(way => item["presentation"] is not { } name || way["name"]?.Text == name.Text);

    private static string? What(ReadValue item) => Kinds.Keys.FirstOrDefault(key => item[key] is { IsWhole: true });

    private static ReadValue? BodyAt(ReadValue item, ReadValue[] bodies)
    {
        if (item["bait"] is { } bait) return bodies.FirstOrDefault(body => ScenarioBuilder.IsComplete(body) && ScenarioBuilder.BodyLabel(body) == bait.Text.Trim());
        ReadValue[] known = [.. bodies.Where(body => body["profile"]?.Word is not null)];
        return (item["jig_head"] is null ? known.FirstOrDefault(body => !NeedsHead(body)) : null) ?? known.FirstOrDefault(NeedsHead) ?? known.FirstOrDefault();
    }

    private static string Nearest(string text, string[] names, string otherwise) => GrammarReader.Nearest(text, names) is { } nearest ? $"write \"{nearest}\"" : otherwise;

    private static bool NeedsHead(ReadValue body) => body["profile"]?.Word?.Meaning is BodyProfile profile && LureKinds.Of(profile).NeedsHead;

    private static bool Same(double a, double b) => Math.Abs(a - b) <= 1e-6 + (0.005 * Math.Abs(b));

    private static string Weights(ReadValue[] heads) => string.Join(", ", heads.Select(head => head["weight"]?.Text.Trim()).OfType<string>());
}
