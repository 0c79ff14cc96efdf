using LureSim.Data;
using LureSim.Model;

namespace LureSim.Scenarios;

/// <content>Colours by a measured reflectance, from files beside the scenario.</content>
internal sealed partial class ScenarioBuilder
{
    // A spectrum of a point a nanometre with remarks is some 20 kB.
    private const long MostReflectanceBytes = 1_000_000;

    private const string ReflectanceForm = "a table with the columns wavelength_nm (rising) and reflectance (0 to 1)";

    private readonly List<MeasuredColour> measured = [];

    private void ReadMeasuredColours(ReadValue? colours)
    {
        IReadOnlyList<ReadValue> items = colours?.Items ?? [];
        CheckRepeated([.. items.Where(item => item["name"] is not null)], item => item["name"]!.Text.Trim(), "colour", item => item["name"]!);
        foreach (ReadValue item in items)
        {
            if (item["name"] is not { } name || item["reflectance"] is not { } file)
                continue;
            if (ColourNames.All.Contains(name.Text.Trim(), StringComparer.OrdinalIgnoreCase))
                Add(name, "this is the name of a ready-made colour", "another name", "give the measured colour its own name");
            else if (ReadReflectance(name.Text.Trim(), file) is { } colour)
                measured.Add(colour);
        }
    }

    private MeasuredColour? ReadReflectance(string name, ReadValue file)
    {
        string text;
        try
        {
            string path = Path.Combine(Path.GetDirectoryName(problems.File) ?? "", file.Text.Trim());
            var info = new FileInfo(path);
            if (!info.Exists)
            {
                Add(file, $"there is no file {path}", "a file beside the scenario", "check the name; the path is relative to the scenario");
                return null;
            }

            if (info.Length > MostReflectanceBytes)
            {
                Add(file, "the file is larger than 1 MB", ReflectanceForm, "name a table of a few kilobytes");
                return null;
            }

            text = File.ReadAllText(path);
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
