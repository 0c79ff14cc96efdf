using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Drag of the paddle, the side force of the vortices behind it, and spring, damping and stop of the hinge.</summary>
internal sealed class SwingingTail : IForce
{
    // The hinge hardens beyond this angle (radians); assumed.
    private const double StopAngle = 1.05;

    // Stiffness of the stop over the tail's inertia (1/s2); assumed.
    private const double StopRate = 3.5e4;

    private readonly FlexibleTail tail;
    private readonly double rho, area, damping, stop;
    private readonly bool wake;

    /// <summary>The tail's forces.</summary>
    /// <param name="tail">Its dimensions.</param>
    /// <param name="inertia">Its inertia about the hinge with the water that it carries (kg m2).</param>
    /// <param name="tow">The water.</param>
    /// <param name="wake">Whether vortices push it.</param>
    public SwingingTail(FlexibleTail tail, double inertia, TowInput tow, bool wake)
    {
        this.tail = tail;
        this.wake = wake;
        rho = tow.WaterDensity;
        area = tail.PaddleHeight * tail.PaddleWidth;
        damping = 2 * tail.RootDamping * Math.Sqrt(tail.RootStiffness * inertia);
        stop = inertia * StopRate;
    }

    public ActionTerms Term => ActionTerms.Tail;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        TailMotion t = motion.Tail;
        Vector3d at = t.Velocity;
        Vector3d force = -0.5 * rho * area * PlateDrag.Broadside * at.Length * at;
        if (wake)
        {
            double q = 0.5 * rho * area * VortexLift.Coefficient(t.Wake) * t.PlanarSpeed;
            force += new Vector3d(-q * at.Y, q * at.X, 0);
        }

        total.Add(force, t.Place);
        double excess = Math.Abs(t.Angle) - StopAngle;
        double push = excess > 0 ? stop * excess * Math.Sign(t.Angle) : 0;
        total.Hinge += Vector3d.Dot(force, t.Arm) - (tail.RootStiffness * (t.Angle - tail.Offset)) - (damping * t.Rate) - push;
    }
}
