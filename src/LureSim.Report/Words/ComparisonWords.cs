using LureSim.Decision.Comparison;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Puts a comparison of two rigs into words.</summary>
public static class ComparisonWords
{
    /// <summary>Said of a change that rounds to nothing.</summary>
    internal const string NoChange = "no change";

    /// <summary>Which difference matters.</summary>
    /// <param name="comparison">The comparison.</param>
    /// <param name="units">Units of the sentences.</param>
    /// <exception cref="ArgumentNullException"><paramref name="comparison"/> is null.</exception>
    public static IReadOnlyList<string> Sentences(RigComparison comparison, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        var format = new UnitFormat(units);
        string first = comparison.First.Name, second = comparison.Second.Name;
        if (comparison.Differences.Count == 0)
            return [$"\"{first}\" and \"{second}\" differ in nothing that is computed here."];
        var sentences = new List<string> { $"They differ in: {Grammar.Join(comparison.Differences.Select(d => Name(d.Kind, units)))}." };
        foreach (MeasureComparison item in comparison.Measures)
        {
            RigMeasureKind kind = item.Measure.Kind;
            string name = Grammar.Capital(Name(kind));
            string values = $"{Value(kind, item.First, format)} with \"{first}\", {Value(kind, item.Second, format)} with \"{second}\"";
            sentences.Add(item.Main is not { } main || Signed(kind, main.Effect, format) == NoChange
                ? $"{name}: {values}; no real difference."
                : $"{name}: {values}. What matters most is the {Name(main.Feature.Kind, units)}: {Signed(kind, main.Effect, format)}, {UnitFormat.PercentText(main.Share)} of all that changes."
                    + (Math.Sign(main.ChangedFirst) * Math.Sign(main.ChangedLast) < 0 ? " Alone it would work the other way: it depends on the rest of the rig." : ""));
        }

        return sentences;
    }

    /// <summary>Something in which rigs differ.</summary>
    /// <param name="kind">What.</param>
    /// <param name="units">Units of the text.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no feature.</exception>
    public static string Name(RigFeatureKind kind, UnitSystem units) => kind switch
    {
        RigFeatureKind.Weight => "weight",
        RigFeatureKind.Body => "lure: shape and size",
        RigFeatureKind.Colour => units.Spell("color"),
        RigFeatureKind.Line => "line and leader",
        RigFeatureKind.Knot => "knot",
        RigFeatureKind.Hook => "hook in the bait",
        RigFeatureKind.Cast => "cast",
        RigFeatureKind.Depth => "sink count and bail",
        RigFeatureKind.Speed => "reel speed",
        RigFeatureKind.Rhythm => "pauses and rod work",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a feature."),
    };

    /// <summary>A measure.</summary>
    /// <param name="kind">What is measured.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no measure.</exception>
    public static string Name(RigMeasureKind kind) => kind switch
    {
        RigMeasureKind.ZoneShare => "time in the strike zone",
        RigMeasureKind.SightingDistance => "seen from",
        RigMeasureKind.ActionSwing => "swing of tail or nose",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a measure."),
    };

    /// <summary>A value of a measure, for a table or a figure.</summary>
    internal static string Value(RigMeasureKind kind, double value, UnitFormat format) => kind switch
    {
        RigMeasureKind.ZoneShare => UnitFormat.PercentText(value),
        RigMeasureKind.SightingDistance => format.SeenText(value),
        RigMeasureKind.ActionSwing => Degrees(value, 0),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a measure."),
    };

    /// <summary>A change of a measure, for a table or a figure.</summary>
    internal static string Signed(RigMeasureKind kind, double value, UnitFormat format)
    {
        double size = Math.Abs(value);
        string text = kind switch
        {
            RigMeasureKind.ZoneShare => UnitFormat.Number(100 * size, 0) is var points && points == "1" ? "1 point" : $"{points} points",
            RigMeasureKind.SightingDistance => format.SeenText(size),
            RigMeasureKind.ActionSwing => Degrees(size, 0),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a measure."),
        };
        return text.StartsWith("0 ", StringComparison.Ordinal) || text == "0°" ? NoChange : (value < 0 ? "−" : "+") + text;
    }

    private static string Degrees(double radians, int decimals) => $"{UnitFormat.Number(radians * 180 / Math.PI, decimals)}°";
}
