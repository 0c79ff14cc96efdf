using LureSim.Decision.Trips;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>Reads trip files written in YAML, and the scenarios that they name. Bad input is data, as with scenarios. Thread-safe.</summary>
public static class TripReader
{
    /// <summary>True if a file is meant as a trip: a mapping with spots and no tackle. A file that cannot be read is none.</summary>
    /// <param name="path">Path of the file.</param>
    /// <exception cref="ArgumentNullException"><paramref name="path"/> is null.</exception>
    public static bool IsTrip(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return TextOf(path) is { } text && YamlTreeBuilder.Read(text, new ProblemList(path)) is YamlMap map
            && map.Entries.Any(entry => entry.Key.Value == "spots") && !map.Entries.Any(entry => entry.Key.Value is "tackle" or "spot");
    }

    /// <summary>Reads a trip file and its scenarios.</summary>
    /// <param name="path">Path of the file; scenarios are looked for from its folder.</param>
    /// <exception cref="ArgumentNullException"><paramref name="path"/> is null.</exception>
    public static TripReading Read(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        var problems = new ProblemList(path);
        if (TextOf(path) is not { } text)
        {
            problems.Add(1, 1, ScenarioProblem.WholeFile, "", "the file cannot be read as text", "a trip file of at most 1 MB in UTF-8", "check the path");
            return new TripReading(path, null, problems.Sorted());
        }

        ReadValue? root = YamlTreeBuilder.Read(text, problems) is { } tree ? new GrammarReader(problems).Read(tree, TripGrammar.Root, "") : null;
        List<ScenarioProblem> others = [];
        TripFile? trip = root is null ? null : Build(root, Path.GetDirectoryName(Path.GetFullPath(path)) ?? "", problems, others);
        return new TripReading(path, problems.Total + others.Count == 0 ? trip : null, [.. problems.Sorted(), .. others]);
    }

    private static TripFile? Build(ReadValue root, string folder, ProblemList problems, List<ScenarioProblem> others)
    {
        IReadOnlyList<ReadValue> spots = root["spots"]?.Items ?? [];
        List<Scenario> scenarios = [];
        var places = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase) { [TripGrammar.Ramp] = 0 };
        for (int i = 0; i < spots.Count; i++)
        {
            ReadValue spot = spots[i];
            if (spot["file"] is not { } file) continue;
            string name = spot["name"]?.Text ?? Path.GetFileNameWithoutExtension(file.Text);
            if (!places.TryAdd(name, i + 1))
                Add(spot["name"] ?? file, name == TripGrammar.Ramp ? "ramp is the place where the trip begins" : "another spot has this name", "a name of its own for each spot", "add or change \"name\"");
            if (spot["least_stay"] is { } least && spot["most_stay"] is { } most && least.Number > most.Number)
                Add(most, "the longest visit is shorter than the shortest", "at least least_stay", "correct one of the two");
            string path = Path.Combine(folder, file.Text);
            ScenarioReading reading = ScenarioReader.Read(path);
            if (!File.Exists(path))
                Add(file, "there is no such scenario", "the path of a scenario, from the folder of this file", "check the path");
            else if (reading.Scenario is { } scenario)
                scenarios.Add(scenario);
            else
                others.AddRange(reading.Problems);
        }

        foreach (ReadValue end in (root["legs"]?.Items ?? []).SelectMany(leg => (ReadValue?[])[leg["from"], leg["to"]]).OfType<ReadValue>().Where(end => !places.ContainsKey(end.Text)))
        {
            string? nearest = GrammarReader.Nearest(end.Text, places.Keys);
            Add(end, "there is no place of this name", string.Join(", ", places.Keys), nearest is null ? "write the name of a spot, or ramp" : $"write \"{nearest}\"");
        }

        double from = (root["from"]?.Number ?? 0) / 3600, to = (root["to"]?.Number ?? 0) / 3600;
        if (to <= from) to += 24;
        if (root["to"] is { } last && to - from < 1)
            Add(last, "the day is shorter than an hour", "an hour or more after from", "write a later time");
        if (problems.Total > 0 || others.Count > 0 || scenarios.Count < spots.Count || spots.Count == 0)
            return null;
        int n = spots.Count;
        double[,] travel = new double[n + 1, n + 1];
        for (int i = 0; i <= n; i++)
        {
            for (int j = 0; j <= n; j++) travel[i, j] = i == j ? 0 : root["travel"] is { } way ? way.Number / 3600 : TripClock.UsualTravel;
        }

        foreach (ReadValue leg in root["legs"]?.Items ?? [])
        {
            int a = places[leg.At("from").Text], b = places[leg.At("to").Text];
            travel[a, b] = travel[b, a] = a == b ? 0 : leg.NumberAt("time") / 3600;
        }

        TripSpotTime[] times = [.. spots.Select(spot =>
        {
            double least = (spot["least_stay"]?.Number / 3600) ?? Math.Min(TripSpotTime.UsualLeast, (spot["most_stay"]?.Number / 3600) ?? TripSpotTime.UsualLeast);
            return new TripSpotTime(least, Math.Max(least, (spot["most_stay"]?.Number / 3600) ?? TripSpotTime.UsualMost), spot["worth"]?.Number ?? 1);
        })];
        return new TripFile(root.At("title").Text, scenarios, new TripClock(from, to, times, travel, root["back"]?.Word?.Meaning is not false));

        void Add(ReadValue at, string message, string allowed, string fix) => problems.Add(at.Line, at.Column, at.Path, at.Text, message, allowed, fix);
    }

    private static string? TextOf(string path)
    {
        try
        {
            var file = new FileInfo(path);
            return file.Exists && file.Length <= ScenarioGrammar.MaximumBytes ? File.ReadAllText(path) : null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            return null;
        }
    }
}
