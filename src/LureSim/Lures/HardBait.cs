using LureSim.Hydrodynamics;
using LureSim.Model;

namespace LureSim.Lures;

/// <summary>A hollow hard bait with its own weight and two treble hooks: what all such kinds have in common.</summary>
/// <remarks>
/// Mass and volume are those of its parts: shell, ballast, hooks, lip; the density counts all in all. Drag on the path: its body nose first by
/// its parts (<see cref="RoundedBody"/>), its treble hooks as bent wire across the flow, its lip as a plate by the cross-flow part of its angle.
/// </remarks>
public abstract class HardBait : LureKind
{
    /// <inheritdoc/>
    public override bool NeedsHead => false;

    /// <summary>Place of the ballast from the nose as a share of the length.</summary>
    private protected virtual double BallastStation => LureTables.Figure("ballast_station");

    /// <summary>Where the line pulls.</summary>
    /// <param name="body">A body of this kind.</param>
    private protected virtual Station TowPoint(LureBody body) => default;

    /// <inheritdoc/>
    public override SwimmingForm Swimming(JigHead head, LureBody body, LureAssembly parts)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(parts);
        SwimmingForm form = SolidForm(body, parts, [.. Drags(head, body, parts)]);
        return body.Lip is { } lip
            ? form with { Lip = new FormLip(parts.Parts.First(part => part.Role == PartRole.Lip).Centre, lip.Length, lip.Width, lip.Angle) }
            : form;
    }

    /// <inheritdoc/>
    public override LureShape Outline(JigHead head, LureBody body, LureAssembly parts, double tailAngle)
    {
        ArgumentNullException.ThrowIfNull(body);
        var outline = new BodyOutline(head, body, parts);
        return outline.Shape([.. outline.BodyRings(), .. body.Lip is { } lip ? [BodyOutline.LipRing(body, lip, RootBelow(body))] : Array.Empty<ShapeRing>()]);
    }

    private protected override PathLure OnPath(JigHead head, LureBody body, LureAssembly parts)
    {
        var shape = EllipsoidGeometry.Prolate(BodyVolume(body), body.Length);
        double diameter = Math.Sqrt(4 * shape.FrontalArea / Math.PI);
        double lip = body.Lip is { } l ? PlateDrag.AreaAtIncidence(l.Length * l.Width, l.Width / l.Length, Math.Sin(l.Angle)) : 0;
        return new PathLure
        {
            Mass = parts.Mass,
            Volume = parts.Volume,
            AddedMassCoefficient = shape.AxialAddedMass * shape.Volume / parts.Volume,
            ContactRadius = body.Height / 2,
            Towed = new DragSum(
                "hard bait, nose first", RoundedBody.NoseFirst(body.Length, diameter, diameter), new ConstantArea("hooks", Drags(head, body, parts).Sum(drag => drag.Area)), new ConstantArea("lip", lip)),
        };
    }

    private protected override LureAssembly PutTogether(JigHead head, LureBody body, Rigging rigging)
    {
        double length = body.Length;
        double volume = BodyVolume(body);
        double treble = LureTables.Figure("treble_mass_share") * HookWire.CommonMass(length);
        double trebleVolume = treble / Metals.Steel;
        double lipArea = body.Lip is { } l ? l.Length * l.Width : 0;
        double lipVolume = lipArea * LureTables.Figure("lip_thickness_m");
        double lipMass = lipVolume * LureTables.Figure("lip_density_kg_m3");
        double total = body.Density * (volume + (2 * trebleVolume) + lipVolume);

        // What is left after shell, hooks and lip is ballast in the belly; a very light bait has a thinner shell instead.
        double rest = Math.Max(0.2 * total, total - (2 * treble) - lipMass);
        double shell = Math.Min(rest, LureTables.Figure("shell_fill") * volume * LureTables.Figure("shell_density_kg_m3"));
        double ballast = rest - shell;
        List<LurePart> parts = [.. SectionParts(Sections, body, volume, shell, 0, 0, 0)];
        double ballastRadius = Math.Cbrt(3 * ballast / (4 * Math.PI * Metals.Steel));
        var ballastCentre = new Station(BallastStation * length, 0, -LureTables.Figure("ballast_below") * body.Height);
        parts.Add(new LurePart(PartRole.Ballast, ballast, 0, ballastCentre, Inertia.Ball(ballast, ballastRadius)));
        double hang = LureTables.Figure("treble_hang_m");
        var front = new Station(LureTables.Figure("treble_front_station") * length, 0, -(body.Height / 2) - hang);
        var rear = new Station((LureTables.Figure("treble_rear_station") * length) + (hang / 2), 0, -hang);
        parts.Add(new LurePart(PartRole.BellyHook, treble, trebleVolume, front, Inertia.Ball(treble, hang / 2)) { Eye = front with { Up = front.Up + hang } });
        parts.Add(new LurePart(PartRole.TailHook, treble, trebleVolume, rear, Inertia.Ball(treble, hang / 2)) { Eye = new Station(rear.Aft - (hang / 2), 0, 0) });
        if (body.Lip is { } lip)
        {
            var centre = new Station(-lip.Length / 2 * Math.Cos(lip.Angle), 0, -RootBelow(body) - (lip.Length / 2 * Math.Sin(lip.Angle)));

            // A plate seen along its own length, turned nose down by the lip's angle.
            var plate = Inertia.Diagonal(lipMass * lip.Width * lip.Width / 12, lipMass * lip.Length * lip.Length / 12, lipMass * ((lip.Length * lip.Length) + (lip.Width * lip.Width)) / 12);
            parts.Add(new LurePart(PartRole.Lip, lipMass, lipVolume, centre, plate.Raised(-lip.Angle)));
        }

        return new LureAssembly { Parts = parts, Length = length, Height = body.Height, Width = body.Width, TowPoint = TowPoint(body) };
    }

    private static double RootBelow(LureBody body) => LureTables.Figure("lip_root_below") * body.Height;
}
