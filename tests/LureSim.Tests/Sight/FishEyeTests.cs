using LureSim.Report.Words;
using LureSim.Sight;

namespace LureSim.Tests.Sight;

public class FishEyeTests
{
    [Fact]
    public void A_fish_without_figures_gets_a_marked_stand_in()
    {
        var eye = FishEyes.FindOrStandIn("cobia");
        Assert.Equal("cobia", eye.CommonName);
        Assert.Equal(EyeBasis.StandIn, eye.Basis);
        Assert.Contains("No published cone peaks of cobia", ColourWords.Basis(eye), StringComparison.Ordinal);
    }

    [Fact]
    public void A_fish_with_figures_is_found_by_either_name()
    {
        Assert.True(FishEyes.TryFind("Striped Bass", out var byCommon));
        Assert.True(FishEyes.TryFind("morone saxatilis", out var byScientific));
        Assert.Same(byCommon, byScientific);
        Assert.Equal(EyeBasis.Measured, byCommon.Basis);
        Assert.Equal(2, byCommon.Cones.Count);
        Assert.False(FishEyes.TryFind("no such fish", out _));
    }

    [Fact]
    public void Borrowed_and_measured_peaks_are_told_apart() =>
        Assert.All(FishEyes.All, eye => Assert.Equal(
            eye.Cones.All(c => c.Basis == EyeBasis.Measured) ? EyeBasis.Measured : EyeBasis.StandIn, eye.Basis));
}
