using System.Runtime.CompilerServices;

namespace LureSim.Motion.Line;

/// <summary>A mutable 3 x 3 matrix of doubles on the stack, with the few operations the line's derivatives need.</summary>
internal struct Matrix3
{
    public double A00, A01, A02, A10, A11, A12, A20, A21, A22;

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void AddOuter(double factor, double ax, double ay, double az, double bx, double by, double bz)
    {
        double fx = factor * ax, fy = factor * ay, fz = factor * az;
        A00 += fx * bx;
        A01 += fx * by;
        A02 += fx * bz;
        A10 += fy * bx;
        A11 += fy * by;
        A12 += fy * bz;
        A20 += fz * bx;
        A21 += fz * by;
        A22 += fz * bz;
    }

    /// <summary>Adds factor (x y z) (x y z)^T + diagonal I.</summary>
    public void AddSymmetric(double factor, double x, double y, double z, double diagonal)
    {
        AddOuter(factor, x, y, z, x, y, z);
        AddDiagonal(diagonal);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void AddDiagonal(double value)
    {
        A00 += value;
        A11 += value;
        A22 += value;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Scale(double factor)
    {
        A00 *= factor;
        A01 *= factor;
        A02 *= factor;
        A10 *= factor;
        A11 *= factor;
        A12 *= factor;
        A20 *= factor;
        A21 *= factor;
        A22 *= factor;
    }
}
