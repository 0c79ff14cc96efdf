using CsCheck;
using LureSim.Scenarios;

namespace LureSim.Tests.Scenarios;

public class QuantityTextTests
{
    [Fact]
    public void Bounds_shown_are_never_outside_the_range() =>
        Gen.Select(Gen.OneOf(QuantityKind.Length, QuantityKind.Mass, QuantityKind.Speed, QuantityKind.LineStrength), Gen.Double[-4.0, 2.0], Gen.Double[0.1, 2.0]).HoldsFor((kind, exponent, width) =>
        {
            double minimum = Math.Pow(10.0, exponent);
            double maximum = minimum * Math.Pow(10.0, width);
            string text = QuantityText.Range(kind, minimum, maximum).Replace("(", "to ", StringComparison.Ordinal).Replace(")", "", StringComparison.Ordinal);
            foreach (string bound in text.Split("to ", StringSplitOptions.RemoveEmptyEntries))
            {
                QuantityReading reading = QuantityReader.Read(kind, bound);
                Assert.True(reading.IsValid, bound);
                Assert.InRange(reading.Value, minimum * (1 - 1e-6), maximum * (1 + 1e-6));
            }
        });
}
