namespace LureSim.Light;

/// <summary>All numbers that a <see cref="RadianceField"/> is computed from, compared by value.</summary>
internal sealed class RadianceInputs : IEquatable<RadianceInputs>
{
    private readonly double[] numbers;
    private readonly int hash;

    /// <summary>Gathers the numbers.</summary>
    /// <param name="optics">The water.</param>
    /// <param name="surface">Light on it.</param>
    /// <param name="bed">The bottom; null for deep water.</param>
    public RadianceInputs(InherentOptics optics, SurfaceLight surface, SeaBed? bed)
    {
        numbers =
        [
            .. optics.Absorption.Values, .. optics.Scattering.Values, .. optics.Backscattering.Values, .. optics.WaterBackscattering.Values,
            surface.ZenithAngle, .. surface.Direct.Values, .. surface.Diffuse.Values,
            .. bed is null ? [] : bed.Reflectance.Values, bed?.Depth ?? double.PositiveInfinity,
        ];
        var sum = default(HashCode);
        sum.AddBytes(System.Runtime.InteropServices.MemoryMarshal.AsBytes<double>(numbers));
        hash = sum.ToHashCode();
    }

    /// <inheritdoc/>
    public bool Equals(RadianceInputs? other) => other is not null && hash == other.hash && numbers.AsSpan().SequenceEqual(other.numbers);

    /// <inheritdoc/>
    public override bool Equals(object? obj) => Equals(obj as RadianceInputs);

    /// <inheritdoc/>
    public override int GetHashCode() => hash;
}
