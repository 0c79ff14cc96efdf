using System.Runtime.InteropServices;
using LureSim.Cli.Hosting;

namespace LureSim.Cli.Output;

/// <summary>
/// Writes a folder in one step: the files go into a new folder beside it, which takes its place by a single call of the system. Whoever
/// looks, and whenever the process dies, sees all of the old files or all of the new ones.
/// </summary>
internal static class FolderSwap
{
    private const int FromWorkingFolder = -100;
    private const uint Exchange = 2;

    /// <summary>Writes the files so, if the folder is not there yet or holds nothing else; false if it cannot be done here, and nothing has changed then.</summary>
    /// <param name="root">Full path of the folder.</param>
    /// <param name="targets">Full paths of the files, in the order of <paramref name="files"/>.</param>
    /// <param name="files">The files.</param>
    /// <param name="cancellation">Stops the writing; nothing is left then.</param>
    public static bool TryWrite(string root, string[] targets, IReadOnlyList<OutputFile> files, CancellationToken cancellation)
    {
        bool there = Directory.Exists(root);
        if (Path.GetDirectoryName(root) is not { } parent || (there && !IsAllOurs(root, targets)))
            return false;
        string staging = Path.Combine(parent, $".{Path.GetFileName(root)}.{Path.GetRandomFileName()}{AtomicFiles.Mark}");
        var created = new List<string>();
        bool done = false;
        try
        {
            try
            {
                AtomicFiles.CreateFolders(parent, created);
                Directory.CreateDirectory(staging);
            }
            catch (Exception exception) when (there && exception is IOException or UnauthorizedAccessException)
            {
                // Nothing may be put beside the folder; into it, perhaps.
                return false;
            }

            for (int index = 0; index < files.Count; index++)
            {
                cancellation.ThrowIfCancellationRequested();
                string path = Path.Combine(staging, Path.GetRelativePath(root, targets[index]));
                Directory.CreateDirectory(Path.GetDirectoryName(path)!);
                AtomicFiles.WriteNew(path, files[index].Content);
            }

            cancellation.ThrowIfCancellationRequested();
            if (there)
            {
                if (!OperatingSystem.IsWindows())
                    File.SetUnixFileMode(staging, File.GetUnixFileMode(root));
                done = TrySwap(staging, root);
            }
            else
            {
                Directory.Move(staging, root);
                done = true;
            }

            return done;
        }
        catch (IOException) when (!there && Directory.Exists(root))
        {
            // Somebody has made the folder in the meantime.
            return false;
        }
        finally
        {
            // After a swap the old files are there.
            AtomicFiles.TryDeleteTree(staging);
            if (!done)
                AtomicFiles.RemoveFolders(created);
        }
    }

    /// <summary>Removes what a process left beside the folder that died while it wrote.</summary>
    /// <param name="root">Full path of the folder.</param>
    public static void Tidy(string root)
    {
        if (Path.GetDirectoryName(root) is not { } parent || !Directory.Exists(parent))
            return;
        foreach (string left in Directory.EnumerateDirectories(parent, $".{Path.GetFileName(root)}.*{AtomicFiles.Mark}"))
            AtomicFiles.TryDeleteTree(left);
    }

    // A folder with other people's files stays itself, and so does one that somebody stands in or that is a link.
    private static bool IsAllOurs(string root, string[] targets)
    {
        if (!OperatingSystem.IsLinux() || new DirectoryInfo(root).LinkTarget is not null || Environment.CurrentDirectory == root || IsWithin(Environment.CurrentDirectory, root))
            return false;
        HashSet<string> ours = [.. targets];
        return new DirectoryInfo(root).EnumerateFileSystemInfos("*", SearchOption.AllDirectories).All(entry =>
            entry.LinkTarget is null && (entry is DirectoryInfo ? targets.Any(target => IsWithin(target, entry.FullName)) : ours.Contains(entry.FullName)));
    }

    private static bool IsWithin(string path, string folder) =>
        path.StartsWith(Path.TrimEndingDirectorySeparator(folder) + Path.DirectorySeparatorChar, StringComparison.Ordinal);

    private static bool TrySwap(string one, string other)
    {
        try
        {
            return RenameAt2(FromWorkingFolder, one, FromWorkingFolder, other, Exchange) == 0;
        }
        catch (EntryPointNotFoundException)
        {
            // An older C library.
            return false;
        }
    }

    [DllImport("libc", EntryPoint = "renameat2", SetLastError = true)]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int RenameAt2(int oneFolder, [MarshalAs(UnmanagedType.LPUTF8Str)] string one, int otherFolder, [MarshalAs(UnmanagedType.LPUTF8Str)] string other, uint flags);
}
