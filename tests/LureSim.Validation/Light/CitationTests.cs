using System.Text.RegularExpressions;

namespace LureSim.Validation.Light;

/// <summary>Every citation key in the source of the optics stands in docs/REFERENCES.bib.</summary>
public partial class CitationTests
{
    [Fact]
    public void Every_key_is_in_the_bibliography()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "LureSim.sln")))
            folder = folder.Parent;
        Assert.NotNull(folder);
        var known = Entry().Matches(File.ReadAllText(Path.Combine(folder.FullName, "docs", "REFERENCES.bib"))).Select(m => m.Groups[1].Value).ToHashSet();
        var cited = new[] { "Light", "Sight" }
            .SelectMany(area => Directory.EnumerateFiles(Path.Combine(folder.FullName, "src", "LureSim", area), "*.cs"))
            .SelectMany(file => Key().Matches(File.ReadAllText(file)).Select(m => m.Value)).ToHashSet();
        Assert.True(cited.Count > 20);
        Assert.Empty(cited.Except(known));
    }

    [GeneratedRegex(@"@\w+\{([\w]+),")]
    private static partial Regex Entry();

    [GeneratedRegex(@"\b[a-z]{3,}(?:19|20)\d\d[a-z]{4,}\b")]
    private static partial Regex Key();
}
