namespace LureSim.Hydrodynamics;

/// <summary>An ellipsoid in whose place the drag and added mass of a body are reckoned: areas, added mass along and across its longest axis.</summary>
public readonly record struct EllipsoidGeometry
{
    /// <summary>Volume (m3).</summary>
    public double Volume { get; private init; }

    /// <summary>Area seen along the longest axis (m2).</summary>
    public double FrontalArea { get; private init; }

    /// <summary>Area seen across it (m2): of three different axes the largest, which such a body shows the flow as it falls.</summary>
    public double BroadsideArea { get; private init; }

    /// <summary>Added mass along the longest axis per displaced mass (dimensionless).</summary>
    public double AxialAddedMass { get; private init; }

    /// <summary>Added mass across it, in the direction in which <see cref="BroadsideArea"/> is seen, per displaced mass (dimensionless).</summary>
    public double TransverseAddedMass { get; private init; }

    /// <summary>Prolate spheroid of a volume and a length.</summary>
    /// <param name="volume">Volume (m3), above 0.</param>
    /// <param name="length">Length (m), above 0; a body shorter than a sphere of its volume counts as a sphere.</param>
    public static EllipsoidGeometry Prolate(double volume, double length)
    {
        Guard.Positive(volume);
        Guard.Positive(length);
        double width = Math.Sqrt(6 * volume / (Math.PI * length));
        double aspect = Math.Max(1.0001, length / width);
        SpheroidAddedMass.Coefficients(aspect, out double axial, out double transverse);
        return new()
        {
            Volume = volume,
            FrontalArea = Math.PI * width * width / 4,
            BroadsideArea = Math.PI / 4 * length * width,
            AxialAddedMass = axial,
            TransverseAddedMass = transverse,
        };
    }

    /// <summary>Flat ellipsoid of a volume with the proportions of a box: broadside is its face of length and width.</summary>
    /// <param name="volume">Volume (m3), above 0.</param>
    /// <param name="length">Length of the box (m), above 0; kept.</param>
    /// <param name="width">Width (m), above 0; with the height scaled to the volume.</param>
    /// <param name="height">Height (m), above 0.</param>
    public static EllipsoidGeometry Flat(double volume, double length, double width, double height)
    {
        Guard.Positive(volume);
        Guard.Positive(length);
        Guard.Positive(width);
        Guard.Positive(height);
        double scale = Math.Sqrt(volume / (Math.PI / 6 * length * width * height));
        double a = length / 2, b = scale * width / 2, c = scale * height / 2;
        Span<double> added = stackalloc double[6];
        EllipsoidAddedMass.Coefficients(a, b, c, added);
        return new()
        {
            Volume = volume,
            FrontalArea = Math.PI * b * c,
            BroadsideArea = Math.PI * a * b,
            AxialAddedMass = added[0],
            TransverseAddedMass = added[2],
        };
    }

    /// <summary>Added mass along the flow at an incidence per displaced mass (dimensionless): k1 + (k2 - k1) sin^2.</summary>
    /// <param name="incidence">Angle between axis and flow (radians), 0 to pi/2.</param>
    public double AddedMass(double incidence)
    {
        double sine = Math.Sin(incidence);
        return AxialAddedMass + ((TransverseAddedMass - AxialAddedMass) * sine * sine);
    }
}
