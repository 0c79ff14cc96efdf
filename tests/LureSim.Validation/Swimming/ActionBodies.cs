using LureSim.Stepping;
using LureSim.Swimming;
using LureSim.Swimming.Bodies;

namespace LureSim.Validation.Swimming;

/// <summary>Bodies and lures that the checks share. The lures are invented, with plausible dimensions.</summary>
internal static class ActionBodies
{
    /// <summary>A uniform solid spheroid without any drag, semi-axes along x and across (m).</summary>
    public static ActionBody Spheroid(double a, double b, double density)
    {
        double volume = 4.0 / 3 * Math.PI * a * b * b, mass = density * volume;
        double across = mass * ((a * a) + (b * b)) / 5;
        return new()
        {
            Name = "spheroid",
            Mass = mass,
            Volume = volume,
            CentreOfMass = Vector3d.Zero,
            CentreOfBuoyancy = Vector3d.Zero,
            Inertia = new(mass * 2 * b * b / 5, across, across),
            SemiAxes = new(a, b, b),
            TowPoint = new(a, 0, 0),
        };
    }

    /// <summary>Steps a body from a state that the caller sets to each of the given times; returns the largest drift of the quaternion's norm.</summary>
    public static double Follow(TowedBodyEquations equations, double tolerance, IEnumerable<double> times, Action<double, double[]> visit, Action<double[]>? prepare = null)
    {
        var stepper = new ExplicitRungeKutta(ExplicitTableau.DormandPrince, equations, tolerance);
        equations.Initial.AsSpan().CopyTo(stepper.State);
        prepare?.Invoke(stepper.State);
        stepper.Start(0, 1e-4);
        foreach (double t in times)
        {
            while (stepper.Time < t) Assert.True(stepper.Advance(t, 0.05), "the step fell below its floor");
            visit(t, stepper.State);
        }

        return stepper.Drift;
    }

    /// <summary>A soft body of round section on a ball head, with or without a paddle tail; semi-axes follow from length, height, width.</summary>
    public static ActionBody Soft(
        double length = 0.09,
        double height = 0.018,
        double width = 0.014,
        double headMass = 5e-3,
        double density = 1050,
        double hookMass = 0.8e-3,
        FlexibleTail? tail = null,
        double tailFin = 0.006,
        double ballastDrop = 0.004,
        double hookDrag = 2.5e-5)
    {
        Vector3d semi = new(length / 2, width / 2, height / 2);
        double volume = 4.0 / 3 * Math.PI * semi.X * semi.Y * semi.Z;
        var parts = new List<MassElement> { new(volume * density, volume, default, new(length, width, height)) };
        if (headMass > 0)
        {
            double d = Math.Cbrt(6 * headMass / 11340 / Math.PI);
            parts.Add(new(headMass, headMass / 11340, new((length / 2) - 0.003, 0, -ballastDrop), new(d, d, d)));
        }

        if (hookMass > 0) parts.Add(new(hookMass, hookMass / 7850, new(0.1 * length, 0, -ballastDrop), new(0.035, 0.001, 0.01)));
        var edges = new List<TrailingEdge> { TrailingEdge.OfSpheroid(semi) };
        if (tail is null && tailFin > 0) edges.Add(new(new(-length / 2, 0, 0), tailFin, tailFin / 2));
        return ActionBody.Spheroid(tail is null ? "straight soft bait" : "paddle tail", parts, semi, new((length / 2) + 0.002, 0, headMass > 0 ? 0.006 : 0)) with
        {
            TrailingEdges = edges,
            Appendages = [new(new(0.05 * length, 0, 0.5 * height), hookDrag)],
            Tail = tail,
        };
    }

    /// <summary>A paddle tail on a stem 5 mm thick, that tapers from the body; the hinge moves aft as the shank grows.</summary>
    public static ActionBody PaddleTail(double shankShare = 0.4, double length = 0.09, double paddleHeight = 0.014, double paddleWidth = 0.012, double modulus = 1e5, double headMass = 5e-3)
    {
        // Hinge at 70 % of the length, or where the shank ends.
        double free = length * Math.Min(0.3, Math.Max(0.06, 0.95 - shankShare));
        double stem = 0.005 * (1 + (0.6 * (0.3 - (free / length)) / 0.3));
        var tail = new FlexibleTail(
            (-length / 2) + free, free, paddleHeight, paddleWidth, 1.3e-3 * free / 0.027, FlexibleTail.StemStiffness(modulus, 1.2 * stem, stem, Math.Max(0.3 * free, 0.004)), Drop: 0.003);
        return Soft(length: length, tail: tail, headMass: headMass);
    }
}
