using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Words;
using LureSim.Water;

namespace LureSim.Report.Sheets;

/// <summary>Turns results of the model into what the figures draw.</summary>
public static class Plates
{
    // Lines that a spectrum plot holds without crowding.
    private const int SpectrumDepths = 5;
    private const int CurrentDepths = 9;

    /// <summary>Colours against depth.</summary>
    /// <param name="chart">The chart; its depths may be in any order.</param>
    /// <returns>The plate, shallow first.</returns>
    public static ColourPlate Colours(ColourChart chart)
    {
        ArgumentNullException.ThrowIfNull(chart);
        List<int> rows = ByDepth(chart);
        return new ColourPlate(
            [.. rows.Select(r => chart.Depths[r])],
            [.. chart.Colours.Select(c => c.Name)],
            [.. rows.Select(r => (IReadOnlyList<PlateCell>)[.. Enumerable.Range(0, chart.Colours.Count).Select(c => Cell(chart[r, c]))])]);
    }

    /// <summary>Light just below the surface and at a few depths of a chart, its deepest among them.</summary>
    /// <param name="chart">The chart.</param>
    /// <returns>The plate, shallow first.</returns>
    public static SpectrumPlate Spectrum(ColourChart chart)
    {
        ArgumentNullException.ThrowIfNull(chart);
        List<double> below = [.. ByDepth(chart).Select(r => chart.Depths[r]).Where(d => d > 0)];
        List<double> depths = [0];
        int wanted = Math.Min(SpectrumDepths - 1, below.Count);
        for (int i = 1; i <= wanted; i++)
            depths.Add(below[(i * below.Count / wanted) - 1]);
        return new SpectrumPlate(
            chart.Field.DirectBelowSurface.Grid.WavelengthsNm.ToArray(),
            depths,
            [.. depths.Select(d => (IReadOnlyList<double>)chart.Field.Downwelling(d).ToArray())]);
    }

    /// <summary>Current from the surface to just above the bottom; empty in still water.</summary>
    /// <param name="spot">The spot.</param>
    /// <returns>Samples, shallow first.</returns>
    public static IReadOnlyList<CurrentSample> Current(Spot spot)
    {
        ArgumentNullException.ThrowIfNull(spot);
        if (!(spot.CurrentSpeed > 0))
            return [];

        CurrentProfile profile = WaterColumn.Of(spot).Current;
        return [.. Enumerable.Range(0, CurrentDepths).Select(i => spot.Depth * 0.97 * i / (CurrentDepths - 1)).Select(d => new CurrentSample(d, profile.Speed(spot.Depth - d, out _)))];
    }

    private static PlateCell Cell(ColourCell cell) =>
        new(cell.UnadaptedSwatch.Hex, cell.EyeSwatch.Hex, ColourWords.Text(cell.Word), cell.Eye.L);

    private static List<int> ByDepth(ColourChart chart) => [.. Enumerable.Range(0, chart.Depths.Count).OrderBy(i => chart.Depths[i])];
}
