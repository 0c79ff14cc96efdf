using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;
using System.Text.RegularExpressions;
using LureSim.Cli;
using LureSim.Cli.Hosting;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Scenarios;

namespace LureSim.Fuzz;

/// <summary>The runs: each draw is made of the seed and its own number, so that any of them can be seen again.</summary>
internal static class Fuzzer
{
    // Commands that compute, about as often as they are used; each with what it is given besides the scenario.
    private static readonly (string Command, int Share, string[] Options)[] Commands =
    [
        ("plan", 12, ["--samples", "0"]), ("plan", 1, ["--samples", "2", "--pdf"]), ("trip", 3, ["--samples", "0"]), ("tide", 3, []), ("ask", 5, ["--samples", "0", "--json"]), ("retrieve", 1, ["--samples", "0", "--runs", "12"]), ("action", 2, []),
        ("teach", 3, []), ("path", 7, ["--samples", "0", "--csv"]), ("fall", 3, ["--samples", "0"]), ("colours", 3, ["--samples", "0"]), ("compare", 2, ["--json"]), ("card", 3, ["--samples", "0"]),
    ];

    // Most draws are small, so that thousands are computed in an hour.
    private const double UsualShare = 0.02, ExtremeShare = 0.06;

    // Pictures are of pixels in one draw of so many; what they show is in their other form, as text that is looked through.
    private const int PixelsEvery = 10;

    /// <summary>Commands of <c>runs</c>, by name.</summary>
    public static IReadOnlyList<string> Computing { get; } = [.. Commands.Select(entry => entry.Command).Distinct()];

    /// <summary>Runs what is asked for; the number of finds.</summary>
    public static int Run(FuzzOptions options)
    {
        var tally = new FuzzTally(options);
        string[] seeds = [.. Directory.EnumerateFiles(Path.Combine(AppContext.BaseDirectory, "Scenarios"), "*.yaml").Order(StringComparer.Ordinal).Select(File.ReadAllText)];
        IReadOnlyList<(EndsOfRanges.End End, string[] Command)> pairs = options.Mode == "ends" ? EndsOfRanges.Pairs : [];
        if (options.Mode == "ends")
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"ends: {pairs.Count:N0} pairs"));
            options = options with { Count = Math.Min(options.Count, pairs.Count - options.From) };
        }

        long start = TimeProvider.System.GetTimestamp();
        int next = options.From - 1;
        DirectoryInfo own = Directory.CreateTempSubdirectory("luresim-fuzz");
        string home = Directory.GetCurrentDirectory();
        options = options with { Finds = Path.GetFullPath(options.Finds) };

        // A run that is ended from outside says what it has.
        using var ended = PosixSignalRegistration.Create(PosixSignal.SIGTERM, _ => tally.Print(TimeProvider.System.GetElapsedTime(start)));
        try
        {
            // Whatever a draw writes into the folder that it stands in goes with it.
            Directory.SetCurrentDirectory(own.FullName);
            Thread[] threads = [.. Enumerable.Range(0, options.Threads).Select(_ => new Thread(Work, 16 << 20))];
            foreach (Thread thread in threads)
                thread.Start();
            foreach (Thread thread in threads)
                thread.Join();
        }
        finally
        {
            Directory.SetCurrentDirectory(home);
            own.Delete(recursive: true);
        }

        tally.Print(TimeProvider.System.GetElapsedTime(start));
        return tally.Finds;

        void Work()
        {
            while (Interlocked.Increment(ref next) is var number && number < options.From + options.Count && TimeProvider.System.GetElapsedTime(start).TotalSeconds < options.Seconds)
            {
                var draws = new Draws(options.Seed, number);
                string folder = Path.Combine(own.FullName, number.ToString(CultureInfo.InvariantCulture));
                switch (options.Mode)
                {
                    case "reads":
                        Read(draws, number, seeds, tally);
                        break;
                    case "runs":
                        Compute(draws, number, folder, tally, alone: options.Threads == 1);
                        break;
                    case "ends" when !Regex.IsMatch($"{pairs[number].Command[0]} at {pairs[number].End.Name}", options.Only):
                        break;
                    case "ends":
                        (EndsOfRanges.End end, string[] command) = pairs[number];
                        Call(command, end.Small(command[0]), end.Name, number, folder, tally, alone: options.Threads == 1);
                        break;
                    case "knobs":
                        Turn(draws, number, tally);
                        break;
                    default:
                        Line(draws, number, seeds, folder, tally);
                        break;
                }
            }
        }
    }

    private static void Read(Draws draws, int number, string[] seeds, FuzzTally tally)
    {
        string text = new TextMutator(draws, seeds).Next();
        IReadOnlyList<string> wrong = ReadCheck.Complaints(text, out ScenarioReading? reading, out TimeSpan time);
        tally.Add(number, reading?.IsValid == true ? "read" : "refused", time, wrong, () => text);
    }

    private static void Compute(Draws draws, int number, string folder, FuzzTally tally, bool alone)
    {
        int at = draws.Below(Commands.Sum(entry => entry.Share));
        (string command, _, string[] more) = Commands.First(entry => (at -= entry.Share) < 0);
        DrawSize size = draws.Unit() switch { < UsualShare => DrawSize.Usual, < UsualShare + ExtremeShare => DrawSize.Extreme, _ => DrawSize.Small };
        string text = new GrammarDraw(draws, size, command is "tide" or "compare" ? [command] : []).Accepted(out int tries);
        for (int i = 0; i < tries; i++)
            tally.Count("texts read on the way");
        tally.Count($"size: {size}");
        Call([command, .. more, .. draws.Chance(0.5) ? (string[])["--units", "metric"] : []], text, "", number, folder, tally, alone);
    }

    private static void Turn(Draws draws, int number, FuzzTally tally)
    {
        string text = new GrammarDraw(draws, draws.Chance(0.5) ? DrawSize.Small : DrawSize.Extreme).Accepted(out _);
        UnitSystem units = draws.Chance(0.5) ? UnitSystem.Us : UnitSystem.Metric;
        long start = TimeProvider.System.GetTimestamp();
        IReadOnlyList<string> wrong = KnobCheck.Complaints(text, units, draws);
        tally.Add(number, "turned", TimeProvider.System.GetElapsedTime(start), wrong, () => text);
    }

    // A scenario through a command, as a user calls it. Where it is alone in the process, its time is that of the processors, which no other work of the machine lengthens.
    private static void Call(string[] line, string text, string about, int number, string folder, FuzzTally tally, bool alone)
    {
        string command = line[0];
        Directory.CreateDirectory(folder);
        string file = Path.Combine(folder, "drawn.yaml");
        File.WriteAllBytes(file, Encoding.UTF8.GetBytes(text));
        string written = Path.Combine(folder, "out");
        TimeSpan before = Environment.CpuUsage.TotalTime;
        CommandOutcome outcome = CommandCheck.Run([command, file, .. line[1..], "--out", written], new Pipeline { Pictures = number % PixelsEvery == 0 ? SheetOutputs.Png | SheetOutputs.Svg : SheetOutputs.Svg }, written);
        List<string> wrong = [.. outcome.Complaints];
        TimeSpan time = alone ? Environment.CpuUsage.TotalTime - before : outcome.Time;
        tally.Time(number, command, time, about);
        if (outcome.Code == ExitCode.Failed)
            wrong.Add($"fails: {outcome.Told.ReplaceLineEndings(" ")}");
        if (outcome.Code == ExitCode.Numerical)
            tally.Count($"{command}: {outcome.Told.Split('\n')[0]}");
        string ended = outcome.Code switch { ExitCode.Ok => "answered", ExitCode.Usage => "does not fit the scenario", ExitCode.Numerical => "gave up in words", _ => "failed" };
        tally.Add(number, $"{command}: {ended}", time, wrong, () => text, about);
        Directory.Delete(folder, recursive: true);
    }

    private static void Line(Draws draws, int number, string[] seeds, string folder, FuzzTally tally)
    {
        Directory.CreateDirectory(folder);
        string file = Path.Combine(folder, "spot.yaml"), bad = Path.Combine(folder, "bad.yaml"), written = Path.Combine(folder, "out");
        File.WriteAllText(file, draws.Of(seeds));
        File.WriteAllBytes(bad, Encoding.UTF8.GetBytes(draws.Chance(0.5) ? new TextMutator(draws, seeds).Next() : "title: bad\nspot:\n  depth: 6\n"));
        IReadOnlyList<string> arguments = new CommandLineDraw(draws, [file, file, file, bad, Path.Combine(folder, "nowhere.yaml"), folder], written).Next();
        CommandOutcome outcome = CommandCheck.Run(arguments, new NoPipeline(), null);
        List<string> wrong = [.. outcome.Complaints];
        if (outcome.Code == ExitCode.Usage && Directory.Exists(written) && Directory.EnumerateFiles(written, "*", SearchOption.AllDirectories).Any())
            wrong.Add("refuses the command line and writes all the same");
        string ended = outcome.Code switch { ExitCode.Ok => "answered", ExitCode.Usage => "refused", ExitCode.Numerical => "understood", ExitCode.Failed => "could not write", _ => "failed" };
        tally.Add(number, ended, outcome.Time, wrong, () => "# " + string.Join(' ', arguments.Select(argument => $"\"{argument.ReplaceLineEndings("\\n")}\"")) + "\n");
        Directory.Delete(folder, recursive: true);
    }
}
