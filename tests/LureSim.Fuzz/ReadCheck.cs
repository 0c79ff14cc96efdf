using System.Collections;
using System.Globalization;
using System.Reflection;
using LureSim.Model;
using LureSim.Scenarios;

namespace LureSim.Fuzz;

/// <summary>What must hold of every text that is read: an answer in time, and either numbers that are numbers or problems with a place and a way out.</summary>
internal static class ReadCheck
{
    /// <summary>Longest time that reading may take.</summary>
    public static readonly TimeSpan Limit = TimeSpan.FromSeconds(5);

    /// <summary>Reads a text and says what is wrong with how it was read; nothing where all is well.</summary>
    /// <param name="text">The text.</param>
    /// <param name="reading">How it was read; null where the reader threw.</param>
    /// <param name="time">Time that it took.</param>
    public static IReadOnlyList<string> Complaints(string text, out ScenarioReading? reading, out TimeSpan time)
    {
        long start = TimeProvider.System.GetTimestamp();
        try
        {
            reading = ScenarioReader.ReadText(text, "fuzz.yaml");
        }
        catch (Exception exception)
        {
            reading = null;
            time = TimeProvider.System.GetElapsedTime(start);
            return [$"exception {exception.GetType().Name}: {exception.Message} {exception.StackTrace?.Split('\n').FirstOrDefault()?.Trim()}"];
        }

        time = TimeProvider.System.GetElapsedTime(start);
        List<string> complaints = [];
        if (time > Limit)
            complaints.Add(string.Create(CultureInfo.InvariantCulture, $"hang: {time.TotalSeconds:0.0} s"));
        if (reading.Scenario is { } scenario)
        {
            if (reading.Problems.Count > 0)
                complaints.Add("a scenario with problems");
            Walk(scenario, "scenario", complaints, 0);
            return complaints;
        }

        if (reading.Problems.Count == 0)
            complaints.Add("refused without a problem");
        int lines = text.Count(character => character is '\n' or '\r' or '\u0085' or '\u2028' or '\u2029') + 1;
        foreach (ScenarioProblem problem in reading.Problems)
        {
            string? lacks = problem.File != "fuzz.yaml" ? "file"
                : problem.Line < 1 || problem.Line > lines ? "line"
                : problem.Column < 1 ? "column"
                : problem.Key.Length == 0 ? "key"
                : problem.Message.Length == 0 ? "message"
                : problem.Allowed.Length == 0 && problem.Fix.Length == 0 ? "what is allowed"
                : problem.Fix.Length == 0 ? "fix"
                : null;
            if (lacks is not null)
                complaints.Add($"a problem without its {lacks}: {problem}");
            if (problem.ToString().Length > 4000)
                complaints.Add("a problem of more than 4000 characters");
            if (problem.ToString().EnumerateRunes().Any(rune => VisibleText.Shown(rune.ToString()) != rune.ToString()))
                complaints.Add($"a problem with characters that hide or steer: {problem}");
        }

        return complaints;
    }

    // Every number of the scenario is one; ranges are held by the records themselves.
    private static void Walk(object value, string path, List<string> complaints, int depth)
    {
        if (value is double number)
        {
            // Reeling without an end is how a steady retrieve is said.
            if (!double.IsFinite(number) && !(double.IsPositiveInfinity(number) && path.EndsWith(".Duration", StringComparison.Ordinal)))
                complaints.Add($"{path} is {number.ToString(CultureInfo.InvariantCulture)}");
            return;
        }

        if (depth > 6 || value is string || value.GetType().IsPrimitive || value.GetType().IsEnum)
            return;
        if (value is IEnumerable items)
        {
            int at = 0;
            foreach (object? item in items)
            {
                if (item is not null)
                    Walk(item, $"{path}[{Number(at)}]", complaints, depth + 1);
                at++;
            }

            return;
        }

        if (value.GetType().Namespace != typeof(Scenario).Namespace)
            return;
        foreach (PropertyInfo property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => property.GetIndexParameters().Length == 0))
        {
            if (property.GetValue(value) is { } inner)
                Walk(inner, $"{path}.{property.Name}", complaints, depth + 1);
        }
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);
}
