using System.Text.RegularExpressions;

namespace LureSim.Validation.Light;

/// <summary>Every citation key in the source of the optics stands in docs/REFERENCES.bib.</summary>
public partial class CitationTests
{
    [Fact]
    public void Every_key_is_in_the_bibliography()
    {
        var known = Entry().Matches(File.ReadAllText(Repository.File("docs", "REFERENCES.bib"))).Select(m => m.Groups[1].Value).ToHashSet();
        var cited = new[] { "Light", "Sight" }
            .SelectMany(area => Directory.EnumerateFiles(Repository.File("src", "LureSim", area), "*.cs"))
            .SelectMany(file => Key().Matches(File.ReadAllText(file)).Select(m => m.Value)).ToHashSet();
        Assert.True(cited.Count > 20);
        Assert.Empty(cited.Except(known));
    }

    [GeneratedRegex(@"@\w+\{([\w]+),")]
    private static partial Regex Entry();

    [GeneratedRegex(@"\b[a-z]{3,}(?:19|20)\d\d[a-z]{4,}\b")]
    private static partial Regex Key();
}
