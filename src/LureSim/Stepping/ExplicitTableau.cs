namespace LureSim.Stepping;

/// <summary>An explicit embedded Runge-Kutta method as data.</summary>
internal sealed record ExplicitTableau(string Name, int Order, int EmbeddedOrder, double[] C, double[][] A, double[] B, double[] E, double[] Dense)
{
    /// <summary>
    /// Order 5 with an embedded order 4 and a dense output of order 4; the last stage is the first of the next step. Dormand &amp; Prince 1980,
    /// J. Comput. Appl. Math. 6:19; dense output of Hairer, Norsett &amp; Wanner 1993, II.6 (coefficients of their program DOPRI5).
    /// </summary>
    public static ExplicitTableau DormandPrince { get; } = new(
        "Dormand-Prince 5(4)",
        5,
        4,
        [0, 1.0 / 5, 3.0 / 10, 4.0 / 5, 8.0 / 9, 1, 1],
        [
            [],
            [1.0 / 5],
            [3.0 / 40, 9.0 / 40],
            [44.0 / 45, -56.0 / 15, 32.0 / 9],
            [19372.0 / 6561, -25360.0 / 2187, 64448.0 / 6561, -212.0 / 729],
            [9017.0 / 3168, -355.0 / 33, 46732.0 / 5247, 49.0 / 176, -5103.0 / 18656],
            [35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84],
        ],
        [35.0 / 384, 0, 500.0 / 1113, 125.0 / 192, -2187.0 / 6784, 11.0 / 84, 0],
        [71.0 / 57600, 0, -71.0 / 16695, 71.0 / 1920, -17253.0 / 339200, 22.0 / 525, -1.0 / 40],
        [
            -12715105075.0 / 11282082432,
            0,
            87487479700.0 / 32700410799,
            -10690763975.0 / 1880347072,
            701980252875.0 / 199316789632,
            -1453857185.0 / 822651844,
            69997945.0 / 29380423,
        ]);
}
