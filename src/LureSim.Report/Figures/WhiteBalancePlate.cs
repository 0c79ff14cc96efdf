using LureSim.Light;
using LureSim.Report.Units;
using LureSim.Report.Words;
using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Axes;

namespace LureSim.Report.Figures;

/// <summary>A grey card, sand and the water itself, as a camera set for daylight, an eye after some minutes and a camera balanced on a white card see them.</summary>
public static class WhiteBalancePlate
{
    private const double Gap = 14;

    /// <summary>Draws the figure.</summary>
    /// <param name="balance">The colours; at least one depth.</param>
    /// <param name="water">What the water is called.</param>
    /// <param name="options">Units of the depths, and width.</param>
    /// <returns>The figure.</returns>
    /// <exception cref="ArgumentException">There is no depth.</exception>
    public static Figure Create(WhiteBalance balance, string water, FigureOptions options)
    {
        ArgumentNullException.ThrowIfNull(balance);
        ArgumentNullException.ThrowIfNull(water);
        ArgumentNullException.ThrowIfNull(options);
        if (balance.Rows.Count == 0)
            throw new ArgumentException("There must be a depth.", nameof(balance));
        UnitFormat format = options.Format;
        double small = options.SmallFontSize, row = options.Narrow ? 46 : 58, head = (options.FontSize * 1.3) + (small * 1.4) + 10;
        string[] balances = [.. Enum.GetValues<ColourBalance>().Select(Name)];
        string[] subjects = [.. Enum.GetValues<BalanceSubject>().Select(subject => format.Say($"{Name(subject)}"))];
        PlotModel model = PlotBase.Model(options);
        model.PlotAreaBorderThickness = new OxyThickness(0);
        model.Padding = new OxyThickness(12, 6, 10, 6);
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Bottom, 0, 1));
        model.Axes.Add(PlotBase.Hidden(AxisPosition.Left, 0, 1));
        model.Paint(AnnotationLayer.AboveSeries, area =>
        {
            double left = area.Bounds.Left + (options.Narrow ? 42 : 58), top = area.Bounds.Top + head;
            double group = ((area.Bounds.Right - left) / balances.Length) - Gap, cell = group / subjects.Length;
            for (int b = 0; b < balances.Length; b++)
            {
                double x = left + (b * (group + Gap));
                area.Text(new ScreenPoint(x + (group / 2), area.Bounds.Top), balances[b], options.Narrow ? small : options.FontSize, Palette.Ink, HorizontalAlignment.Center, VerticalAlignment.Top, bold: true);
                for (int s = 0; s < subjects.Length; s++)
                {
                    area.Text(new ScreenPoint(x + ((s + 0.5) * cell), top - 4), subjects[s], options.Narrow ? small - 1 : small, Palette.SoftInk, HorizontalAlignment.Center, VerticalAlignment.Bottom);
                    for (int r = 0; r < balance.Rows.Count; r++)
                    {
                        Srgb colour = balance.Rows[r].Swatches[s][b];
                        area.Context.DrawRectangle(new OxyRect(x + (s * cell), top + (r * row), cell, row - 6), OxyColor.FromRgb(colour.Red, colour.Green, colour.Blue), Palette.Line, 0.8, EdgeRenderingMode.Adaptive);
                    }
                }
            }

            for (int r = 0; r < balance.Rows.Count; r++)
                area.Text(new ScreenPoint(left - 8, top + (r * row) + ((row - 6) / 2)), format.HandText(balance.Rows[r].Depth), small, Palette.Ink, HorizontalAlignment.Right, VerticalAlignment.Middle, bold: true);
        }, clip: false);
        BalanceRow last = balance.Rows[^1];
        return new Figure(options)
        {
            Name = "grey-card",
            Section = FigureSection.Lesson,
            Title = format.Say($"A gray card, sand and the water"),
            Subtitle = water,
            Model = model,
            PlotHeight = head + (row * balance.Rows.Count) + 12,
            Caption = format.Say($"First glance: as a camera set for daylight takes it. Your eye: after some minutes; how far it adapts falls with the color of the light (Smet et al. 2017) and with its level (CIECAM16), {UnitFormat.PercentText(balance.Rows[0].Degree)} of the way at {format.HandText(balance.Rows[0].Depth)} and {UnitFormat.PercentText(last.Degree)} at {format.HandText(last.Depth)}. White card: a camera balanced on a white card down there, so that a gray card is gray. Each depth has its own exposure."),
            AltText = format.Say($"Swatches of a gray card, sand and the water by depth, each as at a first glance, as an eye sees it after minutes, and as a camera balanced on a white card. The eye adapts {UnitFormat.PercentText(last.Degree)} of the way at {format.HandText(last.Depth)}."),
        };
    }

    private static string Name(ColourBalance balance) => balance switch
    {
        ColourBalance.Daylight => "first glance",
        ColourBalance.Eye => "your eye",
        ColourBalance.WhiteCard => "white card",
        _ => throw new ArgumentOutOfRangeException(nameof(balance), balance, "Not a balance."),
    };

    private static string Name(BalanceSubject subject) => subject switch
    {
        BalanceSubject.GreyCard => "card",
        BalanceSubject.Sand => "sand",
        BalanceSubject.Water => "water",
        _ => throw new ArgumentOutOfRangeException(nameof(subject), subject, "Not a subject."),
    };
}
