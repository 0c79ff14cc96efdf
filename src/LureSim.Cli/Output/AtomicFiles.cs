using LureSim.Cli.Hosting;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>
/// Writes sets of files all or nothing: each goes into a temporary file beside its place and all are moved when all are
/// complete. On failure or cancellation the folder is as it was; a file that was there is never missing or half written.
/// </summary>
internal static class AtomicFiles
{
    /// <summary>Fails early, before long work, where a folder cannot be or nothing can be written into it; leaves no trace.</summary>
    /// <exception cref="CommandFailedException">The path names a file, or writing is refused.</exception>
    public static void RequireFolder(string? path)
    {
        if (path is null)
            return;
        string root = Path.GetFullPath(path);
        for (string? part = root; part is not null; part = Path.GetDirectoryName(part))
        {
            if (File.Exists(part))
                throw new CommandFailedException(ExitCode.Failed, $"Cannot write into {path}: {part} is a file, not a folder.");
        }

        var created = new List<string>();
        try
        {
            CreateFolders(root, created);
            using var trial = new FileStream(Path.Combine(root, "." + Path.GetRandomFileName() + ".tmp"), FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new CommandFailedException(ExitCode.Failed, $"Cannot write into {path}: {exception.Message} Name another folder with --out.");
        }
        finally
        {
            RemoveFolders(created);
        }
    }

    /// <summary>Writes files and tells where they are.</summary>
    public static void WriteAndTell(IAnsiConsole console, string folder, IReadOnlyList<OutputFile> files, CancellationToken cancellation)
    {
        Write(folder, files, cancellation);
        foreach (OutputFile file in files)
            console.MarkupLineInterpolated($"Wrote {Path.Combine(folder, file.Name)}");
    }

    /// <summary>Writes files into a folder, which is created when needed.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="files">The files; names must be relative and stay inside the folder, and differ.</param>
    /// <param name="cancellation">Stops the writing; nothing is left then.</param>
    /// <exception cref="ArgumentException">A name leaves the folder or is given twice.</exception>
    /// <exception cref="IOException">A file cannot be written; the folder is as it was.</exception>
    public static void Write(string folder, IReadOnlyList<OutputFile> files, CancellationToken cancellation)
    {
        string root = Path.GetFullPath(folder);
        string[] targets = [.. files.Select(file => Target(root, file.Name))];
        if (targets.Distinct(StringComparer.OrdinalIgnoreCase).Count() != targets.Length)
            throw new ArgumentException("Two files have the same name.", nameof(files));

        string suffix = "." + Path.GetRandomFileName() + ".tmp";
        var created = new List<string>();
        var temporary = new List<string>();
        var backups = new List<(string Target, string? Backup)>();
        bool done = false;
        try
        {
            for (int index = 0; index < files.Count; index++)
            {
                cancellation.ThrowIfCancellationRequested();
                CreateFolders(Path.GetDirectoryName(targets[index])!, created);
                string path = targets[index] + suffix;
                temporary.Add(path);
                using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
                stream.Write(files[index].Content.Span);
                stream.Flush(flushToDisk: true);
            }

            cancellation.ThrowIfCancellationRequested();

            // Moves can still fail half-way (a folder in a file's place, rights): keep copies to put back.
            foreach (string target in targets)
            {
                string? backup = null;
                if (File.Exists(target))
                {
                    backup = target + suffix + ".old";
                    temporary.Add(backup);
                    File.Copy(target, backup);
                }

                File.Move(target + suffix, target, overwrite: true);
                backups.Add((target, backup));
            }

            done = true;
        }
        finally
        {
            if (!done)
            {
                foreach ((string target, string? backup) in Enumerable.Reverse(backups))
                {
                    if (backup is null)
                        TryDelete(target);
                    else
                        File.Move(backup, target, overwrite: true);
                }
            }

            temporary.ForEach(TryDelete);
            if (!done)
                RemoveFolders(created);
        }
    }

    private static string Target(string root, string name)
    {
        string target = Path.GetFullPath(Path.Combine(root, name));
        if (name.Length == 0 || Path.IsPathRooted(name) || !target.StartsWith(Path.TrimEndingDirectorySeparator(root) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            throw new ArgumentException($"The name \"{name}\" leaves the folder.", nameof(name));
        return target;
    }

    private static void CreateFolders(string path, List<string> created)
    {
        if (Directory.Exists(path))
            return;
        if (Path.GetDirectoryName(path) is { } parent)
            CreateFolders(parent, created);
        Directory.CreateDirectory(path);
        created.Add(path);
    }

    private static void RemoveFolders(List<string> created)
    {
        foreach (string path in Enumerable.Reverse(created))
            TryDeleteFolder(path);
    }

    private static void TryDelete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // A leftover temporary file is harmless, and the first failure is the one to report.
        }
    }

    private static void TryDeleteFolder(string path)
    {
        try
        {
            Directory.Delete(path);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // Someone else has put a file there: it stays.
        }
    }
}
