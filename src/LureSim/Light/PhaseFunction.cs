using LureSim.Data;
using MathNet.Numerics.Integration;
using MathNet.Numerics.RootFinding;

namespace LureSim.Light;

/// <summary>How a scattering event spreads light over angle: a function of the scattering angle with integral 1 over the sphere.</summary>
public sealed class PhaseFunction
{
    private const int PointsAPanel = 12;

    // Panels in rad: marine particles scatter most light within a few degrees, so they close up towards 0.
    private static readonly double[] Panels = [0.0, 1e-6, 1e-5, 1e-4, 1e-3, 3e-3, 0.01, 0.03, 0.1, 0.2, 0.4, 0.8, Math.PI / 2.0, 2.2, 2.8, Math.PI];

    private static readonly (double Angle, double Weight)[] Nodes = MakeNodes();

    private readonly Func<double, double> function;
    private readonly double scale;

    private PhaseFunction(Func<double, double> function)
    {
        // Held below a microradian: what lies inside cannot be told from light that was not scattered.
        this.function = angle => function(Math.Clamp(angle, 1e-6, Math.PI));

        // Numerical normalisation: what the panels miss below the first node must not leak out of the energy balance.
        double integral = Nodes.Sum(n => n.Weight * this.function(n.Angle) * 2.0 * Math.PI * Math.Sin(n.Angle));
        scale = 1.0 / integral;
        BackscatteringShare = scale * Nodes.Where(n => n.Angle > Math.PI / 2.0).Sum(n => n.Weight * this.function(n.Angle) * 2.0 * Math.PI * Math.Sin(n.Angle));
    }

    /// <summary>Scattering by water molecules, proportional to 1 + 0.835 cos^2 (Morel 1974 in Mobley 1994, mobley1994light).</summary>
    public static PhaseFunction Water { get; } = new(angle => 1.0 + (0.835 * Math.Cos(angle) * Math.Cos(angle)));

    /// <summary>Rayleigh scattering, proportional to 1 + cos^2.</summary>
    public static PhaseFunction Rayleigh { get; } = new(angle => 1.0 + (Math.Cos(angle) * Math.Cos(angle)));

    /// <summary>Petzold's average particles (petzold1972volume, mobley1993comparison): log-log interpolation of the table, a power law below 0.1 degrees.</summary>
    public static PhaseFunction PetzoldAverage { get; } = MakePetzold();

    /// <summary>Share of the light that is scattered backward.</summary>
    public double BackscatteringShare { get; }

    /// <summary>
    /// The phase function of Fournier and Forand 1994 in the form of Fournier and Jonasz 1999 (fournier1999computer) that has a
    /// given backscattering share, on the line n = 1.01 + 0.1542 (mu - 3) through index and size slope (Mobley et al. 2002,
    /// mobley2002phase).
    /// </summary>
    /// <param name="backscatteringShare">Backscattering share, 0.001-0.3.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside its range.</exception>
    public static PhaseFunction FournierForand(double backscatteringShare)
    {
        _ = Guard.InRange(backscatteringShare, 1e-3, 0.3, nameof(backscatteringShare), "");
        double slope = Bisection.FindRoot(mu => Math.Log(FournierForandShare(mu) / backscatteringShare), 3.02, 4.95, 1e-10, 200);
        return new PhaseFunction(angle => FournierForandValue(angle, slope));
    }

    /// <summary>A mixture by share of scattering.</summary>
    /// <param name="first">First part.</param>
    /// <param name="second">Second part.</param>
    /// <param name="firstShare">Share of the first part, 0-1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share is outside 0-1.</exception>
    public static PhaseFunction Mix(PhaseFunction first, PhaseFunction second, double firstShare)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        _ = Guard.InRange(firstShare, 0.0, 1.0, nameof(firstShare), "");
        return new PhaseFunction(angle => (firstShare * first.At(angle)) + ((1.0 - firstShare) * second.At(angle)));
    }

    /// <summary>Value at a scattering angle (1/sr).</summary>
    /// <param name="angle">Scattering angle (rad), 0 to pi.</param>
    public double At(double angle) => scale * function(angle);

    /// <summary>Legendre moments chi_l = integral of the function times P_l over the sphere, chi_0 = 1.</summary>
    /// <param name="count">Number of moments, at least 1.</param>
    internal double[] Moments(int count)
    {
        double[] moments = new double[count];
        foreach ((double angle, double weight) in Nodes)
        {
            double value = weight * At(angle) * 2.0 * Math.PI * Math.Sin(angle);
            double x = Math.Cos(angle), previous = 1.0, current = x;
            for (int l = 0; l < count; l++)
            {
                double legendre = l == 0 ? 1.0 : current;
                moments[l] += value * legendre;
                if (l > 0)
                    (previous, current) = (current, ((((2 * l) + 1) * x * current) - (l * previous)) / (l + 1));
            }
        }

        return moments;
    }

    private static (double Index, double Exponent) FournierForandParameters(double mu) => (1.01 + (0.1542 * (mu - 3.0)), (3.0 - mu) / 2.0);

    private static double FournierForandShare(double mu)
    {
        (double index, double nu) = FournierForandParameters(mu);
        double delta = 4.0 / (3.0 * (index - 1.0) * (index - 1.0)) * 0.5;
        return 1.0 - ((1.0 - Math.Pow(delta, nu + 1.0) - (0.5 * (1.0 - Math.Pow(delta, nu)))) / ((1.0 - delta) * Math.Pow(delta, nu)));
    }

    private static double FournierForandValue(double angle, double mu)
    {
        (double index, double nu) = FournierForandParameters(mu);
        double scale = 4.0 / (3.0 * (index - 1.0) * (index - 1.0));
        double sine = Math.Sin(0.5 * angle);
        double delta = scale * sine * sine;

        // The formula is 0/0 at delta = 1; a relative step of 1e-4 keeps eight digits of the double and moves the value by less.
        if (Math.Abs(delta - 1.0) < 1e-4)
            delta = 1.0001;
        double power = Math.Pow(delta, nu);
        double rest = 1.0 - delta;
        double first = ((nu * rest) - (1.0 - power) + (((delta * (1.0 - power)) - (nu * rest)) / (sine * sine)))
            / (4.0 * Math.PI * rest * rest * power);
        double backPower = Math.Pow(scale, nu);
        double cosine = Math.Cos(angle);
        return first + ((1.0 - backPower) / (16.0 * Math.PI * (scale - 1.0) * backPower) * ((3.0 * cosine * cosine) - 1.0));
    }

    private static PhaseFunction MakePetzold()
    {
        ReferenceTable table = ReferenceTable.Optics("petzold_average_particle");
        double[] logAngle = [.. table.Numbers("angle_deg").Select(a => Math.Log(a * Math.PI / 180.0))];
        double[] logValue = [.. table.Numbers("phase_per_sr").Select(v => Math.Log(v))];
        return new PhaseFunction(angle =>
        {
            double x = Math.Log(angle);
            if (x <= logAngle[0])
                return Math.Exp(logValue[0] - (1.346 * (x - logAngle[0])));
            int upper = Array.BinarySearch(logAngle, Math.Min(x, logAngle[^1]));
            if (upper >= 0)
                return Math.Exp(logValue[upper]);
            upper = ~upper;
            double share = (x - logAngle[upper - 1]) / (logAngle[upper] - logAngle[upper - 1]);
            return Math.Exp(logValue[upper - 1] + (share * (logValue[upper] - logValue[upper - 1])));
        });
    }

    private static (double Angle, double Weight)[] MakeNodes()
    {
        var nodes = new List<(double, double)>();
        for (int panel = 1; panel < Panels.Length; panel++)
        {
            var rule = new GaussLegendreRule(Panels[panel - 1], Panels[panel], PointsAPanel);
            for (int i = 0; i < PointsAPanel; i++)
                nodes.Add((rule.GetAbscissa(i), rule.GetWeight(i)));
        }

        return [.. nodes];
    }
}
