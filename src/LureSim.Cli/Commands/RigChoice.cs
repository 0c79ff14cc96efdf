using LureSim.Cli.Hosting;
using LureSim.Decision.Search;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Cli.Commands;

/// <summary>Finds what the options name in the scenario.</summary>
internal static class RigChoice
{
    /// <summary>The word for a head without lead.</summary>
    public const string Unweighted = "unweighted";

    /// <summary>The word for no head, with a body that needs none.</summary>
    public const string NoHead = "none";

    // Weights written in other units meet the box's own within rounding: 7 g is 0.247 oz, sold as 1/4 oz.
    private const double WeightTolerance = 0.02;

    /// <summary>What the choice is held to.</summary>
    /// <exception cref="CommandFailedException">A name is not in the scenario, or fits several heads.</exception>
    public static ChoiceLimits Limits(Scenario scenario, ScenarioSettings settings)
    {
        TackleBox box = scenario.Tackle;
        string? weight = settings.Weight?.Trim();

        // A hard lure goes by its own name in place of a weight.
        LureBody? byWeight = weight is null ? null : box.Bodies.FirstOrDefault(item => !item.NeedsHead && item.Label == weight);
        LureBody? body = byWeight ?? (settings.Lure is null ? null : Named("--lure", "lure", box.Bodies, item => item.Label, settings.Lure));
        if (byWeight is null && weight == NoHead)
            body ??= box.Bodies.FirstOrDefault(item => !item.NeedsHead) ?? throw new CommandFailedException(ExitCode.Usage, $"--weight: every lure of the box takes a jig head; it has: {string.Join(", ", box.JigHeads.Select(head => head.Label))}.");
        JigHead? head = byWeight is not null || weight is null || (body is { NeedsHead: false } && weight == NoHead) ? null : Head(scenario, body, weight);
        string[] colours = [.. box.Colours, .. box.MeasuredColours.Select(colour => colour.Name), .. box.Patterns.Select(pattern => pattern.Name)];
        return new ChoiceLimits(
            head,
            body,
            settings.Presentation is null ? null : Named("--presentation", "presentation", scenario.Presentations, item => item.Name, settings.Presentation),
            settings.Color is null ? null : Named("--color", "color", colours, name => name, settings.Color));
    }

    private static JigHead Head(Scenario scenario, LureBody? body, string weight)
    {
        if (body is { NeedsHead: false })
            throw new CommandFailedException(ExitCode.Usage, $"--weight: {body.Label} is fished without a jig head; write \"{NoHead}\".");
        weight = EverydayNames.Head.Word(weight) ?? weight;
        IReadOnlyList<JigHead> heads = scenario.Tackle.JigHeads;
        string labels = string.Join(", ", heads.Select(head => head.Label));
        if (heads.FirstOrDefault(head => head.Label == weight) is { } exact)
            return exact;

        QuantityReading reading = QuantityReader.Read(QuantityKind.Mass, weight);
        if (!reading.IsValid)
        {
            string? nearest = GrammarReader.Nearest(weight, heads.Select(head => head.Label));
            throw new CommandFailedException(ExitCode.Usage, $"--weight: your box has no jig head \"{weight}\"{Suggest(nearest)} It has: {labels}.");
        }

        JigHead[] near = [.. heads.Where(head => head.Mass > 0.0 && Math.Abs(head.Mass - reading.Value) <= WeightTolerance * head.Mass)];
        double closest = near.Select(head => Math.Abs(head.Mass - reading.Value)).DefaultIfEmpty().Min();
        near = [.. near.Where(head => Math.Abs(head.Mass - reading.Value) <= closest * (1.0 + 1e-9))];
        return near.Length switch
        {
            1 => near[0],
            0 => throw new CommandFailedException(ExitCode.Usage, $"--weight: your box has no jig head of {weight}. It has: {labels}."),
            _ => throw new CommandFailedException(ExitCode.Usage, $"--weight: several jig heads weigh {weight}; write one of: {string.Join(", ", near.Select(head => head.Label))}."),
        };
    }

    private static T Named<T>(string option, string what, IReadOnlyList<T> items, Func<T, string> name, string wanted)
    {
        foreach (T item in items)
        {
            if (name(item) == wanted.Trim())
                return item;
        }

        string? nearest = GrammarReader.Nearest(wanted, items.Select(name));
        throw new CommandFailedException(ExitCode.Usage, $"{option}: the scenario has no {what} \"{wanted}\"{Suggest(nearest)} It has: {string.Join(", ", items.Select(name))}.");
    }

    private static string Suggest(string? nearest) => nearest is null ? "." : $"; did you mean \"{nearest}\"?";
}
