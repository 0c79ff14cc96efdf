using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>Lift of the edges at which the flow leaves the body: rho (pi/4) s^2 u w across the span s (slender-body theory: Jones 1946; Lighthill 1960).</summary>
internal sealed class TrailingEdges(ActionBody body, BentAxis axis, TowInput tow) : IForce
{
    private readonly Edge[] edges =
    [
        .. body.TrailingEdges.Select(e => new Edge(
            axis.Point(e.Position), axis.Tangent(e.Position.X), Math.PI / 4 * tow.WaterDensity * e.Height * e.Height, Math.PI / 4 * tow.WaterDensity * e.Width * e.Width, 0.25 * (e.Height + e.Width))),
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
        }
    }

    private readonly record struct Edge(Vector3d Position, Vector3d Tangent, double Height, double Width, double Radius);
}
