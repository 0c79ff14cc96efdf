using System.Runtime.Intrinsics;
using MathNet.Numerics.Integration;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace LureSim.Light;

/// <summary>
/// Radiative transfer in homogeneous water under a flat surface, over a diffuse bottom or without one, at one wavelength, by
/// discrete ordinates: the radiance averaged over bearings as a sum of exponentials of depth.
/// </summary>
/// <remarks>
/// Method of Stamnes et al. 1988 (stamnes1988numerically) with delta-M scaling (Wiscombe 1977, wiscombe1977delta) and the
/// single-scattering correction of Nakajima and Tanaka 1988 (nakajima1988algorithms) for the sun's beam. Sixteen directions a
/// hemisphere, eight inside and eight outside the cone of Snell's window, where radiance jumps. The surface transmits by
/// Fresnel and reflects the light from below, totally outside the window.
/// </remarks>
internal sealed class RadiativeTransfer
{
    private const int NodesAPart = 8;
    private const int NodeCount = 2 * NodesAPart;
    private const int MomentCount = 2 * NodesAPart; // exactly integrated by the composite rule

    private static readonly double CriticalCosine = Math.Cos(WaterSurface.SnellWindowHalfAngle);
    private static readonly double[] Cosines = new double[NodeCount];
    private static readonly double[] Weights = new double[NodeCount];
    private static readonly double[] InternalReflectance = new double[NodeCount];
    private static readonly double[,] LegendreAtNodes = new double[MomentCount, NodeCount];

    private readonly double albedo;        // scaled single-scattering albedo
    private readonly double attenuation;   // scaled beam attenuation, m-1
    private readonly double[] moments;     // scaled moments times 2l + 1
    private readonly double truncated;     // share of scattering taken as unscattered
    private readonly PhaseFunction phase;
    private readonly double sunCosine;     // in the water
    private readonly double sun;           // beam irradiance across the beam just below the surface
    private readonly double skyAbove;      // uniform sky radiance above the surface
    private readonly double[] decay;       // eigenvalues in scaled optical depth
    private readonly double[,] down;       // coefficient times downward eigenvector, by mode and node
    private readonly double[,] up;
    private readonly double[,] risingDown; // the same for the modes that decay away from the bottom
    private readonly double[,] risingUp;
    private readonly double bedDepth;      // scaled optical depth, infinite without a bottom
    private readonly double bedRadiance;   // radiance that leaves the bottom
    private readonly double[] beamDown;    // particular solution
    private readonly double[] beamUp;

    static RadiativeTransfer()
    {
        var outside = new GaussLegendreRule(0.0, CriticalCosine, NodesAPart);
        var inside = new GaussLegendreRule(CriticalCosine, 1.0, NodesAPart);
        for (int i = 0; i < NodesAPart; i++)
        {
            (Cosines[i], Weights[i]) = (outside.GetAbscissa(i), outside.GetWeight(i));
            (Cosines[NodesAPart + i], Weights[NodesAPart + i]) = (inside.GetAbscissa(i), inside.GetWeight(i));
        }

        for (int i = 0; i < NodeCount; i++)
        {
            InternalReflectance[i] = ReflectanceFromBelow(Cosines[i]);
            for (int l = 0; l < MomentCount; l++)
                LegendreAtNodes[l, i] = Legendre(l, Cosines[i]);
        }
    }

    /// <summary>Solves one wavelength.</summary>
    /// <param name="absorption">a (1/m), above 0.</param>
    /// <param name="scattering">b (1/m), 0 or more.</param>
    /// <param name="phase">Phase function of all scattering.</param>
    /// <param name="sunZenith">Zenith angle of the sun in air (rad), 0 to pi/2.</param>
    /// <param name="directAbove">Direct irradiance on the horizontal above the surface.</param>
    /// <param name="diffuseAbove">Diffuse irradiance above the surface, from a uniform sky.</param>
    /// <param name="bedDepth">Depth of the bottom (m); infinite for none.</param>
    /// <param name="bedReflectance">Diffuse reflectance of the bottom, 0-1.</param>
    public RadiativeTransfer(
        double absorption,
        double scattering,
        PhaseFunction phase,
        double sunZenith,
        double directAbove,
        double diffuseAbove,
        double bedDepth = double.PositiveInfinity,
        double bedReflectance = 0.0)
    {
        this.phase = phase;
        double albedo = scattering / (absorption + scattering);
        double[] moments = phase.Moments(MomentCount + 1);
        truncated = moments[MomentCount];
        this.albedo = (1.0 - truncated) * albedo / (1.0 - (truncated * albedo));
        attenuation = (1.0 - (truncated * albedo)) * (absorption + scattering);
        this.moments = [.. Enumerable.Range(0, MomentCount).Select(l => ((2 * l) + 1) * (moments[l] - truncated) / (1.0 - truncated))];
        sunCosine = Math.Cos(WaterSurface.Refract(sunZenith));
        sun = (1.0 - WaterSurface.FresnelReflectance(sunZenith)) * directAbove / sunCosine;
        skyAbove = diffuseAbove / Math.PI;

        Matrix<double> same = Matrix<double>.Build.Dense(NodeCount, NodeCount);
        Matrix<double> opposite = Matrix<double>.Build.Dense(NodeCount, NodeCount);
        for (int i = 0; i < NodeCount; i++)
        {
            for (int j = 0; j <= i; j++)
            {
                double even = 0.0, odd = 0.0;
                for (int l = 0; l < MomentCount; l++)
                {
                    double term = this.moments[l] * LegendreAtNodes[l, i] * LegendreAtNodes[l, j];
                    if ((l & 1) == 0)
                        even += term;
                    else
                        odd += term;
                }

                same[i, j] = same[j, i] = 0.5 * this.albedo * (even + odd);
                opposite[i, j] = opposite[j, i] = 0.5 * this.albedo * (even - odd);
            }
        }

        // S = down + up and D = down - up obey M dD/dt = -A S + q_S, M dS/dt = -B D + q_D with A, B = I - (same +- opposite) W.
        // In weighted coordinates both are symmetric and positive, so the squared decays are real: Cholesky, then eigenvectors.
        Matrix<double> g = Matrix<double>.Build.Dense(NodeCount, NodeCount);
        Matrix<double> h = Matrix<double>.Build.Dense(NodeCount, NodeCount);
        Matrix<double> a = Matrix<double>.Build.Dense(NodeCount, NodeCount);
        Matrix<double> b = Matrix<double>.Build.Dense(NodeCount, NodeCount);
        for (int i = 0; i < NodeCount; i++)
        {
            for (int j = 0; j < NodeCount; j++)
            {
                double unit = i == j ? 1.0 : 0.0;
                double sum = same[i, j] + opposite[i, j], difference = same[i, j] - opposite[i, j];
                a[i, j] = unit - (sum * Weights[j]);
                b[i, j] = unit - (difference * Weights[j]);
                double root = Math.Sqrt(Weights[i] * Weights[j]);
                double flux = 1.0 / Math.Sqrt(Cosines[i] * Cosines[j]);
                g[i, j] = (unit - (root * sum)) * flux;
                h[i, j] = (unit - (root * difference)) * flux;
            }
        }

        Matrix<double> factor = h.Cholesky().Factor;
        Matrix<double> symmetric = factor.TransposeThisAndMultiply(g) * factor;
        symmetric = 0.5 * (symmetric + symmetric.Transpose());
        Evd<double> evd = symmetric.Evd(Symmetricity.Symmetric);
        decay = new double[NodeCount];
        Matrix<double> downModes = Matrix<double>.Build.Dense(NodeCount, NodeCount);
        Matrix<double> upModes = Matrix<double>.Build.Dense(NodeCount, NodeCount);
        for (int n = 0; n < NodeCount; n++)
        {
            // Rounding may leave a tiny negative square for nearly pure scattering.
            decay[n] = Math.Sqrt(Math.Max(1e-12, evd.EigenValues[n].Real));
            Vector<double> t = factor * evd.EigenVectors.Column(n);
            Vector<double> sum = Vector<double>.Build.Dense(NodeCount, i => t[i] / Math.Sqrt(Cosines[i] * Weights[i]));
            Vector<double> product = a * sum;
            for (int i = 0; i < NodeCount; i++)
            {
                double difference = product[i] / (Cosines[i] * decay[n]);
                downModes[i, n] = 0.5 * (sum[i] + difference);
                upModes[i, n] = 0.5 * (sum[i] - difference);
            }
        }

        // A beam whose slant equals a decay makes the particular solution singular: move it by a millionth.
        while (decay.Any(k => Math.Abs((k * sunCosine) - 1.0) < 1e-7))
            sunCosine *= 1.0 - 1e-6;
        (beamDown, beamUp) = Beam(a, b);

        this.bedDepth = attenuation * bedDepth;
        double n2 = WaterSurface.RefractiveIndex * WaterSurface.RefractiveIndex;
        double Sky(int i) => ((1.0 - InternalReflectance[i]) * n2 * skyAbove) - beamDown[i] + (InternalReflectance[i] * beamUp[i]);
        down = new double[NodeCount, NodeCount];
        up = new double[NodeCount, NodeCount];
        risingDown = new double[NodeCount, NodeCount];
        risingUp = new double[NodeCount, NodeCount];
        Vector<double> falling;
        Vector<double> rising = Vector<double>.Build.Dense(NodeCount);
        if (double.IsPositiveInfinity(bedDepth))
        {
            falling = Matrix<double>.Build.Dense(NodeCount, NodeCount, (i, n) => downModes[i, n] - (InternalReflectance[i] * upModes[i, n]))
                .Solve(Vector<double>.Build.Dense(NodeCount, Sky));
        }
        else
        {
            // Rising modes are the falling ones turned upside down, scaled to 1 at the bottom. Rows: the surface, then the
            // bottom, whose upward radiance is the same in all directions, reflectance/pi times the irradiance on it.
            int size = 2 * NodeCount;
            Matrix<double> system = Matrix<double>.Build.Dense(size, size);
            Vector<double> source = Vector<double>.Build.Dense(size);
            double beamAtBed = Math.Exp(-this.bedDepth / sunCosine);
            for (int i = 0; i < NodeCount; i++)
            {
                source[i] = Sky(i);
                source[NodeCount + i] = (bedReflectance / Math.PI * sunCosine * sun * beamAtBed) - (beamUp[i] * beamAtBed);
                for (int j = 0; j < NodeCount; j++)
                    source[NodeCount + i] += 2.0 * bedReflectance * Weights[j] * Cosines[j] * beamDown[j] * beamAtBed;
                for (int n = 0; n < NodeCount; n++)
                {
                    double across = Math.Exp(-decay[n] * this.bedDepth);
                    system[i, n] = downModes[i, n] - (InternalReflectance[i] * upModes[i, n]);
                    system[i, NodeCount + n] = across * (upModes[i, n] - (InternalReflectance[i] * downModes[i, n]));
                    double fallingFlux = 0.0, risingFlux = 0.0;
                    for (int j = 0; j < NodeCount; j++)
                    {
                        fallingFlux += Weights[j] * Cosines[j] * downModes[j, n];
                        risingFlux += Weights[j] * Cosines[j] * upModes[j, n];
                    }

                    system[NodeCount + i, n] = across * (upModes[i, n] - (2.0 * bedReflectance * fallingFlux));
                    system[NodeCount + i, NodeCount + n] = downModes[i, n] - (2.0 * bedReflectance * risingFlux);
                }
            }

            Vector<double> amounts = system.Solve(source);
            falling = amounts.SubVector(0, NodeCount);
            rising = amounts.SubVector(NodeCount, NodeCount);
        }

        for (int n = 0; n < NodeCount; n++)
        {
            for (int i = 0; i < NodeCount; i++)
            {
                down[n, i] = falling[n] * downModes[i, n];
                up[n, i] = falling[n] * upModes[i, n];
                risingDown[n, i] = rising[n] * upModes[i, n];
                risingUp[n, i] = rising[n] * downModes[i, n];
            }
        }

        if (!double.IsPositiveInfinity(bedDepth))
            bedRadiance = bedReflectance / Math.PI * Integral(cosine => cosine, _ => 0.0).At(Rates(), bedDepth, bedDepth);
    }

    /// <summary>Decay rates of the modes and, last, of the sun's beam with depth (1/m).</summary>
    public double[] Rates() => [.. decay.Select(k => k * attenuation), attenuation / sunCosine];

    /// <summary>A weighted integral over all directions: 2 pi sum of w (weightDown L_down + weightUp L_up), with the unscattered beam times its own weight.</summary>
    public DepthSeries Integral(Func<double, double> weightDown, Func<double, double> weightUp)
    {
        double[] falling = new double[NodeCount + 1];
        double[] rising = new double[NodeCount];
        for (int i = 0; i < NodeCount; i++)
        {
            double down = 2.0 * Math.PI * Weights[i] * weightDown(Cosines[i]), up = 2.0 * Math.PI * Weights[i] * weightUp(Cosines[i]);
            for (int n = 0; n < NodeCount; n++)
            {
                falling[n] += (down * this.down[n, i]) + (up * this.up[n, i]);
                rising[n] += (down * risingDown[n, i]) + (up * risingUp[n, i]);
            }

            falling[NodeCount] += (down * beamDown[i]) + (up * beamUp[i]);
        }

        falling[NodeCount] += weightDown(sunCosine) * sun;
        return new DepthSeries(falling, HasBed ? rising : [], 0.0, 0.0, 0.0);
    }

    /// <summary>The radiance travelling at a cosine from the nadir: 1 straight down, 0 level, -1 straight up.</summary>
    public DepthSeries Radiance(double cosine)
    {
        (double[] falling, double[] rising) = SourceFunction(cosine);
        double fromTop = 0.0, fromBed = 0.0;

        // Along the path a source s e^(-k t) builds up s/(1 - cosine k) e^(-k t), and what the path began with decays with
        // attenuation/cosine. Where both rates meet, the two terms cancel: a relative step of 1e-5 keeps ten digits.
        static double Gap(double gap) => Math.Abs(gap) >= 1e-5 ? gap : gap < 0.0 ? -1e-5 : 1e-5;
        for (int n = 0; n <= NodeCount; n++)
            falling[n] /= Gap(1.0 - (cosine * Rate(n)));
        for (int n = 0; n < rising.Length; n++)
            rising[n] /= Gap(1.0 + (cosine * Rate(n)));

        if (cosine > 0.0)
        {
            double atTop = falling.Sum();
            for (int n = 0; n < rising.Length; n++)
                atTop += rising[n] * Math.Exp(-Rate(n) * bedDepth);
            double upward = Radiance(-cosine).At(Rates(), 0.0, bedDepth / attenuation);
            double reflectance = ReflectanceFromBelow(cosine);
            fromTop = (reflectance * upward)
                + ((1.0 - reflectance) * WaterSurface.RefractiveIndex * WaterSurface.RefractiveIndex * skyAbove)
                - atTop;
        }
        else if (cosine < 0.0 && HasBed)
        {
            double atBed = rising.Sum();
            for (int n = 0; n <= NodeCount; n++)
                atBed += falling[n] * Math.Exp(-Rate(n) * bedDepth);
            fromBed = bedRadiance - atBed;
        }

        return new DepthSeries(falling, rising, fromTop, fromBed, cosine == 0.0 ? 0.0 : attenuation / Math.Abs(cosine));
    }

    private bool HasBed => !double.IsPositiveInfinity(bedDepth);

    private static double ReflectanceFromBelow(double cosine)
    {
        double sine = WaterSurface.RefractiveIndex * Math.Sqrt(Math.Max(0.0, 1.0 - (cosine * cosine)));
        return sine >= 1.0 ? 1.0 : WaterSurface.FresnelReflectance(Math.Asin(sine));
    }

    private static double Legendre(int degree, double x)
    {
        if (degree == 0)
            return 1.0;
        double previous = 1.0, current = x;
        for (int l = 1; l < degree; l++)
            (previous, current) = (current, ((((2 * l) + 1) * x * current) - (l * previous)) / (l + 1));
        return current;
    }

    private double Rate(int mode) => mode < NodeCount ? decay[mode] : 1.0 / sunCosine;

    /// <summary>Truncated phase function times 4 pi for light from a node, downward and upward, into the direction whose Legendre values are given.</summary>
    private (double FromDown, double FromUp) Truncated(ReadOnlySpan<double> legendre, int node)
    {
        double even = 0.0, odd = 0.0;
        for (int l = 0; l < MomentCount; l += 2)
        {
            even += moments[l] * legendre[l] * LegendreAtNodes[l, node];
            odd += moments[l + 1] * legendre[l + 1] * LegendreAtNodes[l + 1, node];
        }

        return (even + odd, even - odd);
    }

    private (double[] Falling, double[] Rising) SourceFunction(double cosine)
    {
        double[] falling = new double[NodeCount + 1];
        double[] rising = HasBed ? new double[NodeCount] : [];
        Span<double> legendre = stackalloc double[MomentCount];
        for (int l = 0; l < MomentCount; l++)
            legendre[l] = Legendre(l, cosine);
        for (int i = 0; i < NodeCount; i++)
        {
            (double fromDown, double fromUp) = Truncated(legendre, i);
            double down = 0.5 * albedo * Weights[i] * fromDown, up = 0.5 * albedo * Weights[i] * fromUp;
            for (int n = 0; n < NodeCount; n++)
                falling[n] += (down * this.down[n, i]) + (up * this.up[n, i]);
            for (int n = 0; n < rising.Length; n++)
                rising[n] += (down * risingDown[n, i]) + (up * risingUp[n, i]);
            falling[NodeCount] += (down * beamDown[i]) + (up * beamUp[i]);
        }

        // First scattering of the beam by the whole phase function, mean over bearings. Light within the truncated peak counts
        // as still in the beam, so a line of sight within it (about 10 degrees) of the refracted sun is not described.
        const int Bearings = 24;
        double mean = 0.0;
        double sines = Math.Sqrt((1.0 - (cosine * cosine)) * (1.0 - (sunCosine * sunCosine)));
        for (int k = 0; k < Bearings; k++)
        {
            double angle = Math.Acos(Math.Clamp((cosine * sunCosine) + (sines * Math.Cos(Math.PI * (k + 0.5) / Bearings)), -1.0, 1.0));
            mean += phase.At(Math.Max(angle, 0.05)) / Bearings;
        }

        falling[NodeCount] += albedo / (1.0 - truncated) * mean * sun;
        return (falling, rising);
    }

    private (double[] Down, double[] Up) Beam(Matrix<double> a, Matrix<double> b)
    {
        // With e^(-t/m): (B M^-1 A - M/m^2) S = q_D/m + B M^-1 q_S, D = m M^-1 (A S - q_S).
        Vector<double> sumSource = Vector<double>.Build.Dense(NodeCount);
        Vector<double> differenceSource = Vector<double>.Build.Dense(NodeCount);
        Span<double> legendre = stackalloc double[MomentCount];
        for (int l = 0; l < MomentCount; l++)
            legendre[l] = Legendre(l, sunCosine);
        for (int i = 0; i < NodeCount; i++)
        {
            // From the sun's direction into a node is the same number as from the node into the sun's direction.
            (double intoDown, double intoUp) = Truncated(legendre, i);
            double down = albedo / (4.0 * Math.PI) * sun * intoDown, up = albedo / (4.0 * Math.PI) * sun * intoUp;
            (sumSource[i], differenceSource[i]) = (down + up, down - up);
        }

        Matrix<double> inverse = Matrix<double>.Build.DenseOfDiagonalArray([.. Cosines.Select(c => 1.0 / c)]);
        Matrix<double> scaled = b * inverse;
        Matrix<double> system = scaled * a;
        for (int i = 0; i < NodeCount; i++)
            system[i, i] -= Cosines[i] / (sunCosine * sunCosine);
        Vector<double> sum = system.Solve((differenceSource / sunCosine) + (scaled * sumSource));
        Vector<double> difference = sunCosine * (inverse * ((a * sum) - sumSource));
        return (((sum + difference) * 0.5).ToArray(), ((sum - difference) * 0.5).ToArray());
    }
}

/// <summary>A quantity against depth: modes that fall from the surface, modes that fall away from the bottom, and terms along a slanted path from either.</summary>
/// <param name="Falling">Coefficients of exp(-rate z), the last for the sun's beam.</param>
/// <param name="Rising">Coefficients of exp(-rate (bottom - z)); empty without a bottom.</param>
/// <param name="FromTop">Coefficient of exp(-slant z).</param>
/// <param name="FromBed">Coefficient of exp(-slant (bottom - z)).</param>
/// <param name="Slant">Decay along the slanted path with depth (1/m).</param>
internal sealed record DepthSeries(double[] Falling, double[] Rising, double FromTop, double FromBed, double Slant)
{
    /// <summary>Value at a depth.</summary>
    /// <param name="rates">Rates of the solution (1/m).</param>
    /// <param name="depth">Depth (m).</param>
    /// <param name="bedDepth">Depth of the bottom (m); any value without one.</param>
    public double At(double[] rates, double depth, double bedDepth)
    {
        double sum = Modes(Falling, rates, depth);
        if (Rising.Length > 0)
            sum += Modes(Rising, rates, bedDepth - depth);
        if (FromTop != 0.0)
            sum += FromTop * Math.Exp(-Slant * depth);
        if (FromBed != 0.0)
            sum += FromBed * Math.Exp(-Slant * (bedDepth - depth));
        return sum;
    }

    // Sum of coefficients times exp(-rate distance), four exponentials at a time.
    private static double Modes(double[] coefficients, double[] rates, double distance)
    {
        Vector256<double> four = Vector256<double>.Zero, scale = Vector256.Create(-distance);
        int n = 0;
        for (; n <= coefficients.Length - Vector256<double>.Count; n += Vector256<double>.Count)
            four += Vector256.Create(coefficients, n) * Vector256.Exp(scale * Vector256.Create(rates, n));
        double sum = Vector256.Sum(four);
        for (; n < coefficients.Length; n++)
            sum += coefficients[n] * Math.Exp(-rates[n] * distance);
        return sum;
    }
}
