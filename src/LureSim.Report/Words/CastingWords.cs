using LureSim.Casting;
using LureSim.Model;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Casts by weight in words.</summary>
public static class CastingWords
{
    // A rod tip's shake, or a gust (m).
    private const double NoWind = 0.5;

    /// <summary>Name of a lure of the table.</summary>
    /// <param name="row">The row.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Name(CastRow row, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(row);
        ArgumentNullException.ThrowIfNull(format);
        return row.Head.IsNone ? format.LureText(row.Body) : format.HeadText(row.Head);
    }

    /// <summary>What the table is worked out from, a sentence.</summary>
    /// <param name="table">The table.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Basis(CastTable table, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(table);
        ArgumentNullException.ThrowIfNull(format);
        TackleBox box = table.Scenario.Tackle;
        string rod = box.Rod is { } known ? $"{format.LengthText(known.Length)} rod for {format.Weight(known.LightestLure)} to {format.Weight(known.HeaviestLure)}" : "a usual rod (none was given)";
        return table.Presentation switch
        {
            { CastWith: { } with } p => $"Thrown as hard as {(with.Mass is { } mass ? format.Weight(mass) : format.HeadText(with.Head))} for {format.HandText(p.CastLength)} in still air; {rod}.",
            { FullCast: true } => $"An easy full cast; {rod}.",
            { } p when table.ByLure => $"You want {format.HandText(p.CastLength)}; {rod}.",
            { } p => $"Every lure is taken to fly {format.HandText(p.CastLength)}: give the rod, or the lure with which the cast is that long, and each gets its own.",
            _ => throw new ArgumentNullException(nameof(table)),
        };
    }

    /// <summary>What is to be said of one lure; empty for nothing.</summary>
    /// <param name="cast">Its cast.</param>
    /// <param name="format">Units.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static string Note(CastOfLure cast, UnitFormat format)
    {
        ArgumentNullException.ThrowIfNull(cast);
        ArgumentNullException.ThrowIfNull(format);
        string wind = Math.Abs(cast.Length - cast.InStillAir) < NoWind ? "" : cast.Length < cast.InStillAir ? "wind takes some" : "wind helps";
        string rating = cast.Rating switch
        {
            RodRating.Under => "under the rod's rating",
            RodRating.Over => "over the rod's rating",
            RodRating.Within or RodRating.NoRod => "",
            _ => throw new ArgumentOutOfRangeException(nameof(cast), cast.Rating, "Not a rating."),
        };
        string shorter = cast is { FallsShort: true, Wanted: { } wanted } ? $"too light for {format.HandText(wanted)}" : "";
        return string.Join(", ", new[] { shorter, rating, wind }.Where(text => text.Length > 0));
    }
}
