using System.Globalization;

namespace LureSim.Mutation;

/// <summary>What a run is asked for.</summary>
/// <param name="Mutants">How many mutants.</param>
/// <param name="Seed">Seed of their choice.</param>
/// <param name="Parallel">Processes at a time.</param>
/// <param name="Minutes">Time after which no further mutant begins (min).</param>
/// <param name="Again">True to go on from the run before: those that survived, after tests were added, and those that it did not reach.</param>
internal sealed record RunOptions(int Mutants, int Seed, int Parallel, double Minutes, bool Again)
{
    /// <summary>How the program is called.</summary>
    public const string Usage = "LureSim.Mutation [--mutants 100] [--seed 1] [--parallel 2] [--minutes 600] [--again]";

    /// <summary>Reads the command line; null if it is not understood.</summary>
    public static RunOptions? Of(string[] args)
    {
        RunOptions options = new(100, 1, 2, 600, false);
        for (int i = 0; i < args.Length; i++)
        {
            if (args[i] == "--again")
            {
                options = options with { Again = true };
                continue;
            }

            if (i + 1 == args.Length || !int.TryParse(args[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out int value)) return null;
            switch (args[i++])
            {
                case "--mutants": options = options with { Mutants = value }; break;
                case "--seed": options = options with { Seed = value }; break;
                case "--parallel": options = options with { Parallel = value }; break;
                case "--minutes": options = options with { Minutes = value }; break;
                default: return null;
            }
        }

        return options;
    }
}
