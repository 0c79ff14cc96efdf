using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace LureSim.Motion.Line;

/// <summary>Arithmetic on four neighbours at a time.</summary>
internal static class Lanes
{
    /// <summary>Neighbours in a group.</summary>
    public const int Count = 4;

    /// <summary>A number of lanes that holds a number of values, in whole groups.</summary>
    public static int Padded(int count) => (count + Count - 1) / Count * Count;

    /// <summary>a b + c, rounded once.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Fma(Vector256<double> a, Vector256<double> b, Vector256<double> c) => Vector256.FusedMultiplyAdd(a, b, c);

    /// <summary>The scalar product of two vectors in space.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector256<double> Dot(Vector256<double> ax, Vector256<double> ay, Vector256<double> az, Vector256<double> bx, Vector256<double> by, Vector256<double> bz) =>
        Fma(ax, bx, Fma(ay, by, az * bz));
}
