namespace LureSim.Motion.Integrators;

/// <summary>
/// A stiffly accurate singly diagonally implicit Runge-Kutta method with explicit first stage, as data: Y_i = y + h sum_j a_ij f(Y_j), y' = Y_s.
/// </summary>
/// <param name="Name">Name.</param>
/// <param name="Order">Order.</param>
/// <param name="Gamma">Diagonal coefficient of all stages but the first.</param>
/// <param name="A">Strictly lower triangle, row by row.</param>
/// <param name="C">Stage times.</param>
/// <param name="E">Weights of the error estimate: b - b^.</param>
/// <param name="Filtered">
/// Whether the estimate is to be multiplied by (I - h gamma J)^-1, which keeps it bounded where the problem is stiff (Hosea &amp; Shampine 1996, sect. 4); not needed
/// where the embedded method is L-stable itself.
/// </param>
internal sealed record EsdirkTableau(string Name, int Order, double Gamma, double[] A, double[] C, double[] E, bool Filtered)
{
    /// <summary>
    /// TR-BDF2: a trapezoidal step to t + (2 - sqrt 2) h, then the backward difference formula of order 2. Order 2, L-stable, both stages with the same matrix; estimate
    /// of order 3. Bank et al. 1985, IEEE Trans. Electron Devices 32:1992; Hosea &amp; Shampine 1996, Appl. Numer. Math. 20:21.
    /// </summary>
    public static EsdirkTableau TrBdf2 { get; } = MakeTrBdf2();

    /// <summary>Order 3 with an embedded method of order 2, both L-stable and stiffly accurate. Kvaerno 2004, BIT 44:489, ESDIRK 3/2.</summary>
    public static EsdirkTableau Kvaerno3 { get; } = MakeKvaerno3();

    /// <summary>Number of stages, the explicit one included.</summary>
    public int Stages => C.Length;

    /// <summary>a_ij, i above j, zero-based.</summary>
    public double GetA(int i, int j) => A[(i * (i - 1) / 2) + j];

    private static EsdirkTableau MakeTrBdf2()
    {
        double c = 2 - Math.Sqrt(2), d = c / 2, w = Math.Sqrt(2) / 4;
        return new("TR-BDF2", 2, d, [d, w, w], [0, c, 1], [w - ((1 - w) / 3), w - (((3 * w) + 1) / 3), d - (d / 3)], true);
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
