using LureSim.Data;

namespace LureSim.Lures;

/// <summary>Proportions that a scenario does not give, from Data/tackle; rows of kinds of lure are keyed by the kind's word. Each table says what is invented.</summary>
internal static class LureTables
{
    private const string ProportionsTable = "body_proportions", SectionsTable = "lure_parts", FiguresTable = "rig_proportions";

    // Lazy rather than static readonly: a missing row shall say so itself, not as the failure of a type.
    private static readonly Lazy<Dictionary<string, BodyProportions>> BodyRows = new(() => ReferenceTable.Tackle(ProportionsTable).Rows.ToDictionary(
        row => row.Text("profile"),
        row => new BodyProportions(row.Number("height_share"), row.Number("width_share"), row.Number("density_kg_m3"), row.Number("fill"), row.Number("shank_share"))));

    private static readonly Lazy<Dictionary<string, OutlineSection[]>> SectionRows = new(() => ReferenceTable.Tackle(SectionsTable).Rows
        .GroupBy(row => row.Text("profile"))
        .ToDictionary(group => group.Key, group => group.Select(Section).ToArray()));

    private static readonly Lazy<Dictionary<string, double>> FigureRows = new(() => ReferenceTable.Tackle(FiguresTable).Rows.ToDictionary(row => row.Text("name"), row => row.Number("value")));

    /// <summary>Words that have rows, by table.</summary>
    public static IEnumerable<(string Table, string Word)> Words =>
        [.. BodyRows.Value.Keys.Select(word => (ProportionsTable, word)), .. SectionRows.Value.Keys.Select(word => (SectionsTable, word))];

    /// <summary>Proportions of a kind.</summary>
    /// <exception cref="InvalidOperationException">The table has no row for it.</exception>
    public static BodyProportions Proportions(string word) => Row(BodyRows.Value, word, ProportionsTable);

    /// <summary>Sections of a kind's outline.</summary>
    /// <exception cref="InvalidOperationException">The table has no row for it.</exception>
    public static IReadOnlyList<OutlineSection> Sections(string word) => Row(SectionRows.Value, word, SectionsTable);

    /// <summary>A figure of hooks, heads and hard lures.</summary>
    /// <exception cref="InvalidOperationException">The table has no such figure.</exception>
    public static double Figure(string name) => Row(FigureRows.Value, name, FiguresTable);

    private static OutlineSection Section(ReferenceRow row)
    {
        string role = row.Text("role");
        return new OutlineSection(
            Enum.TryParse(role, ignoreCase: true, out PartRole found) && Enum.IsDefined(found) ? found : throw new InvalidOperationException($"Data/tackle/{SectionsTable}.csv has an unknown role, '{role}'."),
            row.Number("from_share"),
            row.Number("to_share"),
            row.Number("height_share"),
            row.Number("width_share"),
            row.Number("aside_share"));
    }

    private static T Row<T>(Dictionary<string, T> rows, string word, string table) =>
        rows.TryGetValue(word, out T? row) ? row : throw new InvalidOperationException($"Data/tackle/{table}.csv has no row for '{word}'.");
}

/// <summary>Default shape and material of a kind of lure.</summary>
/// <param name="HeightShare">Greatest height as a share of the length; the thickness of a plate.</param>
/// <param name="WidthShare">Greatest width as a share of the length.</param>
/// <param name="Density">Density of the material (kg/m3), of a hard bait all in all.</param>
/// <param name="Fill">Share of length x height x width x pi/4 that the body fills: between a spheroid (2/3) and a cylinder (1).</param>
/// <param name="ShankShare">Common length of the hook's shank as a share of the body's length; NaN for a lure that needs no head.</param>
public sealed record BodyProportions(double HeightShare, double WidthShare, double Density, double Fill, double ShankShare);

/// <summary>A section of a body's outline.</summary>
/// <param name="Role">What it does.</param>
/// <param name="From">Where it begins, share of the length from the nose.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Height">Height as a share of the body's greatest.</param>
/// <param name="Width">Width as a share of the body's greatest; of a pair that of each one.</param>
/// <param name="Aside">For a pair on both sides of the axis, the middle of each one as a share of the body's greatest width; 0 for a section on the axis.</param>
public sealed record OutlineSection(PartRole Role, double From, double To, double Height, double Width, double Aside = 0)
{
    /// <summary>Width across everything in the section as a share of the body's greatest.</summary>
    public double WholeWidth => Aside == 0 ? Width : 2 * Width;

    /// <summary>Its volume as a share of the body's box (an elliptic cylinder fills pi/4 of it).</summary>
    /// <summary>What is left of sections where the body ends sooner, at a share of its length; the end of a tail gets narrower as it is cut toward what it hangs on.</summary>
    /// <param name="sections">Sections from nose to tail.</param>
    /// <param name="end">Where the body ends, share of its whole length, above the beginning of the tail.</param>
    internal static IReadOnlyList<OutlineSection> Cut(IReadOnlyList<OutlineSection> sections, double end)
    {
        if (end >= 1) return sections;
        List<OutlineSection> left = [];
        for (int i = 0; i < sections.Count; i++)
        {
            OutlineSection s = sections[i];
            if (s.From >= end) continue;
            double share = Math.Min(1, (end - s.From) / (s.To - s.From));

            // A torn paddle is lower as well: as much of its height above the stem is left as of its length.
            OutlineSection? stem = s.Role == PartRole.Paddle && i > 0 ? sections[i - 1] : null;
            left.Add(s with
            {
                To = Math.Min(s.To, end),
                Height = stem is null ? s.Height : stem.Height + (share * (s.Height - stem.Height)),
                Width = stem is null ? s.Width : stem.Width + (share * (s.Width - stem.Width)),
            });
        }

        return left;
    }

    internal double Weight => (To - From) * Height * WholeWidth;

    /// <summary>Its middle, share of the length from the nose.</summary>
    internal double Middle => (From + To) / 2;
}
