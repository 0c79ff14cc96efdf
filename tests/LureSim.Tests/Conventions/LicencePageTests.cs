using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;
using LureSim.Tests.Scenarios;

namespace LureSim.Tests.Conventions;

/// <summary>
/// The page of the licences of every package in the lock files, read from the packages themselves. LURESIM_UPDATE_DOCS=1 writes it anew.
/// </summary>
public class LicencePageTests
{
    private static readonly string Page = Repository.File("docs", "licences.md");

    private static readonly string[] Permissive = ["MIT", "MIT-0", "Apache-2.0", "BSD-3-Clause"];

    // Two packages of old name an address instead of a licence; what stands there was read.
    private static readonly Dictionary<string, string> ByAddress = new(StringComparer.Ordinal)
    {
        ["https://raw.githubusercontent.com/aspnet/Home/2.0.0/LICENSE.txt"] = "Apache-2.0",
        ["https://raw.githubusercontent.com/xunit/xunit/master/license.txt"] = "Apache-2.0",
    };

    // Packages that come as a file of text have it named by what only that licence says.
    private static readonly (string Sentence, string Licence)[] BySentence =
    [
        ("Permission is hereby granted, free of charge, to any person obtaining a copy", "MIT"),
        ("Apache License, Version 2.0", "Apache-2.0"),
    ];

    private sealed record Package(string Id, string Version, string Licence, bool Ships);

    [Fact]
    public void The_page_of_licences_is_that_of_the_locked_packages()
    {
        string page = Text(Packages());
        if (Environment.GetEnvironmentVariable("LURESIM_UPDATE_DOCS") == "1") File.WriteAllText(Page, page, new UTF8Encoding(false));
        Assert.True(File.Exists(Page) && File.ReadAllText(Page) == page, "docs/licences.md is not that of the lock files; write it anew with LURESIM_UPDATE_DOCS=1.");
    }

    [Fact]
    public void What_ships_is_under_permissive_licences() =>
        Assert.DoesNotContain(Packages(), package => package.Ships && !Permissive.Contains(package.Licence));

    [Fact]
    public void Every_project_is_locked()
    {
        IEnumerable<string> projects = Directory.EnumerateFiles(Repository.File(), "*.csproj", SearchOption.AllDirectories).Where(file => !file.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal));
        Assert.All(projects, project => Assert.True(File.Exists(Path.Combine(Path.GetDirectoryName(project)!, "packages.lock.json")), $"{project} has no lock file"));
    }

    private static List<Package> Packages()
    {
        Dictionary<(string Id, string Version), bool> found = [];
        foreach (string file in Directory.EnumerateFiles(Repository.File(), "packages.lock.json", SearchOption.AllDirectories).Where(file => !file.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}", StringComparison.Ordinal)))
        {
            bool ships = Path.GetRelativePath(Repository.File(), file).StartsWith("src", StringComparison.Ordinal);
            using var document = JsonDocument.Parse(File.ReadAllText(file));
            foreach (JsonProperty package in document.RootElement.GetProperty("dependencies").EnumerateObject().SelectMany(target => target.Value.EnumerateObject()))
            {
                if (package.Value.GetProperty("type").GetString() == "Project")
                    continue;
                (string, string) key = (package.Name, package.Value.GetProperty("resolved").GetString()!);

                // Two help to build and are in no package.
                bool tool = package.Name is "MinVer" or "Microsoft.CodeAnalysis.PublicApiAnalyzers";
                found[key] = found.GetValueOrDefault(key) || (ships && !tool);
            }
        }

        return [.. found.OrderBy(pair => pair.Key.Id, StringComparer.OrdinalIgnoreCase).ThenBy(pair => pair.Key.Version, StringComparer.Ordinal).Select(pair => new Package(pair.Key.Id, pair.Key.Version, Licence(pair.Key.Id, pair.Key.Version), pair.Value))];
    }

    private static string Licence(string id, string version)
    {
        string root = Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } own ? own : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        string folder = Path.Combine(root, id.ToLowerInvariant(), version.ToLowerInvariant());
        XElement metadata = XDocument.Load(Directory.EnumerateFiles(folder, "*.nuspec").Single()).Root!.Elements().First(element => element.Name.LocalName == "metadata");
        XElement? licence = metadata.Elements().FirstOrDefault(element => element.Name.LocalName == "license");
        if (licence?.Attribute("type")?.Value == "expression")
            return licence.Value.Trim();
        if (licence is not null)
        {
            string text = string.Join(' ', File.ReadAllText(Path.Combine(folder, licence.Value.Trim())).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
            return BySentence.FirstOrDefault(entry => text.Contains(entry.Sentence, StringComparison.Ordinal)).Licence ?? throw new InvalidOperationException($"{id} {version}: its licence file is not known.");
        }

        string address = metadata.Elements().FirstOrDefault(element => element.Name.LocalName == "licenseUrl")?.Value.Trim() ?? "";
        return ByAddress.GetValueOrDefault(address) ?? throw new InvalidOperationException($"{id} {version} names no licence, but {address}.");
    }

    private static string Text(List<Package> packages)
    {
        var page = new StringBuilder("""
            # Licences of the packages

            Written by `LicencePageTests` from the lock files and the packages themselves; `LURESIM_UPDATE_DOCS=1` writes it anew. LureSim itself is under the MIT licence, its bundled font under its own ([rendering.md](decisions/rendering.md)).

            ## In the program and the libraries

            """);
        page.Append('\n');
        Table(page, packages.Where(package => package.Ships));
        page.Append("\n## For building, testing and measuring alone\n\n");
        Table(page, packages.Where(package => !package.Ships));
        return page.ToString();
    }

    private static void Table(StringBuilder page, IEnumerable<Package> packages)
    {
        page.Append("| Package | Version | Licence |\n| --- | --- | --- |\n");
        foreach (Package package in packages)
            page.Append(CultureInfo.InvariantCulture, $"| {package.Id} | {package.Version} | {package.Licence} |\n");
    }
}
