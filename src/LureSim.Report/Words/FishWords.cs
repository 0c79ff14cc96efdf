namespace LureSim.Report.Words;

/// <summary>Names of fish as anglers say them.</summary>
public static class FishWords
{
    // Key in the table of fish eyes, everyday name.
    private static readonly Dictionary<string, string> Names = new(StringComparer.Ordinal)
    {
        ["red drum"] = "redfish",
        ["spotted seatrout"] = "speckled trout",
        ["common snook"] = "snook",
    };

    /// <summary>The everyday name of a fish, such as "redfish"; the name itself where there is no other.</summary>
    /// <param name="name">Name as the table of fish eyes has it.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is null.</exception>
    public static string Everyday(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
        return Names.GetValueOrDefault(name, name);
    }
}
