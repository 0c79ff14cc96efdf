using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace LureSim.Motion;

/// <summary>A 3 x 3 block as three rows in vector registers; the fourth lane is idle.</summary>
internal struct BlockRows
{
    private static readonly Vector256<double> UnitX = Vector256.Create(1.0, 0, 0, 0), UnitY = Vector256.Create(0.0, 1, 0, 0), UnitZ = Vector256.Create(0.0, 0, 1, 0);

    public Vector256<double> X, Y, Z;

    /// <summary>A multiple of the unit matrix.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static BlockRows Diagonal(double value)
    {
        BlockRows rows;
        rows.X = UnitX * value;
        rows.Y = UnitY * value;
        rows.Z = UnitZ * value;
        return rows;
    }

    /// <summary>Adds the outer product of a column and a row.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void AddOuter(double x, double y, double z, Vector256<double> row)
    {
        X += row * x;
        Y += row * y;
        Z += row * z;
    }

    /// <summary>Adds a column by the height, the third variable.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void AddHeightColumn(double x, double y, double z) => AddOuter(x, y, z, UnitZ);

    /// <summary>Adds a multiple of another block.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Add(in BlockRows other, double factor)
    {
        X += other.X * factor;
        Y += other.Y * factor;
        Z += other.Z * factor;
    }

    /// <summary>Adds a multiple of the unit matrix.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void AddDiagonal(double value)
    {
        X += UnitX * value;
        Y += UnitY * value;
        Z += UnitZ * value;
    }

    /// <summary>Adds the block to nine doubles in row-major order.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public readonly void AddTo(double[] target, int index)
    {
        Span<double> t = target.AsSpan(index, 9);
        ref double first = ref MemoryMarshal.GetReference(t);
        Vector256<double> head = Vector256.ConditionalSelect(Lanes012, X, Vector256.Shuffle(Y, Vector256.Create(0L, 0, 0, 0)));
        Vector256<double> middle = Vector256.ConditionalSelect(Lanes01, Vector256.Shuffle(Y, Vector256.Create(1L, 2, 2, 2)), Vector256.Shuffle(Z, Vector256.Create(0L, 0, 0, 1)));
        (Vector256.LoadUnsafe(ref first) + head).StoreUnsafe(ref first);
        (Vector256.LoadUnsafe(ref first, 4) + middle).StoreUnsafe(ref first, 4);
        t[8] += Z.GetElement(2);
    }

    private static Vector256<double> Lanes012 => Vector256.Create(-1L, -1, -1, 0).AsDouble();

    private static Vector256<double> Lanes01 => Vector256.Create(-1L, -1, 0, 0).AsDouble();
}
