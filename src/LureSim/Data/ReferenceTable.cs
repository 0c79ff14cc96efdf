using System.Collections.Concurrent;
using System.Globalization;
using System.Text;

namespace LureSim.Data;

/// <summary>A reference table embedded in the assembly: CSV with '#' header lines that state what it is, its unit and its source.</summary>
public sealed class ReferenceTable
{
    private static readonly ConcurrentDictionary<string, ReferenceTable> Loaded = new(StringComparer.Ordinal);

    private readonly Dictionary<string, int> columns;
    private readonly string[][] rows;

    private ReferenceTable(string name, string header, string[] columns, string[][] rows)
    {
        Name = name;
        Header = header;
        Columns = columns;
        this.rows = rows;
        this.columns = columns.Select((c, i) => (c, i)).ToDictionary(p => p.c, p => p.i, StringComparer.Ordinal);
    }

    /// <summary>File name without its ending.</summary>
    public string Name { get; }

    /// <summary>The '#' lines: what the table is, its unit, its source and how it was obtained.</summary>
    public string Header { get; }

    /// <summary>Column names.</summary>
    public IReadOnlyList<string> Columns { get; }

    /// <summary>Number of data rows.</summary>
    public int RowCount => rows.Length;

    /// <summary>The data rows.</summary>
    public IEnumerable<ReferenceRow> Rows => Enumerable.Range(0, RowCount).Select(row => new ReferenceRow(this, row));

    /// <summary>Loads an optics table by name; loaded once, then shared.</summary>
    /// <param name="name">File name without ending, such as "cie_d65".</param>
    /// <exception cref="ArgumentException">No such table is embedded.</exception>
    public static ReferenceTable Optics(string name) => Of("optics", name);

    /// <summary>Loads a table of tackle by name; loaded once, then shared.</summary>
    /// <param name="name">File name without ending, such as "hook_masses".</param>
    /// <exception cref="ArgumentException">No such table is embedded.</exception>
    public static ReferenceTable Tackle(string name) => Of("tackle", name);

    /// <summary>Loads a table of tides by name; loaded once, then shared.</summary>
    /// <param name="name">File name without ending, such as "constituents".</param>
    /// <exception cref="ArgumentException">No such table is embedded.</exception>
    public static ReferenceTable Tides(string name) => Of("tides", name);

    /// <summary>Loads a table of rules by name; loaded once, then shared.</summary>
    /// <param name="name">File name without ending, such as "forage_rules".</param>
    /// <exception cref="ArgumentException">No such table is embedded.</exception>
    public static ReferenceTable Rules(string name) => Of("rules", name);

    /// <summary>A column as text.</summary>
    /// <param name="column">Column name.</param>
    /// <exception cref="ArgumentException">No such column.</exception>
    public string[] Text(string column)
    {
        int index = Index(column);
        return [.. rows.Select(r => r[index])];
    }

    /// <summary>A column as numbers; an empty cell is NaN.</summary>
    /// <param name="column">Column name.</param>
    /// <exception cref="ArgumentException">No such column.</exception>
    /// <exception cref="FormatException">A cell is neither empty nor a number.</exception>
    public double[] Numbers(string column) =>
        [.. Text(column).Select(Number)];

    /// <summary>Parses a table of the same form from text, for measured spectra supplied by a user.</summary>
    /// <param name="name">Name used in messages.</param>
    /// <param name="csv">The text.</param>
    /// <exception cref="FormatException">No column line, or a row whose cell count differs; the message has the line number.</exception>
    public static ReferenceTable Parse(string name, string csv)
    {
        ArgumentNullException.ThrowIfNull(csv);
        var header = new StringBuilder();
        string[]? columns = null;
        var rows = new List<string[]>();
        int lineNumber = 0;
        foreach (string rawLine in csv.Split('\n'))
        {
            lineNumber++;
            string line = rawLine.Trim();
            if (line.Length == 0)
                continue;
            if (line[0] == '#')
            {
                _ = header.AppendLine(line.TrimStart('#', ' '));
                continue;
            }

            string[] cells = SplitCells(line);
            if (columns is null)
                columns = cells;
            else if (cells.Length == columns.Length)
                rows.Add(cells);
            else
                throw new FormatException($"{name}, line {lineNumber}: {cells.Length} cells where the column line has {columns.Length}.");
        }

        if (columns is null)
            throw new FormatException($"{name}: no column line.");
        if (columns.Distinct(StringComparer.Ordinal).Count() != columns.Length)
            throw new FormatException($"{name}: a column name stands twice.");
        return new ReferenceTable(name, header.ToString(), columns, [.. rows]);
    }

    internal string Cell(int row, string column) => rows[row][Index(column)];

    internal static double Number(string cell) => cell.Length == 0 ? double.NaN : double.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture);

    private int Index(string column) => columns.TryGetValue(column, out int index)
        ? index
        : throw new ArgumentException($"Table '{Name}' has no column '{column}'; it has {string.Join(", ", Columns)}.", nameof(column));

    private static ReferenceTable Of(string folder, string name) => Loaded.GetOrAdd($"{folder}.{name}", path =>
    {
        using Stream stream = typeof(ReferenceTable).Assembly.GetManifestResourceStream($"LureSim.Data.{path}.csv")
            ?? throw new ArgumentException($"No table '{path}' is embedded.", nameof(name));
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return Parse(name, reader.ReadToEnd());
    });

    private static string[] SplitCells(string line)
    {
        var cells = new List<string>();
        var cell = new StringBuilder();
        bool quoted = false;
        foreach (char c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString().Trim());
                _ = cell.Clear();
            }
            else
            {
                _ = cell.Append(c);
            }
        }

        cells.Add(cell.ToString().Trim());
        return [.. cells];
    }
}
