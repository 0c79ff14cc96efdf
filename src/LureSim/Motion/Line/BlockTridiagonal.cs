namespace LureSim.Motion.Line;

/// <summary>
/// LU factorisation of a block-tridiagonal matrix of 3 x 3 blocks, O(N), no allocation after construction.
/// </summary>
/// <remarks>
/// Each of the nine entries of the blocks, in row-major order, is a row of its own over the block rows, <see cref="Stride"/> apart. There is no pivoting between blocks: the
/// matrices of this project (mass + damping + stiffness, each positive semidefinite up to small terms) do not need it; a singular pivot is reported instead.
/// </remarks>
internal sealed class BlockTridiagonal
{
    private readonly int count;
    private readonly double[] inverse;
    private readonly double[] lower;
    private readonly double[] upper;

    /// <summary>Creates storage for a number of block rows.</summary>
    public BlockTridiagonal(int count)
    {
        this.count = count;
        Stride = Lanes.Padded(count);
        inverse = new double[9 * Stride];
        lower = new double[9 * Stride];
        upper = new double[9 * Stride];
    }

    /// <summary>Distance of the entries of a block, the number of block rows in whole groups of lanes.</summary>
    public int Stride { get; }

    /// <summary>Diagonal blocks, to be filled before <see cref="Factor"/>, overwritten by it.</summary>
    public Span<double> Diagonal => inverse;

    /// <summary>Upper blocks: row j couples to j + 1.</summary>
    public Span<double> Upper => upper;

    /// <summary>Lower blocks: row j couples to j - 1; overwritten by <see cref="Factor"/>.</summary>
    public Span<double> Lower => lower;

    /// <summary>Factors in place. Returns false if a pivot block is singular or not finite.</summary>
    public bool Factor()
    {
        int s = Stride;
        double[] l = lower, u = upper, d = inverse;

        // Inverse pivot of the row before.
        double p0 = 0, p1 = 0, p2 = 0, p3 = 0, p4 = 0, p5 = 0, p6 = 0, p7 = 0, p8 = 0;
        for (int j = 0; j < count; j++)
        {
            double d0 = d[j], d1 = d[j + s], d2 = d[j + (2 * s)], d3 = d[j + (3 * s)], d4 = d[j + (4 * s)], d5 = d[j + (5 * s)], d6 = d[j + (6 * s)], d7 = d[j + (7 * s)], d8 = d[j + (8 * s)];
            if (j > 0)
            {
                // L_j := L_j D_{j-1}^-1 ; D_j -= L_j U_{j-1}
                int k = j - 1;
                double u0 = u[k], u1 = u[k + s], u2 = u[k + (2 * s)], u3 = u[k + (3 * s)], u4 = u[k + (4 * s)], u5 = u[k + (5 * s)], u6 = u[k + (6 * s)], u7 = u[k + (7 * s)], u8 = u[k + (8 * s)];
                double a = l[j], b = l[j + s], c = l[j + (2 * s)];
                double m0 = (a * p0) + (b * p3) + (c * p6), m1 = (a * p1) + (b * p4) + (c * p7), m2 = (a * p2) + (b * p5) + (c * p8);
                l[j] = m0;
                l[j + s] = m1;
                l[j + (2 * s)] = m2;
                d0 -= (m0 * u0) + (m1 * u3) + (m2 * u6);
                d1 -= (m0 * u1) + (m1 * u4) + (m2 * u7);
                d2 -= (m0 * u2) + (m1 * u5) + (m2 * u8);
                a = l[j + (3 * s)];
                b = l[j + (4 * s)];
                c = l[j + (5 * s)];
                m0 = (a * p0) + (b * p3) + (c * p6);
                m1 = (a * p1) + (b * p4) + (c * p7);
                m2 = (a * p2) + (b * p5) + (c * p8);
                l[j + (3 * s)] = m0;
                l[j + (4 * s)] = m1;
                l[j + (5 * s)] = m2;
                d3 -= (m0 * u0) + (m1 * u3) + (m2 * u6);
                d4 -= (m0 * u1) + (m1 * u4) + (m2 * u7);
                d5 -= (m0 * u2) + (m1 * u5) + (m2 * u8);
                a = l[j + (6 * s)];
                b = l[j + (7 * s)];
                c = l[j + (8 * s)];
                m0 = (a * p0) + (b * p3) + (c * p6);
                m1 = (a * p1) + (b * p4) + (c * p7);
                m2 = (a * p2) + (b * p5) + (c * p8);
                l[j + (6 * s)] = m0;
                l[j + (7 * s)] = m1;
                l[j + (8 * s)] = m2;
                d6 -= (m0 * u0) + (m1 * u3) + (m2 * u6);
                d7 -= (m0 * u1) + (m1 * u4) + (m2 * u7);
                d8 -= (m0 * u2) + (m1 * u5) + (m2 * u8);
            }

            double c0 = (d4 * d8) - (d5 * d7);
            double c1 = (d5 * d6) - (d3 * d8);
            double c2 = (d3 * d7) - (d4 * d6);
            double determinant = (d0 * c0) + (d1 * c1) + (d2 * c2);
            if (determinant == 0 || !double.IsFinite(determinant)) return false;
            double scale = 1 / determinant;
            d[j] = p0 = c0 * scale;
            d[j + s] = p1 = ((d2 * d7) - (d1 * d8)) * scale;
            d[j + (2 * s)] = p2 = ((d1 * d5) - (d2 * d4)) * scale;
            d[j + (3 * s)] = p3 = c1 * scale;
            d[j + (4 * s)] = p4 = ((d0 * d8) - (d2 * d6)) * scale;
            d[j + (5 * s)] = p5 = ((d2 * d3) - (d0 * d5)) * scale;
            d[j + (6 * s)] = p6 = c2 * scale;
            d[j + (7 * s)] = p7 = ((d1 * d6) - (d0 * d7)) * scale;
            d[j + (8 * s)] = p8 = ((d0 * d4) - (d1 * d3)) * scale;
        }

        return true;
    }

    /// <summary>Solves in place for one right-hand side of 3 N values.</summary>
    public void Solve(Span<double> x)
    {
        int s = Stride;
        double[] l = lower, u = upper, d = inverse;
        double x0 = x[0], x1 = x[1], x2 = x[2];
        for (int j = 1; j < count; j++)
        {
            Span<double> v = x.Slice(3 * j, 3);
            double r0 = v[0] - ((l[j] * x0) + (l[j + s] * x1) + (l[j + (2 * s)] * x2));
            double r1 = v[1] - ((l[j + (3 * s)] * x0) + (l[j + (4 * s)] * x1) + (l[j + (5 * s)] * x2));
            double r2 = v[2] - ((l[j + (6 * s)] * x0) + (l[j + (7 * s)] * x1) + (l[j + (8 * s)] * x2));
            v[0] = x0 = r0;
            v[1] = x1 = r1;
            v[2] = x2 = r2;
        }

        double w0 = 0, w1 = 0, w2 = 0;
        for (int j = count - 1; j >= 0; j--)
        {
            Span<double> v = x.Slice(3 * j, 3);
            double r0 = v[0], r1 = v[1], r2 = v[2];
            if (j + 1 < count)
            {
                r0 -= (u[j] * w0) + (u[j + s] * w1) + (u[j + (2 * s)] * w2);
                r1 -= (u[j + (3 * s)] * w0) + (u[j + (4 * s)] * w1) + (u[j + (5 * s)] * w2);
                r2 -= (u[j + (6 * s)] * w0) + (u[j + (7 * s)] * w1) + (u[j + (8 * s)] * w2);
            }

            v[0] = w0 = (d[j] * r0) + (d[j + s] * r1) + (d[j + (2 * s)] * r2);
            v[1] = w1 = (d[j + (3 * s)] * r0) + (d[j + (4 * s)] * r1) + (d[j + (5 * s)] * r2);
            v[2] = w2 = (d[j + (6 * s)] * r0) + (d[j + (7 * s)] * r1) + (d[j + (8 * s)] * r2);
        }
    }
}
