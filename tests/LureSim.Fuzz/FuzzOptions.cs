using System.Globalization;

namespace LureSim.Fuzz;

/// <summary>What a run is asked for.</summary>
/// <param name="Mode">reads, runs, ends, knobs, lines or soak.</param>
/// <param name="Count">How many draws.</param>
/// <param name="Seed">Seed of the run.</param>
/// <param name="From">Number of the first draw: a find is seen again by its number.</param>
/// <param name="Seconds">Time after which no further draw begins (s).</param>
/// <param name="Threads">Draws at a time; what is found does not depend on it.</param>
/// <param name="Finds">Folder that the inputs are written into that were not answered well.</param>
/// <param name="Keep">Inputs that take longer than this (s) are kept in that folder too.</param>
/// <param name="Only">Of the ends: regular expression for command and place, as in "plan at spot.structure"; empty for all.</param>
internal sealed record FuzzOptions(string Mode, int Count, int Seed, int From, double Seconds, int Threads, string Finds, int Keep, string Only)
{
    /// <summary>How the program is called.</summary>
    public const string Usage = """
        LureSim.Fuzz reads|runs|ends|knobs|lines|soak [--count 10000] [--seed 1] [--from 0] [--seconds 60] [--threads 2] [--finds out/fuzz] [--keep 20] [--only "plan at spot"]
          reads   texts of scenarios, broken in every way, through the reader
          runs    scenarios that the reader takes, each through one of the commands
          ends    both ends of the range of every key, each through every command: 3,883 pairs, the quick commands first
          knobs   scenarios that the reader takes on the live page: every knob at both its ends, and the file that it saves
          lines   command lines, up to where the work would begin
          soak    plans of one process, and how its memory grows
        """;

    /// <summary>Reads the command line; null if it is not understood.</summary>
    public static FuzzOptions? Of(string[] args)
    {
        if (args is not [("reads" or "runs" or "ends" or "knobs" or "lines" or "soak") and var mode, ..])
            return null;
        var options = new FuzzOptions(mode, 10_000, 1, 0, 60, Environment.ProcessorCount, Path.Combine("out", "fuzz"), int.MaxValue, "");
        for (int i = 1; i < args.Length; i += 2)
        {
            if (i + 1 == args.Length)
                return null;
            if (args[i] == "--finds")
            {
                options = options with { Finds = args[i + 1] };
                continue;
            }

            if (args[i] == "--only")
            {
                options = options with { Only = args[i + 1] };
                continue;
            }

            if (!int.TryParse(args[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out int value))
                return null;
            switch (args[i])
            {
                case "--count": options = options with { Count = value }; break;
                case "--seed": options = options with { Seed = value }; break;
                case "--from": options = options with { From = value }; break;
                case "--seconds": options = options with { Seconds = value }; break;
                case "--threads": options = options with { Threads = Math.Max(1, value) }; break;
                case "--keep": options = options with { Keep = value }; break;
                default: return null;
            }
        }

        return options;
    }
}
