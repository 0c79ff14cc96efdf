using LureSim.Cli.Hosting;
using Spectre.Console;

namespace LureSim.Cli.Output;

/// <summary>
/// Writes sets of files all or nothing. A folder that is new, or holds nothing but files of the set, is written as a whole (<see cref="FolderSwap"/>); in any
/// other each file goes under a temporary name beside its place, and all are moved when all are complete (<see cref="UnfinishedWrite"/>). On failure or
/// cancellation the folder is as it was; a file that was there is never missing or half written, wherever the process is killed. Two processes that write into
/// one folder do so one after the other (<see cref="FolderLock"/>).
/// </summary>
internal static class AtomicFiles
{
    /// <summary>End of every temporary name: what has it was left by a process that died, and goes with the next writing.</summary>
    public const string Mark = ".luresim-tmp";

    /// <summary>Fails early, before long work, where a folder cannot be or nothing can be written into it; leaves no trace.</summary>
    /// <exception cref="CommandFailedException">The path names a file, or writing is refused.</exception>
    public static void RequireFolder(string? path, CancellationToken cancellation = default)
    {
        if (path is null)
            return;
        string root = Path.GetFullPath(path);
        for (string? part = root; part is not null; part = Path.GetDirectoryName(part))
        {
            if (File.Exists(part))
                throw new CommandFailedException(ExitCode.Failed, $"Cannot write into {path}: {part} is a file, not a folder.");
        }

        // Whoever writes there now, or died while writing, is done with first.
        using var turn = FolderLock.Take(root, cancellation);
        var created = new List<string>();
        try
        {
            UnfinishedWrite.Finish(root, []);
            CreateFolders(root, created);
            using var trial = new FileStream(Path.Combine(root, "." + Path.GetRandomFileName() + Mark), FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.DeleteOnClose);
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

        using var turn = FolderLock.Take(root, cancellation);
        UnfinishedWrite.Finish(root, targets);
        FolderSwap.Tidy(root);
        if (files.Count == 0 || !FolderSwap.TryWrite(root, targets, files, cancellation))
            WriteEach(root, targets, files, cancellation);
    }

    /// <summary>Writes a file that must not be there yet, down to the disk.</summary>
    public static void WriteNew(string path, ReadOnlyMemory<byte> content)
    {
        using var stream = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None);
        stream.Write(content.Span);
        stream.Flush(flushToDisk: true);
    }

    private static void WriteEach(string root, string[] targets, IReadOnlyList<OutputFile> files, CancellationToken cancellation)
    {
        string suffix = "." + Path.GetRandomFileName() + Mark;
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
                WriteNew(path, files[index].Content);
            }

            cancellation.ThrowIfCancellationRequested();

            // Moves can still fail half-way (a folder in a file's place, rights): keep copies to put back.
            string?[] kept = [.. targets.Select(target => File.Exists(target) ? target + ".old" + suffix : null)];
            for (int index = 0; index < targets.Length; index++)
            {
                if (kept[index] is not { } backup)
                    continue;
                temporary.Add(backup);
                File.Copy(targets[index], backup);
            }

            // One move is all or nothing by itself.
            if (targets.Length > 1)
                UnfinishedWrite.Begin(root, suffix, targets);
            for (int index = 0; index < targets.Length; index++)
            {
                File.Move(targets[index] + suffix, targets[index], overwrite: true);
                backups.Add((targets[index], kept[index]));
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
            UnfinishedWrite.End(root);
            if (!done)
                RemoveFolders(created);
        }
    }

    /// <summary>Full path of a file by its name in a folder.</summary>
    /// <exception cref="ArgumentException">The name leaves the folder.</exception>
    public static string Target(string root, string name)
    {
        string target = Path.GetFullPath(Path.Combine(root, name));
        if (name.Length == 0 || Path.IsPathRooted(name) || !target.StartsWith(Path.TrimEndingDirectorySeparator(root) + Path.DirectorySeparatorChar, StringComparison.Ordinal))
            throw new ArgumentException($"The name \"{name}\" leaves the folder.", nameof(name));
        return target;
    }

    /// <summary>Creates a folder with those that it lies in, and notes which were not there.</summary>
    public static void CreateFolders(string path, List<string> created)
    {
        if (Directory.Exists(path))
            return;
        if (Path.GetDirectoryName(path) is { } parent)
            CreateFolders(parent, created);
        Directory.CreateDirectory(path);
        created.Add(path);
    }

    /// <summary>Removes folders that are empty, the innermost first.</summary>
    public static void RemoveFolders(List<string> created)
    {
        foreach (string path in Enumerable.Reverse(created))
            TryDeleteFolder(path);
    }

    /// <summary>Deletes a file where that can be done.</summary>
    public static void TryDelete(string path)
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

    /// <summary>Deletes a folder with all in it where that can be done.</summary>
    public static void TryDeleteTree(string path)
    {
        try
        {
            if (Directory.Exists(path))
                Directory.Delete(path, recursive: true);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            // What is left has a temporary name and goes with the next writing.
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
