using System.Diagnostics;
using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Swimming.Bodies;
using LureSim.Tackle;

namespace LureSim.Swimming;

/// <summary>Turns a lure put together from its parts, and the way it is rigged, into what the action model needs.</summary>
public static class ActionBodyBuilder
{
    // Slices for each section of the outline.
    private const int Slices = 3;

    // A slice thinner than this (m) is what a hook has left of a section.
    private const double ShortestSlice = 1e-5;

    // A tail on a stem of soft plastisol; the loss factor is that of ActionBody's own default.
    private const double SmallestTail = 1e-3;

    // Water in which the parts of a flexible body are tried (kg/m3).
    private const double WaterDensity = 1020;

    // The largest bend the model takes.
    private const double LargestBend = Math.PI / 3;

    // Bending moduli the model takes (Pa).
    private const double LeastModulus = 1e7;
    private const double GreatestModulus = 2e11;

    /// <summary>The body of a lure.</summary>
    /// <param name="head">Jig head or hook; <see cref="JigHead.None"/> for a body that needs none.</param>
    /// <param name="body">Body.</param>
    /// <param name="rigging">How it is put on its hook.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is out of range.</exception>
    public static ActionBody Of(JigHead head, LureBody body, Rigging rigging)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(rigging);
        LureAssembly parts = LureAssembly.Of(head, body, rigging).Swung;
        SwimmingForm form = body.Kind.Swimming(head, body, parts);
        double nose = parts.Length / 2;
        Vector3d At(Station s) => new(nose - s.Aft, s.Left, s.Up);

        // A body that gives way is given laid straight; its bend is where its joint is at ease.
        LureAssembly laid = parts.Rear is null ? parts : LureAssembly.Of(head, body, rigging with { ExitSideways = 0, ExitAbove = 0, Bend = 0, PulledUp = 0 });
        Vector3d semiAxes = new(form.HalfLength, form.HalfWidth, form.HalfHeight);
        double bend = Math.Sqrt((parts.BendSideways * parts.BendSideways) + (parts.BendUp * parts.BendUp));
        return new ActionBody
        {
            Name = body.Label,
            Mass = laid.Mass,
            Volume = laid.Volume,
            CentreOfMass = At(laid.MassCentre),
            CentreOfBuoyancy = At(laid.BuoyancyCentre),
            Inertia = Tensor(laid.InertiaAboutMassCentre),
            SemiAxes = semiAxes,
            TowPoint = At(parts.TowPoint),
            Sections = Sections(form, nose),
            TrailingEdges = Edges(form, semiAxes, parts.Tail is { } own ? own.Mass / (parts.SectionVolume * body.Density) : 0, At),
            Appendages = [.. form.Drags.Select(drag => new AppendageDrag(At(drag.Centre), drag.Area))],
            Lip = form.Lip is { } lip ? new DivingLip(At(lip.Middle), lip.Length * lip.Width, Math.Clamp(lip.Width / lip.Length, 0.1, 6), lip.Angle) : null,
            Tail = Tail(parts.Tail, nose),
            Plate = form.Plate is { } plate ? new PlateForm(plate.Length, plate.Width, plate.CamberDepth) : null,

            // The shank is straight; behind it the body goes on at the angle that it has where the hook leaves it.
            Bend = bend > 0 ? new BodyBend(Math.Min(bend, LargestBend), Math.Atan2(parts.BendUp, parts.BendSideways), nose - parts.Engagement) : null,
            Rear = laid.Rear is { } rear
                ? new FlexibleRear(nose - rear.Joint, rear.Mass, rear.Volume, At(rear.Centre), At(rear.Centre), Tensor(rear.Inertia), rear.StiffnessSideways, rear.StiffnessUpright)
                : null,
            Head = HeadSetOf(head, rigging, nose),
        };
    }

    /// <summary>The knot of a tackle box.</summary>
    /// <param name="tackle">The tackle.</param>
    /// <exception cref="ArgumentNullException"><paramref name="tackle"/> is null.</exception>
    public static Knot KnotOf(Outfit tackle)
    {
        ArgumentNullException.ThrowIfNull(tackle);
        Rigging rigging = tackle.Rigging;
        double diameter = tackle.Leader?.Diameter ?? tackle.Line.Diameter;
        double modulus = TackleBuilder.BendingStiffness(tackle) / (Math.PI / 64 * Math.Pow(diameter, 4));
        return new Knot
        {
            Kind = rigging.Knot switch
            {
                KnotStyle.Snug => KnotKind.Snug,
                KnotStyle.Clip => KnotKind.Clip,
                KnotStyle.SplitRing => KnotKind.SplitRing,
                KnotStyle.Loop => KnotKind.Loop,
                _ => throw new UnreachableException(),
            },
            Length = rigging.LoopLength,
            LeaderDiameter = Math.Clamp(diameter, 5e-5, 2e-3),
            LeaderModulus = Math.Clamp(modulus, LeastModulus, GreatestModulus),
        };
    }

    private static List<BodySection> Sections(SwimmingForm form, double nose)
    {
        List<BodySection> slices = [];
        foreach (FormSection s in form.Sections)
        {
            double step = (s.To - s.From) / Slices;
            if (step < ShortestSlice)
                continue;
            for (int k = 0; k < Slices; k++)
                slices.Add(new BodySection(nose - s.From - ((k + 0.5) * step), step, s.Height, s.Width));
        }

        return slices;
    }

    // The rear of the body, and behind it the fin. A plate has forces of its own. A tail that swings is no part of the body that ideal flow turns: it has its own water and forces.
    private static List<TrailingEdge> Edges(SwimmingForm form, Vector3d semiAxes, double tail, Func<Station, Vector3d> at)
    {
        if (form.Plate is not null)
            return [];
        var rear = TrailingEdge.OfLaminarSpheroid(semiAxes);
        List<TrailingEdge> edges = [rear with { Behind = TrailingEdge.IsSlender(semiAxes) ? Math.Max(rear.Behind, Math.Min(1, tail)) : 0 }];
        if (form.Fin is { } fin)
            edges.Add(new TrailingEdge(at(fin.Middle), fin.Height, fin.Width));
        return edges;
    }

    private static FlexibleTail? Tail(FreeTail? tail, double nose) => tail is null ? null : new FlexibleTail(
        nose - tail.Hinge,
        Math.Max(SmallestTail, tail.Arm),
        Math.Max(SmallestTail, tail.Height),
        Math.Max(5e-4, tail.Width),
        Math.Max(1e-6, tail.Mass),
        tail.Stiffness,
        Drop: tail.Drop);

    private static InertiaTensor Tensor(Inertia i) => new(i.Roll, i.Pitch, i.Yaw, i.ForwardLeft, i.ForwardUp, i.LeftUp);

    private static HeadSet? HeadSetOf(JigHead head, Rigging rigging, double nose)
    {
        if (rigging.HeadTurn == 0 || head.Mass == 0 || head.Place != WeightPlace.Nose)
            return null;
        return new HeadSet(new Vector3d(nose, 0, 0), SphereDrag.FrontalArea(head.Mass / Metals.Density(head.Metal)), rigging.HeadTurn);
    }
}
