using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace LureSim.Motion.Line;

/// <summary>A 3 x 3 block that a segment gives: derivatives of the force on one end by the position or velocity of an end. End a is nearer to the lure.</summary>
internal enum SegmentBlock
{
    /// <summary>Force on a by the position of a (N/m).</summary>
    PositionAa,

    /// <summary>Force on a by the position of b (N/m).</summary>
    PositionAb,

    /// <summary>Force on b by the position of a (N/m).</summary>
    PositionBa,

    /// <summary>Force on b by the position of b (N/m).</summary>
    PositionBb,

    /// <summary>Force on a by the velocity of a (N s/m).</summary>
    VelocityAa,

    /// <summary>Force on a by the velocity of b (N s/m).</summary>
    VelocityAb,

    /// <summary>Force on b by the velocity of a (N s/m).</summary>
    VelocityBa,

    /// <summary>Force on b by the velocity of b (N s/m).</summary>
    VelocityBb,
}

/// <summary>
/// Derivatives and masses of the segments, each entry a row of its own over the segments, so that four neighbours are worked on at a time. Node j is end a of segment j and end b of
/// segment j - 1; what belongs to a node alone is kept with its end a.
/// </summary>
internal sealed class LineBlocks
{
    // Entries before the first segment, which stay zero: the lure is no segment's end b.
    private const int Lead = Lanes.Count;
    private const int BlockRows = 8 * 9;
    private const int MassRow = BlockRows;
    private const int MassRowB = MassRow + 6;
    private const int ColumnRow = MassRowB + 6;
    private const int Rows = ColumnRow + 12;

    private readonly int count;
    private readonly int stride;
    private readonly double[] data;
    private readonly double[] scratch;

    /// <summary>Creates storage for a number of segments.</summary>
    public LineBlocks(int segments)
    {
        count = segments;
        stride = Lead + Lanes.Padded(segments);
        data = new double[Rows * stride];
        scratch = new double[3 * (stride + Lead)];
    }

    /// <summary>First of the nine entries, in row-major order, of a block of a segment; the next is <see cref="Stride"/> further.</summary>
    public ref double At(SegmentBlock block, int segment) => ref data[(9 * (int)block * stride) + Lead + segment];

    /// <summary>Distance of the entries of a block.</summary>
    public int Stride => stride;

    /// <summary>First of the six entries xx, xy, xz, yy, yz, zz of the mass at an end of a segment, or, at end a after <see cref="JoinMasses"/>, of a node (kg).</summary>
    public ref double Mass(bool endB, int segment) => ref data[((endB ? MassRowB : MassRow) * stride) + Lead + segment];

    /// <summary>First of the three entries of the derivative of the force on an end by the speed of the line out (N s/m) or by the line out (N/m).</summary>
    public ref double Column(bool byLine, bool endB, int segment) => ref data[((ColumnRow + (byLine ? 6 : 0) + (endB ? 3 : 0)) * stride) + Lead + segment];

    /// <summary>Adds the masses at the ends up to masses of the nodes.</summary>
    public void JoinMasses()
    {
        for (int row = 0; row < 6; row++)
        {
            Span<double> a = data.AsSpan(((MassRow + row) * stride) + Lead, stride - Lead);
            ReadOnlySpan<double> b = data.AsSpan(((MassRowB + row) * stride) + Lead - 1, stride - Lead);
            for (int j = 0; j < a.Length; j += Lanes.Count)
                (Vector256.Create<double>(a.Slice(j, Lanes.Count)) + Vector256.Create(b.Slice(j, Lanes.Count))).CopyTo(a.Slice(j, Lanes.Count));
        }
    }

    /// <summary>Writes the matrix of an implicit stage, M/g - dF/dw - g dF/dr, with g its step.</summary>
    public void Assemble(BlockTridiagonal matrix, double g)
    {
        double inverse = 1 / g;
        Span<double> diagonal = matrix.Diagonal, upper = matrix.Upper, lower = matrix.Lower;
        int width = matrix.Stride;
        Vector256<double> minusG = Vector256.Create(-g);
        ref double first = ref MemoryMarshal.GetArrayDataReference(data);
        for (int c = 0; c < 9; c++)
        {
            ref double positionA = ref Unsafe.Add(ref first, (c * stride) + Lead), velocityA = ref Unsafe.Add(ref first, ((36 + c) * stride) + Lead);
            ref double mass = ref Unsafe.Add(ref first, ((MassRow + MassEntry(c)) * stride) + Lead);
            Span<double> d = diagonal.Slice(c * width, width), u = upper.Slice(c * width, width), l = lower.Slice(c * width, width);
            for (int j = 0; j < width; j += Lanes.Count)
            {
                nuint at = (nuint)j;
                Vector256<double> position = Load(ref positionA, 0, at) + LoadBefore(ref positionA, 27, j), velocity = Load(ref velocityA, 0, at) + LoadBefore(ref velocityA, 27, j);
                Lanes.Fma(minusG, position, (Load(ref mass, 0, at) * inverse) - velocity).CopyTo(d[j..]);
                ((minusG * Load(ref positionA, 9, at)) - Load(ref velocityA, 9, at)).CopyTo(u[j..]);
                ((minusG * LoadBefore(ref positionA, 18, j)) - LoadBefore(ref velocityA, 18, j)).CopyTo(l[j..]);
            }
        }
    }

    /// <summary>result += dF/dr x over the free nodes.</summary>
    /// <param name="x">Displacements, 3 N (m).</param>
    /// <param name="result">Forces, 3 N (N).</param>
    public void AddPositionProduct(ReadOnlySpan<double> x, Span<double> result)
    {
        int row = stride + Lead;
        for (int j = 0; j < count; j++)
            for (int i = 0; i < 3; i++)
                scratch[(i * row) + Lead + j] = x[(3 * j) + i];
        ref double first = ref MemoryMarshal.GetArrayDataReference(data);
        Span<double> sums = stackalloc double[Lanes.Count];
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < stride - Lead; j += Lanes.Count)
            {
                Vector256<double> sum = Vector256<double>.Zero;
                for (int k = 0; k < 3; k++)
                {
                    ref double block = ref Unsafe.Add(ref first, (((3 * i) + k) * stride) + Lead);
                    ref double value = ref scratch[(k * row) + Lead];
                    sum = Lanes.Fma(Load(ref block, 0, (nuint)j) + LoadBefore(ref block, 27, j), Vector256.LoadUnsafe(ref value, (nuint)j), sum);
                    sum = Lanes.Fma(Load(ref block, 9, (nuint)j), Vector256.LoadUnsafe(ref value, (nuint)(j + 1)), sum);
                    sum = Lanes.Fma(LoadBefore(ref block, 18, j), Vector256.LoadUnsafe(ref Unsafe.Add(ref value, j - 1)), sum);
                }

                sum.CopyTo(sums);
                for (int m = j; m < Math.Min(j + Lanes.Count, count); m++) result[(3 * m) + i] += sums[m - j];
            }
        }
    }

    /// <summary>result += factor M x over the free nodes, with the masses of the nodes.</summary>
    public void AddMassProduct(ReadOnlySpan<double> x, ReadOnlySpan<double> less, double factor, Span<double> result)
    {
        ref double mass = ref data[(MassRow * stride) + Lead];
        for (int j = 0; j < count; j++)
        {
            int a = 3 * j;
            double x0 = (x[a] - less[a]) * factor, x1 = (x[a + 1] - less[a + 1]) * factor, x2 = (x[a + 2] - less[a + 2]) * factor;
            double xy = MassAt(ref mass, 1, j), xz = MassAt(ref mass, 2, j), yz = MassAt(ref mass, 4, j);
            result[a] += (MassAt(ref mass, 0, j) * x0) + (xy * x1) + (xz * x2);
            result[a + 1] += (xy * x0) + (MassAt(ref mass, 3, j) * x1) + (yz * x2);
            result[a + 2] += (xz * x0) + (yz * x1) + (MassAt(ref mass, 5, j) * x2);
        }
    }

    /// <summary>Accelerations of the free nodes, M^-1 f.</summary>
    /// <param name="f">Forces, 3 N (N).</param>
    /// <param name="result">Result, 3 N (m/s2).</param>
    public void SolveMass(ReadOnlySpan<double> f, Span<double> result)
    {
        ref double mass = ref data[(MassRow * stride) + Lead];
        for (int j = 0; j < count; j++)
        {
            double xx = MassAt(ref mass, 0, j), xy = MassAt(ref mass, 1, j), xz = MassAt(ref mass, 2, j), yy = MassAt(ref mass, 3, j), yz = MassAt(ref mass, 4, j), zz = MassAt(ref mass, 5, j);
            double c00 = (yy * zz) - (yz * yz);
            double c01 = (xz * yz) - (xy * zz);
            double c02 = (xy * yz) - (xz * yy);
            double c11 = (xx * zz) - (xz * xz);
            double c12 = (xy * xz) - (xx * yz);
            double c22 = (xx * yy) - (xy * xy);
            double scale = 1 / ((xx * c00) + (xy * c01) + (xz * c02));
            double f0 = f[3 * j] * scale, f1 = f[(3 * j) + 1] * scale, f2 = f[(3 * j) + 2] * scale;
            result[3 * j] = (c00 * f0) + (c01 * f1) + (c02 * f2);
            result[(3 * j) + 1] = (c01 * f0) + (c11 * f1) + (c12 * f2);
            result[(3 * j) + 2] = (c02 * f0) + (c12 * f1) + (c22 * f2);
        }
    }

    /// <summary>Derivative of the force on a node by the position or velocity of itself or a neighbour, nine values in row-major order, zero for others; for checks.</summary>
    /// <param name="byVelocity">By the velocity (N s/m) or the position (N/m).</param>
    /// <param name="node">Node of the force, 0 to N - 1.</param>
    /// <param name="other">Node of the variable, 0 to N - 1.</param>
    public double[] NodeBlock(bool byVelocity, int node, int other)
    {
        int first = byVelocity ? 4 : 0;
        double[] result = new double[9];
        for (int c = 0; c < 9; c++)
        {
            double Entry(int block, int segment) => data[(((9 * (first + block)) + c) * stride) + Lead + segment];
            result[c] = (other - node) switch
            {
                0 => Entry(0, node) + Entry(3, node - 1),
                1 => Entry(1, node),
                -1 => Entry(2, other),
                _ => 0,
            };
        }

        return result;
    }

    // Entry of xx, xy, xz, yy, yz, zz that stands at a place of the full matrix.
    private static int MassEntry(int c) => c switch { 0 => 0, 1 or 3 => 1, 2 or 6 => 2, 4 => 3, 5 or 7 => 4, _ => 5 };

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private double MassAt(ref double mass, int entry, int node) => Unsafe.Add(ref mass, (entry * stride) + node);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector256<double> Load(ref double row, int rows, nuint at) => Vector256.LoadUnsafe(ref Unsafe.Add(ref row, rows * stride), at);

    // Of the segment before.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private Vector256<double> LoadBefore(ref double row, int rows, int at) => Vector256.LoadUnsafe(ref Unsafe.Add(ref row, (rows * stride) + at - 1));
}
