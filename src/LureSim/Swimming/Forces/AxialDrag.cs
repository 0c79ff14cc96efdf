using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Drag along the body: that of the same body nose first on its path.</summary>
internal sealed class AxialDrag : IForce
{
    // Places along the body at which it is asked how much of it is under water.
    private const int Stations = 6;

    private readonly DragSum drag;
    private readonly double rho, nu, length, radius;

    /// <summary>The drag of a body or of a part of one.</summary>
    /// <param name="body">The whole body.</param>
    /// <param name="share">Share of its drag that the part has, 0 to 1.</param>
    /// <param name="tow">The water.</param>
    public AxialDrag(ActionBody body, double share, TowInput tow)
    {
        drag = NoseFirst(body);
        rho = share * tow.WaterDensity;
        nu = tow.KinematicViscosity;
        length = body.Length;
        radius = 0.5 * (body.SemiAxes.Y + body.SemiAxes.Z);
    }

    public ActionTerms Term => ActionTerms.AxialDrag;

    /// <summary>Drag of a body that moves along its axis.</summary>
    public static DragSum NoseFirst(ActionBody body) => RoundedBody.NoseFirst(body.Length, 2 * body.SemiAxes.Z, 2 * body.SemiAxes.Y);

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        double along = motion.Velocity.X;
        double wet = 1;
        if (motion.SurfaceAbove is not null)
        {
            wet = 0;
            for (int i = 0; i < Stations; i++) wet += motion.Wet(new(length * (((i + 0.5) / Stations) - 0.5), 0, 0), radius) / Stations;
        }

        total.Force += new Vector3d(-0.5 * wet * rho * along * drag.AreaTimesSpeed(Math.Abs(along), nu, out _), 0, 0);
    }
}
