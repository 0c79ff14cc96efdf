using LureSim.Light;
using MathNet.Numerics.RootFinding;

namespace LureSim.Sight;

/// <summary>What a target does to the light on its way to the eye.</summary>
public enum SightMode
{
    /// <summary>Brighter than the water behind it: it shines.</summary>
    Reflects,

    /// <summary>Darker than the water behind it, but still returns light of its own.</summary>
    Silhouettes,

    /// <summary>About as bright as the water and hardly different in colour: hidden.</summary>
    MatchesBackground,

    /// <summary>A silhouette that returns next to no light: as good as black.</summary>
    GoneDark,
}

/// <summary>What carries the detection.</summary>
public enum SightChannel
{
    /// <summary>Difference in brightness to the cones.</summary>
    ConeBrightness,

    /// <summary>Difference in colour.</summary>
    ConeColour,

    /// <summary>Difference in brightness to the rods, in dim light.</summary>
    RodBrightness,
}

/// <summary>How far off a fish can make out a target.</summary>
/// <param name="Name">The target.</param>
/// <param name="Distance">Sighting distance (m); 0 when it is not made out at all.</param>
/// <param name="Mode">Reflects, silhouettes, matches or gone dark.</param>
/// <param name="Channel">What carries the detection at that distance.</param>
/// <param name="ContrastAtTarget">Weber contrast to the commonest cone (or the rod in dim light) close up.</param>
/// <param name="ColourAtTarget">Colour difference to the water close up, just-noticeable steps.</param>
/// <param name="ReturnedShare">Largest share over the cones of the light from a perfect white that the target returns.</param>
/// <param name="LimitedByGeometry">True when the target is still seen at the farthest point of the path (surface, bottom, or the farthest distance searched).</param>
public sealed record Sighting(
    string Name,
    double Distance,
    SightMode Mode,
    SightChannel Channel,
    double ContrastAtTarget,
    double ColourAtTarget,
    double ReturnedShare,
    bool LimitedByGeometry);

/// <summary>An eye and a water that differ from the model's own: factors on what is not known of them.</summary>
/// <param name="BeamAttenuation">Factor on the beam attenuation along the sight line, above 0.</param>
/// <param name="DiffuseAttenuation">Factor on the diffuse attenuation from the surface to the target, 0 or more: it moves the level of the light, not its colour.</param>
/// <param name="LargeContrast">Factor on the contrast that a large target needs, above 0.</param>
/// <param name="SmallestAngle">Factor on the smallest angle at full contrast, above 0.</param>
public readonly record struct SightFactors(double BeamAttenuation, double DiffuseAttenuation, double LargeContrast, double SmallestAngle)
{
    /// <summary>The model's own figures.</summary>
    public static SightFactors Own { get; } = new(1.0, 1.0, 1.0, 1.0);
}

/// <summary>One eye looking in one direction at targets at one depth: background, thresholds and noise are worked out once, then any number of targets.</summary>
/// <remarks>
/// A target is made out where |contrast|/e or the receptor-noise colour distance reaches <see cref="TargetThreshold.Factor(double, double)"/> of its
/// angular size. Noise e^2 = w^2 + 1/N with N the photons that the receptors covering the target catch
/// in one integration time (Warrant and Nilsson 1998, warrant1998absorption): it is what ends cone vision at dusk. Rods take
/// part below <see cref="RodSaturationIlluminance"/>. Immutable.
/// </remarks>
public sealed class SightScene
{
    /// <summary>Illuminance at the target above which rods are saturated (lx), 10 (order of magnitude from memory; fish change from cones to rods at about 0.1-10 lx).</summary>
    public const double RodSaturationIlluminance = 10.0;

    private const double PlanckTimesLightSpeed = 6.62607015e-34 * 299792458.0;
    private const double InverseFNumber = 1.0 / 1.25;      // Matthiessen's ratio 2.5 over the lens diameter

    /// <summary>Diameter of a cone (m): light-adapted cones stand close, 5 to 7 um apart in a large sea bream (Shiobara et al. 1998, shiobara1998developmental).</summary>
    internal const double ConeDiameter = 5e-6;

    private const double ConeAbsorption = 0.5;             // 1 - exp(-k l), k 0.03 per um, l 25 um
    private const double ConeIntegrationTime = 0.03;       // s, flicker fusion near 50 Hz in shore fish
    private const double ConeSummation = 50.0;             // receptors pooled at most (assumed)
    private const double RodDiameter = 2e-6;
    private const double RodAbsorption = 0.8;
    private const double RodIntegrationTime = 0.1;
    private const double RodSummation = 5000.0;
    private const double QuantumEfficiency = 0.5;          // of transduction
    private const double SearchFrom = 0.02;                // m
    private const int SearchSteps = 64;
    private const double MostSteps = 1000.0;               // a difference beyond this says nothing more

    private static readonly WavelengthGrid Grid = WavelengthGrid.Visible;

    private readonly Path path;
    private readonly double[][] sensitivities; // cones, then the rod; times photons per energy
    private readonly double[][] background;    // catch by distance and receptor
    private readonly double[][] kept;          // exp(-c r) by distance and wavelength
    private readonly double[] backgroundAtTarget;
    private readonly double[] white;
    private readonly double[] coneNoise;
    private readonly double weberFraction;
    private readonly double summationAngle;
    private readonly double light;             // factor on the level of the light
    private readonly bool rods;

    /// <summary>Sets a scene.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="eye">The eye.</param>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="targetDepth">Depth of the target (m), 0-500.</param>
    /// <param name="targetSize">Size of the target across the line of sight (for a long thin lure the square root of its area) (m), 0.001-2.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public SightScene(LightField field, FishEye eye, ViewDirection direction, double targetDepth, double targetSize = 0.04)
        : this(new Path(field, direction, targetDepth), targetSize, eye, SightFactors.Own)
    {
    }

    private SightScene(Path path, double targetSize, FishEye eye, SightFactors factors)
    {
        ArgumentNullException.ThrowIfNull(eye);
        this.path = path;
        TargetSize = Guard.InRange(targetSize, 1e-3, 2.0, nameof(targetSize), "m");
        (Eye, Factors) = (eye, factors);
        sensitivities = [.. eye.Cones.Append(eye.Rod).Select(r => Enumerable.Range(0, Grid.Count)
            .Select(i => r.Sensitivity[i] * Grid.WavelengthsNm[i] * 1e-9 / PlanckTimesLightSpeed * Grid.StepNm).ToArray())];
        backgroundAtTarget = Catches(path.BehindTarget.Values);
        white = Catches(path.WhiteAtTarget.Values);
        background = [.. path.Behind.Select(behind => ReferenceEquals(behind, path.BehindTarget) ? backgroundAtTarget : Catches(behind.Values))];
        Spectrum attenuation = path.Field.Water.Optics.BeamAttenuation;
        kept = [.. path.Distances.Select(r => Enumerable.Range(0, Grid.Count).Select(i => Math.Exp(-factors.BeamAttenuation * attenuation[i] * r)).ToArray())];
        coneNoise = [.. eye.ConeNoise.Select(noise => factors.LargeContrast * noise)];
        weberFraction = factors.LargeContrast * FishEye.WeberFraction;
        summationAngle = factors == SightFactors.Own ? TargetThreshold.SummationAngle : TargetThreshold.SummationAngleOf(factors.LargeContrast, factors.SmallestAngle);

        // Diffuse light falls by Kd on its way down: a factor on Kd is a power of what is left of it.
        light = factors.DiffuseAttenuation == 1.0 || !(path.Illuminance > 0.0) ? 1.0 : Math.Pow(path.Illuminance / path.SurfaceIlluminance, factors.DiffuseAttenuation - 1.0);
        rods = light * path.Illuminance < RodSaturationIlluminance;
    }

    /// <summary>Light in the water.</summary>
    public LightField Field => path.Field;

    /// <summary>The eye.</summary>
    public FishEye Eye { get; }

    /// <summary>Factors on what is not known of eye and water; those of the model itself unless the scene was made by <see cref="With"/>.</summary>
    public SightFactors Factors { get; }

    /// <summary>Where the eye looks.</summary>
    public ViewDirection Direction => path.Direction;

    /// <summary>Depth of the target (m).</summary>
    public double TargetDepth => path.TargetDepth;

    /// <summary>Size of the target (m).</summary>
    public double TargetSize { get; }

    /// <summary>Farthest distance searched (m).</summary>
    public double FarthestDistance => path.Farthest;

    /// <summary>True when the light is dim enough for rods to take part.</summary>
    public bool RodsTakePart => rods;

    /// <summary>The same scene for another eye and water; what the light does is shared, so that many such scenes are cheap.</summary>
    /// <param name="factors">Factors on what is not known.</param>
    /// <param name="eye">The eye; null for the scene's own.</param>
    /// <exception cref="ArgumentOutOfRangeException">A factor is outside its range.</exception>
    public SightScene With(SightFactors factors, FishEye? eye = null)
    {
        _ = Guard.InRange(factors.BeamAttenuation, 1e-3, 1e3, nameof(factors), "");
        _ = Guard.InRange(factors.DiffuseAttenuation, 0.0, 1e3, nameof(factors), "");
        return new SightScene(path, TargetSize, eye ?? Eye, factors);
    }

    /// <summary>How far off a target of a given radiance is made out (m), by interpolation in the scan of distances: within 1 % of <see cref="Sight(string, Spectrum, double?)"/> at a fraction of its cost.</summary>
    /// <param name="inherent">Radiance of the target at no distance (W/(m2 sr nm)).</param>
    /// <param name="size">Size of the target (m), 0.001-2; null for that of the scene.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size is outside its range.</exception>
    public double QuickDistance(Spectrum inherent, double? size = null)
    {
        ArgumentNullException.ThrowIfNull(inherent);
        double across = Size(size);
        double[] difference = (inherent - path.BehindTarget).ToArray();
        Span<double> now = stackalloc double[sensitivities.Length];
        double beyond = 0.0;
        for (int k = path.Distances.Length - 1; k >= 0; k--)
        {
            CatchesAt(difference, k, now);
            double index = Judge(now, background[k], across / path.Distances[k]).Index;
            if (index >= 1.0)
            {
                if (k == path.Distances.Length - 1)
                    return path.Distances[k];
                double share = Math.Log(index) / Math.Log(index / Math.Max(beyond, 1e-9));
                return path.Distances[k] * Math.Pow(path.Distances[k + 1] / path.Distances[k], share);
            }

            beyond = index;
        }

        return 0.0;
    }

    /// <summary>How far off a colour is made out.</summary>
    /// <param name="colour">The colour.</param>
    public Sighting Sight(LureColour colour)
    {
        ArgumentNullException.ThrowIfNull(colour);
        return Sight(colour.Name, Appearance.Inherent(Field, colour, Direction, TargetDepth));
    }

    /// <summary>How far off a patterned lure is made out, by its mean radiance.</summary>
    /// <param name="pattern">The lure.</param>
    public Sighting Sight(LurePattern pattern)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        return Sight(pattern.Name, pattern.Inherent(Field, Direction, TargetDepth));
    }

    /// <summary>Colours by sighting distance, farthest first.</summary>
    /// <param name="colours">The colours.</param>
    public IReadOnlyList<Sighting> Rank(IEnumerable<LureColour> colours)
    {
        ArgumentNullException.ThrowIfNull(colours);

        // Distances that both end at the surface are equal: the stronger contrast close up then goes first.
        return [.. colours.Select(Sight).OrderByDescending(s => s.Distance).ThenByDescending(s => Math.Abs(s.ContrastAtTarget))];
    }

    /// <summary>
    /// How different two targets are to the eye at a distance, in just-noticeable steps: colour (<see cref="ReceptorNoise.Chromatic"/>) and brightness by the root
    /// of their squares, to the rods where those tell more, over <see cref="TargetThreshold.Factor(double, double)"/> of the angle that they fill. 0 to 1000.
    /// </summary>
    /// <param name="first">Radiance of the one at no distance (W/(m2 sr nm)).</param>
    /// <param name="second">Radiance of the other.</param>
    /// <param name="size">Size of both (m), above 0.</param>
    /// <param name="distance">Distance of both (m), above 0; the water between veils them.</param>
    /// <exception cref="ArgumentOutOfRangeException">A length is outside its range.</exception>
    public double Difference(Spectrum first, Spectrum second, double size, double distance)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        _ = Guard.InRange(size, 1e-5, 2.0, nameof(size), "m");
        _ = Guard.InRange(distance, 1e-3, 500.0, nameof(distance), "m");
        double[] one = CatchesAcross(first, distance), other = CatchesAcross(second, distance);
        double angle = size / distance;
        double steps = ConeSteps(one, other, angle);
        if (rods)
        {
            int rod = Eye.Cones.Count;
            double photons = Photons(0.5 * light * (one[rod] + other[rod]), angle, RodDiameter, RodAbsorption, RodIntegrationTime, RodSummation);
            steps = Math.Max(steps, ReceptorNoise.Achromatic(one[rod], other[rod], NoiseOf(weberFraction, photons)));
        }

        return Math.Min(steps / TargetThreshold.Factor(angle, summationAngle), MostSteps);
    }

    /// <summary>
    /// How different two large targets are close up to the cones of the eye, in just-noticeable steps: colour and brightness by the root of their squares. 0 to 1000; near 0
    /// where there is too little light for cones.
    /// </summary>
    /// <param name="first">Radiance of the one at no distance (W/(m2 sr nm)).</param>
    /// <param name="second">Radiance of the other.</param>
    public double DifferenceCloseUp(Spectrum first, Spectrum second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        return Math.Min(ConeSteps(Catches(first.Values), Catches(second.Values), double.PositiveInfinity), MostSteps);
    }

    /// <summary>How far off a target of a given radiance is made out.</summary>
    /// <param name="name">Name for the report.</param>
    /// <param name="inherent">Radiance of the target at no distance (W/(m2 sr nm)).</param>
    /// <param name="size">Size of the target (m), 0.001-2; null for that of the scene.</param>
    /// <exception cref="ArgumentOutOfRangeException">The size is outside its range.</exception>
    public Sighting Sight(string name, Spectrum inherent, double? size = null)
    {
        ArgumentNullException.ThrowIfNull(name);
        ArgumentNullException.ThrowIfNull(inherent);
        double across = Size(size);
        double[] difference = (inherent - path.BehindTarget).ToArray();
        double[] own = Catches(inherent.Values);
        Span<double> now = stackalloc double[own.Length];
        own.CopyTo(now);
        (double Index, SightChannel Channel, double Colour) close = Judge(now, backgroundAtTarget, double.PositiveInfinity);
        double returned = 0.0;
        for (int i = 0; i < Eye.Cones.Count; i++)
            returned = Math.Max(returned, white[i] > 0.0 ? own[i] / white[i] : 0.0);

        // The last distance of the scan at which it is still made out, then the root in the step beyond it.
        int last = -1;
        for (int k = path.Distances.Length - 1; k >= 0 && last < 0; k--)
        {
            CatchesAt(difference, k, now);
            if (Judge(now, background[k], across / path.Distances[k]).Index >= 1.0)
                last = k;
        }

        double distance;
        SightChannel channel = close.Channel;
        if (last < 0)
        {
            distance = 0.0;
        }
        else if (last == path.Distances.Length - 1)
        {
            distance = path.Distances[last];
            CatchesAt(difference, last, now);
            channel = Judge(now, background[last], across / distance).Channel;
        }
        else
        {
            distance = Brent.TryFindRoot(
                r => Math.Log(Math.Clamp(IndexAt(difference, r, across).Index, 1e-6, 1e6)), path.Distances[last], path.Distances[last + 1], 1e-6, 60, out double root)
                ? root
                : path.Distances[last];
            channel = IndexAt(difference, distance, across).Channel;
        }

        int reference = rods && close.Channel == SightChannel.RodBrightness ? own.Length - 1 : CommonestCone();
        double contrast = backgroundAtTarget[reference] > 0.0 ? (own[reference] / backgroundAtTarget[reference]) - 1.0 : 0.0;
        double colour = close.Colour;
        SightMode mode = Math.Abs(contrast) < 2.0 * weberFraction && colour < 2.0 ? SightMode.MatchesBackground
            : contrast >= 0.0 ? SightMode.Reflects
            : returned < ColourLimits.NearBlackLuminance ? SightMode.GoneDark
            : SightMode.Silhouettes;
        bool limited = last == path.Distances.Length - 1;
        return new Sighting(name, distance, mode, channel, contrast, colour, returned, limited);
    }

    private double Size(double? size) => size is { } own ? Guard.InRange(own, 1e-3, 2.0, nameof(size), "m") : TargetSize;

    private int CommonestCone()
    {
        // The longest-wave of the commonest class carries brightness in most vertebrates.
        int best = 0;
        for (int i = 1; i < Eye.Cones.Count; i++)
        {
            if (Eye.Cones[i].Abundance >= Eye.Cones[best].Abundance)
                best = i;
        }

        return best;
    }

    private double[] Catches(ReadOnlySpan<double> radiance)
    {
        double[] result = new double[sensitivities.Length];
        for (int i = 0; i < result.Length; i++)
            result[i] = Spectrum.Dot(sensitivities[i], radiance);
        return result;
    }

    // Colour and brightness by the root of their squares, with shot noise at an angle.
    private double ConeSteps(ReadOnlySpan<double> one, ReadOnlySpan<double> other, double angle)
    {
        int cones = Eye.Cones.Count, reference = CommonestCone();
        Span<double> noise = stackalloc double[cones];
        for (int i = 0; i < cones; i++)
            noise[i] = NoiseOf(coneNoise[i], Photons(0.5 * light * (one[i] + other[i]), angle, ConeDiameter, ConeAbsorption, ConeIntegrationTime, ConeSummation));
        double colour = ReceptorNoise.Chromatic(one[..cones], other[..cones], noise);
        double brightness = ReceptorNoise.Achromatic(one[reference], other[reference], noise[reference]);
        return Math.Sqrt((colour * colour) + (brightness * brightness));
    }

    private static double NoiseOf(double weber, double photons) => Math.Sqrt((weber * weber) + (1.0 / Math.Max(photons, 1e-12)));

    // What the receptors catch of a target through the water.
    private double[] CatchesAcross(Spectrum inherent, double distance)
    {
        double[] catches = [.. BackgroundAt(distance)];
        Spectrum attenuation = Field.Water.Optics.BeamAttenuation;
        for (int i = 0; i < catches.Length; i++)
        {
            for (int w = 0; w < Grid.Count; w++)
                catches[i] += sensitivities[i][w] * (inherent[w] - path.BehindTarget[w]) * Math.Exp(-Factors.BeamAttenuation * attenuation[w] * distance);
            catches[i] = Math.Max(0.0, catches[i]);
        }

        return catches;
    }

    private double[] BackgroundAt(double distance) => Direction == ViewDirection.Level ? backgroundAtTarget : Catches(path.BehindAt(distance).Values);

    private void CatchesAt(ReadOnlySpan<double> difference, int step, Span<double> catches)
    {
        for (int i = 0; i < catches.Length; i++)
        {
            double sum = 0.0;
            for (int w = 0; w < difference.Length; w++)
                sum += sensitivities[i][w] * difference[w] * kept[step][w];
            catches[i] = Math.Max(0.0, background[step][i] + sum);
        }
    }

    private (double Index, SightChannel Channel, double Colour) IndexAt(double[] difference, double distance, double size)
    {
        double[] background = BackgroundAt(distance);
        Span<double> catches = stackalloc double[background.Length];
        for (int i = 0; i < catches.Length; i++)
        {
            double sum = 0.0;
            for (int w = 0; w < difference.Length; w++)
                sum += sensitivities[i][w] * difference[w] * Math.Exp(-Factors.BeamAttenuation * Field.Water.Optics.BeamAttenuation[w] * distance);
            catches[i] = Math.Max(0.0, background[i] + sum);
        }

        return Judge(catches, background, size / distance);
    }

    /// <summary>How many just-noticeable steps a target stands out, and by what, at an angular size in rad.</summary>
    private (double Index, SightChannel Channel, double Colour) Judge(ReadOnlySpan<double> target, ReadOnlySpan<double> background, double angle)
    {
        int cones = Eye.Cones.Count;
        double size = 1.0 / TargetThreshold.Factor(angle, summationAngle);
        Span<double> noise = stackalloc double[cones];
        bool lit = true;
        for (int i = 0; i < cones; i++)
        {
            double photons = Photons(0.5 * light * (target[i] + background[i]), angle, ConeDiameter, ConeAbsorption, ConeIntegrationTime, ConeSummation);
            lit &= photons > 0.0;
            noise[i] = NoiseOf(coneNoise[i], photons);
        }

        double brightness = 0.0;
        int reference = CommonestCone();
        if (background[reference] > 0.0)
            brightness = Math.Abs((target[reference] / background[reference]) - 1.0) / noise[reference];

        // Contrast of a bright target has no upper limit but its visibility in noise does not depend on the division: fine.
        double colour = lit ? ReceptorNoise.Chromatic(target[..cones], background[..cones], noise) : 0.0;
        double rod = 0.0;
        if (rods && background[cones] > 0.0)
        {
            double photons = Photons(0.5 * light * (target[cones] + background[cones]), angle, RodDiameter, RodAbsorption, RodIntegrationTime, RodSummation);
            rod = Math.Abs((target[cones] / background[cones]) - 1.0)
                / NoiseOf(weberFraction, photons);
        }

        (double best, SightChannel channel) = brightness >= colour ? (brightness, SightChannel.ConeBrightness) : (colour, SightChannel.ConeColour);
        if (rod > best)
            (best, channel) = (rod, SightChannel.RodBrightness);
        return (best * size, channel, colour);
    }

    /// <summary>Photons caught in one integration time by the receptors that cover a target: (pi/4)^2 (D/f)^2 d^2 kappa (1 - e^(-kl)) t L (Land 1981 in Warrant and Nilsson 1998), times the receptors pooled.</summary>
    private static double Photons(double photonRadiance, double angle, double diameter, double absorption, double time, double summation)
    {
        const double FocalLength = 0.010; // m, an eye with a lens of 8 mm (assumed)
        double single = Math.PI / 4.0 * (Math.PI / 4.0) * InverseFNumber * InverseFNumber * diameter * diameter
            * QuantumEfficiency * absorption * time * photonRadiance;
        double across = double.IsPositiveInfinity(angle) ? double.PositiveInfinity : angle * FocalLength / diameter;
        return single * Math.Clamp(across * across, 1.0, summation);
    }

    /// <summary>What the light does along a sight line, whatever the eye.</summary>
    private sealed class Path
    {
        public Path(LightField field, ViewDirection direction, double targetDepth)
        {
            ArgumentNullException.ThrowIfNull(field);
            Field = field;
            Direction = direction;
            TargetDepth = Guard.InRange(targetDepth, 0.0, 500.0, nameof(targetDepth), "m");
            (Illuminance, SurfaceIlluminance) = (field.Illuminance(targetDepth), field.Illuminance(0.0));

            // No contrast outlives 40 attenuation lengths of the clearest wavelength; the path may end sooner at the surface.
            Farthest = Math.Max(SearchFrom, Math.Min(Appearance.FarthestDistance(field, direction, targetDepth), Math.Min(200.0, 40.0 / field.Water.Optics.BeamAttenuation.Minimum())));
            Distances = [.. Enumerable.Range(0, SearchSteps + 1).Select(k => SearchFrom * Math.Pow(Farthest / SearchFrom, (double)k / SearchSteps))];
            BehindTarget = field.Radiance(direction, targetDepth);
            WhiteAtTarget = (1.0 / Math.PI) * field.FaceIrradiance(direction, targetDepth);
            Behind = [.. Distances.Select(BehindAt)];
        }

        public LightField Field { get; }

        public ViewDirection Direction { get; }

        public double TargetDepth { get; }

        public double Illuminance { get; }

        public double SurfaceIlluminance { get; }

        public double Farthest { get; }

        public double[] Distances { get; }

        public Spectrum BehindTarget { get; }

        public Spectrum WhiteAtTarget { get; }

        public Spectrum[] Behind { get; }

        public Spectrum BehindAt(double distance) => Direction == ViewDirection.Level
            ? BehindTarget
            : Field.Radiance(Direction, Math.Clamp(TargetDepth + (distance * Direction.LightCosine()), 0.0, 1000.0));
    }
}
