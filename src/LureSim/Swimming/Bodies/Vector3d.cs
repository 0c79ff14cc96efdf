using System.Runtime.CompilerServices;

namespace LureSim.Swimming.Bodies;

/// <summary>Three doubles: a point or a vector, in the axes that the member says.</summary>
/// <param name="X">First component.</param>
/// <param name="Y">Second component.</param>
/// <param name="Z">Third component.</param>
public readonly record struct Vector3d(double X, double Y, double Z)
{
    /// <summary>The null vector.</summary>
    public static Vector3d Zero => default;

    /// <summary>Euclidean length.</summary>
    public double Length => Math.Sqrt(Dot(this, this));

    /// <summary>True when all components are finite.</summary>
    public bool IsFinite => double.IsFinite(X) && double.IsFinite(Y) && double.IsFinite(Z);

    /// <summary>The vector mirrored in the plane y = 0.</summary>
    public Vector3d Mirrored => new(X, -Y, Z);

    /// <summary>Scalar product.</summary>
    /// <param name="a">First vector.</param>
    /// <param name="b">Second vector.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static double Dot(Vector3d a, Vector3d b) => (a.X * b.X) + (a.Y * b.Y) + (a.Z * b.Z);

    /// <summary>Vector product.</summary>
    /// <param name="a">First vector.</param>
    /// <param name="b">Second vector.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3d Cross(Vector3d a, Vector3d b) =>
        new((a.Y * b.Z) - (a.Z * b.Y), (a.Z * b.X) - (a.X * b.Z), (a.X * b.Y) - (a.Y * b.X));

    /// <summary>The three components. A record would print <see cref="Mirrored"/> too, whose mirror prints its own without end.</summary>
    public override string ToString() => FormattableString.Invariant($"({X}, {Y}, {Z})");

    /// <summary>Sum.</summary>
    /// <param name="other">Other vector.</param>
    public Vector3d Add(Vector3d other) => this + other;

    /// <summary>Difference.</summary>
    /// <param name="other">Other vector.</param>
    public Vector3d Subtract(Vector3d other) => this - other;

    /// <summary>Product with a number.</summary>
    /// <param name="factor">Factor.</param>
    public Vector3d Multiply(double factor) => factor * this;

    /// <summary>The opposite vector.</summary>
    public Vector3d Negate() => -this;

    /// <summary>Sum.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3d operator +(Vector3d a, Vector3d b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    /// <summary>Difference.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3d operator -(Vector3d a, Vector3d b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    /// <summary>The opposite vector.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3d operator -(Vector3d a) => new(-a.X, -a.Y, -a.Z);

    /// <summary>Product with a number.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector3d operator *(double factor, Vector3d a) => new(factor * a.X, factor * a.Y, factor * a.Z);
}
