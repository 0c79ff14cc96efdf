using LureSim.Report.Units;
using Spectre.Console;
using Spectre.Console.Rendering;

namespace LureSim.Cli.Output;

/// <summary>What the views share.</summary>
internal static class Views
{
    /// <summary>A table in the house style.</summary>
    public static Table NewTable(string title) => new Table { Border = TableBorder.Simple, Title = new TableTitle(Escape(title)) };

    /// <summary>
    /// Prints a table so that no word of it is split: where the console is too narrow, columns of words wrap between words and columns of
    /// numbers between the words of their headings, and the space around the columns goes first.
    /// </summary>
    /// <param name="console">Where to print.</param>
    /// <param name="view">The table with all its rows.</param>
    public static void WriteFitted(IAnsiConsole console, Table view)
    {
        const int Around = 3, Between = 1;
        RenderOptions options = RenderOptions.Create(console, console.Profile.Capabilities);
        int available = console.Profile.Width - 1;
        int[] full = new int[view.Columns.Count], least = new int[view.Columns.Count];
        for (int column = 0; column < full.Length; column++)
        {
            bool numbers = view.Columns[column].Alignment == Justify.Right;
            Measurement heading = view.Columns[column].Header.Measure(options, int.MaxValue);
            (full[column], least[column]) = (heading.Max, heading.Min);
            foreach (TableRow row in view.Rows)
            {
                Measurement cell = row[column].Measure(options, int.MaxValue);
                full[column] = Math.Max(full[column], cell.Max);
                least[column] = Math.Max(least[column], numbers ? cell.Max : cell.Min);
            }
        }

        if (full.Sum() + (Around * full.Length) > available)
        {
            bool tight = least.Sum() + (Around * full.Length) > available;
            int spare = Math.Max(0, available - least.Sum() - ((tight ? Between : Around) * full.Length));
            for (int column = 0; column < full.Length; column++)
            {
                int more = Math.Min(spare, full[column] - least[column]);
                spare -= more;
                view.Columns[column].Width = least[column] + more;
                if (tight)
                    view.Columns[column].Padding = new Padding(0);
            }
        }

        console.Write(view);
    }

    /// <summary>
    /// Prints a table of many columns in as many blocks as the width of the console needs, each with the first column
    /// before it: squeezed columns cannot be read.
    /// </summary>
    /// <param name="console">Where to print.</param>
    /// <param name="title">Title of the first block.</param>
    /// <param name="first">Column that begins each block.</param>
    /// <param name="columns">The other columns, as many cells each.</param>
    public static void WriteColumns(IAnsiConsole console, string title, ViewColumn first, IReadOnlyList<ViewColumn> columns)
    {
        for (int start = 0; start < columns.Count;)
        {
            int end = start + 1;
            int width = first.Width + columns[start].Width;
            while (end < columns.Count && width + columns[end].Width <= console.Profile.Width - 1)
                width += columns[end++].Width;

            Table view = NewTable(start == 0 ? title : $"{title} (continued)");
            ViewColumn[] block = [first, .. columns.Skip(start).Take(end - start)];
            foreach (ViewColumn column in block)
            {
                var heading = new TableColumn(Escape(column.Heading)) { NoWrap = true };
                view.AddColumn(column.AlignRight ? heading.RightAligned() : heading);
            }

            for (int row = 0; row < first.Cells.Count; row++)
                view.AddRow([.. block.Select(column => column.Cells[row])]);
            console.Write(view);
            start = end;
        }
    }

    /// <summary>Text that must not be read as markup, as it will show: its width in a table counts.</summary>
    public static string Escape(string text) => Markup.Escape(VisibleText.Shown(text));

    /// <summary>The unit for a column of depths, with the digits that their steps need (quarters of a foot take two).</summary>
    public static DisplayUnit DepthUnit(UnitFormat units, IEnumerable<double> depths)
    {
        DisplayUnit unit = units.Length;
        bool fine = depths.Select(unit.FromSi).Any(depth => Math.Abs((depth * 10.0) - Math.Round(depth * 10.0)) > 1e-6);
        return fine && unit.Decimals < 2 ? unit with { Decimals = 2 } : unit;
    }

    /// <summary>A number, or a dash for none.</summary>
    public static string Optional(DisplayUnit unit, double? value) => unit.Number(value ?? double.NaN);
}

/// <summary>A column of a table for people.</summary>
/// <param name="Heading">Heading, plain text.</param>
/// <param name="Cells">Cells, in markup.</param>
/// <param name="AlignRight">True for numbers.</param>
internal sealed record ViewColumn(string Heading, IReadOnlyList<string> Cells, bool AlignRight)
{
    // Space that a simple border puts around a cell.
    private const int Padding = 3;

    /// <summary>Characters the column takes on the screen.</summary>
    public int Width { get; } = Math.Max(Heading.Length, Cells.Select(cell => Markup.Remove(cell).Length).DefaultIfEmpty().Max()) + Padding;
}
