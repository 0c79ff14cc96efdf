using LureSim.Scenarios;

namespace LureSim.Tackle;

/// <summary>Turns the angler's description of tackle into what the motion engine needs.</summary>
public static class TackleBuilder
{
    /// <summary>Main line and leader as the engine sees them.</summary>
    /// <exception cref="ArgumentNullException"><paramref name="tackle"/> is null.</exception>
    public static LineProperties Line(TackleBox tackle)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        LineMaterial main = Material(tackle.Line.Kind, tackle.Line.Diameter);
        return tackle.Leader is { } leader
            ? new LineProperties(main, Material(leader.Kind, leader.Diameter), leader.Length)
            : LineProperties.Uniform(main);
    }

    /// <summary>Section of a line material.</summary>
    /// <param name="kind">Material.</param>
    /// <param name="diameter">Outer diameter (m).</param>
    public static LineMaterial Material(LineKind kind, double diameter)
    {
        Guard.InRange(diameter, 2e-5, 5e-3);
        double section = Math.PI * diameter * diameter / 4 * Materials.Packing(kind);

        // Water fills the voids of a braid: the displaced volume is that of the fibres.
        return new LineMaterial(diameter, section * Materials.Density(kind), section * Materials.Modulus(kind), section);
    }

    /// <summary>A jig head with a soft body, or a soft body on a bare hook.</summary>
    public static JigLure Lure(JigHead head, LureBody body) => JigLure.Of(head, body);
}
