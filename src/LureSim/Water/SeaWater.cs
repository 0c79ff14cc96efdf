namespace LureSim.Water;

/// <summary>Density and viscosity of sea, brackish and fresh water at one atmosphere.</summary>
public static class SeaWater
{
    /// <summary>
    /// Density (kg/m3), UNESCO EOS-80 one-atmosphere equation (Millero &amp; Poisson 1981; Fofonoff &amp; Millard 1983, UNESCO 44),
    /// with the temperature converted to IPTS-68 by t68 = 1.00024 t90.
    /// </summary>
    /// <param name="temperatureCelsius">Temperature on ITS-90 (degrees Celsius), -2 to 40.</param>
    /// <param name="salinity">Practical salinity, 0 to 42.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range or not a number.</exception>
    public static double Density(double temperatureCelsius, double salinity)
    {
        Guard.InRange(temperatureCelsius, -2, 40);
        Guard.InRange(salinity, 0, 42);
        double t = 1.00024 * temperatureCelsius;
        double fresh = 999.842594 + t * (6.793952e-2 + t * (-9.095290e-3 + t * (1.001685e-4 + t * (-1.120083e-6 + t * 6.536332e-9))));
        double linear = 8.24493e-1 + t * (-4.0899e-3 + t * (7.6438e-5 + t * (-8.2467e-7 + t * 5.3875e-9)));
        double threeHalves = -5.72466e-3 + t * (1.0227e-4 - t * 1.6546e-6);
        return fresh + salinity * (linear + Math.Sqrt(salinity) * threeHalves + salinity * 4.8314e-4);
    }

    /// <summary>
    /// Dynamic viscosity (Pa s), Sharqawy, Lienhard &amp; Zubair 2010, Desalination and Water Treatment 16:354, eq. 22-23; stated accuracy 1.5 %.
    /// Practical salinity is taken as g/kg: the 0.5 % difference changes the result by less than 0.02 %.
    /// </summary>
    /// <param name="temperatureCelsius">Temperature (degrees Celsius), -2 to 40.</param>
    /// <param name="salinity">Practical salinity, 0 to 42.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range or not a number.</exception>
    public static double DynamicViscosity(double temperatureCelsius, double salinity)
    {
        Guard.InRange(temperatureCelsius, -2, 40);
        Guard.InRange(salinity, 0, 42);
        double t = temperatureCelsius;
        double massFraction = salinity / 1000.0;
        double fresh = 4.2844324477e-5 + 1.0 / (1.5700386464e-1 * (t + 6.4992620050e1) * (t + 6.4992620050e1) - 9.1296496657e1);
        double a = 1.5409136040 + t * (1.9981117208e-2 - t * 9.5203865864e-5);
        double b = 7.9739318223 + t * (-7.5614568881e-2 + t * 4.7237011074e-4);
        return fresh * (1.0 + massFraction * (a + massFraction * b));
    }
}
