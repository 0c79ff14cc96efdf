using LureSim.Decision.Baits;
using LureSim.Report.Units;
using OxyPlot;

namespace LureSim.Report.Figures;

/// <summary>How well each body of the box suits season, water and forage.</summary>
public static class BodyFitBars
{
    /// <summary>Draws the figure.</summary>
    /// <param name="choice">The choice of the rules.</param>
    /// <param name="options">Units and width.</param>
    /// <returns>The figure.</returns>
    public static Figure Create(BodyChoice choice, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(options);
        UnitFormat format = options.Format;
        List<RowBar> rows = [.. choice.Fits.Select((fit, i) => new RowBar(
            format.LureText(fit.Body),
            100 * fit.Suitability,
            $"{UnitFormat.PercentText(fit.Suitability)}, {format.SizeText(fit.Body.Length)} long",
            Palette.SkyBlue,
            Marked: i == 0))];
        (PlotModel model, double height) = RowBars.Plot(rows, "fit to the rules that hold here (%)", 0, 100, null, options);
        return new Figure(options)
        {
            Name = "body-fit",
            Section = FigureSection.Body,
            Title = "Which lure suits what the fish are likely to eat",
            Subtitle = choice.Spoke is { } rule ? $"deciding rule: {rule.Says}" : "no rule decides here: the first in your box is taken",
            Model = model,
            PlotHeight = height,
            Keys = [KeyItem.Box("the lure that the rules choose", OxyColors.White, Palette.Vermilion)],
            Caption = "Fit of shape and length to the rules for this season, water, bait and fish; stronger evidence counts more. Too short loses more than too long: same size as the bait or a bit bigger.",
            AltText = $"Bars: how well each lure suits what fish eat here. {string.Join("; ", choice.Fits.Take(3).Select(fit => $"{format.LureText(fit.Body)} {UnitFormat.PercentText(fit.Suitability)}"))}.",
        };
    }
}
