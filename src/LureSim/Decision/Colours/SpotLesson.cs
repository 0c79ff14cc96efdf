using LureSim.Light;
using LureSim.Sight;

namespace LureSim.Decision.Colours;

/// <summary>One way in which red goes dark, with what it is judged by.</summary>
/// <param name="Dark">The criterion and its depth.</param>
/// <param name="ShownDepth">Depth of the example (m): where red goes dark by it, or the bottom where it does not.</param>
/// <param name="Red">Red there, as the criterion's judge sees it.</param>
/// <param name="Beside">What it is judged beside: white, a grey as bright, the water behind it, or white again for the fish.</param>
/// <param name="ConeShares">Share of the light from white that red sends to each cone of the fish, 0 to 1; empty but for the criterion of the fish.</param>
public sealed record DarkExample(DarkDepth Dark, double ShownDepth, Srgb Red, Srgb Beside, IReadOnlyList<double> ConeShares);

/// <summary>Red beside white and chartreuse in the water of a spot, and what its colour does to eye and camera.</summary>
/// <param name="Plate">Light and what red sends back of it, at four to six depths from the surface to the bottom.</param>
/// <param name="Chart">Red, white and chartreuse at these depths.</param>
/// <param name="Ways">The four ways to go dark.</param>
/// <param name="Balance">Grey card, sand and water by how eye or camera is balanced, at the depths of the chart below the surface.</param>
public sealed record SpotLesson(SpectralPlate Plate, ColourChart Chart, IReadOnlyList<DarkExample> Ways, WhiteBalance Balance)
{
    private const int MostDepths = 6;

    /// <summary>Index of red in the chart.</summary>
    public const int Red = 0;

    /// <summary>Index of white in the chart.</summary>
    public const int White = 1;

    /// <summary>Index of chartreuse in the chart.</summary>
    public const int Chartreuse = 2;

    /// <summary>Works it out.</summary>
    /// <param name="colours">What was found about the colours at the spot.</param>
    /// <exception cref="ArgumentNullException"><paramref name="colours"/> is null.</exception>
    public static SpotLesson Of(ColourFinding colours)
    {
        ArgumentNullException.ThrowIfNull(colours);
        LightField field = colours.Chart.Field;
        double[] below = [.. colours.Chart.Depths.Where(d => d > 0).Order()];
        int wanted = Math.Min(MostDepths - 1, below.Length);
        double[] depths = [0, .. Enumerable.Range(1, wanted).Select(i => below[(i * below.Length / wanted) - 1])];
        return new SpotLesson(
            SpectralPlate.Of(field, LureColours.Red, depths),
            ColourChart.Of(field, [LureColours.Red, LureColours.White, LureColours.Chartreuse], depths),
            [.. colours.RedDarkens.Select(dark => Example(field, colours.Eye, dark, depths[^1]))],
            WhiteBalance.Of(field, depths[1..]));
    }

    private static DarkExample Example(LightField field, FishEye eye, DarkDepth dark, double bottom)
    {
        double depth = dark.Depth is { } met && met <= bottom ? met : bottom;
        ColourChart pair = ColourChart.Of(field, [LureColours.Red, LureColours.White], [depth]);
        Srgb red = pair[0, 0].EyeSwatch, white = pair[0, 1].EyeSwatch;
        switch (dark.Criterion)
        {
            case DarkCriterion.LuminanceAgainstWhite:
                return new DarkExample(dark, depth, red, white, []);
            case DarkCriterion.Chroma:
                var grey = new LureColour("grey as bright as red", Spectrum.Constant(WavelengthGrid.Visible, Math.Clamp(pair[0, 0].RelativeLuminance, 0, 1)), ColourBasis.StandIn);
                return new DarkExample(dark, depth, red, ColourChart.Of(field, [grey], [depth])[0, 0].EyeSwatch, []);
            case DarkCriterion.ContrastToWater:
                SeenSwatches seen = Appearance.Swatches(field, Appearance.Of(field, LureColours.Red, ViewDirection.Level, depth, 0));
                return new DarkExample(dark, depth, seen.Target, seen.Water, []);
            case DarkCriterion.FishCones:
                Spectrum light = field.Downwelling(depth), returned = LureColours.Red.Exitance(light);
                return new DarkExample(dark, depth, red, white, [.. eye.Cones.Select(cone => cone.Catch(light) is > 0 and var all ? cone.Catch(returned) / all : 0)]);
            default:
                throw new ArgumentOutOfRangeException(nameof(dark), dark.Criterion, "Unknown criterion.");
        }
    }
}
