namespace LureSim.Tests.Scenarios;

/// <summary>Files of the source tree that tests hold against the code.</summary>
internal static class Repository
{
    private static readonly Lazy<string> RootPath = new(() =>
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (System.IO.File.Exists(Path.Combine(folder.FullName, "LureSim.sln")))
                return folder.FullName;
        }

        throw new InvalidOperationException("The tests do not run inside the source tree.");
    });

    public static string Root => RootPath.Value;

    public static string File(params string[] parts) => Path.Combine([Root, .. parts]);

    /// <summary>The demo scenarios.</summary>
    public static string[] Scenarios() => Directory.Exists(File("scenarios")) ? [.. Directory.GetFiles(File("scenarios"), "*.yaml").Order(StringComparer.Ordinal)] : [];
}
