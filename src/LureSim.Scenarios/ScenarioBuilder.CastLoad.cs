using LureSim.Lures;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <content>Whether line and leader can cast each lure.</content>
internal sealed partial class ScenarioBuilder
{
    private void CheckCastLoads(ReadValue tackle)
    {
        if (Weakest(tackle["line"], tackle["leader"]) is not { } weakest)
            return;
        (ReadValue Place, LureBody Body)[] bodies = [.. (tackle["bodies"]?.Items ?? []).Where(body => body.IsWhole).Select(body => (body, BuildBody(body)))];

        // The heaviest body that can go on a head decides.
        double heaviest = bodies.Where(item => item.Body.NeedsHead).Select(item => item.Body.Kind.Mass(item.Body)).DefaultIfEmpty(0.0).Max();
        foreach (ReadValue head in tackle["jig_heads"]?.Items ?? [])
            CheckHeadLoad(head, heaviest, weakest);
        foreach ((ReadValue place, LureBody body) in bodies)
        {
            if (!body.NeedsHead)
                CheckHardLoad(place, body, weakest);
        }
    }

    private void CheckCastLoads(ReadValue rig, ReadValue? tackle)
    {
        if (Weakest(rig["line"] ?? tackle?["line"], rig["leader"] ?? tackle?["leader"]) is not { } weakest)
            return;
        ReadValue? place = rig["body"] ?? (tackle?["bodies"]?.Items is { Count: > 0 } bodies ? bodies[0] : null);
        LureBody? body = place is { IsWhole: true } ? BuildBody(place) : null;
        if (body is not null && !body.NeedsHead)
            CheckHardLoad(place!, body, weakest);
        else if (rig["jig_head"] is { } head)
            CheckHeadLoad(head, body is null ? 0.0 : body.Kind.Mass(body), weakest);
    }

    private void CheckHeadLoad(ReadValue head, double body, (double Strength, string Name) weakest)
    {
        if (head["weight"] is not { } weight)
            return;
        double mass = weight.Number + (Number(head["hook"]) ?? 0.0) + body, most = CastLoad.MostMass(weakest.Strength);
        if (mass > most)
            AddTooHeavy(weight, $"the lure with its body weighs {QuantityText.Both(QuantityKind.Mass, mass)}", most - body, "of head and hook ", "head", weakest);
    }

    private void CheckHardLoad(ReadValue place, LureBody body, (double Strength, string Name) weakest)
    {
        double mass = body.Kind.Mass(body), most = CastLoad.MostMass(weakest.Strength);
        if (mass > most)
            AddTooHeavy(place.At("length"), $"the {place.At("profile").Word!.Text} weighs {QuantityText.Both(QuantityKind.Mass, mass)}", most, "", "lure", weakest);
    }

    private void AddTooHeavy(ReadValue place, string weighs, double allowed, string part, string lighter, (double Strength, string Name) weakest) => Add(
        place,
        $"{weighs}, too heavy for the {weakest.Name} of {QuantityText.Both(QuantityKind.LineStrength, weakest.Strength)}",
        allowed > 0.0 ? $"up to {QuantityText.Both(QuantityKind.Mass, allowed)} {part}on this {weakest.Name}" : $"a stronger {weakest.Name}",
        $"take a lighter {lighter} or a stronger {weakest.Name}: a cast loads the line with at least {CastLoad.Factor:0} times the weight");

    private static (double Strength, string Name)? Weakest(ReadValue? line, ReadValue? leader)
    {
        double? main = Number(line?["strength"]), end = Number(leader?["strength"]);
        if (end is { } strength && !(main <= strength))
            return (strength, "leader");
        return main is null ? null : (main.Value, "line");
    }

    internal static bool IsComplete(ReadValue body) => body["profile"] is not null && body["length"] is not null;
}
