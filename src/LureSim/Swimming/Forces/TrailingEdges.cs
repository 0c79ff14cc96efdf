using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>
/// Lift of the edges at which the flow leaves the body: rho (pi/4) s^2 u w across the span s (slender-body theory: Jones 1946; Lighthill 1960), and the couple that the water behind them
/// no longer exerts: the Munk moment within Kirchhoff's equations is that of the whole body in ideal flow, that of a real one ends where the flow leaves it (Hopkins 1951, NACA RM A51C14;
/// Allen &amp; Perkins 1951, NACA Report 1048).
/// </summary>
/// <param name="body">The body or the part of one that has the edges.</param>
/// <param name="axis">Its axis.</param>
/// <param name="carried">Water that the whole body carries as it moves sideways and up (kg).</param>
/// <param name="tow">The water.</param>
internal sealed class TrailingEdges(ActionBody body, BentAxis axis, (double Sideways, double Up) carried, TowInput tow) : IForce
{
    private readonly Edge[] edges =
    [
        .. body.TrailingEdges.Select(e => new Edge(
            axis.Point(e.Position), axis.Tangent(e.Position.X), Math.PI / 4 * tow.WaterDensity * e.Height * e.Height, Math.PI / 4 * tow.WaterDensity * e.Width * e.Width, 0.25 * (e.Height + e.Width),
            e.Behind * carried.Sideways, e.Behind * carried.Up)),
    ];

    public ActionTerms Term => ActionTerms.Edges;

    public void AddTo(in BodyMotion motion, ref Wrench total)
    {
        foreach (ref readonly Edge e in edges.AsSpan())
        {
            Vector3d at = motion.At(e.Position);
            double along = Vector3d.Dot(at, e.Tangent);
            if (along <= 0) continue;
            Vector3d normal = at - (along * e.Tangent);
            along *= motion.Wet(e.Position, e.Radius);
            total.Add(new(-along * e.Height * normal.X, -along * e.Height * normal.Y, -along * e.Width * normal.Z), e.Position);

            // The part of p x v about the two cross axes that the water behind has in ideal flow, taken away; its roll is left to CrossSeparation.
            total.Moment -= Vector3d.Cross(new(0, e.BehindSideways * normal.Y, e.BehindUp * normal.Z), along * e.Tangent);
        }
    }

    private readonly record struct Edge(Vector3d Position, Vector3d Tangent, double Height, double Width, double Radius, double BehindSideways, double BehindUp);
}
