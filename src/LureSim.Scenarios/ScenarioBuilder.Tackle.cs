using LureSim.Model;

namespace LureSim.Scenarios;

/// <content>What was measured of the lures, from a tackle file beside the scenario.</content>
internal sealed partial class ScenarioBuilder
{
    private readonly Dictionary<string, MeasuredDrag> ownDrags = new(StringComparer.OrdinalIgnoreCase);

    // Reads the file; its problems are told at the key that names it.
    private void IncludeTackle(ReadValue? include, ReadValue? bodies)
    {
        if (include is null)
            return;
        string path = Path.Combine(Path.GetDirectoryName(problems.File) ?? "", include.Text.Trim());
        TackleFileReading reading = TackleFile.Read(path);
        foreach (ScenarioProblem problem in reading.Problems.Take(ProblemList.MostAlike))
            Add(include, problem.Key == ScenarioProblem.WholeFile ? $"{path}: {problem.Message}" : $"{path}, line {problem.Line}: {problem.Key}: {problem.Message}", problem.Allowed, problem.Fix);
        foreach (LureNumbers lure in reading.Lures)
            ownDrags[lure.Bait] = lure.Drag;
        string[] names = [.. (bodies?.Items ?? []).Where(IsComplete).Select(BodyLabel)];
        if (reading.Problems.Count == 0 && names.Length > 0 && !reading.Lures.Any(lure => names.Contains(lure.Bait, StringComparer.OrdinalIgnoreCase)))
            Add(include, "the tackle file holds nothing of the bodies here", string.Join(", ", reading.Lures.Select(lure => lure.Bait)), $"give a body the name that it has in the tackle file, or remove include");
    }

    private LureBody Measured(LureBody body) => ownDrags.TryGetValue(body.Label, out MeasuredDrag? own) ? body with { Drag = own } : body;
}
