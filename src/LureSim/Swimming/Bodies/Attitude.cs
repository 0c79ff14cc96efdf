namespace LureSim.Swimming.Bodies;

/// <summary>A unit quaternion that turns body axes (x towards the nose, y to the left, z up) into water axes (x along the pull, y to the left, z up).</summary>
/// <param name="W">Scalar part.</param>
/// <param name="X">Vector part, x.</param>
/// <param name="Y">Vector part, y.</param>
/// <param name="Z">Vector part, z.</param>
public readonly record struct Attitude(double W, double X, double Y, double Z)
{
    /// <summary>Body axes along the water axes.</summary>
    public static Attitude Level => new(1, 0, 0, 0);

    /// <summary>
    /// Heading: angle of the nose to the left of x, seen from above (radians, -pi to pi).
    /// </summary>
    public double Yaw => Math.Atan2(2 * ((X * Y) + (W * Z)), 1 - (2 * ((Y * Y) + (Z * Z))));

    /// <summary>Nose above the level (radians, -pi/2 to pi/2).</summary>
    public double Pitch => Math.Asin(Math.Clamp(2 * ((X * Z) - (W * Y)), -1, 1));

    /// <summary>Turn about the long axis (radians, -pi to pi): positive when the left side goes up.</summary>
    public double Roll => Math.Atan2(2 * ((Y * Z) + (W * X)), 1 - (2 * ((X * X) + (Y * Y))));

    /// <summary>Norm of the quaternion, 1 for a turn.</summary>
    public double Norm => Math.Sqrt((W * W) + (X * X) + (Y * Y) + (Z * Z));

    /// <summary>From heading, pitch and roll, turned in this order; nose up is positive pitch.</summary>
    /// <param name="yaw">Nose to the left (radians).</param>
    /// <param name="pitch">Nose up (radians).</param>
    /// <param name="roll">Left side up (radians).</param>
    public static Attitude Of(double yaw, double pitch, double roll)
    {
        (double sy, double cy) = Math.SinCos(yaw / 2);
        (double sp, double cp) = Math.SinCos(-pitch / 2);
        (double sr, double cr) = Math.SinCos(roll / 2);
        return new(
            (cr * cp * cy) + (sr * sp * sy),
            (sr * cp * cy) - (cr * sp * sy),
            (cr * sp * cy) + (sr * cp * sy),
            (cr * cp * sy) - (sr * sp * cy));
    }

    /// <summary>A vector of body axes, in water axes.</summary>
    /// <param name="v">Vector in body axes.</param>
    public Vector3d ToWater(Vector3d v)
    {
        var u = new Vector3d(X, Y, Z);
        Vector3d t = 2 * Vector3d.Cross(u, v);
        return v + (W * t) + Vector3d.Cross(u, t);
    }

    /// <summary>A vector of water axes, in body axes.</summary>
    /// <param name="v">Vector in water axes.</param>
    public Vector3d ToBody(Vector3d v) => new Attitude(W, -X, -Y, -Z).ToWater(v);

    /// <summary>Rate of change of the quaternion for a rate of turn in body axes: q' = q w/2 (Hamilton's product).</summary>
    /// <param name="turnRate">Rate of turn in body axes (rad/s).</param>
    internal Attitude Rate(Vector3d turnRate)
    {
        Vector3d w = turnRate;
        return new(
            -0.5 * ((X * w.X) + (Y * w.Y) + (Z * w.Z)),
            0.5 * ((W * w.X) + (Y * w.Z) - (Z * w.Y)),
            0.5 * ((W * w.Y) + (Z * w.X) - (X * w.Z)),
            0.5 * ((W * w.Z) + (X * w.Y) - (Y * w.X)));
    }
}
