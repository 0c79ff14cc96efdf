using LureSim.Decision.Comparison;
using LureSim.Report.Units;

namespace LureSim.Report.Words;

/// <summary>Puts a comparison of two rigs into words.</summary>
public static class ComparisonWords
{
    // Changes of length below this are shown in the unit of lures (m).
    private const double SmallLength = 0.3;

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
        var sentences = new List<string> { $"They differ in: {Grammar.Join(comparison.Differences.Select(d => Name(d.Kind)))}." };
        foreach (MeasureComparison item in comparison.Measures)
        {
            RigMeasureKind kind = item.Measure.Kind;
            string name = Grammar.Capital(Name(kind));
            string values = $"{Text(kind, item.First, format)} with \"{first}\", {Text(kind, item.Second, format)} with \"{second}\"";
            sentences.Add(item.Main is not { } main
                ? $"{name}: {values}; no difference changes it by an amount worth naming."
                : $"{name}: {values}. What matters most is the {Name(main.Feature.Kind)}: {SignedText(kind, main.Effect, format)}, {UnitFormat.Share.Text(main.Share)} of all that changes."
                    + (Math.Sign(main.ChangedFirst) * Math.Sign(main.ChangedLast) < 0 ? " Alone it would work the other way: it depends on the rest of the rig." : ""));
        }

        return sentences;
    }

    /// <summary>Something in which rigs differ.</summary>
    /// <param name="kind">What.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no feature.</exception>
    public static string Name(RigFeatureKind kind) => kind switch
    {
        RigFeatureKind.Weight => "weight",
        RigFeatureKind.Body => "body: shape and size",
        RigFeatureKind.Colour => "colour",
        RigFeatureKind.Line => "line and leader",
        RigFeatureKind.Knot => "knot",
        RigFeatureKind.Hook => "hook in the body",
        RigFeatureKind.Cast => "cast",
        RigFeatureKind.Depth => "count-down and fall",
        RigFeatureKind.Speed => "speed",
        RigFeatureKind.Rhythm => "pauses and rod work",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a feature."),
    };

    /// <summary>A measure.</summary>
    /// <param name="kind">What is measured.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no measure.</exception>
    public static string Name(RigMeasureKind kind) => kind switch
    {
        RigMeasureKind.ZoneShare => "time in the strike zone",
        RigMeasureKind.SightingDistance => "sighting distance",
        RigMeasureKind.ActionSwing => "swing of tail or nose",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a measure."),
    };

    /// <summary>A value of a measure, for a table or a figure.</summary>
    internal static string Value(RigMeasureKind kind, double value, UnitFormat format) => kind switch
    {
        RigMeasureKind.ZoneShare => UnitFormat.PercentText(value),
        RigMeasureKind.SightingDistance => format.LengthText(value),
        RigMeasureKind.ActionSwing => Degrees(value, 0),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a measure."),
    };

    /// <summary>A change of a measure, for a table or a figure.</summary>
    internal static string Signed(RigMeasureKind kind, double value, UnitFormat format)
    {
        double size = Math.Abs(value);
        if (size < 1e-9)
            return "no change";
        return (value < 0 ? "−" : "+") + kind switch
        {
            RigMeasureKind.ZoneShare => $"{UnitFormat.Number(100 * size, 1)} points",
            RigMeasureKind.SightingDistance => size < SmallLength ? format.SizeText(size) : format.LengthText(size),
            RigMeasureKind.ActionSwing => Degrees(size, 1),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a measure."),
        };
    }

    private static string Text(RigMeasureKind kind, double value, UnitFormat format) => kind switch
    {
        RigMeasureKind.ZoneShare => UnitFormat.Share.Text(value),
        RigMeasureKind.SightingDistance => format.Length.Text(value),
        RigMeasureKind.ActionSwing => UnitFormat.Angle.Text(value),
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a measure."),
    };

    private static string SignedText(RigMeasureKind kind, double value, UnitFormat format)
    {
        double size = Math.Abs(value);
        return (value < 0 ? "−" : "+") + kind switch
        {
            RigMeasureKind.ZoneShare => $"{UnitFormat.Fixed(100 * size, 0)} points",
            RigMeasureKind.SightingDistance => size < SmallLength ? format.SmallLength.Text(size) : format.Length.Text(size),
            RigMeasureKind.ActionSwing => UnitFormat.Angle.Text(size),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "Not a measure."),
        };
    }

    private static string Degrees(double radians, int decimals) => $"{UnitFormat.Number(radians * 180 / Math.PI, decimals)}°";
}
