using System.Runtime.CompilerServices;

namespace LureSim.Validation;

/// <summary>The source tree that the tests read and whose documents they write.</summary>
internal static class Repository
{
    /// <summary>Path of a file or folder in the source tree.</summary>
    public static string File(params string[] parts) => Path.Combine([Root(), .. parts]);

    private static string Root([CallerFilePath] string here = "")
    {
        foreach (string start in new[] { AppContext.BaseDirectory, here })
        {
            for (DirectoryInfo? d = new(Path.GetDirectoryName(start) ?? "."); d is not null; d = d.Parent)
            {
                if (System.IO.File.Exists(Path.Combine(d.FullName, "LureSim.sln"))) return d.FullName;
            }
        }

        throw new InvalidOperationException("The repository root was not found from the test assembly.");
    }
}
