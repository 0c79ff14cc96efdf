using LureSim.Light;

namespace LureSim.Validation.Light;

public class AdaptationTests
{
    [Theory]
    [InlineData(318.31, 0.994)]
    [InlineData(31.83, 0.876)]
    public void The_degree_by_level_is_that_of_the_published_examples(double adaptingLuminance, double published)
    {
        // The share of the light's colour cancels against a light so strong that its level no longer counts.
        double degree = ChromaticAdaptation.Degree(Colorimetry.D65White, 5.0 * adaptingLuminance) / ChromaticAdaptation.Degree(Colorimetry.D65White, 1e8);
        ValidationLog.Absolute(CheckClass.SameEquations, "Light: colour", $"degree of adaptation at {adaptingLuminance:0} cd/m2", "worked examples of CIECAM02, whose formula CIECAM16 keeps (from memory)", published, degree, 1e-3);
    }
}
