using LureSim.Decision;
using LureSim.Light;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Sight;
using LureSim.Units;
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

    /// <summary>The brightest colour where the lure runs, with the darkest for comparison.</summary>
    /// <param name="finding">What was found about the colours.</param>
    /// <param name="units">Units of the sentence.</param>
    /// <returns>The colour, or null if there is none.</returns>
    public static ColourChoice? Choice(ColourFinding finding, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(finding);
        ColourChart here = finding.AtRunningDepth;
        if (here.Colours.Count == 0)
            return null;

        var format = new UnitFormat(units);
        string depth = format.LengthText(finding.RunningDepth);
        Sighting level = finding.SeenLevel[0], below = finding.SeenFromBelow[0];
        if (finding.Advice is { } advice)
            return new ColourChoice(advice.Colours[advice.Chosen].Name, Ground(advice, format));

        string reason = level.Distance > 0
            ? $"Made out farthest by the {finding.Eye.CommonName} looking level at {depth}: {format.LengthText(level.Distance)}."
            : $"No colour of the box is made out at {depth}; this one is brightest.";
        if (here.Colours.Count > 1 && below.Name != level.Name && below.Distance > 0)
            reason += $" {char.ToUpperInvariant(below.Name[0])}{below.Name[1..]} gives the strongest silhouette from below.";
        return new ColourChoice(here.Colours[level.Distance > 0 ? finding.Chosen : finding.Brightest].Name, reason);
    }

    // One sentence; the section on colours has the rest.
    private static string Ground(ColourAdvice advice, UnitFormat format)
    {
        ColourWorth chosen = advice.Colours[advice.Chosen];
        return advice.Ground switch
        {
            ColourGround.NaturalMatch => $"Nearest to {advice.Forage} forage, and made out far enough: {format.LengthText(chosen.Distance)}.",
            ColourGround.Brightness => $"For its brightness: made out at {format.LengthText(chosen.Distance)}.",
            ColourGround.Silhouette => $"For its dark shape: made out at {format.LengthText(chosen.Distance)}.",
            _ => "No colour of the box is made out there by sight.",
        };
    }

    /// <summary>A colour word as people write it.</summary>
    /// <param name="word">The word.</param>
    /// <returns>Its text.</returns>
    public static string Text(ColourWord word) => word switch
    {
        ColourWord.Unseen => "unseen",
        ColourWord.NearBlack => "near black",
        ColourWord.Dark => "dark",
        ColourWord.Muted => "muted",
        ColourWord.Bright => "bright",
        _ => throw new ArgumentOutOfRangeException(nameof(word), word, "Not a colour word."),
    };

    private static PlateCell Cell(ColourCell cell) =>
        new(cell.UnadaptedSwatch.Hex, cell.AdaptedSwatch.Hex, Text(cell.Word), cell.Adapted.L);

    private static List<int> ByDepth(ColourChart chart) => [.. Enumerable.Range(0, chart.Depths.Count).OrderBy(i => chart.Depths[i])];
}
