namespace LureSim.Light;

/// <summary>How a colour reads to a person, in a word.</summary>
public enum ColourWord
{
    /// <summary>No light to see by.</summary>
    Unseen,

    /// <summary>Lightness under 30 (Munsell value 3) and chroma under 30: hardly told from black without black beside it.</summary>
    NearBlack,

    /// <summary>Lightness under 45.</summary>
    Dark,

    /// <summary>Lightness 45-70 without strong colour.</summary>
    Muted,

    /// <summary>Lightness from 70 without strong colour: white, pale or light grey.</summary>
    Light,

    /// <summary>Lively: lightness from 45 with chroma from 40.</summary>
    Bright,
}

/// <summary>What the human eye can do at a light level.</summary>
public enum VisionState
{
    /// <summary>Adapting luminance from 5 cd/m2: cones, full colour.</summary>
    Photopic,

    /// <summary>0.005-5 cd/m2: cones and rods, colour fades (limits of CIE 191:2010, cie191).</summary>
    Mesopic,

    /// <summary>Below 0.005 cd/m2: rods alone, no colour.</summary>
    Scotopic,
}

/// <summary>One lure colour at one depth, lit from above as a flat diffuse surface, seen close up.</summary>
/// <param name="Stimulus">CIE 1931 XYZ relative to the perfect white just below the surface (Y = 1 there): the unadapted stimulus.</param>
/// <param name="RelativeLuminance">Luminance over that of the perfect white at the same depth; fluorescent colours can pass 1.</param>
/// <param name="Adapted">CIELAB as an eye wholly adapted to the light at that depth would see it (CAT16 to D65), and as a camera balanced on a white card there takes it.</param>
/// <param name="Eye">CIELAB as a person's eye sees it after some minutes there, adapted in part (<see cref="ChromaticAdaptation.Degree"/>).</param>
/// <param name="Unadapted">CIELAB as an eye adapted to the light at the surface would see it.</param>
/// <param name="EyeSwatch">Screen colour of <paramref name="Eye"/>; a perfect white there is shown as bright as 85 % of the screen's white.</param>
/// <param name="UnadaptedSwatch">Screen colour of the unadapted view, exposed and balanced for the surface: what a camera set there takes, and a first glance.</param>
/// <param name="Word">What <paramref name="EyeSwatch"/> looks like, in a word.</param>
public readonly record struct ColourCell(
    Xyz Stimulus, double RelativeLuminance, Lab Adapted, Lab Eye, Lab Unadapted, Srgb EyeSwatch, Srgb UnadaptedSwatch, ColourWord Word)
{
    /// <summary>Chromaticity and luminance of the stimulus.</summary>
    public XyY Chromaticity => Stimulus.ToXyY();

    /// <summary>Chroma to an eye wholly adapted: what hue is left.</summary>
    public double Chroma => Adapted.Chroma;
}

/// <summary>Lure colours against depth in one light field, for swatch charts and tables. Immutable.</summary>
public sealed class ColourChart
{
    private readonly ColourCell[] cells;
    private readonly ColourCell[] surface;

    private ColourChart(LightField field, LureColour[] colours, double[] depths, ColourCell[] cells, ColourCell[] surface, double[] illuminance)
    {
        this.surface = surface;
        Field = field;
        Colours = colours;
        Depths = depths;
        Illuminance = illuminance;
        Vision = [.. illuminance.Select(ColourKernel.VisionAt)];
        this.cells = cells;
    }

    /// <summary>The light field.</summary>
    public LightField Field { get; }

    /// <summary>Columns of the chart.</summary>
    public IReadOnlyList<LureColour> Colours { get; }

    /// <summary>Rows of the chart: depths (m).</summary>
    public IReadOnlyList<double> Depths { get; }

    /// <summary>Illuminance at each depth (lx).</summary>
    public IReadOnlyList<double> Illuminance { get; }

    /// <summary>What the human eye can do at each depth.</summary>
    public IReadOnlyList<VisionState> Vision { get; }

    /// <summary>One cell.</summary>
    /// <param name="depthIndex">Row, 0 to Depths.Count - 1.</param>
    /// <param name="colourIndex">Column, 0 to Colours.Count - 1.</param>
    public ColourCell this[int depthIndex, int colourIndex]
    {
        get
        {
            _ = Guard.InRange(depthIndex, 0, Depths.Count - 1, nameof(depthIndex), "");
            _ = Guard.InRange(colourIndex, 0, Colours.Count - 1, nameof(colourIndex), "");
            return cells[(depthIndex * Colours.Count) + colourIndex];
        }
    }

    /// <summary>How far a colour has drifted from its look at the surface, for an eye adapted at each depth: the CIELAB distance. Under 5 it stays true, from 20 it is another colour (common usage).</summary>
    /// <param name="depthIndex">Row, 0 to Depths.Count - 1.</param>
    /// <param name="colourIndex">Column, 0 to Colours.Count - 1.</param>
    public double Drift(int depthIndex, int colourIndex) => this[depthIndex, colourIndex].Adapted.Distance(surface[colourIndex].Adapted);

    /// <summary>Computes a chart.</summary>
    /// <param name="field">The light field.</param>
    /// <param name="colours">One or more colours.</param>
    /// <param name="depths">One or more depths (m), 0-1000, in any order.</param>
    /// <exception cref="ArgumentException">No colours or no depths.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A depth is outside its range.</exception>
    /// <example><code>
    /// using LureSim.Light;
    /// using LureSim.Model;
    /// var spot = new Spot { Depth = 4, Salinity = 30, TemperatureCelsius = 20, Clarity = new SecchiClarity(2, WaterKind.CoastalGreen), Sky = new SkyByElevation(0.8), StrikeZone = new StrikeZone(2, 4), TargetFish = "red drum" };
    /// var field = new LightField(SpotLight.Water(spot), SpotLight.Surface(spot));
    /// ColourChart chart = ColourChart.Of(field, [LureColours.Red], [1, 2, 3]);
    /// Console.WriteLine(chart[2, 0].Word);
    /// </code></example>
    public static ColourChart Of(LightField field, IReadOnlyList<LureColour> colours, IReadOnlyList<double> depths)
    {
        ArgumentNullException.ThrowIfNull(depths);
        if (depths.Count == 0)
            throw new ArgumentException("A chart needs a depth.", nameof(depths));
        var kernel = new ColourKernel(field, colours);
        double[] rows = [.. depths];
        var cells = new ColourCell[rows.Length * colours.Count];
        double[] illuminance = new double[rows.Length];
        kernel.Compute(rows, cells, illuminance);
        var surface = new ColourCell[colours.Count];
        kernel.Compute([0.0], surface, new double[1]);
        return new ColourChart(field, [.. colours], rows, cells, surface, illuminance);
    }
}
