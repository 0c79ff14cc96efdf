using LureSim.Model;

namespace LureSim.Scenarios;

/// <summary>Checks and builds what a scenario says on how well its inputs are known.</summary>
internal static class UncertaintyBuilder
{
    private static readonly string[] Spreads = ["current", "cast", "retrieve_speed", "depth", "clarity", "rod_tip_height"];

    /// <summary>Checks that edges are in order.</summary>
    public static void Check(ReadValue? uncertainty, Action<ReadValue, string, string, string> add)
    {
        foreach (ReadValue? spread in Spreads.Select(name => uncertainty?[name]))
        {
            foreach (ReadValue list in ((ReadValue?[])[spread?["between"], spread?["triangular"]]).OfType<ReadValue>())
            {
                for (int i = 1; i < list.Items.Count; i++)
                {
                    if (list.Items[i].Number < list.Items[i - 1].Number)
                        add(list.Items[i], "the values are out of order", "the smaller number first", "give the values in order");
                }
            }
        }
    }

    /// <summary>Builds; what is not given is assumed or exact.</summary>
    public static ScenarioUncertainty Build(ReadValue? uncertainty)
    {
        ScenarioUncertainty others = uncertainty?["others"]?.Word?.Meaning is false ? ScenarioUncertainty.None : ScenarioUncertainty.Assumed;
        if (uncertainty is null)
            return others;
        ReadValue? drag = uncertainty["line_drag"];
        return others with
        {
            Current = Of("current", others.Current),
            Cast = Of("cast", others.Cast),
            RetrieveSpeed = Of("retrieve_speed", others.RetrieveSpeed),
            Depth = Of("depth", others.Depth),
            Clarity = Of("clarity", others.Clarity),
            RodHeight = Of("rod_tip_height", others.RodHeight),
            LineDrag = drag?["factor"] is { } factor ? Spread.OfShare(factor.Number) : others.LineDrag,
            LureDrag = uncertainty["lure_drag"] is { } lure ? Spread.OfShare(lure.Number) : others.LureDrag,
            LineLaw = drag?["law"]?.Word?.Meaning is LineLawChoice law ? law : others.LineLaw,
            SightIsKnown = uncertainty["sight"]?.Word?.Meaning is bool known ? known : others.SightIsKnown,
            Samples = uncertainty["samples"] is { } samples ? (int)samples.Number : others.Samples,
            Seed = uncertainty["seed"] is { } seed ? (int)seed.Number : others.Seed,
        };

        Spread Of(string name, Spread fallback)
        {
            ReadValue? value = uncertainty[name];
            if (value?["between"] is { } band)
                return Spread.OfBand(band.Items[0].Number, band.Items[1].Number);
            if (value?["triangular"] is { } triangle)
                return Spread.OfTriangle(triangle.Items[0].Number, triangle.Items[1].Number, triangle.Items[2].Number);
            return value?["plus_or_minus"] is not { } margin ? fallback
                : margin.Text.AsSpan().TrimEnd().EndsWith("%", StringComparison.Ordinal) ? Spread.OfShare(margin.Number) : Spread.OfAmount(margin.Number);
        }
    }
}

/// <summary>Checks and builds the tide.</summary>
internal static class TideBuilder
{
    private const double HoursPerDay = 24;
    private const double SecondsPerHour = 3600;

    /// <summary>Checks times and depths.</summary>
    public static void Check(ReadValue? tide, double? water, Action<ReadValue, string, string, string> add)
    {
        if (tide is null)
            return;
        ReadValue[] points = [.. tide.Items.Where(item => item["time"] is not null)];
        double[] hours = Hours(points);
        for (int i = 1; i < hours.Length; i++)
        {
            if (hours[i] - hours[0] > HoursPerDay || hours[i] <= hours[i - 1])
            {
                add(points[i].At("time"), "the time lies before an earlier point of the tide, or a day or more after its first", "times in order, within 24 hours", "put the points in the order of time");
                break;
            }
        }

        if (water is not { } depth)
            return;
        foreach (ReadValue change in tide.Items.Select(item => item["depth_change"]).OfType<ReadValue>())
        {
            if (depth + change.Number is var there && !Limits.Depth.Contains(there))
                add(change, "no water would be left, or more than the model takes", $"{QuantityText.Range(QuantityKind.Length, Math.Max(Limits.DepthChange.Least, Limits.Depth.Least - depth), Math.Min(Limits.DepthChange.Most, Limits.Depth.Most - depth))} here", "correct the change or the depth of the spot");
        }
    }

    /// <summary>Builds the points.</summary>
    public static IReadOnlyList<TidePoint> Build(ReadValue? tide)
    {
        if (tide is null)
            return [];
        double[] hours = Hours(tide.Items);
        return [.. tide.Items.Select((item, i) => new TidePoint(hours[i], item.NumberAt("current"), item["depth_change"]?.Number ?? 0))];
    }

    // A time before the one above it is on the next day, once.
    private static double[] Hours(IReadOnlyList<ReadValue> points)
    {
        double[] hours = [.. points.Select(point => point.NumberAt("time") / SecondsPerHour)];
        bool wrapped = false;
        for (int i = 1; i < hours.Length; i++)
        {
            if (!wrapped && hours[i] < hours[i - 1])
                wrapped = true;
            if (wrapped)
                hours[i] += HoursPerDay;
        }

        return hours;
    }
}
