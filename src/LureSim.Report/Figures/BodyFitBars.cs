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
            fit.Body.Label,
            100 * fit.Suitability,
            $"{UnitFormat.PercentText(fit.Suitability)}, {format.SizeText(fit.Body.Length)} long",
            Palette.SkyBlue,
            Marked: i == 0))];
        (PlotModel model, double height) = RowBars.Plot(rows, "fit to the rules that hold here (%)", 0, 100, null, options);
        return new Figure(options)
        {
            Name = "body-fit",
            Section = FigureSection.Body,
            Title = "Which body suits what the fish are likely to eat",
            Subtitle = choice.Spoke is { } rule ? $"the rule that spoke: {rule.Says}" : "no rule speaks here: the first of the box is taken",
            Model = model,
            PlotHeight = height,
            Keys = [KeyItem.Box("the body that the rules choose", OxyColors.White, Palette.Vermilion)],
            Caption = "Fit of profile and length to the rules that hold for this season, water, forage and fish, loud rules counting most. A body that is too short loses more than one that is too long: match or exceed what is eaten.",
            AltText = $"{string.Join("; ", choice.Fits.Select(fit => $"{fit.Body.Label}: {UnitFormat.PercentText(fit.Suitability)}"))}.",
        };
    }
}
