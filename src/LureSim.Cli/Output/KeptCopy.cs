using LureSim.Cli.Hosting;

namespace LureSim.Cli.Output;

/// <summary>Writes a file over an old one, of which a copy is kept beside it.</summary>
internal static class KeptCopy
{
    /// <summary>Writes a text; a file that was there is kept as NAME.bak, NAME.bak2 and so on, none of which is ever overwritten.</summary>
    /// <param name="path">The file.</param>
    /// <param name="text">Its new content.</param>
    /// <param name="cancellation">Stops the writing; nothing is left then.</param>
    /// <returns>Path of the copy; null where there was no file.</returns>
    /// <exception cref="CommandFailedException">The file cannot be written; it is as it was.</exception>
    public static string? Write(string path, string text, CancellationToken cancellation)
    {
        string full = Path.GetFullPath(path);
        string? copy = null;
        try
        {
            if (File.Exists(full))
            {
                copy = path + ".bak";
                for (int i = 2; File.Exists(copy); i++) copy = $"{path}.bak{i}";
                File.Copy(full, copy, overwrite: false);
            }

            AtomicFiles.Write(Path.GetDirectoryName(full)!, [OutputFile.Text(Path.GetFileName(full), text)], cancellation);
            return copy;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new CommandFailedException(ExitCode.Failed, $"Cannot write {path}: {exception.Message} Check the folder and the rights; nothing was changed.");
        }
    }
}
