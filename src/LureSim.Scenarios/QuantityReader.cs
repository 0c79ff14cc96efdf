using System.Globalization;
using System.Text.RegularExpressions;

namespace LureSim.Scenarios;

/// <summary>Outcome of reading a quantity: a value, or what is wrong and how to mend it.</summary>
/// <param name="IsValid">True if <paramref name="Value"/> holds a finite number.</param>
/// <param name="Value">The value in SI (degrees Celsius for temperature); 0 when invalid.</param>
/// <param name="Message">What is wrong; empty when valid.</param>
/// <param name="Fix">What to write instead; empty when valid.</param>
public readonly record struct QuantityReading(bool IsValid, double Value, string Message, string Fix)
{
    /// <summary>The text with the symbols of its units in place of their names; empty when invalid.</summary>
    internal string Text { get; init; } = "";

    internal static QuantityReading Of(double value, string text) => new(true, value, "", "") { Text = text };

    internal static QuantityReading Wrong(string message, string fix) => new(false, 0.0, message, fix);
}

/// <summary>
/// Reads a number with a unit, such as "1 1/4 oz", "10 ft 6 in" or "68 degF". Always invariant culture; units are
/// case-sensitive. The spelling is read here because general unit parsers know neither fractions nor
/// line strength in pounds and take "0,25 oz" for 25 oz; the conversion itself is left to UnitsNet.
/// </summary>
public static partial class QuantityReader
{
    /// <summary>Longest text that is looked at; everything longer is refused unread.</summary>
    public const int MaximumLength = 60;

    // Digits are limited so that no spelled-out number can overflow or lose its meaning.
    private const string Fraction = @"(?:[0-9]{1,3}[ ]+)?[0-9]{1,3}/(?!0+(?![0-9]))[0-9]{1,4}";

    [GeneratedRegex(@"\G\s*(?<number>-?[0-9]{1,9}(?:\.[0-9]{1,9})?(?![0-9.])(?!\s*/)(?!\s+(?!1/m(?:\s|$))[0-9]+/)|(?:(?<whole>[0-9]{1,3})[ ]+)?(?<over>[0-9]{1,3})/(?<under>[0-9]{1,4}))(?:\s+(?<unit>1/m)|\s*(?<unit>[^\s\d.,+/-][^\s,]*))?(?=\s|$)", RegexOptions.CultureInvariant)]
    private static partial Regex Component();

    [GeneratedRegex(@"^\s*[-+]?[0-9]*\.?[0-9]+[eE][-+]?[0-9]+", RegexOptions.CultureInvariant)]
    private static partial Regex Exponent();

    [GeneratedRegex(@"^\s*[-+]?\.?(?:nan|inf|infinity)\b", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase)]
    private static partial Regex NotFinite();

    [GeneratedRegex(@"^[0-9]{1,3}(?:,[0-9]{3})+(?![0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex ThousandsCommas();

    /// <summary>
    /// Reads a quantity.
    /// </summary>
    /// <param name="kind">What the text must measure.</param>
    /// <param name="text">The text; may be anything, including null.</param>
    /// <returns>The value, always finite, or what is wrong with the text. Never throws on the text.</returns>
    public static QuantityReading Read(QuantityKind kind, string? text)
    {
        QuantityUnits units = UnitTable.Of(kind);
        string example = $"write for example \"{units.Example}\"";
        if (string.IsNullOrWhiteSpace(text))
            return QuantityReading.Wrong("the value is empty", example);
        if (text.Length > MaximumLength)
            return QuantityReading.Wrong($"the value is longer than {MaximumLength} characters", example);
        string trimmed = text.Trim();

        if (NotFinite().IsMatch(trimmed))
            return QuantityReading.Wrong("the value is not a finite number", example);
        if (trimmed.Contains(',', StringComparison.Ordinal))
            return CommaProblem(kind, trimmed, example);
        if (Exponent().IsMatch(trimmed))
            return QuantityReading.Wrong("numbers with an exponent are not read", $"write the number in full, {example[6..]}");
        if (trimmed[0] is '+')
            return Retry(kind, trimmed[1..], "a plus sign is not read", example);
        if (trimmed[0] is '.')
            return Retry(kind, "0" + trimmed, "a number must not start with a point", example);

        var parts = new List<(double Number, bool IsWhole, string Unit)>(2);
        text = "";
        int position = 0;
        while (position < trimmed.Length)
        {
            Match match = Component().Match(trimmed, position);
            if (!match.Success)
                return Unreadable(kind, units, trimmed, position, example);
            double number;
            bool whole = false;
            if (match.Groups["under"].Success)
            {
                int under = int.Parse(match.Groups["under"].ValueSpan, CultureInfo.InvariantCulture);
                if (under == 0)
                    return QuantityReading.Wrong("the fraction has a zero below the line", example);
                int over = int.Parse(match.Groups["over"].ValueSpan, CultureInfo.InvariantCulture);
                number = (double)over / under;
                if (match.Groups["whole"].Success)
                {
                    if (over >= under)
                        return QuantityReading.Wrong("the fraction after a whole number must be less than one", example);
                    number += int.Parse(match.Groups["whole"].ValueSpan, CultureInfo.InvariantCulture);
                }
            }
            else
            {
                ReadOnlySpan<char> digits = match.Groups["number"].ValueSpan;
                whole = !digits.Contains('.') && digits[0] != '-';
                number = double.Parse(digits, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
            }

            string unit = match.Groups["unit"].Value;
            if (unit.Length == 0)
                return QuantityReading.Wrong("the number has no unit", $"add a unit of {units.Name}: {units.SymbolList}; {example}");
            if (units.Named(unit) is not { } known)
                return UnitProblem(units, trimmed, match, unit, example);
            parts.Add((number, whole, known.Symbol));
            Group written = match.Groups["unit"];
            text += trimmed[position..written.Index] + known.Symbol;
            position = match.Index + match.Length;
        }

        if (parts.Count == 1)
            return QuantityReading.Of(units.Find(parts[0].Unit)!.ToSi(parts[0].Number), text);
        if (parts.Count == 2 && units.Pairs.FirstOrDefault(pair => pair.Major == parts[0].Unit && pair.Minor == parts[1].Unit) is { } pair)
        {
            if (!parts[0].IsWhole || parts[1].Number < 0.0 || parts[1].Number >= pair.MinorPerMajor)
                return QuantityReading.Wrong(
                    $"in \"{pair.Major} {pair.Minor}\" the first number must be whole and the second from 0 to less than {pair.MinorPerMajor}",
                    example);
            return QuantityReading.Of(units.Find(pair.Major)!.ToSi(parts[0].Number) + units.Find(pair.Minor)!.ToSi(parts[1].Number), text);
        }

        string pairs = units.Pairs.Count == 0 ? "" : $" (only {string.Join(", ", units.Pairs.Select(p => $"\"{p.Major} {p.Minor}\""))} may be combined)";
        return QuantityReading.Wrong($"these units do not go together{pairs}", $"write one number and one unit, {example[6..]}");
    }

    /// <summary>
    /// A regular expression (the common subset of ECMAScript and .NET) that matches the texts <see cref="Read"/>
    /// accepts for a kind; a property test holds the two together.
    /// </summary>
    /// <param name="kind">Kind of quantity.</param>
    /// <param name="words">Words that may stand in place of a quantity.</param>
    internal static string Pattern(QuantityKind kind, IEnumerable<string> words)
    {
        QuantityUnits units = UnitTable.Of(kind);
        // A unit that starts with a digit cannot stand right behind the number.
        string symbols = Alternatives(units.Units.SelectMany(unit => units.Spellings(unit.Symbol)));
        string number = $"(?:-?[0-9]{{1,9}}(?:\\.[0-9]{{1,9}})?|{Fraction})";
        IEnumerable<string> forms = words.Select(Regex.Escape)
            .Append($"{number}\\s*(?:{symbols})")
            .Concat(units.Pairs.Select(pair => $"[0-9]{{1,9}}\\s*(?:{Alternatives(units.Spellings(pair.Major))})\\s+{number}\\s*(?:{Alternatives(units.Spellings(pair.Minor))})"));
        return $"^\\s*(?:{string.Join('|', forms)})\\s*$";

        static string Alternatives(IEnumerable<string> spellings) =>
            string.Join('|', spellings.Select(spelling => char.IsAsciiDigit(spelling[0]) ? "\\s" + Regex.Escape(spelling) : Regex.Escape(spelling)));
    }

    /// <summary>The article before a word.</summary>
    internal static string Article(string word) => word[0] is 'a' or 'e' or 'i' or 'o' or 'u' ? "an" : "a";

    private static QuantityReading Retry(QuantityKind kind, string corrected, string message, string example) =>
        QuantityReading.Wrong(message, Read(kind, corrected).IsValid ? $"write \"{corrected.Trim()}\"" : example);

    private static QuantityReading CommaProblem(QuantityKind kind, string text, string example)
    {
        bool thousands = ThousandsCommas().IsMatch(text);
        string asPoint = text.Replace(',', '.');
        string without = text.Replace(",", "", StringComparison.Ordinal);
        bool pointReads = text.Count(character => character == ',') == 1 && Read(kind, asPoint).IsValid;
        bool withoutReads = thousands && Read(kind, without).IsValid;
        string fix = (pointReads, withoutReads) switch
        {
            (true, true) => $"write \"{asPoint}\" or \"{without}\", whichever is meant",
            (true, false) => $"write \"{asPoint}\"",
            (false, true) => $"write \"{without}\"",
            _ => example,
        };
        return QuantityReading.Wrong("a comma is not read: the decimal sign is a point, and thousands are not grouped", fix);
    }

    private static QuantityReading UnitProblem(QuantityUnits units, string text, Match match, string unit, string example)
    {
        Group group = match.Groups["unit"];
        string Corrected(string symbol) => $"write \"{text[..group.Index].TrimEnd()} {symbol}{text[(group.Index + group.Length)..]}\"";

        string? symbol = units.Misspellings.GetValueOrDefault(unit)
            ?? units.Units.FirstOrDefault(known => string.Equals(known.Symbol, unit, StringComparison.OrdinalIgnoreCase))?.Symbol
            ?? units.Names.Concat(units.Misspellings).FirstOrDefault(pair => string.Equals(pair.Key, unit, StringComparison.OrdinalIgnoreCase)).Value;
        if (symbol is not null)
            return QuantityReading.Wrong($"write {symbol} for {unit}", Corrected(symbol));

        QuantityUnits? other = UnitTable.All.FirstOrDefault(kind => kind.Named(unit) is not null);
        string message = other is null
            ? $"\"{unit}\" is not a unit of {units.Name}"
            : $"\"{unit}\" is a unit of {other.Name}, but {Article(units.Name)} {units.Name} is asked for";
        return QuantityReading.Wrong(message, $"use one of {units.SymbolList}; {example}");
    }

    private static QuantityReading Unreadable(QuantityKind kind, QuantityUnits units, string text, int position, string example)
    {
        if (position == 0 && !text.Any(char.IsAsciiDigit))
            return QuantityReading.Wrong("the value is not a number with a unit", $"use one of the units {units.SymbolList}; {example}");

        // "1-1/4 oz", as many boxes print it.
        int hyphen = text.IndexOf('-', StringComparison.Ordinal);
        if (hyphen > 0 && text.Contains('/', StringComparison.Ordinal))
        {
            string spaced = $"{text[..hyphen]} {text[(hyphen + 1)..]}";
            if (!spaced.Contains('-', StringComparison.Ordinal) && Read(kind, spaced).IsValid)
                return QuantityReading.Wrong("a hyphen is not read between a whole number and a fraction", $"write \"{spaced}\"");
        }

        return QuantityReading.Wrong(
            position == 0 ? "the value cannot be read as a number with a unit" : $"\"{text[position..].Trim()}\" cannot be read as a number with a unit",
            $"use one of the units {units.SymbolList}; {example}");
    }
}
