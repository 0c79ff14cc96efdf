using LureSim.Data;
using LureSim.Light;

namespace LureSim.Sight;

/// <summary>The chromophore of a visual pigment.</summary>
public enum Chromophore
{
    /// <summary>A1, retinal: most sea fish.</summary>
    A1,

    /// <summary>A2, 3,4-didehydroretinal: many fresh and brackish water fish; a broader band.</summary>
    A2,
}

/// <summary>Absorbance template of visual pigments, Govardovskii et al. 2000 (govardovskii2000search).</summary>
/// <remarks>
/// With x = lambda_max/lambda the alpha band is 1/(exp(A (a - x)) + exp(B (b - x)) + exp(C (c - x)) + D); the beta band is a
/// Gaussian. Fitted for peaks of about 330-700 nm (A1) and 440-620 nm (A2). The constants are a table of this assembly.
/// </remarks>
public static class VisualPigment
{
    private static readonly Dictionary<string, double> Constants = LoadConstants();

    /// <summary>Absorbance relative to the peak of the alpha band: alpha plus beta band.</summary>
    /// <param name="wavelengthNm">Wavelength (nm), 250-900.</param>
    /// <param name="peakNm">Peak of the alpha band (nm), 330-700.</param>
    /// <param name="chromophore">A1 or A2.</param>
    /// <param name="withBetaBand">Whether to add the beta band.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static double Absorbance(double wavelengthNm, double peakNm, Chromophore chromophore, bool withBetaBand = true)
    {
        _ = Guard.InRange(wavelengthNm, 250.0, 900.0, nameof(wavelengthNm), "nm");
        _ = Guard.InRange(peakNm, 330.0, 700.0, nameof(peakNm), "nm");
        string prefix = chromophore == Chromophore.A1 ? "A1." : "A2.";
        double Constant(string name) => Constants[prefix + name];

        double bigA, smallA;
        if (chromophore == Chromophore.A1)
        {
            double offset = peakNm - Constant("a2_nm");
            bigA = Constant("A");
            smallA = Constant("a0") + (Constant("a1") * Math.Exp(-offset * offset / Constant("a3_nm2")));
        }
        else
        {
            bigA = Constant("A0") + (Constant("A1c") * Math.Exp((peakNm - Constant("A2c_nm")) / Constant("A3c_nm")));
            smallA = Constant("a0") + (Constant("a1") * Math.Exp((peakNm - Constant("a2_nm")) / Constant("a3_nm")));
        }

        double x = peakNm / wavelengthNm;
        double alpha = 1.0 / (Math.Exp(bigA * (smallA - x)) + Math.Exp(Constant("B") * (Constant("b") - x))
            + Math.Exp(Constant("C") * (Constant("c") - x)) + Constant("D"));
        if (!withBetaBand)
            return alpha;
        double betaPeak = Constant("m0_nm") + (Constant("m1") * peakNm);
        double betaWidth = Constant("d0_nm") + (Constant("d1") * peakNm) + (Constant("d2_per_nm") * peakNm * peakNm);
        double distance = (wavelengthNm - betaPeak) / betaWidth;
        return alpha + (Constant("Ab") * Math.Exp(-distance * distance));
    }

    /// <summary>The template on the model's grid.</summary>
    /// <param name="peakNm">Peak of the alpha band (nm), 330-700.</param>
    /// <param name="chromophore">A1 or A2.</param>
    public static Spectrum Template(double peakNm, Chromophore chromophore) =>
        Spectrum.FromFunction(WavelengthGrid.Visible, nm => Absorbance(nm, peakNm, chromophore));

    private static Dictionary<string, double> LoadConstants()
    {
        ReferenceTable table = ReferenceTable.Optics("govardovskii_template");
        string[] chromophores = table.Text("chromophore"), names = table.Text("name");
        double[] values = table.Numbers("value");
        return Enumerable.Range(0, names.Length).ToDictionary(i => $"{chromophores[i]}.{names[i]}", i => values[i], StringComparer.Ordinal);
    }
}
