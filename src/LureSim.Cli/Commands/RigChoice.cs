using LureSim.Cli.Hosting;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Cli.Commands;

/// <summary>Finds the rig that the options name in the scenario.</summary>
internal static class RigChoice
{
    /// <summary>The word for a head without lead.</summary>
    public const string Unweighted = "unweighted";

    /// <summary>The word for no head, with a body that needs none.</summary>
    public const string NoHead = "none";

    // Weights written in other units meet the box's own within rounding: 7 g is 0.247 oz, sold as 1/4 oz.
    private const double WeightTolerance = 0.02;

    /// <summary>The rig.</summary>
    /// <exception cref="CommandFailedException">A name is not in the scenario, or fits several heads.</exception>
    public static Rig Of(Scenario scenario, string weight, string? presentation, string? body)
    {
        // A hard lure goes by its own name in place of a weight.
        LureBody? byWeight = scenario.Tackle.Bodies.FirstOrDefault(item => !item.NeedsHead && item.Label == weight.Trim());
        LureBody chosen = byWeight ?? (body is null ? scenario.Tackle.Bodies.FirstOrDefault(item => item.NeedsHead) ?? scenario.Tackle.Bodies[0] : Named("--body", "body", scenario.Tackle.Bodies, item => item.Label, body));
        return new(
            byWeight is not null || (!chosen.NeedsHead && weight.Trim() == NoHead) ? JigHead.None(chosen) : Head(scenario, chosen, weight.Trim()),
            chosen,
            Named("--presentation", "presentation", scenario.Presentations, item => item.Name, presentation));
    }

    /// <summary>The body of a name.</summary>
    /// <exception cref="CommandFailedException">There is none.</exception>
    public static LureBody Body(Scenario scenario, string name) => Named("--body", "body", scenario.Tackle.Bodies, item => item.Label, name);

    private static JigHead Head(Scenario scenario, LureBody body, string weight)
    {
        if (!body.NeedsHead)
            throw new CommandFailedException(ExitCode.Usage, $"--weight: {body.Label} is fished without a jig head; write \"{NoHead}\".");
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

    private static T Named<T>(string option, string what, IReadOnlyList<T> items, Func<T, string> name, string? wanted)
    {
        if (wanted is null)
            return items[0];
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
