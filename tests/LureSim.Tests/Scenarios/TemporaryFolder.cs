namespace LureSim.Tests.Scenarios;

/// <summary>A folder of its own for one test, removed afterwards.</summary>
internal sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("luresim-test-").FullName;

    public string Write(string name, byte[] content)
    {
        string path = System.IO.Path.Combine(Path, name);
        File.WriteAllBytes(path, content);
        return path;
    }

    public string Write(string name, string content) => Write(name, System.Text.Encoding.UTF8.GetBytes(content));

    /// <summary>Names of all files and folders inside, sorted, with "/" between the parts.</summary>
    public string[] Content() =>
        [.. Directory.EnumerateFileSystemEntries(Path, "*", SearchOption.AllDirectories).Select(entry => System.IO.Path.GetRelativePath(Path, entry).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
