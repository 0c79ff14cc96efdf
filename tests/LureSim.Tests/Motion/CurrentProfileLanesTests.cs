using System.Runtime.Intrinsics;
using CsCheck;
using LureSim.Model;
using LureSim.Water;

namespace LureSim.Tests.Motion;

/// <summary>The current at four heights at a time is the current at each of them.</summary>
public class CurrentProfileLanesTests
{
    [Fact]
    public void Four_heights_at_a_time_are_four_heights() =>
        Gen.Select(Gen.Int[0, 2], Gen.Double[0.3, 20], Gen.Double[0, 2], Gen.Double[-0.2, 1.2].Array[4]).HoldsFor((kind, depth, surface, shares) =>
        {
            var profile = new CurrentProfile((CurrentProfileKind)kind, surface, 0.4, depth, 2e-4);

            // A lane each at the bed and just above it, below the lowest height of the curved laws.
            double[] heights = [shares[0] * depth, shares[1] * 0.01 * depth, shares[2] < 0 ? 0 : shares[2] * depth, shares[3] > 1 ? depth : shares[3] * depth];
            Vector256<double> speeds = profile.Speed(Vector256.Create(heights), out Vector256<double> gradients);
            for (int i = 0; i < heights.Length; i++)
            {
                double speed = profile.Speed(heights[i], out double gradient);
                Assert.Equal(speed, speeds[i], 1e-12 * (1 + surface));
                Assert.Equal(gradient, gradients[i], 1e-9 * (1 + Math.Abs(gradient)));
            }
        });
}
