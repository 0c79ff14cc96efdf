using System.ComponentModel;
using System.Reflection;
using System.Text;
using Spectre.Console.Cli;

namespace LureSim.Cli.Commands;

/// <summary>
/// Writes completion scripts from the attributes of the commands' settings, so that a new option completes without
/// further work.
/// </summary>
internal static class CompletionScript
{
    /// <summary>An option as a shell sees it.</summary>
    /// <param name="Name">Long name with its dashes.</param>
    /// <param name="Description">What it does.</param>
    /// <param name="TakesValue">True if a value follows.</param>
    /// <param name="Words">The words it takes, when they are known.</param>
    /// <param name="Folder">True if the value is a folder.</param>
    /// <param name="WholeNumber">True if the value is a whole number.</param>
    internal sealed record Option(string Name, string Description, bool TakesValue, IReadOnlyList<string> Words, bool Folder, bool WholeNumber);

    /// <summary>The script for a shell: bash, zsh or fish.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Another shell.</exception>
    public static string For(string shell) => shell switch
    {
        "bash" => Bash(),
        "zsh" => Zsh(),
        "fish" => Fish(),
        _ => throw new ArgumentOutOfRangeException(nameof(shell), shell, "The shell must be bash, zsh or fish."),
    };

    /// <summary>The options of a command, help included.</summary>
    internal static IReadOnlyList<Option> OptionsOf(CommandEntry command) =>
    [
        .. Properties(command)
            .Select(property => (Property: property, Attribute: property.GetCustomAttribute<CommandOptionAttribute>()))
            .Where(pair => pair.Attribute is not null)
            .Select(pair => new Option(
                "--" + pair.Attribute!.LongNames[0],
                pair.Property.GetCustomAttribute<DescriptionAttribute>()!.Description,
                pair.Attribute.ValueName is not null,
                pair.Property.GetCustomAttribute<WordsAttribute>()?.Words ?? [],
                pair.Property.GetCustomAttribute<PathKindAttribute>()?.Folder ?? false,
                pair.Property.PropertyType == typeof(int) || pair.Property.PropertyType == typeof(int?)))
            .OrderBy(option => option.Name, StringComparer.Ordinal),
        new Option("--help", "Show the help of this command", false, [], false, false),
    ];

    // What the command's own argument takes: known words, or scenario files, or nothing.
    private static (IReadOnlyList<string> Words, bool Files) ArgumentOf(CommandEntry command)
    {
        PropertyInfo? property = Properties(command).FirstOrDefault(candidate => candidate.GetCustomAttribute<CommandArgumentAttribute>() is not null);
        return (property?.GetCustomAttribute<WordsAttribute>()?.Words ?? [], property?.GetCustomAttribute<PathKindAttribute>() is not null);
    }

    private static PropertyInfo[] Properties(CommandEntry command) => command.Settings.GetProperties();

    private static string Bash()
    {
        var text = new StringBuilder();
        text.Append(
            """
            # bash completion for luresim; load it with: source <(luresim completion bash)
            _luresim() {
              local current="${COMP_WORDS[COMP_CWORD]}" previous="${COMP_WORDS[COMP_CWORD-1]}" options="" words="" files=""
              COMPREPLY=()

            """);
        text.Append("  if [ \"$COMP_CWORD\" -eq 1 ]; then\n    COMPREPLY=($(compgen -W '").AppendJoin(' ', CommandCatalogue.All.Select(command => command.Name)).Append(" --help --version' -- \"$current\"))\n    return\n  fi\n");
        text.Append("  case \"$previous\" in\n");
        IEnumerable<Option> valued = CommandCatalogue.All.SelectMany(OptionsOf).Where(option => option.TakesValue).DistinctBy(option => option.Name);
        foreach (Option option in valued.OrderBy(option => option.Name, StringComparer.Ordinal))
        {
            string reply = option.Folder ? "COMPREPLY=($(compgen -d -- \"$current\")); " : option.Words.Count > 0 ? $"COMPREPLY=($(compgen -W '{string.Join(' ', option.Words)}' -- \"$current\")); " : "";
            text.Append("    ").Append(option.Name).Append(") ").Append(reply).Append("return ;;\n");
        }

        text.Append("  esac\n  case \"${COMP_WORDS[1]}\" in\n");
        foreach (CommandEntry command in CommandCatalogue.All)
        {
            (IReadOnlyList<string> words, bool files) = ArgumentOf(command);
            text.Append("    ").Append(command.Name).Append(") options='").AppendJoin(' ', OptionsOf(command).Select(option => option.Name)).Append('\'');
            if (words.Count > 0)
                text.Append(" words='").AppendJoin(' ', words).Append('\'');
            if (files)
                text.Append(" files=1");
            text.Append(" ;;\n");
        }

        text.Append(
            """
              esac
              if [ "${current#-}" != "$current" ]; then
                COMPREPLY=($(compgen -W "$options" -- "$current"))
              elif [ -n "$files" ]; then
                COMPREPLY=($(compgen -f -X '!*.yaml' -- "$current") $(compgen -f -X '!*.yml' -- "$current") $(compgen -d -S / -- "$current"))
              else
                COMPREPLY=($(compgen -W "$words" -- "$current"))
              fi
            }
            complete -o filenames -F _luresim luresim

            """);
        return text.ToString();
    }

    private static string Zsh()
    {
        var text = new StringBuilder();
        text.Append("#compdef luresim\n# zsh completion for luresim; load it with: source <(luresim completion zsh)\n_luresim() {\n  local -a commands\n  commands=(\n");
        foreach (CommandEntry command in CommandCatalogue.All)
            text.Append("    ").Append(Quote($"{command.Name}:{command.Description.TrimEnd('.')}")).Append('\n');
        text.Append("  )\n  if (( CURRENT == 2 )); then\n    _describe 'command' commands\n    return\n  fi\n  local command=$words[2]\n  shift words\n  (( CURRENT-- ))\n  case $command in\n");
        foreach (CommandEntry command in CommandCatalogue.All)
        {
            text.Append("    ").Append(command.Name).Append(") _arguments");
            foreach (Option option in OptionsOf(command))
            {
                string action = !option.TakesValue ? "" : option.Folder ? ":folder:_files -/" : option.Words.Count > 0 ? $":value:({string.Join(' ', option.Words)})" : ":value:";
                text.Append(" \\\n      ").Append(Quote($"{option.Name}[{Bracketed(option.Description)}]{action}"));
            }

            (IReadOnlyList<string> words, bool files) = ArgumentOf(command);
            if (words.Count > 0)
                text.Append(" \\\n      ").Append(Quote($"1:word:({string.Join(' ', words)})"));
            if (files)
                text.Append(" \\\n      ").Append(Quote("*:scenario:_files -g \"*.(yaml|yml)\""));
            text.Append(" ;;\n");
        }

        text.Append("  esac\n}\ncompdef _luresim luresim\n");
        return text.ToString();

        static string Bracketed(string description) => description.Replace("[", "\\[", StringComparison.Ordinal).Replace("]", "\\]", StringComparison.Ordinal).Replace(":", "\\:", StringComparison.Ordinal);
    }

    private static string Fish()
    {
        var text = new StringBuilder();
        text.Append("# fish completion for luresim; load it with: luresim completion fish | source\ncomplete -c luresim -f\n");
        foreach (CommandEntry command in CommandCatalogue.All)
            text.Append("complete -c luresim -n __fish_use_subcommand -a ").Append(command.Name).Append(" -d ").Append(Quote(command.Description.TrimEnd('.'))).Append('\n');
        foreach (CommandEntry command in CommandCatalogue.All)
        {
            string start = $"complete -c luresim -n '__fish_seen_subcommand_from {command.Name}'";
            foreach (Option option in OptionsOf(command))
            {
                text.Append(start).Append(" -l ").Append(option.Name[2..]);
                if (option.TakesValue)
                    text.Append(option.Folder ? " -x -a '(__fish_complete_directories)'" : option.Words.Count > 0 ? $" -x -a '{string.Join(' ', option.Words)}'" : " -x");
                text.Append(" -d ").Append(Quote(option.Description)).Append('\n');
            }

            (IReadOnlyList<string> words, bool files) = ArgumentOf(command);
            if (words.Count > 0)
                text.Append(start).Append(" -a '").AppendJoin(' ', words).Append("'\n");
            if (files)
                text.Append(start).Append(" -k -a '(__fish_complete_suffix .yaml)'\n");
        }

        return text.ToString();
    }

    // Single quotes in all three shells: a quote inside closes, is escaped, and opens again.
    private static string Quote(string text) => "'" + text.Replace("'", "'\\''", StringComparison.Ordinal) + "'";
}
