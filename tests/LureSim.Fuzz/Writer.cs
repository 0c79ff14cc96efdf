using System.Text;
using LureSim.Cli.Hosting;
using LureSim.Cli.Output;

namespace LureSim.Fuzz;

/// <summary>Writes a set of files and does nothing else: a process to kill while it writes.</summary>
internal static class Writer
{
    private const int Large = 100_000;

    /// <summary>The names of the set.</summary>
    public static IReadOnlyList<string> Names { get; } = ["a.txt", "figures/b.txt", "c.txt"];

    /// <summary>What a file of the set holds.</summary>
    public static string Content(string name, string word) => new StringBuilder().Insert(0, $"{name} {word}\n", name == "c.txt" ? Large / (name.Length + word.Length + 2) : 3).ToString();

    /// <summary>Writes the set.</summary>
    /// <param name="folder">Where to.</param>
    /// <param name="word">What its files hold.</param>
    public static void Write(string folder, string word)
    {
        // Once elsewhere first: what is loaded and compiled for it is no part of the writing.
        DirectoryInfo other = Directory.CreateTempSubdirectory("luresim-warm");
        AtomicFiles.RequireFolder(other.FullName);
        foreach (string start in (string[])["fresh", "fresh", "other"])
        {
            if (start == "other")
                File.WriteAllText(Path.Combine(other.FullName, "set", "own.txt"), "own");
            AtomicFiles.Write(Path.Combine(other.FullName, "set"), Files(word), CancellationToken.None);
        }

        other.Delete(recursive: true);
        AtomicFiles.Write(folder, Files(word), CancellationToken.None);
    }

    private static OutputFile[] Files(string word) => [.. Names.Select(name => OutputFile.Text(name, Content(name, word)))];
}
