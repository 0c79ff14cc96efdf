using System.Runtime.CompilerServices;

namespace LureSim.Motion;

/// <summary>A mutable 3 x 3 matrix of doubles on the stack, with the few operations the line's derivatives need.</summary>
internal struct Matrix3
{
    public double A00, A01, A02, A10, A11, A12, A20, A21, A22;

    /// <summary>across (I - t t^T) + along t t^T.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Matrix3 Projector(double across, double along, double tx, double ty, double tz)
    {
        double d = along - across;
        Matrix3 m;
        m.A00 = across + (d * tx * tx);
        m.A01 = d * tx * ty;
        m.A02 = d * tx * tz;
        m.A10 = m.A01;
        m.A11 = across + (d * ty * ty);
        m.A12 = d * ty * tz;
        m.A20 = m.A02;
        m.A21 = m.A12;
        m.A22 = across + (d * tz * tz);
        return m;
    }

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

    /// <summary>Adds factor m (I - t t^T).</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void AddTimesProjector(in Matrix3 m, double factor, double tx, double ty, double tz)
    {
        double r0 = (m.A00 * tx) + (m.A01 * ty) + (m.A02 * tz);
        double r1 = (m.A10 * tx) + (m.A11 * ty) + (m.A12 * tz);
        double r2 = (m.A20 * tx) + (m.A21 * ty) + (m.A22 * tz);
        A00 += factor * (m.A00 - (r0 * tx));
        A01 += factor * (m.A01 - (r0 * ty));
        A02 += factor * (m.A02 - (r0 * tz));
        A10 += factor * (m.A10 - (r1 * tx));
        A11 += factor * (m.A11 - (r1 * ty));
        A12 += factor * (m.A12 - (r1 * tz));
        A20 += factor * (m.A20 - (r2 * tx));
        A21 += factor * (m.A21 - (r2 * ty));
        A22 += factor * (m.A22 - (r2 * tz));
    }
}
