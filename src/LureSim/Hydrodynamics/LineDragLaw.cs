using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using System.Runtime.Intrinsics.X86;

namespace LureSim.Hydrodynamics;

/// <summary>Laws of the drag across a line.</summary>
public enum NormalDragLaw
{
    /// <summary>The cylinder as measured by Wieselsberger 1922, by a fit of this project; the default.</summary>
    Wieselsberger,

    /// <summary>Choo &amp; Casarella 1971, a law for towed cables; 5 to 28 % above the measured cylinder where fishing line lives (Re 30 to 900).</summary>
    ChooCasarella,

    /// <summary>Sucker &amp; Brauer 1975; 2 to 6 % above the measured cylinder there.</summary>
    SuckerBrauer,
}

/// <summary>Laws of the friction along a line.</summary>
public enum TangentialDragLaw
{
    /// <summary>Choo &amp; Casarella 1971 with the axial boundary layer of Glauert &amp; Lighthill 1955 as its floor; the default.</summary>
    ChooCasarella,

    /// <summary>Churchill &amp; Bernstein 1977 by the analogy of heat and momentum at Pr = 1.</summary>
    ChurchillBernstein,
}

/// <summary>
/// Drag law of a line as the engine evaluates it: force per length
/// F' = 1/2 mu G(Re_n) u_n + pi mu H(Re_n) u_t + 1/2 rho pi d Ct |u_t| u_t, with G = Cn Re_n, Re_n = |u_n| d / nu.
/// Written this way the normal force is regular at rest. Cn has reference area d x length, Ct has pi d x length.
/// </summary>
/// <remarks>
/// G and H are tabulated against sqrt(Re_n), in which they are close to polynomials, and interpolated by monotone
/// cubic pieces with continuous slope: the 1-2 % jumps of the published normal law are smoothed over a table interval.
/// Instances are immutable and safe to share between threads.
/// </remarks>
public sealed class LineDragLaw
{
    private const int TableSize = 2048;

    // The table reaches Re = 160,000; a 1 mm line at 60 m/s of wind is at 4,000.
    private const double TableEnd = 400.0;

    // The grid is uniform in the square root of sqrt(Re), so that it is fine where the laws bend.
    private static readonly double InverseSpacing = (TableSize - 1) / Math.Sqrt(TableEnd);

    // Interleaved value, slope (with respect to the grid coordinate, per interval) of G and H.
    private readonly double[] table = new double[TableSize * 4];

    private LineDragLaw(string name, Func<double, double> normalCoefficient, Func<double, double> tangentialNumber, double tangentialCoefficient)
    {
        Name = name;
        TangentialCoefficient = tangentialCoefficient;
        double spacing = 1.0 / InverseSpacing;
        for (int i = 0; i < TableSize; i++)
        {
            double grid = i * spacing;

            // G tends to zero only as 1/ln(1/Re): the first row stands for a Re at which nothing moves.
            double reynolds = Math.Max(grid * grid * grid * grid, 1e-9);
            table[(4 * i) + 0] = normalCoefficient(reynolds) * reynolds;
            table[(4 * i) + 2] = tangentialNumber(reynolds);
        }

        for (int column = 0; column < 4; column += 2)
        {
            for (int i = 0; i < TableSize; i++)
            {
                int below = Math.Max(0, i - 1);
                int above = Math.Min(TableSize - 1, i + 1);
                table[(4 * i) + column + 1] = (table[(4 * above) + column] - table[(4 * below) + column]) / (above - below);
            }
        }
    }

    private LineDragLaw(LineDragLaw law, double factor)
    {
        Name = FormattableString.Invariant($"{law.Name}, times {factor:F2}");
        TangentialCoefficient = law.TangentialCoefficient * factor;
        for (int i = 0; i < table.Length; i++) table[i] = law.table[i] * factor;
    }

    // Every pair of a normal and a tangential law, built once.
    private static readonly LineDragLaw[,] Pairs = BuildPairs();

    /// <summary>
    /// The default: the measured cylinder across (<see cref="CylinderDrag.NormalWieselsberger1922"/>), Choo &amp; Casarella 1971 along, with the friction of a long thin
    /// cylinder in axial flow as the floor of the tangential number (see <see cref="AxialFrictionNumber"/>).
    /// </summary>
    public static LineDragLaw Default => Of(NormalDragLaw.Wieselsberger, TangentialDragLaw.ChooCasarella);

    /// <summary>Choo &amp; Casarella 1971 across and along, with the axial floor.</summary>
    public static LineDragLaw ChooCasarella => Of(NormalDragLaw.ChooCasarella, TangentialDragLaw.ChooCasarella);

    /// <summary>Choo &amp; Casarella 1971 as printed, without the axial floor: for comparison with published figures.</summary>
    public static LineDragLaw ChooCasarellaAsPrinted { get; } = new(
        "Choo & Casarella 1971 as printed", CylinderDrag.NormalChooCasarella1971, CylinderDrag.TangentialChooCasarella1971, 0);

    /// <summary>Normal drag of Choo &amp; Casarella 1971 with the tangential number of Churchill &amp; Bernstein 1977 (Pr = 1).</summary>
    public static LineDragLaw ChurchillBernstein => Of(NormalDragLaw.ChooCasarella, TangentialDragLaw.ChurchillBernstein);

    /// <summary>The law of a pair; each pair is one shared instance.</summary>
    /// <param name="across">Law across the line.</param>
    /// <param name="along">Law along it.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a law.</exception>
    public static LineDragLaw Of(NormalDragLaw across, TangentialDragLaw along)
    {
        if (!Enum.IsDefined(across)) throw new ArgumentOutOfRangeException(nameof(across), across, "Not a law of drag across a line.");
        if (!Enum.IsDefined(along)) throw new ArgumentOutOfRangeException(nameof(along), along, "Not a law of drag along a line.");
        return Pairs[(int)across, (int)along];
    }

    /// <summary>
    /// h of F' = pi mu h u for a long cylinder along the stream, laminar. Glauert &amp; Lighthill 1955, Proc. R. Soc. A 230:188: the local skin friction of
    /// a cylinder far downstream tends to 4 pi mu U / ln(4 nu x / (U a^2)) per length; at x = 10 m, U = 0.3 m/s, a = 0.115 mm the logarithm
    /// is 9.2, so h = 0.43, and it changes by a tenth over 3 to 30 m of line.
    /// </summary>
    public const double AxialFrictionNumber = 0.43;

    /// <summary>Name, for reports.</summary>
    public string Name { get; }

    /// <summary>Quadratic tangential coefficient Ct on pi d x length (dimensionless); 0 where the linear law is used.</summary>
    public double TangentialCoefficient { get; }

    /// <summary>Constant coefficients, the practice for large cables.</summary>
    /// <param name="normal">Cn on d x length, 0 to 3.</param>
    /// <param name="tangential">Ct on pi d x length, 0 to 0.5.</param>
    public static LineDragLaw Constant(double normal, double tangential)
    {
        Guard.InRange(normal, 0, 3);
        Guard.InRange(tangential, 0, 0.5);
        return new(FormattableString.Invariant($"constant, Cn {normal} and Ct {tangential}"), _ => normal, _ => 0, tangential);
    }

    /// <summary>Normal Choo &amp; Casarella 1971 with a constant tangential coefficient.</summary>
    /// <param name="tangential">Ct on pi d x length, 0 to 0.5.</param>
    public static LineDragLaw NormalOnly(double tangential)
    {
        Guard.InRange(tangential, 0, 0.5);
        return new(FormattableString.Invariant($"Choo & Casarella 1971 across, constant Ct {tangential} along"), CylinderDrag.NormalChooCasarella1971, _ => 0, tangential);
    }

    /// <summary>The law with all its forces multiplied by a factor.</summary>
    /// <param name="factor">Factor, 0 to 10.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is outside its range or not a number.</exception>
    public LineDragLaw Scaled(double factor)
    {
        Guard.InRange(factor, 0, 10);
        return factor == 1 ? this : new LineDragLaw(this, factor);
    }

    /// <summary>
    /// Evaluates the two numbers. The slopes come multiplied by Re, which keeps them finite at rest.
    /// </summary>
    /// <param name="reynolds">Re_n, 0 or more.</param>
    /// <param name="normal">G = Cn Re.</param>
    /// <param name="normalSlope">Re dG/dRe.</param>
    /// <param name="tangential">H.</param>
    /// <param name="tangentialSlope">Re dH/dRe.</param>
    internal void Evaluate(double reynolds, out double normal, out double normalSlope, out double tangential, out double tangentialSlope)
    {
        Evaluate(Vector256.Create(reynolds), out Vector256<double> g, out Vector256<double> gSlope, out Vector256<double> h, out Vector256<double> hSlope);
        (normal, normalSlope, tangential, tangentialSlope) = (g[0], gSlope[0], h[0], hSlope[0]);
    }

    /// <summary>The same for four lines at a time.</summary>
    internal void Evaluate(Vector256<double> reynolds, out Vector256<double> normal, out Vector256<double> normalSlope, out Vector256<double> tangential, out Vector256<double> tangentialSlope)
    {
        Vector256<double> grid = Vector256.Sqrt(Vector256.Sqrt(reynolds)) * InverseSpacing, within = Vector256.Min(grid, Vector256.Create(TableSize - 2.0));
        int i0 = Interval(within[0]), i1 = Interval(within[1]), i2 = Interval(within[2]), i3 = Interval(within[3]);
        Vector256<double> x = grid - Vector256.Create(i0, i1, i2, (double)i3), one = Vector256<double>.One, three = Vector256.Create(3.0);
        ref double first = ref MemoryMarshal.GetArrayDataReference(table);
        Columns(ref first, i0, i1, i2, i3, out Vector256<double> low, out Vector256<double> lowSlope, out Vector256<double> tangentialLow, out Vector256<double> tangentialLowSlope);
        Columns(ref first, i0 + 1, i1 + 1, i2 + 1, i3 + 1, out Vector256<double> high, out Vector256<double> highSlope, out Vector256<double> tangentialHigh, out Vector256<double> tangentialHighSlope);

        // Cubic Hermite on [0, 1]; d/dRe of grid is grid/(4 Re).
        Vector256<double> x2 = x * x, twice = x + x;
        Vector256<double> h01 = (three - twice) * x2, h10 = (((x - one - one) * x) + one) * x, h11 = (x - one) * x2;
        Vector256<double> d01 = (x - x2) * 6, d10 = (((three * x) - Vector256.Create(4.0)) * x) + one, d11 = ((three * x) - one - one) * x;
        Vector256<double> quarter = grid * 0.25;
        Vector256<double> rise = high - low;
        normal = low + (h01 * rise) + (h10 * lowSlope) + (h11 * highSlope);
        normalSlope = ((d01 * rise) + (d10 * lowSlope) + (d11 * highSlope)) * quarter;
        rise = tangentialHigh - tangentialLow;
        tangential = tangentialLow + (h01 * rise) + (h10 * tangentialLowSlope) + (h11 * tangentialHighSlope);
        tangentialSlope = ((d01 * rise) + (d10 * tangentialLowSlope) + (d11 * tangentialHighSlope)) * quarter;
    }

    // Interval of the table that a place on its grid lies in; the first for what is not a number.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int Interval(double place) => (int)Math.Min((uint)(int)place, TableSize - 2);

    // The four columns of four rows of the table: four loads and a transposition.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static void Columns(ref double first, int i0, int i1, int i2, int i3, out Vector256<double> a, out Vector256<double> b, out Vector256<double> c, out Vector256<double> d)
    {
        Vector256<double> row0 = Vector256.LoadUnsafe(ref first, (nuint)(4 * i0)), row1 = Vector256.LoadUnsafe(ref first, (nuint)(4 * i1));
        Vector256<double> row2 = Vector256.LoadUnsafe(ref first, (nuint)(4 * i2)), row3 = Vector256.LoadUnsafe(ref first, (nuint)(4 * i3));
        if (Avx.IsSupported)
        {
            Vector256<double> even01 = Avx.UnpackLow(row0, row1), odd01 = Avx.UnpackHigh(row0, row1), even23 = Avx.UnpackLow(row2, row3), odd23 = Avx.UnpackHigh(row2, row3);
            a = Avx.Permute2x128(even01, even23, 0x20);
            b = Avx.Permute2x128(odd01, odd23, 0x20);
            c = Avx.Permute2x128(even01, even23, 0x31);
            d = Avx.Permute2x128(odd01, odd23, 0x31);
            return;
        }

        a = Vector256.Create(row0[0], row1[0], row2[0], row3[0]);
        b = Vector256.Create(row0[1], row1[1], row2[1], row3[1]);
        c = Vector256.Create(row0[2], row1[2], row2[2], row3[2]);
        d = Vector256.Create(row0[3], row1[3], row2[3], row3[3]);
    }

    private static LineDragLaw[,] BuildPairs()
    {
        NormalDragLaw[] across = Enum.GetValues<NormalDragLaw>();
        TangentialDragLaw[] along = Enum.GetValues<TangentialDragLaw>();
        var pairs = new LineDragLaw[across.Length, along.Length];
        foreach (NormalDragLaw n in across)
        {
            (string name, Func<double, double> coefficient) = Normal(n);
            foreach (TangentialDragLaw t in along)
            {
                (string alongName, Func<double, double> number) = Tangential(t);
                pairs[(int)n, (int)t] = new($"{name} across, {alongName} along", coefficient, number, 0);
            }
        }

        return pairs;
    }

    private static (string Name, Func<double, double> Coefficient) Normal(NormalDragLaw law) => law switch
    {
        NormalDragLaw.Wieselsberger => ("Wieselsberger 1922", CylinderDrag.NormalWieselsberger1922),
        NormalDragLaw.ChooCasarella => ("Choo & Casarella 1971", CylinderDrag.NormalChooCasarella1971),
        NormalDragLaw.SuckerBrauer => ("Sucker & Brauer 1975", CylinderDrag.NormalSuckerBrauer1975),
        _ => throw new ArgumentOutOfRangeException(nameof(law), law, "Not a law of drag across a line."),
    };

    private static (string Name, Func<double, double> Number) Tangential(TangentialDragLaw law) => law switch
    {
        TangentialDragLaw.ChooCasarella => (
            "Choo & Casarella 1971 with an axial boundary layer",
            re => Math.Sqrt((AxialFrictionNumber * AxialFrictionNumber) + Square(CylinderDrag.TangentialChooCasarella1971(re)))),
        TangentialDragLaw.ChurchillBernstein => ("Churchill & Bernstein 1977", re => CylinderDrag.NusseltChurchillBernstein1977(re)),
        _ => throw new ArgumentOutOfRangeException(nameof(law), law, "Not a law of drag along a line."),
    };

    private static double Square(double x) => x * x;
}
