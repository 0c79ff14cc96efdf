using System.Runtime.CompilerServices;
using System.Text;
using System.Text.RegularExpressions;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Spelling by units: US with US units, international with metric ones. Every sentence stands once, in US spelling.</summary>
public static partial class Speller
{
    // US stem, international stem. Endings (s, ed, ing, less, ful, ite) stay as they are.
    private static readonly Dictionary<string, string> International = new(StringComparer.OrdinalIgnoreCase)
    {
        ["color"] = "colour",
        ["gray"] = "grey",
        ["center"] = "centre",
        ["meter"] = "metre",
        ["license"] = "licence",
        ["favor"] = "favour",
        ["favorite"] = "favourite",
        ["neighbor"] = "neighbour",
        ["behavior"] = "behaviour",
        ["toward"] = "towards",
        ["plow"] = "plough",
    };

    /// <summary>The words whose spelling differs, in US and in international spelling.</summary>
    public static IReadOnlyDictionary<string, string> Pairs => International;

    /// <summary>Language of a page: "en-US" or "en-GB".</summary>
    /// <param name="units">Units of the page.</param>
    public static string Language(UnitSystem units) => units == UnitSystem.Us ? "en-US" : "en-GB";

    /// <summary>A text of this program, written in US spelling, in the spelling of the units.</summary>
    /// <param name="units">Units.</param>
    /// <param name="text">The text; no part of it is the user's.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is null.</exception>
    public static string Spell(this UnitSystem units, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return units == UnitSystem.Us ? text : Differing().Replace(text, found =>
        {
            string word = International[found.Groups[1].Value];
            return (char.IsUpper(found.Value[0]) ? Grammar.Capital(word) : word) + found.Groups[2].Value;
        });
    }

    /// <summary>A sentence in the spelling of the units. Only its own words are spelled: what stands in braces, such as a name from a scenario, stays as it is.</summary>
    /// <param name="units">Units.</param>
    /// <param name="sentence">The sentence in US spelling.</param>
    public static string Say(this UnitSystem units, [InterpolatedStringHandlerArgument(nameof(units))] ref Sentence sentence) => sentence.ToString();

    /// <summary>A sentence in the spelling of the units of a formatter.</summary>
    /// <param name="format">The formatter.</param>
    /// <param name="sentence">The sentence in US spelling.</param>
    public static string Say(this UnitFormat format, [InterpolatedStringHandlerArgument(nameof(format))] ref Sentence sentence) => sentence.ToString();

    [GeneratedRegex(@"\b(color|gray|center|meter|license|favorite|favor|neighbor|behavior|toward|plow)(s|ed|ing|less|ful)?\b", RegexOptions.IgnoreCase)]
    private static partial Regex Differing();

    /// <summary>Puts a sentence together: its own words are spelled by the units, what is put in stays as it is.</summary>
    [InterpolatedStringHandler]
    public readonly ref struct Sentence
    {
        private readonly StringBuilder text;
        private readonly UnitSystem units;

        /// <summary>Begins a sentence.</summary>
        /// <param name="literalLength">Length of its own words.</param>
        /// <param name="formattedCount">How much is put in.</param>
        /// <param name="units">Units.</param>
        public Sentence(int literalLength, int formattedCount, UnitSystem units)
        {
            text = new StringBuilder(literalLength + (8 * formattedCount));
            this.units = units;
        }

        /// <summary>Begins a sentence.</summary>
        /// <param name="literalLength">Length of its own words.</param>
        /// <param name="formattedCount">How much is put in.</param>
        /// <param name="format">Formatter of the units.</param>
        public Sentence(int literalLength, int formattedCount, UnitFormat format)
            : this(literalLength, formattedCount, format?.System ?? UnitSystem.Us)
        {
        }

        /// <summary>Adds its own words.</summary>
        /// <param name="words">The words.</param>
        public void AppendLiteral(string words) => text.Append(units.Spell(words));

        /// <summary>Adds what is put in.</summary>
        /// <param name="value">The value.</param>
        public void AppendFormatted(string? value) => text.Append(value);

        /// <summary>Adds a whole number that is put in.</summary>
        /// <param name="value">The number.</param>
        public void AppendFormatted(int value) => text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{value}");

        /// <inheritdoc/>
        public override string ToString() => text.ToString();
    }
}
