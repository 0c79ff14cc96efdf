using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Drag of the paddle, the side force of the vortices behind it, and spring, damping and stop of the hinge.</summary>
/// <remarks>
/// Behind a plate broadside to the flow the water is at one pressure: it is pushed square to its face, so that a paddle set askew steers the bait like a rudder. Of the part along
/// the face <see cref="FlexibleTail.FaceDrag"/> is left, friction and the sides of a paddle that is no thin plate.
/// </remarks>
internal sealed class SwingingTail : IForce
{
    // The hinge hardens beyond this angle (radians); assumed.
    private const double StopAngle = 1.05;

    // Stiffness of the stop over the tail's inertia (1/s2); assumed.
    private const double StopRate = 3.5e4;

    // Speed at which the wake that the body leaves its paddle is taken (m/s); between 0.2 and 1 m/s its dynamic pressure changes by a twentieth.
    private const double WakeSpeed = 0.5;

    private readonly FlexibleTail tail;
    private readonly double rho, damping, stop, wakeShare, wakeRadius;
    private readonly VortexLift? wake;

    /// <summary>The tail's forces.</summary>
    /// <param name="body">The lure with its tail: a paddle in line with the body stands in its wake.</param>
    /// <param name="inertia">Its inertia about the hinge with the water that it carries (kg m2).</param>
    /// <param name="tow">The water.</param>
    /// <param name="wake">The vortices that push it, or null.</param>
    public SwingingTail(ActionBody body, double inertia, TowInput tow, VortexLift? wake)
    {
        tail = body.Tail ?? throw new ArgumentException("The lure has no tail.", nameof(body));
        this.wake = wake;
        rho = tow.WaterDensity;
        double frontal = Math.PI * body.SemiAxes.Y * body.SemiAxes.Z;
        wakeShare = PlateDrag.WakePressureShare(AxialDrag.NoseFirst(body).AreaTimesSpeed(WakeSpeed, tow.KinematicViscosity, out _) / (WakeSpeed * frontal));
        wakeRadius = Math.Sqrt(body.SemiAxes.Y * body.SemiAxes.Z);
        damping = 2 * tail.RootDamping * Math.Sqrt(tail.RootStiffness * inertia);
        stop = inertia * StopRate;
    }

    public ActionTerms Term => ActionTerms.Tail;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        TailMotion t = motion.Tail;
        Vector3d at = t.Velocity;

        // Out to the side it meets the stream.
        double aside = t.Place.Y / wakeRadius;
        double area = tail.PaddleHeight * tail.PaddleWidth * (1 - ((1 - wakeShare) * Math.Exp(-aside * aside)));
        Vector3d square = Vector3d.Dot(at, t.Normal) * t.Normal;
        Vector3d force = -0.5 * rho * area * PlateDrag.Broadside * at.Length * (square + (tail.FaceDrag * (at - square)));
        if (wake is not null)
        {
            double q = 0.5 * rho * area * wake.Coefficient(t.Wake) * t.PlanarSpeed;
            force += new Vector3d(-q * at.Y, q * at.X, 0);
        }

        total.Add(force, t.Place);
        double excess = Math.Abs(t.Angle) - StopAngle;
        double push = excess > 0 ? stop * excess * Math.Sign(t.Angle) : 0;
        total.Hinge += Vector3d.Dot(force, t.Arm) - (tail.RootStiffness * (t.Angle - tail.Offset)) - (damping * t.Rate) - push;
    }
}
