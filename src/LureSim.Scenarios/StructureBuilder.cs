using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>Checks and builds what stands beside the cast.</summary>
internal sealed class StructureBuilder(ProblemList problems)
{
    // What is filled in (m), assumed.
    private const double Foot = 0.3048;
    private const double OverhangHeight = 3 * Foot;

    /// <summary>Checks what more than one value says.</summary>
    /// <param name="spot">The spot.</param>
    /// <param name="cast">The longest cast (m), where one is given.</param>
    /// <param name="depth">Depth of the spot (m), where it can be told.</param>
    public void Check(ReadValue spot, double? cast, double? depth)
    {
        foreach (ReadValue item in spot["structure"]?.Items ?? [])
        {
            StructureKind? kind = item["kind"]?.Word?.Meaning as StructureKind?;
            if (item["from"] is { } from)
            {
                if (item["to"] is { } to && to.Number < from.Number)
                    Add(to, "it ends nearer than it begins", $"at least {Length(from.Number)}", "give the end that is nearer to the rod first");
                if (cast is { } farthest && from.Number > farthest + (item["reach"]?.Number ?? 3 * Foot))
                    Add(from, "it stands beyond the longest cast: no lure comes near it", $"up to {Length(farthest)}, and its reach", "cast farther or remove it");
            }

            if (item["left"] is not null && item["right"] is { } right)
                Add(right, "it cannot be to the left and to the right", "left or right", "remove one of the two");
            if (kind == StructureKind.Posts && item["height"] is { } none)
                Add(none, "posts stand through all the water", "no height", "remove height");
            if (kind == StructureKind.OysterClump && item["height"] is { } high && depth is { } water && high.Number >= water)
                Add(high, "the clump is as high as the water is deep", $"less than {Length(water)}", "lower the clump, or write \"kind: posts\" for what stands through all the water");
            if (item["shade"] is { Items.Count: 2 } shade && shade.Items[1].Number <= shade.Items[0].Number)
                Add(shade.Items[1], "the shade ends where it begins, or before", $"more than {Length(shade.Items[0].Number)}", "give the end that is nearer to the rod first");
        }
    }

    /// <summary>The structures of a spot without problems.</summary>
    public static IReadOnlyList<SpotStructure> Build(ReadValue spot) =>
    [
        .. (spot["structure"]?.Items ?? []).Select(item =>
        {
            var kind = (StructureKind)item.At("kind").Word!.Meaning!;
            double from = item.NumberAt("from"), to = item["to"]?.Number ?? Math.Min(from + Foot, Limits.ProfileDistance.Most);
            ReadValue? shade = item["shade"];
            bool over = kind == StructureKind.Overhang;
            return new SpotStructure(kind, from, to)
            {
                Left = item["left"]?.Number ?? -(item["right"]?.Number ?? 0),
                Width = item["width"]?.Number ?? Foot,
                Height = item["height"]?.Number ?? (over ? OverhangHeight : kind == StructureKind.OysterClump ? Foot : 0),
                Role = item["pass"]?.Word?.Meaning is StructureRole role ? role : StructureRole.PassClose,
                Reach = item["reach"]?.Number ?? 3 * Foot,
                ShadeFrom = shade?.Items[0].Number ?? (over ? from : null),
                ShadeTo = shade?.Items[1].Number ?? (over ? to : null),
            };
        }),
    ];

    private static string Length(double value) => QuantityText.Both(QuantityKind.Length, value);

    private void Add(ReadValue at, string message, string allowed, string fix) => problems.Add(at.Line, at.Column, at.Path, at.Text, message, allowed, fix);
}
