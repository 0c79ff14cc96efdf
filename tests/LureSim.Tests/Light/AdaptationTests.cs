using LureSim.Light;
using LureSim.Model;

namespace LureSim.Tests.Light;

public class AdaptationTests
{
    private static LightField Water(WaterKind kind, double secchi) => new(OpticalWater.FromSecchi(kind, secchi), Atmosphere.Illuminate(60));

    private static Xyz White(double x, double y) => new(x / y, 1, (1 - x - y) / y);

    [Fact]
    public void Daylight_is_adapted_to_nearly_in_full_and_coloured_light_less_the_more_it_is_coloured()
    {
        Assert.InRange(ChromaticAdaptation.Degree(Colorimetry.D65White, 1e4), 0.98, 1);
        double last = 1;
        foreach ((double x, double y) in new[] { (0.35, 0.36), (0.40, 0.39), (0.45, 0.41), (0.50, 0.415), (0.58, 0.41) })
        {
            double degree = ChromaticAdaptation.Degree(White(x, y), 1000);
            Assert.InRange(degree, 0, last);
            last = degree;
        }

        Assert.True(last < 0.05);
        Assert.True(ChromaticAdaptation.Degree(White(0.15, 0.2), 1000) < 0.1);
        Assert.Equal(0, ChromaticAdaptation.Degree(default, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ChromaticAdaptation.Degree(Colorimetry.D65White, -1));
    }

    [Fact]
    public void The_level_of_the_light_goes_in_as_CIECAM16_has_it()
    {
        // By hand: L_A = 20 cd/m2 for a white of 100 cd/m2, 1 - exp(-62/92)/3.6 = 0.8584; over that of a bright white the colour's share cancels.
        double ratio = ChromaticAdaptation.Degree(Colorimetry.D65White, 100) / ChromaticAdaptation.Degree(Colorimetry.D65White, 1e8);
        Assert.Equal(1 - (Math.Exp(-62.0 / 92.0) / 3.6), ratio, 9);
    }

    [Fact]
    public void At_the_surface_eye_and_camera_agree_and_below_the_eye_lies_between_the_two_cameras()
    {
        foreach ((WaterKind kind, double secchi) in new[] { (WaterKind.TanninStained, 1.0), (WaterKind.CoastalGreen, 2.5), (WaterKind.ClearOcean, 20.0) })
        {
            ColourChart chart = ColourChart.Of(Water(kind, secchi), LureColours.All, [0, 1]);
            for (int c = 0; c < chart.Colours.Count; c++)
                Assert.True(chart[0, c].Eye.Distance(chart[0, c].Unadapted) < 0.01);
            BalanceRow row = WhiteBalance.Of(Water(kind, secchi), [1]).Rows[0];
            IReadOnlyList<Lab> card = row.Seen[(int)BalanceSubject.GreyCard];
            Assert.True(card[(int)ColourBalance.WhiteCard].Chroma < 0.5);
            Assert.True(card[(int)ColourBalance.Eye].Chroma < card[(int)ColourBalance.Daylight].Chroma);
            Assert.True(card[(int)ColourBalance.Eye].Chroma > card[(int)ColourBalance.WhiteCard].Chroma);
        }
    }

    // Tea was painted pink, chartreuse light grey in it and gold mauve. Hue angles in CIELAB: red 0-40, orange 40-75, yellow 75-105, green 105-190 degrees.
    [Theory]
    [InlineData(0.6, 0.5)]
    [InlineData(0.9, 1)]
    [InlineData(0.9, 2)]
    [InlineData(1.5, 1)]
    [InlineData(1.5, 3)]
    public void Tea_looks_like_tea(double secchi, double depth)
    {
        LightField tea = Water(WaterKind.TanninStained, secchi);
        BalanceRow row = WhiteBalance.Of(tea, [depth]).Rows[0];
        foreach (BalanceSubject subject in Enum.GetValues<BalanceSubject>())
        {
            Lab eye = row.Seen[(int)subject][(int)ColourBalance.Eye];
            Assert.InRange(eye.HueDegrees, 40, 105);
            Assert.True(eye.Chroma > 15, $"{subject} {eye}");
        }

        ColourChart chart = ColourChart.Of(tea, [LureColours.Chartreuse, LureColours.Gold], [depth]);
        Assert.InRange(chart[0, 0].Eye.HueDegrees, 45, 120);
        Assert.True(chart[0, 0].Eye.Chroma > 30);
        Assert.InRange(chart[0, 1].Eye.HueDegrees, 40, 100);
    }

    [Theory]
    [InlineData(WaterKind.CoastalGreen, 2, 2, 95, 190)]
    [InlineData(WaterKind.ClearOcean, 25, 10, 170, 280)]
    public void Green_water_is_green_and_clear_water_blue(WaterKind kind, double secchi, double depth, double from, double to)
    {
        BalanceRow row = WhiteBalance.Of(Water(kind, secchi), [depth]).Rows[0];
        Assert.InRange(row.Seen[(int)BalanceSubject.Water][(int)ColourBalance.Daylight].HueDegrees, from, to);
        Assert.InRange(row.Seen[(int)BalanceSubject.Water][(int)ColourBalance.Eye].HueDegrees, from, to);
    }

    [Fact]
    public void A_grey_swatch_is_not_called_bright()
    {
        foreach ((WaterKind kind, double secchi) in new[] { (WaterKind.TanninStained, 1.0), (WaterKind.CoastalGreen, 2.5), (WaterKind.ClearOcean, 20.0), (WaterKind.Silty, 0.8) })
        {
            ColourChart chart = ColourChart.Of(Water(kind, secchi), LureColours.All, [0, 0.5, 1, 2, 4]);
            for (int d = 0; d < chart.Depths.Count; d++)
            {
                for (int c = 0; c < chart.Colours.Count; c++)
                {
                    ColourCell cell = chart[d, c];
                    Srgb swatch = cell.EyeSwatch;
                    int spread = Math.Max(swatch.Red, Math.Max(swatch.Green, swatch.Blue)) - Math.Min(swatch.Red, Math.Min(swatch.Green, swatch.Blue));
                    if (cell.Word == ColourWord.Bright)
                        Assert.True(spread > 40, $"{chart.Colours[c].Name} {swatch}");
                    if (cell.Word == ColourWord.Light)
                        Assert.True(swatch.ToXyz().Y > 0.3, $"{chart.Colours[c].Name} {swatch}");
                    if (cell.Word == ColourWord.NearBlack)
                        Assert.True(swatch.ToXyz().Y < 0.08, $"{chart.Colours[c].Name} {swatch}");
                }
            }
        }
    }
}
