using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>How a lure floats at rest: the height of the surface over its origin and its pitch at which weight and buoyancy hold each other, upright.</summary>
/// <param name="SurfaceAbove">Height of the surface over the body's origin (m).</param>
/// <param name="Pitch">Nose above the level (radians).</param>
internal readonly record struct FloatingRest(double SurfaceAbove, double Pitch)
{
    private const int Halvings = 50, Steps = 60;
    private const double Steepest = 1.5;

    /// <summary>The rest of a body; null for one that sinks.</summary>
    public static FloatingRest? Of(ActionBody body, TowInput tow)
    {
        if (body.Mass >= tow.WaterDensity * body.Volume || body.Sections.Count == 0) return null;
        var weight = new Weight(body, tow);
        var buoyancy = new Buoyancy(body, tow);

        // A moment that turns the nose down grows as the nose goes up where the rest is stable.
        double best = double.NaN, last = Moment(-Steepest);
        for (int i = 1; i <= Steps; i++)
        {
            double pitch = Steepest * ((2.0 * i / Steps) - 1), moment = Moment(pitch);
            if (last < 0 && moment >= 0 && !(Math.Abs(pitch) > Math.Abs(best))) best = Root(Moment, pitch - (2 * Steepest / Steps), pitch);
            last = moment;
        }

        double rest = double.IsNaN(best) ? last < 0 ? Steepest : -Steepest : best;
        return new(Height(rest), rest);

        Wrench At(double height, double pitch)
        {
            Wrench sum = default;
            BodyMotion still = new() { Up = new(Math.Sin(pitch), 0, Math.Cos(pitch)), Velocity = default, TurnRate = default, SurfaceAbove = height };
            weight.AddTo(still, ref sum);
            buoyancy.AddTo(still, ref sum);
            return sum;
        }

        double Height(double pitch)
        {
            Vector3d up = new(Math.Sin(pitch), 0, Math.Cos(pitch));
            return Root(h => Vector3d.Dot(At(h, pitch).Force, up), -body.Length, body.Length);
        }

        double Moment(double pitch) => At(Height(pitch), pitch).Moment.Y;
    }

    // Where a rising function goes through zero.
    private static double Root(Func<double, double> f, double low, double high)
    {
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            if (f(middle) < 0) low = middle;
            else high = middle;
        }

        return 0.5 * (low + high);
    }
}
