using System.Reflection;

namespace LureSim.Scenarios;

/// <summary>
/// Ready-made retrieves. Source: Data/tackle/retrieve_styles.yaml (names and ways are common practice, figures assumed), written in the keys of a scenario.
/// </summary>
internal static class RetrieveStyles
{
    private const string Resource = "LureSim.Data.tackle.retrieve_styles.yaml";

    /// <summary>All of them, in the order of the table.</summary>
    public static IReadOnlyList<RetrieveStyle> All { get; } = Read();

    /// <summary>The style of a name; null for none.</summary>
    public static RetrieveStyle? Find(string name) => All.FirstOrDefault(style => style.Name == name);

    private static List<RetrieveStyle> Read()
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(Resource)
            ?? throw new InvalidOperationException($"The assembly lacks the table {Resource}.");
        using var reader = new StreamReader(stream);
        var problems = new ProblemList(Resource);
        ReadValue? table = YamlTreeBuilder.Read(reader.ReadToEnd(), problems) is { } tree ? new GrammarReader(problems).Read(tree, MoveGrammar.StyleTable, "") : null;
        if (table is null || problems.Count > 0)
            throw new InvalidOperationException($"The table {Resource} is wrong: {string.Join("; ", problems.Sorted())}");
        return [.. table["styles"]!.Items.Select(item => new RetrieveStyle(item["name"]!.Text, item["meaning"]!.Text, item))];
    }
}

/// <summary>A ready-made retrieve.</summary>
/// <param name="Name">Name in the trade.</param>
/// <param name="Meaning">What it is, in a few words.</param>
/// <param name="Keys">Its keys, as in a presentation.</param>
internal sealed record RetrieveStyle(string Name, string Meaning, ReadValue Keys);
