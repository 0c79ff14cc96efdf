using System.Globalization;
using System.Text;

namespace LureSim.Fuzz;

/// <summary>Counts of a run, its slowest draws and what it found; takes reports from many threads.</summary>
internal sealed class FuzzTally(FuzzOptions options)
{
    // What takes longer is told as it comes (s).
    private const double Long = 20;

    private const int MostKept = 40;
    private const int SlowestKept = 8;

    // Halves of characters, which no file can hold, are replaced.
    private static readonly UTF8Encoding Lenient = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: false);

    private readonly Lock gate = new();
    private readonly SortedDictionary<string, int> counts = new(StringComparer.Ordinal);
    private readonly List<(double Seconds, string What)> slowest = [];
    private readonly Dictionary<string, int> complaints = [];
    private readonly SortedDictionary<string, (int Times, double Total)> spent = new(StringComparer.Ordinal);
    private double seconds;
    private int draws;

    /// <summary>Number of draws that were not answered well.</summary>
    public int Finds { get; private set; }

    /// <summary>Counts a draw of a kind.</summary>
    public void Count(string kind)
    {
        lock (gate)
            counts[kind] = counts.GetValueOrDefault(kind) + 1;
    }

    /// <summary>Counts the time that a command took, and says at once what took long.</summary>
    /// <param name="number">Number of the draw.</param>
    /// <param name="command">The command.</param>
    /// <param name="time">Time that it took.</param>
    /// <param name="about">What is particular about the draw, where something is.</param>
    public void Time(int number, string command, TimeSpan time, string about)
    {
        lock (gate)
        {
            (int times, double total) = spent.GetValueOrDefault(command);
            spent[command] = (times + 1, total + time.TotalSeconds);
            foreach (double bound in (double[])[ReadCheck.Limit.TotalSeconds, Long])
            {
                if (time.TotalSeconds > bound)
                    counts[$"{command}: over {bound:0} s"] = counts.GetValueOrDefault($"{command}: over {bound:0} s") + 1;
            }

            if (time.TotalSeconds > Long)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"LONG {number} ({command}{(about.Length > 0 ? $": {about}" : "")}): {time.TotalSeconds:0} s"));
        }
    }

    /// <summary>Takes a draw.</summary>
    /// <param name="number">Its number.</param>
    /// <param name="kind">What it was counted as.</param>
    /// <param name="time">Time that it took.</param>
    /// <param name="wrong">What is wrong with its answer.</param>
    /// <param name="input">The input, for the folder of finds.</param>
    /// <param name="about">What is particular about it, where something is.</param>
    public void Add(int number, string kind, TimeSpan time, IReadOnlyList<string> wrong, Func<string> input, string about = "")
    {
        lock (gate)
        {
            draws++;
            seconds += time.TotalSeconds;
            counts[kind] = counts.GetValueOrDefault(kind) + 1;
            if (slowest.Count < SlowestKept || time.TotalSeconds > slowest[^1].Seconds)
            {
                slowest.Add((time.TotalSeconds, string.Create(CultureInfo.InvariantCulture, $"number {number}, {kind}{(about.Length > 0 ? $": {about}" : "")}")));
                slowest.Sort((one, other) => other.Seconds.CompareTo(one.Seconds));
                if (slowest.Count > SlowestKept)
                    slowest.RemoveAt(SlowestKept);
            }

            if (wrong.Count == 0)
            {
                if (time.TotalSeconds > options.Keep)
                    Write($"slow, {kind}: {time.TotalSeconds:0.0} s", input);
                return;
            }

            Finds++;
            foreach (string complaint in wrong)
            {
                // Finds of one kind are told by their first words.
                string begin = complaint[..Math.Min(complaint.Length, 60)];
                complaints[begin] = complaints.GetValueOrDefault(begin) + 1;
                if (complaints[begin] <= 3)
                    Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"FOUND {number} ({kind}{(about.Length > 0 ? $": {about}" : "")}): {complaint}"));
            }

            if (Finds <= MostKept)
                Write($"{kind}: {wrong[0].ReplaceLineEndings(" ")}", input);
        }

        void Write(string why, Func<string> text)
        {
            Directory.CreateDirectory(options.Finds);
            string file = Path.Combine(options.Finds, string.Create(CultureInfo.InvariantCulture, $"{options.Mode}-{options.Seed}-{number}.yaml"));
            File.WriteAllText(file, string.Create(CultureInfo.InvariantCulture, $"# {options.Mode} seed {options.Seed} number {number}, {why}\n{text()}"), Lenient);
        }
    }

    /// <summary>Prints the counts.</summary>
    public void Print(TimeSpan elapsed)
    {
        lock (gate)
        {
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{options.Mode}: {draws:N0} draws from seed {options.Seed}, number {options.From} on, in {elapsed.TotalSeconds:0} s; {1000 * seconds / Math.Max(draws, 1):0.00} ms each; {Finds} not answered well"));
            foreach ((string kind, int count) in counts)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {kind}: {count:N0}"));
            foreach ((string command, (int times, double total)) in spent)
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {command}: {times:N0} times, {total / times:0.00} s each{(options.Threads == 1 ? " of processor time" : "")}"));
            Console.WriteLine("  slowest: " + string.Join("; ", slowest.Select(slow => string.Create(CultureInfo.InvariantCulture, $"{slow.Seconds:0.00} s ({slow.What})"))));
            foreach ((string complaint, int count) in complaints.OrderByDescending(pair => pair.Value))
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  FOUND {count:N0} times: {complaint}"));
        }
    }
}
