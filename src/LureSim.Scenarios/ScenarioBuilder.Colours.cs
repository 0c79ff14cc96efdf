using System.Text;
using LureSim.Data;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <content>Colours by a measured reflectance, from files beside the scenario.</content>
internal sealed partial class ScenarioBuilder
{
    // A spectrum of a point a nanometre with remarks is some 20 kB.
    private const int MostReflectanceBytes = 1_000_000;

    private const string ReflectanceForm = "a table with the columns wavelength_nm (rising) and reflectance (0 to 1)";

    private readonly List<MeasuredColour> measured = [];

    private void ReadMeasuredColours(ReadValue? colours)
    {
        IReadOnlyList<ReadValue> items = colours?.Items ?? [];
        CheckRepeated([.. items.Where(item => item["name"] is not null)], item => item.At("name").Text.Trim(), "colour", item => item.At("name"));
        foreach (ReadValue item in items)
        {
            if (item["name"] is not { } name || item["reflectance"] is not { } file)
                continue;
            if (ColourNames.All.Contains(name.Text.Trim(), StringComparer.OrdinalIgnoreCase) || EverydayNames.Colour.Word(name.Text.Trim()) is not null)
                Add(name, "this is the name of a ready-made colour", "another name", "give the measured colour its own name");
            else if (ReadReflectance(name.Text.Trim(), file) is { } colour)
                measured.Add(colour);
        }
    }

    // A part is a ready-made colour, a hex colour or a measured one; one whose table is broken has its own problem and is not unknown.
    private void CheckPatterns(ReadValue? patterns, ReadValue? colours)
    {
        string[] own = [.. (colours?.Items ?? []).Select(item => item["name"]?.Text.Trim()).OfType<string>()];
        foreach (ReadValue part in (patterns?.Items ?? []).SelectMany(pattern => new[] { pattern["back"], pattern["side"], pattern["belly"], pattern["eye"] }).OfType<ReadValue>())
        {
            if (part.Text.StartsWith('#') || ColourNames.All.Contains(part.Text) || own.Contains(part.Text))
                continue;
            string? nearest = GrammarReader.Nearest(part.Text, [.. ColourNames.All, .. own]);
            Add(part, "unknown colour", $"{string.Join(", ", ColourNames.All.Concat(own))}, or a hex colour such as \"#7fff00\"", nearest is null ? "write one of the names, or a hex colour in quotes" : $"write \"{nearest}\"");
        }
    }

    private MeasuredColour? ReadReflectance(string name, ReadValue file)
    {
        string text, path = Path.Combine(Path.GetDirectoryName(problems.File) ?? "", file.Text.Trim());
        try
        {
            // Read one byte more than allowed instead of asking for the length, which devices do not know.
            byte[] bytes = new byte[MostReflectanceBytes + 1];
            using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            int count = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            if (count > MostReflectanceBytes)
            {
                Add(file, "the file is larger than 1 MB", ReflectanceForm, "name a table of a few kilobytes");
                return null;
            }

            ReadOnlySpan<byte> content = bytes.AsSpan(0, count);
            text = Encoding.UTF8.GetString(content.StartsWith(Encoding.UTF8.Preamble) ? content[Encoding.UTF8.Preamble.Length..] : content);
        }
        catch (Exception exception) when (exception is FileNotFoundException or DirectoryNotFoundException)
        {
            Add(file, $"there is no file {path}", "a file beside the scenario", "check the name; the path is relative to the scenario");
            return null;
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            Add(file, $"the file cannot be read: {ScenarioProblem.Shorten(exception.Message)}", ReflectanceForm, "check the path and the permissions");
            return null;
        }

        try
        {
            var table = ReferenceTable.Parse(file.Text.Trim(), text);
            return new MeasuredColour(name, table.Numbers("wavelength_nm"), table.Numbers("reflectance"));
        }
        catch (Exception exception) when (exception is FormatException or ArgumentException or OverflowException)
        {
            Add(file, $"the table does not hold a reflectance: {ScenarioProblem.Shorten(exception.Message)}", ReflectanceForm, "correct the table: a column line, then two or more rows");
            return null;
        }
    }
}
