namespace LureSim.Hydrodynamics;

/// <summary>Drag laws of a cylinder: the line, wire, the side of a body.</summary>
public static class CylinderDrag
{
    /// <summary>Form term a of <see cref="NormalChooCasarella1971"/> above Re 30, Cn = a + b/sqrt(Re) (dimensionless).</summary>
    public const double NormalForm = 1.1;

    /// <summary>Viscous term b of it (dimensionless).</summary>
    public const double NormalViscous = 4.0;

    /// <summary>
    /// Normal drag coefficient of a cable on d x length, by the Reynolds number of the normal velocity.
    /// Choo &amp; Casarella 1971, J. Hydronautics 5:126; Re up to about 1e5. It jumps by 2 % at Re 1 and 1 % at Re 30.
    /// </summary>
    /// <param name="reynolds">Re = |u_n| d / nu, above 0.</param>
    public static double NormalChooCasarella1971(double reynolds)
    {
        if (reynolds > 30) return NormalForm + NormalViscous / Math.Sqrt(reynolds);
        if (reynolds > 1) return 1.45 + 8.55 * Math.Pow(reynolds, -0.9);
        double re = Math.Max(reynolds, 1e-9);
        double s = -0.077215665 + Math.Log(8.0 / re);
        return 8.0 * Math.PI * (1.0 - 0.87 / (s * s)) / (s * re);
    }

    /// <summary>
    /// Normal drag coefficient on d x length of a long smooth cylinder, fitted here to the points of Wieselsberger 1922 (NACA TN 84) between Re 0.24 and 1.6e5:
    /// Cn = 1.192 + 9.312 Re^-0.8068 - 3.480e-4 Re/(1 + 2.577e-7 Re^2), the form of Sucker &amp; Brauer 1975 with one power less. Root mean square of the deviation
    /// 1.2 %, worst 3.1 % (at Re 5150); the points carry a reading error of about 3 %. Below Re 0.2 it stays within 4 % of Lamb's law down to Re 0.01.
    /// </summary>
    /// <param name="reynolds">Re = |u_n| d / nu, above 0; to 1.6e5, before the drag crisis.</param>
    public static double NormalWieselsberger1922(double reynolds)
    {
        double re = Math.Max(reynolds, 1e-9);
        return 1.192 + (9.312 * Math.Pow(re, -0.8068)) - (3.480e-4 * re / (1 + (2.577e-7 * re * re)));
    }

    /// <summary>
    /// Normal drag coefficient on d x length of a long smooth cylinder: Cn = 1.18 + 6.8 Re^-0.89 + 1.96 Re^-1/2 - 4e-4 Re/(1 + 3.64e-7 Re^2).
    /// Sucker &amp; Brauer 1975, Waerme- und Stoffuebertragung 8:149; White, Viscous Fluid Flow, eq. 3-229. Re from 1e-4 to 2e5.
    /// </summary>
    /// <param name="reynolds">Re = |u_n| d / nu, above 0.</param>
    public static double NormalSuckerBrauer1975(double reynolds)
    {
        double re = Math.Max(reynolds, 1e-9);
        return 1.18 + (6.8 * Math.Pow(re, -0.89)) + (1.96 / Math.Sqrt(re)) - (4e-4 * re / (1 + (3.64e-7 * re * re)));
    }

    /// <summary>
    /// Drag across the flow of a cylinder of finite length over that of an endless one: eta = 0.516 + 0.1364 x + 0.0346 x^2 with x = log10(L/d), drawn here through the
    /// seven cylinders of Wieselsberger 1922 (L/d 1 to 42, within 6.2 %) and the curve of Hopkins 1951 (NACA RM A51C14; L/d 2 to 24, within 2 %). 1 at L/d 285.
    /// </summary>
    /// <param name="slenderness">L/d; below 1 the value at 1, at most 1 is returned.</param>
    public static double FiniteLengthShare(double slenderness)
    {
        double x = Math.Log10(Math.Max(1, slenderness));
        return Math.Min(1, 0.516 + (x * (0.1364 + (0.0346 * x))));
    }

    /// <summary>
    /// Tangential friction number h in F' = pi mu h u_t (N/m), by the Reynolds number of the normal velocity:
    /// h = 0.55 Re^(1/2) + 0.084 Re^(2/3). Choo &amp; Casarella 1971, J. Hydronautics 5:126.
    /// </summary>
    /// <param name="reynolds">Re = |u_n| d / nu, 0 or more.</param>
    public static double TangentialChooCasarella1971(double reynolds) =>
        0.55 * Math.Sqrt(reynolds) + 0.084 * Math.Cbrt(reynolds * reynolds);

    /// <summary>
    /// Mean Nusselt number of a cylinder across the flow, which by the analogy of momentum and heat at Pr = 1 is the tangential friction
    /// number h of a yawed cylinder. Churchill &amp; Bernstein 1977, J. Heat Transfer 99:300, eq. 9.
    /// </summary>
    /// <param name="reynolds">Re = |u_n| d / nu, 0 or more.</param>
    /// <param name="prandtl">Prandtl number, 1 for the analogy.</param>
    public static double NusseltChurchillBernstein1977(double reynolds, double prandtl = 1) =>
        0.3 + 0.62 * Math.Sqrt(reynolds) * Math.Cbrt(prandtl) / Math.Pow(1 + Math.Pow(0.4 / prandtl, 2.0 / 3.0), 0.25)
            * Math.Pow(1 + Math.Pow(reynolds / 282000.0, 5.0 / 8.0), 0.8);
}
