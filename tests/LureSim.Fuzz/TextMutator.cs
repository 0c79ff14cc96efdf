using System.Text;

namespace LureSim.Fuzz;

/// <summary>Breaks texts of scenarios: by characters, by lines, by tokens that mean something, and by parts of other texts.</summary>
internal sealed class TextMutator(Draws draws, IReadOnlyList<string> seeds)
{
    // A scenario has a few kilobytes; a few texts are blown up to see that cost grows with length and no faster.
    private const int MostCharacters = 60_000;

    /// <summary>A broken text.</summary>
    public string Next()
    {
        string text = draws.Chance(0.25) ? new GrammarDraw(draws, DrawSize.Usual).Root().Yaml() : draws.Of(seeds);
        int count = 1 + draws.Below(draws.Chance(0.2) ? 12 : 3);
        for (int i = 0; i < count; i++)
            text = Mutate(text);
        return text.Length > MostCharacters ? text[..MostCharacters] : text;
    }

    private string Mutate(string text)
    {
        if (text.Length == 0)
            return draws.Of(Texts.Tokens);
        int at = draws.Below(text.Length);
        switch (draws.Below(13))
        {
            case 0:
                return text.Insert(at, draws.Of(Texts.Tokens));
            case 1:
                return text.Remove(at, Math.Min(text.Length - at, 1 + draws.Below(8)));
            case 2:
                return string.Concat(text.AsSpan(0, at), ((char)draws.Below(draws.Chance(0.8) ? 128 : 0x10000)).ToString(), text.AsSpan(at + 1));
            case 3:
                return text[..at];
            case 4:
                return Lines(text, lines => lines.Insert(draws.Below(lines.Count), draws.Of(lines)));
            case 5:
                return Lines(text, lines => lines.RemoveAt(draws.Below(lines.Count)));
            case 6:
                return Lines(text, lines =>
                {
                    int one = draws.Below(lines.Count), other = draws.Below(lines.Count);
                    (lines[one], lines[other]) = (lines[other], lines[one]);
                });
            case 7:
                return Lines(text, lines =>
                {
                    int line = draws.Below(lines.Count);
                    lines[line] = draws.Below(3) switch { 0 => " " + lines[line], 1 => lines[line].TrimStart(), _ => "\t" + lines[line] };
                });
            case 8:
                return Lines(text, lines => Value(lines, draws.Of(Texts.Tokens)));
            case 9:
                return Lines(text, lines => Value(lines, draws.Of(Texts.Names)));
            case 10:
                string other = draws.Of(seeds);
                int from = draws.Below(other.Length);
                return text.Insert(at, other.Substring(from, Math.Min(other.Length - from, 1 + draws.Below(400))));
            case 11:
                return Lines(text, lines => Numbered(lines));
            default:
                string part = text.Substring(at, Math.Min(text.Length - at, 1 + draws.Below(40)));
                return text.Insert(at, new StringBuilder().Insert(0, part, 1 + draws.Below(draws.Chance(0.02) ? 500 : 8)).ToString());
        }
    }

    private static string Lines(string text, Action<List<string>> change)
    {
        List<string> lines = [.. text.Split('\n')];
        change(lines);
        return string.Join('\n', lines);
    }

    // Another value for the key of a line.
    private void Value(List<string> lines, string value)
    {
        int line = draws.Below(lines.Count), colon = lines[line].IndexOf(": ", StringComparison.Ordinal);
        if (colon > 0)
            lines[line] = lines[line][..(colon + 2)] + value;
    }

    // Another number in a line.
    private void Numbered(List<string> lines)
    {
        int line = draws.Below(lines.Count);
        int digit = lines[line].AsSpan().IndexOfAnyInRange('0', '9');
        if (digit < 0)
            return;
        string number = draws.Below(5) switch
        {
            0 => "-",
            1 => "0",
            2 => "1e" + draws.Below(400).ToString(System.Globalization.CultureInfo.InvariantCulture),
            3 => draws.Unit().ToString("R", System.Globalization.CultureInfo.InvariantCulture),
            _ => draws.Below(100_000).ToString(System.Globalization.CultureInfo.InvariantCulture),
        };
        lines[line] = lines[line][..digit] + number + lines[line][(digit + 1)..];
    }
}
