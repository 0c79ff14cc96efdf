using LureSim.Swimming.Bodies;

namespace LureSim.Validation.Swimming;

/// <summary>The wake oscillator against its own limit cycle, its published closed form and the range of lock-in.</summary>
public class WakeTests
{
    private const string Area = "Action: wake and tail";

    [Fact]
    public void Free_wake_has_its_limit_cycle()
    {
        // Figures computed in a separate program at e = 0.3, w_f = 1; 2 pi (1 + e^2/16) = 6.31853 by perturbation.
        double q = 2, v = 0, previous = 0, largest = 0;
        var crossings = new List<double>();
        const double H = 1e-3;
        for (int i = 0; i < 200_000; i++)
        {
            double t = i * H;
            Step(ref q, ref v, H, t, 1, _ => 0);
            if (t > 100) largest = Math.Max(largest, q);
            if (t > 100 && previous < 0 && q >= 0) crossings.Add(t + H - (H * q / (q - previous)));
            previous = q;
        }

        ValidationLog.Absolute(CheckClass.SameEquations, Area, "free wake oscillator: amplitude", "Facchinetti, de Langre & Biolley 2004, integrated apart", 2.0009224, largest, 2e-6);
        ValidationLog.Absolute(CheckClass.SameEquations, Area, "free wake oscillator: period", "Facchinetti, de Langre & Biolley 2004, integrated apart", 6.3184432, (crossings[^1] - crossings[0]) / (crossings.Count - 1), 2e-6);
    }

    [Fact]
    public void Forced_wake_follows_the_closed_form()
    {
        // Harmonic balance of the forced oscillator with acceleration coupling (Facchinetti et al. 2004, sect. 3.2): with d = f/f_s and y = y0 cos,
        // q^2 ((1 - d^2)^2 + (e d)^2 (q^2/4 - 1)^2) = (A y0 d^2)^2.
        var rows = new List<(double, double)>();
        foreach ((double d, double y0) in new[] { (0.9, 0.1), (1.0, 0.1), (1.0, 0.4), (1.1, 0.3), (1.2, 0.5) })
        {
            double left = 0.5, right = 30;
            double Excess(double x) => (x * x * (Math.Pow(1 - (d * d), 2) + Math.Pow(WakeOscillator.Damping * d * ((x * x / 4) - 1), 2))) - Math.Pow(WakeOscillator.Coupling * y0 * d * d, 2);
            left = 2;
            for (int i = 0; i < 80; i++)
            {
                double middle = 0.5 * (left + right);
                if (Excess(middle) < 0) left = middle;
                else right = middle;
            }

            // First harmonic of the response after the start has died out: 40 whole periods.
            double q = 2, v = 0, sine = 0, cosine = 0;
            double period = 2 * Math.PI / d, h = period / 400;
            int skip = 400 * 100, take = 400 * 40;
            for (int i = 0; i < skip + take; i++)
            {
                double t = i * h;
                if (i >= skip)
                {
                    sine += q * Math.Sin(d * t);
                    cosine += q * Math.Cos(d * t);
                }

                Step(ref q, ref v, h, t, 1, s => -y0 * d * d * Math.Cos(d * s));
            }

            rows.Add((left, 2.0 / take * Math.Sqrt((sine * sine) + (cosine * cosine))));
        }

        // The closed form leaves the third harmonic out, which is worth about a per cent at these amplitudes.
        ValidationLog.WorstRelative(CheckClass.SameEquations, Area, "forced wake oscillator: amplitude of the lift", "closed form of Facchinetti, de Langre & Biolley 2004, sect. 3.2", rows, 0.03);
    }

    [Fact]
    public void Wake_locks_on_to_a_cylinder_in_the_published_range()
    {
        // de Langre 2006, J. Fluids Struct. 22:783 (linear, undamped; range from memory, derived again): 1/(1 + sqrt(A M)) < W < 1/(1 - sqrt(A M)), W the shedding rate
        // over the cylinder's own. Here A = 12, M = 0.05/20.
        const double M = 0.0025;
        double low = 1 / (1 + Math.Sqrt(WakeOscillator.Coupling * M)), high = 1 / (1 - Math.Sqrt(WakeOscillator.Coupling * M));
        double Amplitude(double w, out double deviation)
        {
            double y = 0, u = 0, q = 2, v = 0, previous = 0, largest = 0;
            var crossings = new List<double>();
            const double H = 0.01;
            for (int i = 0; i < 60_000; i++)
            {
                // Coupled: y'' + (2 xi + gamma/mu w) y' + y = M w^2 q, with xi 3.1e-3 and gamma M/0.05 = 0.04.
                Coupled(ref y, ref u, ref q, ref v, H, w, M);
                if (i > 40_000)
                {
                    largest = Math.Max(largest, Math.Abs(y));
                    if (previous < 0 && q >= 0) crossings.Add(i * H);
                }

                previous = q;
            }

            double rate = 2 * Math.PI * (crossings.Count - 1) / (crossings[^1] - crossings[0]);
            deviation = Math.Abs((rate / w) - 1);
            return largest;
        }

        double best = 0, at = 0;
        for (double w = 0.6; w <= 1.8; w += 0.04)
        {
            double a = Amplitude(w, out _);
            if (a > best) (best, at) = (a, w);
        }

        ValidationLog.Between(CheckClass.FromMemory, Area, "wake and cylinder: shedding rate over the cylinder's own at the greatest swing", "lock-in range of de Langre 2006, J. Fluids Struct. 22:783", low, high, at);
        Amplitude(0.6, out double below);
        Amplitude(0.5 * (1 + high), out double inside);
        ValidationLog.AtMost(CheckClass.Identity, Area, "below lock-in the wake keeps its Strouhal rate", "Strouhal law; 2 % for the van der Pol shift of 0.6 % and the cylinder's pull", 0.02, below);
        ValidationLog.Between(CheckClass.FromMemory, Area, "inside lock-in the wake leaves its Strouhal rate by", "de Langre 2006: frequencies lock", 0.02, 0.2, inside);
    }

    private static void Step(ref double q, ref double v, double h, double t, double w, Func<double, double> acceleration)
    {
        double k1 = WakeOscillator.Acceleration(q, v, w, acceleration(t));
        double v2 = v + (0.5 * h * k1), k2 = WakeOscillator.Acceleration(q + (0.5 * h * v), v2, w, acceleration(t + (0.5 * h)));
        double v3 = v + (0.5 * h * k2), k3 = WakeOscillator.Acceleration(q + (0.5 * h * v2), v3, w, acceleration(t + (0.5 * h)));
        double v4 = v + (h * k3), k4 = WakeOscillator.Acceleration(q + (h * v3), v4, w, acceleration(t + h));
        q += h / 6 * (v + (2 * v2) + (2 * v3) + v4);
        v += h / 6 * (k1 + (2 * k2) + (2 * k3) + k4);
    }

    private static void Coupled(ref double y, ref double u, ref double q, ref double v, double h, double w, double m)
    {
        (double A, double B) Rates(double yy, double uu, double qq, double vv)
        {
            double a = (m * w * w * qq) - yy - ((0.0062 + (0.8 * m / 0.05 * w)) * uu);
            return (a, WakeOscillator.Acceleration(qq, vv, w, a));
        }

        (double a1, double b1) = Rates(y, u, q, v);
        (double a2, double b2) = Rates(y + (h / 2 * u), u + (h / 2 * a1), q + (h / 2 * v), v + (h / 2 * b1));
        (double a3, double b3) = Rates(y + (h / 2 * (u + (h / 2 * a1))), u + (h / 2 * a2), q + (h / 2 * (v + (h / 2 * b1))), v + (h / 2 * b2));
        (double a4, double b4) = Rates(y + (h * (u + (h / 2 * a2))), u + (h * a3), q + (h * (v + (h / 2 * b2))), v + (h * b3));
        y += h * (u + (h / 6 * (a1 + a2 + a3)));
        q += h * (v + (h / 6 * (b1 + b2 + b3)));
        u += h / 6 * (a1 + (2 * a2) + (2 * a3) + a4);
        v += h / 6 * (b1 + (2 * b2) + (2 * b3) + b4);
    }
}
