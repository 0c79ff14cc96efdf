namespace LureSim.Light;

/// <summary>What is looked at.</summary>
public enum BalanceSubject
{
    /// <summary>A grey card of 18 % reflectance, lit from above.</summary>
    GreyCard,

    /// <summary>Pale sand, lit from above.</summary>
    Sand,

    /// <summary>The water itself, looking level.</summary>
    Water,
}

/// <summary>How colours are balanced.</summary>
public enum ColourBalance
{
    /// <summary>A camera balanced for daylight at the surface; a first glance.</summary>
    Daylight,

    /// <summary>A person's eye after some minutes there, adapted in part (<see cref="ChromaticAdaptation.Degree"/>).</summary>
    Eye,

    /// <summary>A camera balanced on a white card at that depth.</summary>
    WhiteCard,
}

/// <summary>Card, sand and water at one depth under three balances, each at an exposure that leaves them their tint.</summary>
/// <param name="Depth">Depth (m).</param>
/// <param name="Degree">Degree of the eye's adaptation, 0 to 1.</param>
/// <param name="Seen">CIELAB under D65, by subject and balance in their order; the water is brighter than in nature by the factor that its exposure asks for.</param>
/// <param name="Swatches">The same as screen colours.</param>
public sealed record BalanceRow(double Depth, double Degree, IReadOnlyList<IReadOnlyList<Lab>> Seen, IReadOnlyList<IReadOnlyList<Srgb>> Swatches);

/// <summary>What the colour of the water does to a grey card, to sand and to itself, by how the eye or the camera is balanced.</summary>
/// <param name="Field">Light in the water.</param>
/// <param name="Rows">By depth.</param>
public sealed record WhiteBalance(LightField Field, IReadOnlyList<BalanceRow> Rows)
{
    // Reflectance of a photographer's grey card.
    private const double Card = 0.18;

    // The water is shown as bright as pale sand: its own level depends on the direction of the sun.
    private const double WaterLevel = 0.4;

    /// <summary>Works the colours out.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="depths">One or more depths (m), 0-1000.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static WhiteBalance Of(LightField field, IReadOnlyList<double> depths)
    {
        ArgumentNullException.ThrowIfNull(field);
        ArgumentNullException.ThrowIfNull(depths);
        Xyz surface = Colorimetry.Integrate(field.Downwelling(0.0));
        Spectrum sand = SeaBed.Of(SeaBedKind.Sand, 1.0).Reflectance;
        return new WhiteBalance(field, [.. depths.Select(depth =>
        {
            Spectrum light = field.Downwelling(depth);
            Xyz white = Colorimetry.Integrate(light), water = Colorimetry.Integrate(field.Radiance(ViewDirection.Level, depth));
            double degree = ChromaticAdaptation.Degree(white, Colorimetry.MaximumLuminousEfficacy * white.Y / Math.PI);
            if (!(white.Y > ColourKernel.NoLight && water.Y > ColourKernel.NoLight))
                return new BalanceRow(depth, 0.0, Fill(default(Lab)), Fill(default(Srgb)));
            Xyz[] subjects = [(Card / white.Y) * white, (1.0 / white.Y) * Colorimetry.Integrate(sand * light), (WaterLevel / water.Y) * water];
            ChromaticAdaptation.Adaptation[] balances = [.. new[] { 0.0, degree, 1.0 }.Select(d =>
                ChromaticAdaptation.Adaptation.InPart((1.0 / white.Y) * white, surface, Colorimetry.D65White, d))];
            return new BalanceRow(
                depth,
                degree,
                [.. subjects.Select(subject => (IReadOnlyList<Lab>)[.. balances.Select(balance => Colorimetry.ToLab(balance.Apply(subject), Colorimetry.D65White))])],
                [.. subjects.Select(subject => (IReadOnlyList<Srgb>)[.. balances.Select(balance => Srgb.FromXyz(subjects.Min(other => Srgb.RoomFor(balance.Apply(other))) * balance.Apply(subject)))])]);
        })]);

        static IReadOnlyList<IReadOnlyList<T>> Fill<T>(T value) =>
            [.. Enum.GetValues<BalanceSubject>().Select(_ => (IReadOnlyList<T>)[.. Enum.GetValues<ColourBalance>().Select(_ => value)])];
    }
}
