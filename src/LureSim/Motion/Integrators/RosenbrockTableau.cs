namespace LureSim.Motion.Integrators;

/// <summary>
/// A Rosenbrock method as data, in the transformed variables U of Hairer &amp; Wanner 1996, Solving ODEs II, sect. IV.7:
/// (1/(h gamma) I - J) U_i = f(t + alpha_i h, y + sum_j a_ij U_j) + sum_j (c_ij/h) U_j + gamma_i h f_t,
/// y' = y + sum m_i U_i, error = sum e_i U_i.
/// </summary>
/// <param name="Name">Name.</param>
/// <param name="Stages">Number of stages s.</param>
/// <param name="Order">Order.</param>
/// <param name="EmbeddedOrder">Order of the embedded method.</param>
/// <param name="Gamma">Diagonal coefficient gamma.</param>
/// <param name="A">Strictly lower triangle, row by row.</param>
/// <param name="C">Strictly lower triangle, row by row.</param>
/// <param name="M">Weights of the step.</param>
/// <param name="E">Weights of the error.</param>
/// <param name="Alpha">Stage times.</param>
/// <param name="GammaSum">Coefficients of f_t.</param>
/// <param name="NewEvaluation">Whether a stage needs its own evaluation; otherwise it shares the previous one.</param>
internal sealed record RosenbrockTableau(
    string Name,
    int Stages,
    int Order,
    int EmbeddedOrder,
    double Gamma,
    double[] A,
    double[] C,
    double[] M,
    double[] E,
    double[] Alpha,
    double[] GammaSum,
    bool[] NewEvaluation)
{
    /// <summary>
    /// RODAS3: 4 stages, order 3(2), L-stable, stiffly accurate, three evaluations a step.
    /// Sandu, Verwer, Blom, Spee, Carmichael &amp; Potra 1997, Atmos. Environ. 31:3459.
    /// </summary>
    public static RosenbrockTableau Rodas3 { get; } = new(
        "RODAS3",
        4,
        3,
        2,
        0.5,
        [0, 2, 0, 2, 0, 1],
        [4, 1, -1, 1, -1, -8.0 / 3.0],
        [2, 0, 1, 1],
        [0, 0, 0, 1],
        [0, 0, 1, 1],
        [0.5, 1.5, 0, 0],
        [true, false, true, true]);

    /// <summary>a_ij, i above j, zero-based.</summary>
    public double GetA(int i, int j) => A[(i * (i - 1) / 2) + j];

    /// <summary>c_ij, i above j, zero-based.</summary>
    public double GetC(int i, int j) => C[(i * (i - 1) / 2) + j];
}
