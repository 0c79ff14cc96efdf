using System.Text;

namespace LureSim.Workbench.Server;

/// <summary>Files of the pages, out of the assembly. There is no folder of them: a path from the browser is looked up in this list and nowhere else.</summary>
internal static class Assets
{
    private static readonly Dictionary<string, string> Types = new(StringComparer.Ordinal)
    {
        [".js"] = "text/javascript; charset=utf-8",
        [".css"] = "text/css; charset=utf-8",
        [".html"] = "text/html; charset=utf-8",
    };

    private static readonly Dictionary<string, byte[]> Files = typeof(Assets).Assembly.GetManifestResourceNames()
        .Where(name => name.StartsWith("web/", StringComparison.Ordinal))
        .ToDictionary(name => name["web/".Length..], Read, StringComparer.Ordinal);

    /// <summary>Names of all files.</summary>
    public static IEnumerable<string> Names => Files.Keys.Order(StringComparer.Ordinal);

    /// <summary>A file and its type; null for none of that name.</summary>
    /// <param name="name">Name without a folder.</param>
    public static (byte[] Content, string Type)? Find(string name) =>
        Files.TryGetValue(name, out byte[]? content) && Types.TryGetValue(Path.GetExtension(name), out string? type) ? (content, type) : null;

    /// <summary>A file as text.</summary>
    /// <param name="name">Its name.</param>
    /// <exception cref="InvalidOperationException">There is none.</exception>
    public static string Text(string name) => Files.TryGetValue(name, out byte[]? content) ? Encoding.UTF8.GetString(content) : throw new InvalidOperationException($"The program has lost {name}.");

    private static byte[] Read(string name)
    {
        using Stream stream = typeof(Assets).Assembly.GetManifestResourceStream(name)!;
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return copy.ToArray();
    }
}
