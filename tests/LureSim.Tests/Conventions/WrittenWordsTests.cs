using System.Text.RegularExpressions;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Conventions;

/// <summary>What is written for users in the program and its pages, read where it stands: words that were replaced do not come back.</summary>
public partial class WrittenWordsTests
{
    // What people once read and should not read again, anywhere.
    [GeneratedRegex(
        @"\bmend(s|ed|ing)?\b|splash-?down|\bmedian depth|\bmiddle depth|open bail|(?<!\.)\bdraws\b(?! (it|you|plates|the (card|picture|plates|rig)))|just[- ]noticeable|\bmakes? it out\b|\bmade out\b|\bbait fish\b|\b(up|down)-current|square across|reference direction|hangs? below the rod|stand-in eye|hardly swims|computation part\b|\bclearness\b|\bnear by\b|\bpupils?\b|best of the box|\b(of this|in the|one of the) box\b|twitchbait|\bgap in the\b|other way round|not reachable|count-down table|\bplods\b|drives the spread|rank correlation|the way of one lure|\bthe way divided|match or exceed|being attacked|\bper cent\b|nothing found beyond|at the longest",
        RegexOptions.IgnoreCase)]
    private static partial Regex Replaced();

    // Names that a scenario or a folder may hold, and what people type: they are read, not said.
    private static readonly string[] Names =
    [
        "hard twitchbait", "hard jerkbait, twitchbait, hard jerk bait, suspending jerkbait", "small bait fish", "large bait fish", "being attacked",
        "small baitfish, baitfish, bait fish, minnow, minnows, glass minnows, finger mullet", "bail open, open bail, free spool, slack", "water-map-draws", "draws.csv",
    ];

    public static TheoryData<string> Sources => [.. Files("src", "*.cs").Where(file => Shown(file)).Select(Relative)];

    public static TheoryData<string> Pages =>
    [
        .. new[] { "README.md", "docs/guide.md", "docs/teaching.md", "docs/workbench.md", "docs/rigging.md", "docs/library.md" },
        .. Files("src", "*.liquid").Concat(Files("src/LureSim.Workbench/web", "*.*")).Concat(Files("src/LureSim.Workbench/lessons", "*.*")).Select(Relative),
    ];

    [Theory]
    [MemberData(nameof(Sources))]
    public void Texts_of_the_program_have_no_replaced_words(string file)
    {
        foreach (string line in File.ReadLines(Repository.File(file)).Where(line => !line.TrimStart().StartsWith("//", StringComparison.Ordinal)))
        {
            foreach (Match text in Literal().Matches(line))
            {
                string said = Hole().Replace(text.Value[1..^1], "");
                Assert.False(!Names.Contains(said) && Replaced().IsMatch(said), $"\"{Replaced().Match(said).Value}\" in: {said}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Pages))]
    public void Pages_have_no_replaced_words(string file)
    {
        bool code = false;
        foreach (string line in File.ReadLines(Repository.File(file)))
        {
            if (line.StartsWith("```", StringComparison.Ordinal)) code = !code;
            string said = Code().Replace(line, "");
            Assert.False(!code && !line.TrimStart().StartsWith("//", StringComparison.Ordinal) && Replaced().IsMatch(said), $"\"{Replaced().Match(said).Value}\" in: {said}");
        }
    }

    // The engine says nothing to users but in its data.
    private static bool Shown(string file) => Relative(file).StartsWith("src/LureSim.", StringComparison.Ordinal);

    private static string Relative(string file) => Path.GetRelativePath(Repository.Root, file).Replace('\\', '/');

    private static IEnumerable<string> Files(string folder, string pattern) => Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), pattern, SearchOption.AllDirectories)
        .Where(file => Relative(file).Split('/') is var parts && !parts.Contains("obj") && !parts.Contains("bin")).Order(StringComparer.Ordinal);

    [GeneratedRegex("\"(?:[^\"\\\\]|\\\\.)*\"")]
    private static partial Regex Literal();

    [GeneratedRegex(@"\{[^{}]*\}")]
    private static partial Regex Hole();

    [GeneratedRegex("`[^`]*`")]
    private static partial Regex Code();
}
