using LureSim.Decision.Colours;
using LureSim.Report.Units;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>What each colour is worth where the lure runs: how far it is made out, and how far it is from the forage.</summary>
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
        int[] order = [.. Enumerable.Range(0, advice.Colours.Count).OrderByDescending(c => c == advice.Chosen).ThenByDescending(c => advice.Colours[c].Swath).ThenBy(c => advice.Colours[c].DifferenceToForage)];
        double farthest = advice.Colours[advice.Farthest].Swath;
        List<RowBar> rows = [.. order.Select(c =>
        {
            ColourWorth worth = advice.Colours[c];
            bool far = worth.Swath >= ColourAdvice.NearlyAsFar * farthest;
            return new RowBar(
                worth.Name,
                format.LengthValue(worth.Swath),
                $"{format.LengthText(worth.Distance)}; {UnitFormat.Number(worth.DifferenceToForage, 0)} steps off",
                far ? Palette.SkyBlue : OxyColor.FromRgb(0xC9, 0xD2, 0xDA),
                far ? Hatch.None : Hatch.Rising,
                c == advice.Chosen);
        })];
        (PlotModel model, double height) = RowBars.Plot(
            rows,
            $"made out within reach of a strike, mean ({format.LengthUnit})",
            0,
            Math.Max(0.1, format.LengthValue(farthest) * 1.05),
            farthest > 0 ? format.LengthValue(ColourAdvice.NearlyAsFar * farthest) : null,
            options);
        return new Figure(options)
        {
            Name = "colour-choice",
            Section = FigureSection.Colours,
            Title = "Seen far enough, then nearest to the forage",
            Subtitle = $"{fish}, where the lure runs; forage: {advice.Forage}",
            Model = model,
            PlotHeight = height,
            Keys =
            [
                KeyItem.Box("made out nearly as far as the best", Palette.SkyBlue, Palette.SoftInk),
                KeyItem.Box("not as far", OxyColor.FromRgb(0xC9, 0xD2, 0xDA), Palette.SoftInk, Hatch.Rising),
                KeyItem.Box("the choice", OxyColors.White, Palette.Vermilion),
            ],
            Caption = $"Bars: how far off a fish makes the colour out, over the depths at which the lure runs and the directions from which fish in the zone look, cut at {format.LengthText(advice.Reach)}, from which fish in tanks turned to prey. At the right the uncut distance, and the difference to the forage close up in just-noticeable steps. Of the colours that pass the dashed line the one nearest to the forage is taken.",
            AltText = $"{string.Join("; ", order.Select(c => $"{advice.Colours[c].Name}: {format.LengthText(advice.Colours[c].Distance)}, {UnitFormat.Number(advice.Colours[c].DifferenceToForage, 0)} steps from the forage"))}.",
        };
    }
}
