using MathNet.Numerics.Integration;

namespace LureSim.Light;

/// <summary>A flat sea surface: refraction and Fresnel reflection of unpolarised light.</summary>
/// <remarks>
/// Waves are left out. They matter little for the transmission of a sun higher than about 30 degrees and raise it for a
/// lower sun (Mobley 1994, mobley1994light, section 4); below about 15 degrees the flat surface is a lower bound.
/// </remarks>
public static class WaterSurface
{
    /// <summary>Refractive index of seawater used for the surface: 1.34 (Quan and Fry 1995, quan1995empirical, 1.3398 at 589 nm, S 35, 20 C).</summary>
    public const double RefractiveIndex = 1.34;

    /// <summary>Half angle of the window through which the whole sky is seen from below, asin(1/n) (rad).</summary>
    public static double SnellWindowHalfAngle { get; } = Math.Asin(1.0 / RefractiveIndex);

    /// <summary>Transmittance of plane irradiance from a uniform sky, 1 - the cosine-weighted mean of the Fresnel reflectance.</summary>
    public static double DiffuseTransmittance { get; } =
        1.0 - GaussLegendreRule.Integrate(angle => FresnelReflectance(angle) * Math.Sin(2.0 * angle), 0.0, Math.PI / 2.0, 64);

    /// <summary>Mean cosine in the water of light from a uniform sky, downwelling plane over scalar irradiance just below the surface.</summary>
    public static double DiffuseMeanCosine { get; } = UniformSkyMeanCosine();

    /// <summary>Angle from the vertical in the water by Snell's law (rad).</summary>
    /// <param name="zenithAngle">Angle from the vertical in air (rad), 0 to pi/2.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is outside 0 to pi/2.</exception>
    public static double Refract(double zenithAngle) =>
        Math.Asin(Math.Sin(Guard.InRange(zenithAngle, 0.0, Math.PI / 2.0, nameof(zenithAngle), "rad")) / RefractiveIndex);

    /// <summary>Fresnel reflectance from air for unpolarised light: the mean of both polarisations.</summary>
    /// <param name="zenithAngle">Angle from the vertical in air (rad), 0 to pi/2.</param>
    /// <exception cref="ArgumentOutOfRangeException">The angle is outside 0 to pi/2.</exception>
    public static double FresnelReflectance(double zenithAngle) => FresnelReflectance(zenithAngle, RefractiveIndex);

    /// <summary>Fresnel reflectance from air into a medium of a given refractive index, unpolarised.</summary>
    /// <param name="zenithAngle">Angle from the vertical in air (rad), 0 to pi/2.</param>
    /// <param name="refractiveIndex">Index of the medium over that of air, 1.0001-2.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double FresnelReflectance(double zenithAngle, double refractiveIndex)
    {
        _ = Guard.InRange(zenithAngle, 0.0, Math.PI / 2.0, nameof(zenithAngle), "rad");
        _ = Guard.InRange(refractiveIndex, 1.0001, 2.0, nameof(refractiveIndex), "");
        double cosine = Math.Cos(zenithAngle);
        double sineInside = Math.Sin(zenithAngle) / refractiveIndex;
        double cosineInside = Math.Sqrt(1.0 - (sineInside * sineInside));
        double s = (cosine - (refractiveIndex * cosineInside)) / (cosine + (refractiveIndex * cosineInside));
        double p = ((refractiveIndex * cosine) - cosineInside) / ((refractiveIndex * cosine) + cosineInside);
        return 0.5 * ((s * s) + (p * p));
    }

    private static double UniformSkyMeanCosine()
    {
        // Radiance in the water is T(theta) n^2 L; plane and scalar irradiance are its integrals over the Snell cone.
        double Integrate(Func<double, double> weight) => GaussLegendreRule.Integrate(
            inside =>
            {
                double outside = Math.Asin(Math.Min(1.0, RefractiveIndex * Math.Sin(inside)));
                return (1.0 - FresnelReflectance(outside)) * Math.Sin(inside) * weight(inside);
            },
            0.0,
            SnellWindowHalfAngle,
            64);
        return Integrate(Math.Cos) / Integrate(_ => 1.0);
    }
}
