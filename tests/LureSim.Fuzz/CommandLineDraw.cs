using LureSim.Cli.Commands;

namespace LureSim.Fuzz;

/// <summary>Draws command lines: the program's own with values that fit, do not fit, are missing, or mean something to a shell.</summary>
internal sealed class CommandLineDraw(Draws draws, IReadOnlyList<string> files, string folder)
{
    // The live page would wait for a browser, questions for somebody who answers; the page for the phone computes for minutes.
    private static readonly CommandEntry[] Commands = [.. CommandCatalogue.All.Where(entry => entry.Name is not ("open" or "new" or "pocket"))];

    private static readonly string[] Values =
    [
        "", " ", "0", "-1", "1", "2", "24", "1e9", "99999999999999999999", "0x10", "NaN", "\u0663", "1/4 oz", "1/8 oz", "unweighted", "1/0 oz", "0 oz", "6 ft", "600 ft", "-1 ft", "1,5 m", "steady", "stop and go", "white", "us", "metric", "US", "imperial",
        "=x", "--", "-", "--help", "-h", "@file", "*", "?", "..", "/", "/dev/null", "/dev/full", "/proc/self/mem", "nowhere.yaml", "a\nb", "\u202e", "[red]", "[[x", "]", "{0}", "%n", "$(id)", "2 s", "0.05 s", "1 h", "60 s", "bash", "zsh", "fish", "powershell",
    ];

    private static readonly string[] Unknown = ["--frobnicate", "--wieght", "--sample", "--JSON", "-x", "-", "--", "--=1", "--out", "--units=", "--units:us", "--json=false", "/?", "--version", "-v", "--help", "\u2013\u2013json"];

    /// <summary>A command line.</summary>
    public IReadOnlyList<string> Next()
    {
        if (draws.Chance(0.03))
            return [.. Enumerable.Range(0, draws.Below(5)).Select(_ => draws.Of(draws.Chance(0.5) ? Values : Unknown))];
        CommandEntry entry = draws.Of(Commands);
        List<string> arguments = [entry.Name];
        if (draws.Chance(0.04))
            arguments[0] = draws.Of(["plna", "PLAN", "colors", "help", "open ", ""]);
        int count = draws.Chance(0.8) ? 1 : draws.Below(4);
        for (int i = 0; i < count; i++)
            arguments.Add(draws.Chance(0.85) ? draws.Of(files) : draws.Of(Values));
        CompletionScript.Option[] options = [.. CompletionScript.OptionsOf(entry)];
        for (int more = draws.Below(5); more > 0 && options.Length > 0; more--)
        {
            CompletionScript.Option option = draws.Of(options);
            if (!option.TakesValue)
            {
                arguments.Add(option.Name);
                continue;
            }

            string value = option.Name == "--out" ? Path.Combine(folder, draws.Of(["a", "b/c", "\u00e9", "a b"])) : draws.Of(Values);
            if (draws.Chance(0.2))
                arguments.Add($"{option.Name}={value}");
            else
                arguments.AddRange(draws.Chance(0.05) ? [option.Name] : [option.Name, value]);
        }

        if (draws.Chance(0.1))
            arguments.Insert(draws.Below(arguments.Count + 1), draws.Of(Unknown));
        return arguments;
    }
}
