namespace LureSim.Hydrodynamics;

/// <summary>Drag laws of a long cylinder, the line.</summary>
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
