using System.Globalization;

namespace LureSim.Scenarios;

/// <summary>
/// Collects problems. A file that is wrong throughout would bury its reader: of problems with the same message the first are kept, and of all of them a few
/// pages; how many more there are is said in their place.
/// </summary>
internal sealed class ProblemList(string file)
{
    /// <summary>Most problems with the same message that are shown.</summary>
    public const int MostAlike = 20;

    /// <summary>Most problems that are shown.</summary>
    public const int Most = 200;

    // Characters of a path, of a sentence and of a list of what is allowed; a key of ten thousand characters is no typing mistake.
    private const int LongestKey = 200;
    private const int LongestText = 600;
    private const int LongestList = 2000;

    private readonly List<ScenarioProblem> problems = [];

    // By message: how many there are, and the first that is not shown.
    private readonly Dictionary<string, (int Count, ScenarioProblem? Hidden)> alike = [];

    private int hidden;
    private ScenarioProblem? firstHidden;

    private readonly List<ScenarioRemark> remarks = [];

    /// <summary>What was read as another word, by line.</summary>
    public IReadOnlyList<ScenarioRemark> Remarks => [.. remarks.OrderBy(remark => remark.Line).ThenBy(remark => remark.Column)];

    /// <summary>The file, as it was named.</summary>
    public string File => file;

    /// <summary>Number of problems so far, shown or not.</summary>
    public int Total { get; private set; }

    /// <summary>Number of problems that are shown.</summary>
    public int Count => problems.Count;

    /// <summary>Adds a problem at a place.</summary>
    public void Add(int line, int column, string key, string value, string message, string allowed, string fix)
    {
        Total++;
        string clean = VisibleText.Shown(message, LongestText);
        (int count, ScenarioProblem? firstAlike) = alike.GetValueOrDefault(clean);
        bool full = problems.Count >= Most;
        if (count < MostAlike && !full)
        {
            alike[clean] = (count + 1, null);
            problems.Add(Problem(clean));
        }
        else if (count < MostAlike)
        {
            hidden++;
            firstHidden ??= Problem(clean);
        }
        else
        {
            alike[clean] = (count + 1, firstAlike ?? Problem(clean));
        }

        ScenarioProblem Problem(string text) =>
            new(file, Math.Max(line, 1), Math.Max(column, 1), VisibleText.Shown(key, LongestKey), ScenarioProblem.Shorten(value), text, VisibleText.Shown(allowed, LongestList), VisibleText.Shown(fix, LongestText));
    }

    /// <summary>Adds that an everyday name was read as the word it stands for.</summary>
    public void AddTaken(int line, int column, string key, string written, string meaning)
    {
        if (remarks.Count < Most)
            remarks.Add(new ScenarioRemark(file, Math.Max(line, 1), Math.Max(column, 1), VisibleText.Shown(key, LongestKey), ScenarioProblem.Shorten(written), meaning));
    }

    /// <summary>True if there is a problem with the key of this path or with anything below it.</summary>
    public bool HasUnder(string path) => problems.Exists(problem => problem.Key == path || problem.Key.StartsWith(path + ".", StringComparison.Ordinal) || problem.Key.StartsWith(path + "[", StringComparison.Ordinal));

    /// <summary>The problems by line and column; ties keep the order in which they were found. The last of their kind say how many more there are.</summary>
    public IReadOnlyList<ScenarioProblem> Sorted()
    {
        var all = new List<ScenarioProblem>(problems);
        foreach ((string message, (int count, ScenarioProblem? first)) in alike)
        {
            if (first is not null)
                all.Add(More(first, message, count - MostAlike));
        }

        if (firstHidden is not null)
            all.Add(More(firstHidden, "more problems", hidden));
        return [.. all.OrderBy(problem => problem.Line).ThenBy(problem => problem.Column)];
    }

    private static ScenarioProblem More(ScenarioProblem first, string message, int count) => first with
    {
        Value = "",
        Message = string.Create(CultureInfo.InvariantCulture, $"{message}, and {count - 1:N0} more from here on"),
        Fix = "correct those above first",
    };
}
