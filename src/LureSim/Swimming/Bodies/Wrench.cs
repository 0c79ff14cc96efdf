namespace LureSim.Swimming.Bodies;

/// <summary>Force and moment on the body about its origin in body axes, with the moment that works on the tail's angle.</summary>
internal struct Wrench
{
    /// <summary>Force (N).</summary>
    public Vector3d Force;

    /// <summary>Moment about the body's origin (N m).</summary>
    public Vector3d Moment;

    /// <summary>Moment on the tail's hinge (N m), to the left.</summary>
    public double Hinge;

    /// <summary>Difference of two wrenches.</summary>
    public static Wrench operator -(Wrench a, Wrench b) => new() { Force = a.Force - b.Force, Moment = a.Moment - b.Moment, Hinge = a.Hinge - b.Hinge };

    /// <summary>Adds a force (N) that acts at a place (m).</summary>
    public void Add(Vector3d force, Vector3d at)
    {
        Force += force;
        Moment += Vector3d.Cross(at, force);
    }
}
