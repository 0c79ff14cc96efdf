using LureSim.Decision.Colours;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Report.Words;

namespace LureSim.Tests.Report;

public class PlatesTests
{
    private static readonly Scenario Demo = Samples.Bridge() with
    {
        Tackle = Samples.Bridge().Tackle with { Colours = ["white", "chartreuse", "red", "black"] },
    };

    private static readonly ColourFinding Finding = SpotColours.At(Demo, 4.5, new UnitFormat(UnitSystem.Us).LengthScale);

    [Fact]
    public void The_plate_holds_every_cell_of_the_chart_shallow_first()
    {
        ColourPlate plate = Plates.Colours(Finding.Chart);
        Assert.Equal(Finding.Chart.Depths.Order(), plate.Depths);
        Assert.Equal(["white", "chartreuse", "red", "black"], plate.Colours);
        for (int r = 0; r < plate.Depths.Count; r++)
        {
            int row = Finding.Chart.Depths.ToList().IndexOf(plate.Depths[r]);
            for (int c = 0; c < plate.Colours.Count; c++)
            {
                Assert.Equal(Finding.Chart[row, c].EyeSwatch.Hex, plate.Cells[r][c].Eye);
                Assert.Equal(Finding.Chart[row, c].UnadaptedSwatch.Hex, plate.Cells[r][c].Camera);
                Assert.Equal(ColourWords.Text(Finding.Chart[row, c].Word), plate.Cells[r][c].Word);
            }
        }
    }

    [Fact]
    public void Light_falls_with_depth_at_every_wavelength()
    {
        SpectrumPlate plate = Plates.Spectrum(Finding.Chart);
        Assert.Equal(0, plate.Depths[0]);
        Assert.Equal(Finding.Chart.Depths.Max(), plate.Depths[^1]);
        Assert.Equal(plate.Depths.Order().Distinct(), plate.Depths);
        for (int d = 1; d < plate.Depths.Count; d++)
        {
            for (int i = 0; i < plate.WavelengthsNm.Count; i++)
                Assert.True(plate.Irradiance[d][i] < plate.Irradiance[d - 1][i]);
        }
    }

    [Fact]
    public void Current_starts_at_the_surface_speed_and_falls_towards_the_bottom()
    {
        IReadOnlyList<CurrentSample> samples = Plates.Current(Demo.Spot);
        Assert.Equal(0, samples[0].Depth);
        Assert.Equal(Demo.Spot.CurrentSpeed, samples[0].Speed, 1e-12);
        for (int i = 1; i < samples.Count; i++)
            Assert.True(samples[i].Speed < samples[i - 1].Speed && samples[i].Depth > samples[i - 1].Depth);
        Assert.Empty(Plates.Current(Demo.Spot with { CurrentSpeed = 0 }));
    }

    [Fact]
    public void The_words_name_the_choice_and_how_far_off_it_is_seen()
    {
        ColourAdvice advice = Finding.Advice;
        string reason = ColourWords.Sentences(advice, Demo.Spot.TargetFish, UnitSystem.Metric)[0];
        Assert.StartsWith($"Colour: {advice.Choice.Name}", reason, StringComparison.Ordinal);
        Assert.Contains(new UnitFormat(UnitSystem.Metric).SeenText(advice.Choice.SeenFrom), reason, StringComparison.Ordinal);
    }
}
