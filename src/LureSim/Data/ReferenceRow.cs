namespace LureSim.Data;

/// <summary>A row of a reference table.</summary>
public sealed class ReferenceRow
{
    private readonly ReferenceTable table;
    private readonly int row;

    internal ReferenceRow(ReferenceTable table, int row)
    {
        this.table = table;
        this.row = row;
    }

    /// <summary>A cell as text.</summary>
    /// <param name="column">Column name.</param>
    /// <exception cref="ArgumentException">No such column.</exception>
    public string Text(string column) => table.Cell(row, column);

    /// <summary>A cell as a number; NaN if it is empty.</summary>
    /// <param name="column">Column name.</param>
    /// <exception cref="ArgumentException">No such column.</exception>
    /// <exception cref="FormatException">The cell is neither empty nor a number.</exception>
    public double Number(string column) => ReferenceTable.Number(Text(column));
}
