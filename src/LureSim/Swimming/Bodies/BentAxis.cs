namespace LureSim.Swimming.Bodies;

/// <summary>The body's axis with its bend: straight to the bend, straight on at an angle behind it.</summary>
internal readonly struct BentAxis(BodyBend? bend)
{
    /// <summary>The bend; of zero angle for a straight body.</summary>
    public BodyBend Bend { get; } = bend ?? new BodyBend(0, 0);

    /// <summary>Where a point of the straight body comes to lie (m).</summary>
    public Vector3d Point(Vector3d point)
    {
        double behind = Bend.Position - point.X;
        if (behind <= 0 || Bend.Angle == 0) return point;
        Vector3d t = Tangent(point.X);
        return new(Bend.Position - (behind * t.X), point.Y - (behind * t.Y), point.Z - (behind * t.Z));
    }

    /// <summary>Direction of the axis at a place of the straight body, forwards.</summary>
    public Vector3d Tangent(double x)
    {
        if (x >= Bend.Position || Bend.Angle == 0) return new(1, 0, 0);
        (double s, double c) = Math.SinCos(Bend.Angle);
        (double sr, double cr) = Math.SinCos(Bend.Roll);
        return new(c, -s * cr, -s * sr);
    }
}
