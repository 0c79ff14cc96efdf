using System.Globalization;
using System.Text;

namespace LureSim.Mutation;

/// <summary>Writes docs/mutation.md; what people wrote outside the markers stays.</summary>
internal static class MutationPage
{
    private const string Begin = "<!-- results: written by tests/LureSim.Mutation, do not edit by hand -->";
    private const string End = "<!-- end of results -->";

    /// <summary>Puts the results between the markers.</summary>
    public static void Write(string path, RunOptions options, IReadOnlyList<MutantSite> sites, IReadOnlyList<MutantResult> results)
    {
        string old = File.Exists(path) ? File.ReadAllText(path) : $"# Mutation run\n\n{Begin}\n{End}\n";
        int from = old.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length, to = old.IndexOf(End, StringComparison.Ordinal);
        if (to < from) throw new InvalidOperationException($"{path} has lost its markers.");
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"\n\nSeed {options.Seed}, {results.Count} mutants of {sites.Count} places in formulas.\n\n");
        text.Append("| Folder | Mutants | Killed | Killed by time | Survived | Surviving share |\n| --- | ---: | ---: | ---: | ---: | ---: |\n");
        foreach (string folder in FolderTests.Folders) Row(folder, [.. results.Where(r => r.Mutant.Folder == folder)]);
        Row("All", results);

        text.Append("\n| Kind | Mutants | Survived |\n| --- | ---: | ---: |\n");
        foreach (MutantKind kind in Enum.GetValues<MutantKind>())
        {
            text.Append(CultureInfo.InvariantCulture, $"| {Name(kind)} | {results.Count(r => r.Mutant.Kind == kind)} | {results.Count(r => r.Mutant.Kind == kind && r.End == MutantEnd.Survived)} |\n");
        }

        text.Append("\n| Survivor | Right | Wrong |\n| --- | --- | --- |\n");
        foreach (Mutant m in results.Where(r => r.End == MutantEnd.Survived).Select(r => r.Mutant).OrderBy(m => m.File, StringComparer.Ordinal).ThenBy(m => m.Line))
        {
            text.Append(CultureInfo.InvariantCulture, $"| `{m.File}:{m.Line}` | `{Cell(m.Before)}` | `{Cell(m.After)}` |\n");
        }

        text.Append('\n');
        File.WriteAllText(path, string.Concat(old.AsSpan(0, from), text.ToString(), old.AsSpan(to)));

        void Row(string name, IReadOnlyList<MutantResult> of)
        {
            int survived = of.Count(r => r.End == MutantEnd.Survived);
            string share = of.Count == 0 ? "" : (100.0 * survived / of.Count).ToString("F0", CultureInfo.InvariantCulture) + " %";
            text.Append(CultureInfo.InvariantCulture, $"| {name} | {of.Count} | {of.Count(r => r.End == MutantEnd.Killed)} | {of.Count(r => r.End == MutantEnd.TimedOut)} | {survived} | {share} |\n");
        }
    }

    private static string Cell(string code) => code.Replace("|", "\\|", StringComparison.Ordinal);

    private static string Name(MutantKind kind) => kind switch
    {
        MutantKind.Operator => "operator swapped",
        MutantKind.Constant => "number times 1.2",
        MutantKind.Comparison => "comparison turned round",
        MutantKind.Sign => "sign dropped",
        MutantKind.Known => "always tried",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "The kind is unknown."),
    };
}
