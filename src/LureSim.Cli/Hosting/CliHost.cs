using Spectre.Console;

namespace LureSim.Cli.Hosting;

/// <summary>The world outside the commands: streams, consoles and the model's entry points. Tests supply their own.</summary>
internal sealed class CliHost
{
    // Wide enough that nothing is wrapped in files and pipes.
    private const int WidthWithoutTerminal = 400;

    private CliHost(TextWriter output, TextWriter error, IAnsiConsole outputConsole, IAnsiConsole errorConsole, bool errorIsTerminal, IPipeline pipeline)
    {
        Output = output;
        Error = error;
        OutputConsole = outputConsole;
        ErrorConsole = errorConsole;
        ErrorIsTerminal = errorIsTerminal;
        Pipeline = pipeline;
    }

    /// <summary>Standard output, for JSON, CSV, schemas and scripts.</summary>
    public TextWriter Output { get; }

    /// <summary>Standard error.</summary>
    public TextWriter Error { get; }

    /// <summary>Standard output as a console, for tables.</summary>
    public IAnsiConsole OutputConsole { get; }

    /// <summary>Standard error as a console, for messages and progress.</summary>
    public IAnsiConsole ErrorConsole { get; }

    /// <summary>True if a person looks at standard error: only then is there a progress bar.</summary>
    public bool ErrorIsTerminal { get; }

    /// <summary>Standard input.</summary>
    public TextReader Input { get; init; } = TextReader.Null;

    /// <summary>True if a person types on standard input and sees standard output.</summary>
    public bool InputIsTerminal { get; init; }

    /// <summary>The time.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>The computations.</summary>
    public IPipeline Pipeline { get; }

    /// <summary>The console for human text: standard error when standard output carries a document.</summary>
    public IAnsiConsole Human(bool outputIsDocument) => outputIsDocument ? ErrorConsole : OutputConsole;

    /// <summary>The host of the real program.</summary>
    /// <param name="pipeline">The computations.</param>
    public static CliHost ForProcess(IPipeline pipeline)
    {
        bool colour = string.IsNullOrEmpty(Environment.GetEnvironmentVariable("NO_COLOR"));
        return Create(Console.Out, Console.Error, !Console.IsOutputRedirected, !Console.IsErrorRedirected, colour, pipeline, Console.In, !Console.IsInputRedirected && !Console.IsOutputRedirected);
    }

    /// <summary>A host on any streams.</summary>
    /// <param name="output">Standard output.</param>
    /// <param name="error">Standard error.</param>
    /// <param name="outputIsTerminal">True if a terminal shows standard output.</param>
    /// <param name="errorIsTerminal">True if a terminal shows standard error.</param>
    /// <param name="colour">False to print without colour (the NO_COLOR convention).</param>
    /// <param name="pipeline">The computations.</param>
    /// <param name="input">Standard input; null for none.</param>
    /// <param name="inputIsTerminal">True if a person types on it.</param>
    /// <param name="clock">The time; null for the system's.</param>
    public static CliHost Create(TextWriter output, TextWriter error, bool outputIsTerminal, bool errorIsTerminal, bool colour, IPipeline pipeline, TextReader? input = null, bool inputIsTerminal = false, TimeProvider? clock = null) =>
        new(output, error, CreateConsole(output, outputIsTerminal, colour), CreateConsole(error, errorIsTerminal, colour), errorIsTerminal, pipeline)
        {
            Input = input ?? TextReader.Null,
            InputIsTerminal = inputIsTerminal,
            Clock = clock ?? TimeProvider.System,
        };

    private static IAnsiConsole CreateConsole(TextWriter writer, bool isTerminal, bool colour)
    {
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(writer),
            Ansi = isTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = isTerminal && colour ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = isTerminal ? InteractionSupport.Detect : InteractionSupport.No,
        });
        console.Pipeline.Attach(new ShownTexts());
        if (!isTerminal)
        {
            console.Profile.Width = WidthWithoutTerminal;
            console.Profile.Capabilities.Unicode = true;
        }

        return console;
    }
}
