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
            string[] parts = QuantityText.Range(kind, minimum, maximum).TrimEnd(')').Split(" (about ");
            double[] exact = Bounds(parts[0]), near = Bounds(parts[1]);
            Assert.All(exact, bound => Assert.InRange(bound, minimum * (1 - 1e-6), maximum * (1 + 1e-6)));

            // The other system is rounded as a hand would, and says "about".
            Assert.InRange(near[0], 0.965 * minimum, 1.035 * minimum);
            Assert.InRange(near[1], 0.965 * maximum, 1.035 * maximum);

            double[] Bounds(string text) => [.. text.Split(" to ").Select(bound =>
            {
                QuantityReading reading = QuantityReader.Read(kind, bound);
                Assert.True(reading.IsValid, bound);
                return reading.Value;
            })];
        });

    [Theory]
    [InlineData(0.2, 60.0, "0.2 m to 60 m (about 8 in to 200 ft)")]
    [InlineData(0.00003, 0.0015, "0.03 mm to 1.5 mm (about 0.0012 in to 0.06 in)")]
    [InlineData(0.0, 60.0, "0 m to 60 m (about 0 ft to 200 ft)")]
    public void A_range_is_told_as_a_hand_uses_it(double minimum, double maximum, string text) =>
        Assert.Equal(text, QuantityText.Range(QuantityKind.Length, minimum, maximum));

    [Fact]
    public void Every_unit_converts_back()
    {
        foreach (UnitOfMeasure unit in UnitTable.All.SelectMany(units => units.Units))
            Assert.Equal(12.5, unit.FromSi(unit.ToSi(12.5)), 1e-9);
    }

    [Fact]
    public void Every_kind_has_a_text()
    {
        foreach (QuantityKind kind in Enum.GetValues<QuantityKind>())
        {
            Assert.True(QuantityReader.Read(kind, QuantityText.Plain(kind, 0.5)).IsValid, kind.ToString());
            Assert.True(QuantityReader.Read(kind, QuantityText.Plain(kind, 0.01)).IsValid, kind.ToString());
        }
    }
}
