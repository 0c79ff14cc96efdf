using LureSim.Model;
using LureSim.Water;

namespace LureSim.Validation.Water;

/// <summary>Current profiles against their closed forms.</summary>
public class CurrentProfileTests
{
    private const string Area = "Water";

    [Fact]
    public void Power_law_gives_the_worked_figures()
    {
        var profile = new CurrentProfile(CurrentProfileKind.Power, 1, 0, 5, 4e-4);
        (double, double)[] worked = [(0.01, 0.517947), (0.05, 0.651836), (0.1, 0.719686), (0.25, 0.820335), (0.5, 0.905724), (0.75, 0.959736)];
        ValidationLog.WorstAbsolute(
            CheckClass.SameEquations, Area, "One-seventh power law, u over surface speed", "closed form (z/h)^(1/7)", worked.Select(w => (w.Item2, profile.Speed(5 * w.Item1, out _))), 1e-6);

        // The mean, 7/8 of the surface speed, is met at z/h = 0.3927.
        ValidationLog.Absolute(CheckClass.SameEquations, Area, "Power law: speed at z/h = 0.3927 is the mean", "closed form", profile.MeanSpeed, profile.Speed(5 * 0.3927, out _), 1e-5, "m/s");
    }

    [Fact]
    public void Logarithmic_law_gives_the_worked_figures()
    {
        // u* = 0.02 m/s, z0 = 3e-4 m: u(1 m) = 0.405586, u(0.1 m) = 0.290457 m/s.
        const double Depth = 4;
        double surface = 0.02 / 0.40 * Math.Log(Depth / 3e-4);
        var profile = new CurrentProfile(CurrentProfileKind.Logarithmic, surface, 0, Depth, 3e-4);
        ValidationLog.WorstAbsolute(
            CheckClass.SameEquations, Area, "Logarithmic law, u* = 0.02 m/s, z0 = 0.3 mm, at 1 m and 0.1 m", "closed form (u*/0.40) ln(z/z0)",
            [(0.405586, profile.Speed(1, out _)), (0.290457, profile.Speed(0.1, out _))], 1e-6, "m/s");

        // Drag coefficient at 1 m for Soulsby's roughness lengths, (u*/u(1 m))^2.
        (double Roughness, double Coefficient)[] soulsby = [(2e-4, 0.0022), (7e-4, 0.0030), (6e-3, 0.0061), (3e-3, 0.0047)];
        ValidationLog.WorstAbsolute(
            CheckClass.FromMemory, Area, "Bed drag coefficient at 1 m from z0", "Soulsby 1997, z0 from memory",
            soulsby.Select(s =>
            {
                var p = new CurrentProfile(CurrentProfileKind.Logarithmic, 1, 0, Depth, s.Roughness);
                double friction = 0.40 / Math.Log(Depth / s.Roughness);
                double ratio = friction / p.Speed(1, out _);
                return (s.Coefficient, ratio * ratio);
            }),
            6e-5);
    }

    [Theory]
    [InlineData(CurrentProfileKind.Power)]
    [InlineData(CurrentProfileKind.Logarithmic)]
    public void Mean_speed_is_the_integral_of_the_profile(CurrentProfileKind kind)
    {
        var profile = new CurrentProfile(kind, 0.8, 0, 6, 4e-4);

        // In the square root of the height, where the wall layer is spread out; the layer below 0.5 % of the depth is straightened on purpose.
        double mean = MathNet.Numerics.Integration.SimpsonRule.IntegrateComposite(r => profile.Speed(6 * r * r, out _) * 2 * r, 0, 1, 20000);
        ValidationLog.Relative(CheckClass.Identity, Area, $"Depth-mean of the {kind.ToString().ToLowerInvariant()} law", "Simpson's rule on the profile", mean, profile.MeanSpeed, 0.003, "m/s");
    }

    [Theory]
    [InlineData(CurrentProfileKind.Power)]
    [InlineData(CurrentProfileKind.Logarithmic)]
    [InlineData(CurrentProfileKind.Uniform)]
    public void Gradient_is_the_derivative_of_the_speed(CurrentProfileKind kind)
    {
        var profile = new CurrentProfile(kind, 1.3, 0.7, 4, 3e-3);
        foreach (double z in new[] { 0.004, 0.015, 0.05, 0.4, 1.9, 3.7 })
        {
            const double Step = 1e-6;
            double difference = (profile.Speed(z + Step, out _) - profile.Speed(z - Step, out _)) / (2 * Step);
            profile.Speed(z, out double gradient);
            Assert.Equal(difference, gradient, 1e-6 * Math.Max(1, Math.Abs(gradient)));
        }
    }
}
