namespace LureSim.Stepping;

/// <summary>
/// A stiffly accurate singly diagonally implicit Runge-Kutta method with explicit first stage, as data: Y_i = y + h sum_j a_ij f(Y_j), y' = Y_s.
/// </summary>
/// <param name="Name">Name.</param>
/// <param name="Order">Order.</param>
/// <param name="Gamma">Diagonal coefficient of all stages but the first.</param>
/// <param name="A">Strictly lower triangle, row by row.</param>
/// <param name="C">Stage times.</param>
/// <param name="E">Weights of the error estimate.</param>
/// <param name="DampsError">Whether the estimate goes through the inverse of the step's matrix, which takes out what is stiff: needed where the embedded method is not L-stable.</param>
internal sealed record EsdirkTableau(string Name, int Order, double Gamma, double[] A, double[] C, double[] E, bool DampsError)
{
    /// <summary>
    /// TR-BDF2 of Bank et al. 1985, IEEE Trans. Electron Devices 32:1992, as a Runge-Kutta method of order 2 with an embedded method of order 3 and a damped error estimate (Hosea &amp;
    /// Shampine 1996, Appl. Numer. Math. 20:21). L-stable and stiffly accurate. The method of the engine.
    /// </summary>
    public static EsdirkTableau TrBdf2 { get; } = MakeTrBdf2();

    /// <summary>
    /// ESDIRK 3/2 of Kvaerno 2004, BIT 44:489: order 3 with an embedded method of order 2, the third stage. Both are L-stable and stiffly accurate, so that the error estimate
    /// needs no filter where the line is stiff. For comparison.
    /// </summary>
    public static EsdirkTableau Kvaerno3 { get; } = MakeKvaerno3();

    /// <summary>Number of stages, the explicit one included.</summary>
    public int Stages => C.Length;

    /// <summary>a_ij, i above j, zero-based.</summary>
    public double GetA(int i, int j) => A[(i * (i - 1) / 2) + j];

    /// <summary>Weight b_i of a stage in the step.</summary>
    public double GetB(int i) => i + 1 < Stages ? GetA(Stages - 1, i) : Gamma;

    private static EsdirkTableau MakeTrBdf2()
    {
        double d = 1 - Math.Sqrt(0.5), w = Math.Sqrt(2) / 4;
        return new("TR-BDF2", 2, d, [d, w, w], [0, 2 * d, 1], [w - ((1 - w) / 3), w - (((3 * w) + 1) / 3), d - (d / 3)], true);
    }

    private static EsdirkTableau MakeKvaerno3()
    {
        // gamma: the root near 0.436 of x^3 - 3 x^2 + 3/2 x - 1/6.
        const double G = 0.43586652150845899942;
        double a31 = ((-4 * G * G) + (6 * G) - 1) / (4 * G), a32 = (1 - (2 * G)) / (4 * G);
        double b1 = ((6 * G) - 1) / (12 * G), b2 = -1 / (((24 * G) - 12) * G), b3 = ((-6 * G * G) + (6 * G) - 1) / ((6 * G) - 3);
        return new("Kvaerno 3(2)", 3, G, [G, a31, a32, b1, b2, b3], [0, 2 * G, 1, 1], [b1 - a31, b2 - a32, b3 - G, G], false);
    }
}
