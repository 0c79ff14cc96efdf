using System.Text;

namespace LureSim.Cli.Output;

/// <summary>
/// The list of files that are complete under their temporary names and about to take their places, kept in the folder meanwhile: a process
/// that dies between two of them leaves it, and who writes there next goes on where it stopped.
/// </summary>
internal static class UnfinishedWrite
{
    private const string Name = ".luresim-unfinished";

    /// <summary>Writes the list.</summary>
    /// <param name="root">Full path of the folder.</param>
    /// <param name="suffix">What the temporary names have after the real ones.</param>
    /// <param name="targets">Full paths of the files.</param>
    public static void Begin(string root, string suffix, IEnumerable<string> targets)
    {
        string list = Path.Combine(root, Name);
        AtomicFiles.WriteNew(list + suffix, Encoding.UTF8.GetBytes(string.Join('\n', targets.Select(target => Path.GetRelativePath(root, target)).Prepend(suffix))));
        File.Move(list + suffix, list, overwrite: true);
    }

    /// <summary>Removes the list: all files have taken their places, or none has.</summary>
    public static void End(string root) => AtomicFiles.TryDelete(Path.Combine(root, Name));

    /// <summary>Goes on with what a process left that died, and removes what it had not finished writing.</summary>
    /// <param name="root">Full path of the folder.</param>
    /// <param name="targets">Full paths of files whose folders are looked at.</param>
    public static void Finish(string root, IEnumerable<string> targets)
    {
        if (!Directory.Exists(root))
            return;
        string list = Path.Combine(root, Name);
        if (File.Exists(list) && File.ReadAllLines(list) is [{ } suffix, .. var names] && suffix.EndsWith(AtomicFiles.Mark, StringComparison.Ordinal))
        {
            foreach (string target in names.Select(name => AtomicFiles.Target(root, name)).Where(target => File.Exists(target + suffix)))
                File.Move(target + suffix, target, overwrite: true);
        }

        foreach (string folder in targets.Select(target => Path.GetDirectoryName(target)!).Append(root).Distinct().Where(Directory.Exists))
        {
            foreach (string left in Directory.EnumerateFiles(folder, "*" + AtomicFiles.Mark))
                AtomicFiles.TryDelete(left);
        }

        End(root);
    }
}
