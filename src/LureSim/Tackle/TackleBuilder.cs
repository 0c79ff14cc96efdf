using LureSim.Lures;
using LureSim.Model;

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

    /// <summary>A jig head with a soft body, a soft body on a bare or weighted hook, or a hard lure by itself.</summary>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    public static LureProperties Lure(JigHead head, LureBody body)
    {
        ArgumentNullException.ThrowIfNull(body);
        return body.Kind.OnPath(head, body);
    }

    /// <summary>
    /// Bending stiffness E I of what the lure is tied to (N m2): the leader, or the main line where there is none. Braid hardly resists bending: its fibres slide,
    /// so the section counts as fibres of 20 micrometres (common practice, from memory) side by side.
    /// </summary>
    /// <exception cref="ArgumentNullException"><paramref name="tackle"/> is null.</exception>
    public static double BendingStiffness(TackleBox tackle)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        (LineKind kind, double diameter) = tackle.Leader is { } leader ? (leader.Kind, leader.Diameter) : (tackle.Line.Kind, tackle.Line.Diameter);
        double area = Math.PI * diameter * diameter / 4 * Materials.Packing(kind);
        const double Fibre = 20e-6;
        double radius2 = kind == LineKind.Braid ? Fibre * Fibre / 16 : diameter * diameter / 16;
        return Materials.Modulus(kind) * area * radius2;
    }
}
