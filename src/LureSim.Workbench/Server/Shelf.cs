using System.Text;
using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Workbench.Bench;

namespace LureSim.Workbench.Server;

/// <summary>Writes a file into a folder whole, or not at all.</summary>
/// <param name="folder">The folder.</param>
/// <param name="name">Name of the file.</param>
/// <param name="content">Its content.</param>
internal delegate void FileWriter(string folder, string name, ReadOnlyMemory<byte> content);

/// <summary>A scenario that the page may open.</summary>
/// <param name="Id">Its number, which is all that the browser knows of it.</param>
/// <param name="Name">Name for people.</param>
/// <param name="Path">Its path; null for an example of the program.</param>
internal sealed record ShelfFile(int Id, string Name, string? Path);

/// <summary>
/// The scenarios that the page may open, and the one folder that it may write into. The browser names files by number and never by path; files outside the folder,
/// links and files of other kinds are not on the shelf. Thread-safe.
/// </summary>
internal sealed class Shelf
{
    private const int MostFiles = 60;
    private const long LargestFile = 1_000_000;
    private const int LongestName = 60;

    private readonly Lock gate = new();
    private readonly List<ShelfFile> files = [];
    private readonly Dictionary<int, WorkBench> benches = [];
    private readonly UnitSystem units;
    private readonly FileWriter write;

    private Shelf(string folder, UnitSystem units, FileWriter write)
    {
        Folder = folder;
        this.units = units;
        this.write = write;
    }

    /// <summary>Where files are written.</summary>
    public string Folder { get; }

    /// <summary>Units of the words.</summary>
    public UnitSystem Units => units;

    /// <summary>The scenarios.</summary>
    public IReadOnlyList<ShelfFile> Files
    {
        get
        {
            lock (gate) return [.. files];
        }
    }

    /// <summary>A shelf with one file, which the reader has accepted.</summary>
    public static Shelf Of(string file, UnitSystem units, FileWriter write)
    {
        string path = Path.GetFullPath(file);
        var shelf = new Shelf(Path.GetDirectoryName(path)!, units, write);
        shelf.files.Add(new ShelfFile(0, Path.GetFileName(path), path));
        return shelf;
    }

    /// <summary>A shelf with the scenarios of a folder and the examples of the program.</summary>
    public static Shelf OfFolder(string folder, UnitSystem units, FileWriter write)
    {
        var shelf = new Shelf(Path.GetFullPath(folder), units, write);
        IEnumerable<FileInfo> found = Directory.Exists(folder)
            ? new DirectoryInfo(shelf.Folder).EnumerateFiles("*.yaml", new EnumerationOptions { IgnoreInaccessible = true, RecurseSubdirectories = false })
            : [];
        foreach (FileInfo file in found.Where(file => file.LinkTarget is null && file.Length <= LargestFile).OrderBy(file => file.Name, StringComparer.Ordinal).Take(MostFiles))
            shelf.files.Add(new ShelfFile(shelf.files.Count, file.Name, file.FullName));
        foreach (string example in Examples)
            shelf.files.Add(new ShelfFile(shelf.files.Count, $"Example: {Path.GetFileNameWithoutExtension(example).Replace('-', ' ')}", null));
        return shelf;
    }

    /// <summary>A scenario on the bench.</summary>
    /// <param name="id">Number of the file.</param>
    /// <param name="problem">Why it is not; empty where it is.</param>
    public WorkBench? Open(int id, out string problem)
    {
        problem = "";
        lock (gate)
        {
            if (benches.TryGetValue(id, out WorkBench? open)) return open;
            ShelfFile? file = files.FirstOrDefault(file => file.Id == id);
            if (file is null)
            {
                problem = "There is no such file.";
                return null;
            }

            WorkBench? bench;
            IReadOnlyList<ScenarioProblem> problems;
            if (file.Path is { } path)
            {
                bench = WorkBench.Read(path, units, out problems);
            }
            else
            {
                string text = Example(Examples[file.Id - (files.Count(f => f.Path is not null && f.Id < file.Id))]);
                ScenarioReading reading = ScenarioReader.ReadText(text, file.Name);
                problems = reading.Problems;
                bench = reading.Scenario is { } scenario ? new WorkBench(text, Path.Combine(Folder, "example.yaml"), scenario, units) : null;
            }

            if (bench is null)
            {
                problem = string.Join("\n", problems.Select(p => $"Line {p.Line}: {p.Message}; {p.Fix}."));
                return null;
            }

            return benches[id] = bench;
        }
    }

    /// <summary>Saves a question as a new scenario.</summary>
    /// <param name="bench">The scenario that it began with.</param>
    /// <param name="question">The question.</param>
    /// <param name="overwrite">True to write over a file of that name.</param>
    /// <returns>What to tell, and the new file; null where nothing was written.</returns>
    public (string Words, ShelfFile? File) Save(WorkBench bench, BenchQuestion question, bool overwrite)
    {
        string changes = string.Join(", ", question.Settings.Without(KnobIds.Retrieve, KnobIds.Bait, KnobIds.Head).Values.Select(pair => question.Knobs.First(knob => knob.Id == pair.Key)).Take(3)
            .Select(knob => knob.Stops[knob.Find(question.Settings[knob.Id]!, double.NaN)].Label));
        if (changes.Length == 0) changes = question.Notes.Count > 0 ? "with notes" : "copy";
        string title = Shortened($"{bench.Scenario.Title}, {changes}");
        string name = Named($"{Path.GetFileNameWithoutExtension(bench.Path)} {changes}") + ".yaml";
        string path = Path.Combine(Folder, name);
        var info = new FileInfo(path);
        if (string.Equals(path, Path.GetFullPath(bench.Path), StringComparison.OrdinalIgnoreCase)) return ("The file that is open is never written over; change something first.", null);
        if (info.LinkTarget is not null || Directory.Exists(path)) return ($"{name} is not a plain file; nothing was written.", null);
        if (info.Exists && !overwrite) return ($"There is a {name} already. Press Save again to write over it.", null);
        string text = bench.FileOf(question, title);
        if (ScenarioReader.ReadText(text, path).Scenario is null) return ("These settings do not go together; nothing was written.", null);
        try
        {
            write(Folder, name, Encoding.UTF8.GetBytes(text));
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return ($"It could not be written: {exception.Message}", null);
        }

        lock (gate)
        {
            ShelfFile? known = files.FirstOrDefault(file => file.Path == path);
            if (known is not null) benches.Remove(known.Id);
            ShelfFile saved = known ?? new ShelfFile(files.Count, name, path);
            if (known is null) files.Add(saved);
            return ($"Saved as {name}.", saved);
        }
    }

    /// <summary>Adds a new scenario to the folder; never over a file that is there.</summary>
    /// <param name="name">Name wanted.</param>
    /// <param name="text">The scenario.</param>
    /// <param name="problem">Why it was not written; empty where it was.</param>
    public ShelfFile? Add(string name, string text, out string problem)
    {
        problem = "";
        string stem = Named(Path.GetFileNameWithoutExtension(name)), free = stem + ".yaml";
        for (int i = 2; File.Exists(Path.Combine(Folder, free)) || Directory.Exists(Path.Combine(Folder, free)); i++) free = string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{stem}-{i}.yaml");
        try
        {
            write(Folder, free, Encoding.UTF8.GetBytes(text));
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            problem = exception.Message;
            return null;
        }

        lock (gate)
        {
            var added = new ShelfFile(files.Count, free, Path.Combine(Folder, free));
            files.Add(added);
            return added;
        }
    }

    /// <summary>A name of a file: small letters, digits and hyphens, nothing else.</summary>
    /// <param name="text">Any text.</param>
    internal static string Named(string text)
    {
        var name = new StringBuilder();
        foreach (char letter in text.ToLowerInvariant())
        {
            if (letter is (>= 'a' and <= 'z') or (>= '0' and <= '9')) name.Append(letter);
            else if (name.Length > 0 && name[^1] != '-') name.Append('-');
            if (name.Length >= LongestName) break;
        }

        string done = name.ToString().Trim('-');
        return done.Length == 0 ? "spot" : done;
    }

    private static string[] Examples { get; } = [.. typeof(Shelf).Assembly.GetManifestResourceNames().Where(name => name.StartsWith("examples/", StringComparison.Ordinal)).Order(StringComparer.Ordinal)];

    private static string Example(string name)
    {
        using Stream stream = typeof(Shelf).Assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException($"The program has lost {name}.");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }

    private static string Shortened(string title) => title.Length <= 120 ? title : title[..119] + "…";
}
