namespace LureSim.Motion.Integrators;

/// <summary>
/// LU factorisation of a block-tridiagonal matrix of 3 x 3 blocks, O(N), no allocation after construction.
/// </summary>
/// <remarks>
/// Blocks are row-major, nine doubles each. There is no pivoting between blocks: the matrices of this project (mass + damping + stiffness, each
/// positive semidefinite up to small terms) do not need it; a singular pivot is reported instead.
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
        inverse = new double[9 * count];
        lower = new double[9 * count];
        upper = new double[9 * count];
    }

    /// <summary>Diagonal blocks, to be filled before <see cref="Factor"/>, overwritten by it.</summary>
    public Span<double> Diagonal => inverse;

    /// <summary>Upper blocks: row j couples to j + 1.</summary>
    public Span<double> Upper => upper;

    /// <summary>Lower blocks: row j couples to j - 1.</summary>
    public Span<double> Lower => lower;

    /// <summary>Factors in place. Returns false if a pivot block is singular or not finite.</summary>
    public bool Factor()
    {
        for (int j = 0; j < count; j++)
        {
            Span<double> d = inverse.AsSpan(9 * j, 9);
            if (j > 0)
            {
                // L_j := L_j D_{j-1}^-1 ; D_j -= L_j U_{j-1}
                Span<double> l = lower.AsSpan(9 * j, 9);
                ReadOnlySpan<double> p = inverse.AsSpan(9 * (j - 1), 9);
                ReadOnlySpan<double> u = upper.AsSpan(9 * (j - 1), 9);
                for (int r = 0; r < 9; r += 3)
                {
                    double l0 = l[r], l1 = l[r + 1], l2 = l[r + 2];
                    double m0 = (l0 * p[0]) + (l1 * p[3]) + (l2 * p[6]);
                    double m1 = (l0 * p[1]) + (l1 * p[4]) + (l2 * p[7]);
                    double m2 = (l0 * p[2]) + (l1 * p[5]) + (l2 * p[8]);
                    l[r] = m0;
                    l[r + 1] = m1;
                    l[r + 2] = m2;
                    d[r] -= (m0 * u[0]) + (m1 * u[3]) + (m2 * u[6]);
                    d[r + 1] -= (m0 * u[1]) + (m1 * u[4]) + (m2 * u[7]);
                    d[r + 2] -= (m0 * u[2]) + (m1 * u[5]) + (m2 * u[8]);
                }
            }

            double c0 = (d[4] * d[8]) - (d[5] * d[7]);
            double c1 = (d[5] * d[6]) - (d[3] * d[8]);
            double c2 = (d[3] * d[7]) - (d[4] * d[6]);
            double determinant = (d[0] * c0) + (d[1] * c1) + (d[2] * c2);
            if (determinant == 0 || !double.IsFinite(determinant)) return false;
            double s = 1 / determinant;
            double i1 = ((d[2] * d[7]) - (d[1] * d[8])) * s;
            double i2 = ((d[1] * d[5]) - (d[2] * d[4])) * s;
            double i4 = ((d[0] * d[8]) - (d[2] * d[6])) * s;
            double i5 = ((d[2] * d[3]) - (d[0] * d[5])) * s;
            double i7 = ((d[1] * d[6]) - (d[0] * d[7])) * s;
            double i8 = ((d[0] * d[4]) - (d[1] * d[3])) * s;
            d[0] = c0 * s;
            d[1] = i1;
            d[2] = i2;
            d[3] = c1 * s;
            d[4] = i4;
            d[5] = i5;
            d[6] = c2 * s;
            d[7] = i7;
            d[8] = i8;
        }

        return true;
    }

    /// <summary>Solves in place for one right-hand side of 3 N values.</summary>
    public void Solve(Span<double> x)
    {
        for (int j = 1; j < count; j++)
        {
            ReadOnlySpan<double> l = lower.AsSpan(9 * j, 9);
            Span<double> v = x.Slice(3 * (j - 1), 6);
            v[3] -= (l[0] * v[0]) + (l[1] * v[1]) + (l[2] * v[2]);
            v[4] -= (l[3] * v[0]) + (l[4] * v[1]) + (l[5] * v[2]);
            v[5] -= (l[6] * v[0]) + (l[7] * v[1]) + (l[8] * v[2]);
        }

        for (int j = count - 1; j >= 0; j--)
        {
            Span<double> v = x.Slice(3 * j, 3);
            double r0 = v[0], r1 = v[1], r2 = v[2];
            if (j + 1 < count)
            {
                ReadOnlySpan<double> u = upper.AsSpan(9 * j, 9);
                ReadOnlySpan<double> w = x.Slice(3 * (j + 1), 3);
                r0 -= (u[0] * w[0]) + (u[1] * w[1]) + (u[2] * w[2]);
                r1 -= (u[3] * w[0]) + (u[4] * w[1]) + (u[5] * w[2]);
                r2 -= (u[6] * w[0]) + (u[7] * w[1]) + (u[8] * w[2]);
            }

            ReadOnlySpan<double> d = inverse.AsSpan(9 * j, 9);
            v[0] = (d[0] * r0) + (d[1] * r1) + (d[2] * r2);
            v[1] = (d[3] * r0) + (d[4] * r1) + (d[5] * r2);
            v[2] = (d[6] * r0) + (d[7] * r1) + (d[8] * r2);
        }
    }
}
