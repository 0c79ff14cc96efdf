using System.Globalization;
using LureSim.Light;
using LureSim.Model;
using LureSim.Tides;

namespace LureSim.Scenarios;

/// <summary>Checks and builds the tide.</summary>
internal static class TideBuilder
{
    private const double HoursPerDay = 24;
    private const double SecondsPerHour = 3600;

    /// <summary>Checks times and depths.</summary>
    public static void Check(ReadValue? tide, ReadValue? spot, Action<ReadValue, string, string, string> add)
    {
        if (tide?["constituents"] is not null)
        {
            CheckHarmonic(tide, spot, add);
            return;
        }

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

        if (BottomBuilder.Depth(spot) is not { } depth)
            return;
        foreach (ReadValue change in tide.Items.Select(item => item["depth_change"]).OfType<ReadValue>())
        {
            if (depth + change.Number is var there && !Limits.Depth.Contains(there))
                add(change, "no water would be left, or more than the model takes", $"{QuantityText.Range(QuantityKind.Length, Math.Max(Limits.DepthChange.Least, Limits.Depth.Least - depth), Math.Min(Limits.DepthChange.Most, Limits.Depth.Most - depth))} here", "correct the change or the depth of the spot");
        }
    }

    /// <summary>Builds the points.</summary>
    /// <param name="tide">The tide; null for none.</param>
    /// <param name="spot">The spot, for the day and the current.</param>
    public static IReadOnlyList<TidePoint> Build(ReadValue? tide, ReadValue? spot)
    {
        if (tide is null)
            return [];
        if (tide["constituents"] is not null)
            return Predicted(tide, spot);
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

    private static void CheckHarmonic(ReadValue tide, ReadValue? spot, Action<ReadValue, string, string, string> add)
    {
        var seen = new Dictionary<string, ReadValue>(StringComparer.Ordinal);
        foreach (ReadValue name in tide.At("constituents").Items.Select(item => item["name"]).OfType<ReadValue>())
        {
            if (!seen.TryAdd(name.Text, name))
                add(name, string.Create(CultureInfo.InvariantCulture, $"the same constituent is on line {seen[name.Text].Line} already"), "each constituent once", "change or remove one of the two");
        }

        if ((tide["date"] ?? spot?["light"]?["date"]) is null)
            add(tide, "the heights need a day, and neither the tide nor the light has one", "a date", "add \"date: 2026-06-14\" to the tide");
        if (Offset(tide, spot) is null)
            add(tide, "the heights need to know how far the local clock is ahead of UTC, and neither the tide nor the light says so", "an offset", "add \"utc_offset: -4 h\" to the tide");
        if (Runs(tide, spot) is null && Strongest(tide, spot) > 0)
            add(tide, "it is not said which tide the spot's current belongs to", "outgoing, incoming", "add \"runs: outgoing\" to the tide if the water goes in spot.current.direction on the falling tide, or runs: incoming");
        if (tide["from"] is { } start && tide["to"] is { } end && To(tide) - From(tide) < LeastHours)
            add(end, "the tide is to end less than an hour after it begins", "an hour or more after from", $"write a later time than {start.Text}");
        if (seen.Count < tide.At("constituents").Items.Count || !tide.IsWhole || BottomBuilder.Depth(spot) is not { } water || (tide["date"] ?? spot?["light"]?["date"]) is null || Offset(tide, spot) is null)
            return;
        TidePoint? dry = null, deep = null;
        foreach (TidePoint point in Predicted(tide, spot))
        {
            double left = water + point.DepthChange;
            if (left < Limits.Depth.Least && (dry is null || point.DepthChange < dry.DepthChange)) dry = point;
            if (left > Limits.Depth.Most || !Limits.DepthChange.Contains(point.DepthChange)) deep = point;
        }

        if (dry is { } low)
            add(tide["level"] ?? tide, $"this tide dries the spot: at {Clock(low.Hours)} the water stands {QuantityText.Both(QuantityKind.Length, -low.DepthChange)} lower than spot.depth", $"at least {QuantityText.Both(QuantityKind.Length, Limits.Depth.Least)} of water", $"fish other hours (from, to), or correct the depth, the level or the constituents");
        else if (deep is { } high)
            add(tide["level"] ?? tide, $"the tide stands higher at {Clock(high.Hours)} than the model takes", QuantityText.Range(QuantityKind.Length, Limits.Depth.Least, Limits.Depth.Most), "correct the level or the constituents");
    }

    private static IReadOnlyList<TidePoint> Predicted(ReadValue tide, ReadValue? spot)
    {
        var harmonic = new HarmonicTide([.. tide.At("constituents").Items.Select(item => new HarmonicConstant((TidalConstituent)item.At("name").Word!.Meaning!, item.NumberAt("amplitude"), item.NumberAt("phase")))]);
        double offset = Offset(tide, spot)!.Value;
        DateTime day = DateOnly.FromDayNumber((int)(tide["date"] ?? spot!.At("light").At("date")).Number).ToDateTime(TimeOnly.MinValue);
        var prediction = new TidePrediction(Number(tide["level"]) ?? 0, Strongest(tide, spot), (Number(tide["slack_after"]) ?? 0) / SecondsPerHour, Runs(tide, spot) == TideStage.Incoming);
        TimeSpan quarter = TimeSpan.FromMinutes(15);
        IReadOnlyList<TidePoint> points = [];
        try
        {
            points = prediction.Points(harmonic, new DateTimeOffset(day, quarter * Math.Round(offset / quarter.TotalSeconds)), From(tide), To(tide));
        }
        catch (ArgumentOutOfRangeException)
        {
            // A height that no record takes is told by the check with its hour; here nothing is left to build.
            return [new TidePoint(From(tide), 0, Limits.DepthChange.Least)];
        }

        return points;
    }

    private const double LeastHours = 1;

    // What the clock is ahead of UTC (s): that of the tide, of the light, or of the coast on the day.
    private static double? Offset(ReadValue tide, ReadValue? spot) => Number(tide["utc_offset"] ?? spot?["light"]?["utc_offset"])
        ?? (spot?["light"]?["state"]?.Word?.Meaning is Coast coast && Number(tide["date"] ?? spot["light"]?["date"]) is { } day ? coast.Offset(DateOnly.FromDayNumber((int)day)) * SecondsPerHour : null);

    private static double From(ReadValue tide) => (Number(tide["from"]) ?? 0) / SecondsPerHour;

    // Without an end a whole day; an end before the start is on the next day.
    private static double To(ReadValue tide) => Number(tide["to"]) is { } seconds
        ? (seconds / SecondsPerHour) + (seconds / SecondsPerHour <= From(tide) ? HoursPerDay : 0)
        : From(tide) + HoursPerDay;

    private static double Strongest(ReadValue tide, ReadValue? spot) => Number(tide["strongest_current"]) ?? Number(spot?["current"]?["speed"]) ?? 0;

    private static TideStage? Runs(ReadValue tide, ReadValue? spot) => tide["runs"]?.Word?.Meaning as TideStage? ?? (spot?["current"]?["tide"]?.Word?.Meaning is TideStage stage and not TideStage.Slack ? stage : null);

    private static double? Number(ReadValue? value) => value is null || double.IsNaN(value.Number) ? null : value.Number;

    private static string Clock(double hours)
    {
        int minutes = (int)Math.Round(60 * hours) % (24 * 60);
        return string.Create(CultureInfo.InvariantCulture, $"{minutes / 60:00}:{minutes % 60:00}");
    }
}
