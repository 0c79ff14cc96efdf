using LureSim.Decision.Colours;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>What each colour is worth where the lure runs: how far off it is seen, by the one measure of the choice.</summary>
public static class ColourWorthBars
{
    /// <summary>Draws the figure.</summary>
    /// <param name="advice">The advice.</param>
    /// <param name="fish">Name of the fish.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(ColourAdvice advice, string fish, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(advice);
        ArgumentNullException.ThrowIfNull(fish);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        int[] order = [.. Enumerable.Range(0, advice.Colours.Count).OrderByDescending(c => c == advice.Chosen).ThenByDescending(c => advice.Colours[c].SeenFrom).ThenBy(c => advice.Colours[c].DifferenceToForage)];
        double farthest = advice.Colours[advice.Farthest].SeenFrom;
        List<RowBar> rows = [.. order.Select(c =>
        {
            ColourWorth worth = advice.Colours[c];
            return new RowBar(
                worth.Name,
                format.LengthValue(worth.SeenFrom),
                $"{format.SeenText(worth.SeenFrom)} ({format.SeenText(worth.Range.Low)} to {format.SeenText(worth.Range.High)}){(worth.IsLikeness ? "; like the bait" : "")}",
                worth.Tied ? Palette.SkyBlue : OxyColor.FromRgb(0xC9, 0xD2, 0xDA),
                worth.Tied ? Hatch.None : Hatch.Rising,
                c == advice.Chosen);
        })];
        double end = Math.Max(farthest, ColourAdvice.StrikeLength) * 1.08;
        (PlotModel model, double height) = RowBars.Plot(rows, $"seen from, average ({format.LengthUnit})", 0, format.LengthValue(end), format.LengthValue(ColourAdvice.StrikeLength), options);
        return new Figure(options)
        {
            Name = "colour-choice",
            Section = FigureSection.Colours,
            Title = format.Say($"How far off each color is seen where the lure runs"),
            Subtitle = $"{FishWords.Everyday(fish)}; bait: {advice.Forage}{(advice.ForageSeen ? "" : " (assumed)")}",
            Model = model,
            PlotHeight = height,
            Keys =
            [
                KeyItem.Box("no real difference to the best", Palette.SkyBlue, Palette.SoftInk),
                KeyItem.Box("clearly nearer", OxyColor.FromRgb(0xC9, 0xD2, 0xDA), Palette.SoftInk, Hatch.Rising),
                KeyItem.Box("the choice", OxyColors.White, Palette.Vermilion),
            ],
            Caption = format.Say($"From how far a fish in the zone sees each color, averaged over where the lure runs and from where fish look, and counted no farther than a fish comes for a lure ({format.SeenText(advice.Reach)}). In brackets: 8 times in 10, with water, eye and light varied alike for all colors. Colors within that range of the best are tied: then a likeness of the bait decides, then the usual choice. Left of the dashed line ({format.SeenText(ColourAdvice.StrikeLength)}, the length of a strike) sight decides nothing."),
            AltText = format.Say($"Bars: {string.Join("; ", order.Take(5).Select(c => $"{advice.Colours[c].Name} seen from {format.SeenText(advice.Colours[c].SeenFrom)}"))}. The choice is {advice.Choice.Name}."),
        };
    }
}
