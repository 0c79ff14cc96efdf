using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Text.Json;

namespace LureSim.Mutation;

/// <summary>Chooses mutants, builds them into one assembly, and runs the tests of their folder on each.</summary>
/// <param name="options">What was asked for.</param>
internal sealed class MutationRun(RunOptions options)
{
    // A mutant may take this many times as long as the right model, and some more on a busy machine (s).
    private const double TimeFactor = 6;
    private const double TimeAllowance = 60;

    // A mutant that ended the program without a test's name; tried again by the next run, in case the machine did it.
    private const string Ended = "the program ended";

    private readonly string root = Root();
    private readonly Lock gate = new();

    private string Stage => Path.Combine(root, "out", "mutation", "bin");

    private string ResultsFile => Path.Combine(root, "out", "mutation", "results.json");

    /// <summary>The whole run; 0 when it could be done, whatever survived.</summary>
    public int Run()
    {
        var schemata = new Schemata(root, Path.GetFileName(Path.GetDirectoryName(Path.TrimEndingDirectorySeparator(AppContext.BaseDirectory)))!);
        IReadOnlyList<MutantSite> sites = schemata.Sites(FolderTests.Folders);
        Dictionary<int, MutantSite> chosen = Choose(sites);
        Prepare();
        IReadOnlySet<int> built = schemata.Write(chosen, Path.Combine(Stage, "LureSim.dll"));
        Mutant[] mutants = [.. chosen.Where(c => built.Contains(c.Key)).OrderBy(c => c.Key).Select(c => Described(c.Key, c.Value))];
        Console.WriteLine($"{sites.Count} places, {chosen.Count} chosen, {built.Count} compile");

        List<MutantResult> results = [];
        if (options.Again)
        {
            results = JsonSerializer.Deserialize<List<MutantResult>>(File.ReadAllText(ResultsFile))!;
            results.RemoveAll(r => !mutants.Contains(r.Mutant));
            results.RemoveAll(r => r.End == MutantEnd.Survived || r.By == Ended);
            HashSet<int> done = [.. results.Select(r => r.Mutant.Number)];
            mutants = [.. mutants.Where(m => !done.Contains(m.Number))];
        }

        ConcurrentDictionary<string, double> limits = [];
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = options.Parallel };
        Parallel.ForEach(mutants.Select(m => m.Folder).Distinct(), parallel, folder =>
        {
            long start = Stopwatch.GetTimestamp();
            (MutantEnd end, string by) = Try(0, folder, double.PositiveInfinity);
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            if (end != MutantEnd.Survived) throw new InvalidOperationException($"{by} fails without a mutant.");
            limits[folder] = (TimeFactor * seconds) + TimeAllowance;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{folder}: {seconds:F0} s without a mutant"));
        });

        var clock = Stopwatch.StartNew();
        Parallel.ForEach(Partitioner.Create(mutants, EnumerablePartitionerOptions.NoBuffering), parallel, mutant =>
        {
            if (clock.Elapsed.TotalMinutes > options.Minutes) return;
            (MutantEnd end, string by) = Try(mutant.Number, mutant.Folder, limits[mutant.Folder]);
            lock (gate)
            {
                results.Add(new(mutant, end, by));
                File.WriteAllText(ResultsFile, JsonSerializer.Serialize(results));
                Console.WriteLine($"{end,-9} {mutant.Number,4} {mutant.File}:{mutant.Line} {mutant.Before} => {mutant.After} {by}");
            }
        });

        MutationPage.Write(Path.Combine(root, "docs", "mutation.md"), options, sites, results);
        return 0;
    }

    private static Mutant Described(int number, MutantSite site) => new(number, site.Folder, site.File, site.Line, site.Kind, OneLine(site.Node.ToString()), OneLine(site.After));

    private static string OneLine(string text) => string.Join(' ', text.Split((char[])[' ', '\n', '\r', '\t'], StringSplitOptions.RemoveEmptyEntries));

    // Every folder by its share of the places, at least five; the order of the numbers is mixed, so that a run cut short is spread as well.
    private Dictionary<int, MutantSite> Choose(IReadOnlyList<MutantSite> sites)
    {
        // Not for secrets: the same seed has to choose the same mutants.
#pragma warning disable CA5394
        var random = new Random(options.Seed);
        List<MutantSite> chosen = [.. sites.Where(s => s.Kind == MutantKind.Known)];
        foreach (string folder in FolderTests.Folders)
        {
            MutantSite[] here = [.. sites.Where(s => s.Folder == folder && s.Kind != MutantKind.Known)];
            random.Shuffle(here);
            chosen.AddRange(here.Take(Math.Max(5, (int)Math.Round((double)options.Mutants * here.Length / sites.Count))));
        }

        MutantSite[] mixed = [.. chosen.DistinctBy(s => s.Node)];
        random.Shuffle(mixed);
#pragma warning restore CA5394
        return mixed.Select((site, i) => (site, i)).ToDictionary(p => p.i + 1, p => p.site);
    }

    private void Prepare()
    {
        if (Directory.Exists(Stage)) Directory.Delete(Stage, recursive: true);
        foreach (string file in Directory.EnumerateFiles(AppContext.BaseDirectory, "*", SearchOption.AllDirectories))
        {
            string copy = Path.Combine(Stage, Path.GetRelativePath(AppContext.BaseDirectory, file));
            Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
            File.Copy(file, copy);
        }
    }

    private (MutantEnd End, string By) Try(int number, string folder, double seconds)
    {
        var start = new ProcessStartInfo("dotnet") { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in (string[])[Path.Combine(Stage, "LureSim.Mutation.dll"), "tests", .. FolderTests.Of(folder)]) start.ArgumentList.Add(argument);
        start.Environment[Schemata.Variable] = number.ToString(CultureInfo.InvariantCulture);
        using var process = Process.Start(start)!;
        Task<string> output = process.StandardOutput.ReadToEndAsync(), errors = process.StandardError.ReadToEndAsync();
        if (!process.WaitForExit(double.IsFinite(seconds) ? TimeSpan.FromSeconds(seconds) : Timeout.InfiniteTimeSpan))
        {
            process.Kill();
            process.WaitForExit();
            return (MutantEnd.TimedOut, "");
        }

        string last = output.Result.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).LastOrDefault() ?? "";
        return process.ExitCode switch
        {
            0 => (MutantEnd.Survived, ""),
            1 => (MutantEnd.Killed, last),
            _ when number == 0 => throw new InvalidOperationException(errors.Result),
            _ => (MutantEnd.Killed, Ended),
        };
    }

    private static string Root()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "LureSim.sln"))) return folder.FullName;
        }

        throw new InvalidOperationException("The program does not run inside the source tree.");
    }
}
