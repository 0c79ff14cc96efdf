using LureSim.Data;

namespace LureSim.Light;

/// <summary>Ready-made colours in plain words.</summary>
/// <remarks>
/// Colours marked measured are patches of a standard 24-patch target (Ohta 1997). The others are stand-ins: mixtures of
/// those patches, or, for fluorescent colours, curves drawn after typical daylight-fluorescent pigments (from memory:
/// uptake from the blue, emission some 30-40 nm to the red of it, quantum yield about 0.6-0.8).
/// </remarks>
public static class LureColours
{
    private static readonly WavelengthGrid Grid = WavelengthGrid.Visible;
    private static readonly Dictionary<string, Spectrum> Patches = LoadPatches();

    /// <summary>White, measured.</summary>
    public static LureColour White { get; } = Measured("white", "white 9.5 (.05 D)");

    /// <summary>Fluorescent chartreuse (yellow-green), stand-in.</summary>
    public static LureColour Chartreuse { get; } = new(
        "chartreuse",
        Step(505.0, 8.0, 0.05, 0.82),
        ColourBasis.StandIn,
        new Fluorophore(Band(380.0, 488.0, 6.0, 0.85), Emission(512.0, 14.0, 28.0), 0.60));

    /// <summary>Fluorescent orange, stand-in.</summary>
    public static LureColour FluorescentOrange { get; } = new(
        "fluorescent orange",
        Step(590.0, 9.0, 0.05, 0.85),
        ColourBasis.StandIn,
        new Fluorophore(Band(430.0, 568.0, 8.0, 0.80), Emission(598.0, 14.0, 26.0), 0.65));

    /// <summary>Fluorescent pink, stand-in.</summary>
    public static LureColour FluorescentPink { get; } = new(
        "fluorescent pink",
        Step(588.0, 9.0, 0.10, 0.85) + Bell(430.0, 35.0, 0.45),
        ColourBasis.StandIn,
        new Fluorophore(Band(490.0, 566.0, 10.0, 0.70), Emission(600.0, 14.0, 26.0), 0.65));

    /// <summary>Yellow, measured.</summary>
    public static LureColour Yellow { get; } = Measured("yellow", "yellow");

    /// <summary>Yellow-green without fluorescence, measured.</summary>
    public static LureColour YellowGreen { get; } = Measured("yellow-green, not fluorescent", "yellow green");

    /// <summary>Green, measured.</summary>
    public static LureColour Green { get; } = Measured("green", "green");

    /// <summary>Blue, measured.</summary>
    public static LureColour Blue { get; } = Measured("blue", "blue");

    /// <summary>Orange, measured.</summary>
    public static LureColour Orange { get; } = Measured("orange", "orange");

    /// <summary>Red, measured.</summary>
    public static LureColour Red { get; } = Measured("red", "red");

    /// <summary>Pink without fluorescence, a mixture of magenta and white.</summary>
    public static LureColour Pink { get; } = Mixed("pink", (0.55, "magenta"), (0.45, "white 9.5 (.05 D)"));

    /// <summary>Dark purple, a dimmed purple.</summary>
    public static LureColour DarkPurple { get; } = Mixed("dark purple", (0.65, "purple"));

    /// <summary>Black, measured.</summary>
    public static LureColour Black { get; } = Measured("black", "black 2 (1.5 D)");

    /// <summary>Natural green back of a bait fish: foliage green with grey.</summary>
    public static LureColour NaturalGreenBack { get; } = Mixed("natural green back", (0.55, "foliage"), (0.25, "neutral 5 (.70 D)"));

    /// <summary>Natural silver side of a bait fish: light grey with a mirror share of 0.5.</summary>
    public static LureColour NaturalSilverSide { get; } = Metal("natural silver side", Spectrum.Constant(Grid, 0.5), (0.9, "neutral 6.5 (.44 D)"));

    /// <summary>Gold foil: orange-yellow with grey and a mirror that is dark in the blue.</summary>
    public static LureColour Gold { get; } = Metal("gold", Step(515.0, 14.0, 0.18, 0.50), (0.5, "orange yellow"), (0.12, "neutral 5 (.70 D)"));

    /// <summary>Copper foil: orange with brown and a mirror that is dark up to the yellow.</summary>
    public static LureColour Copper { get; } = Metal("copper", Step(575.0, 12.0, 0.22, 0.45), (0.35, "orange"), (0.35, "dark skin"));

    /// <summary>Brown of a shrimp, measured patch of dark skin.</summary>
    public static LureColour ShrimpBrown { get; } = Mixed("shrimp brown", (1.0, "dark skin"));

    /// <summary>Tan, a light brown patch.</summary>
    public static LureColour Tan { get; } = Mixed("tan", (1.0, "light skin"));

    /// <summary>Dark green-brown.</summary>
    public static LureColour DarkGreenBrown { get; } = Mixed("dark green-brown", (0.35, "foliage"), (0.35, "dark skin"));

    /// <summary>Smoke grey, measured.</summary>
    public static LureColour Smoke { get; } = Measured("smoke grey", "neutral 3.5 (1.05 D)");

    /// <summary>A clear body: little comes back, 60 % goes straight through and 15 % is spread.</summary>
    public static LureColour Clear { get; } = new(
        "clear", Spectrum.Constant(Grid, 0.06), ColourBasis.StandIn, [], null, Spectrum.Constant(Grid, 0.15), Spectrum.Constant(Grid, 0.60));

    /// <summary>All ready-made colours, from light to dark as usually listed.</summary>
    public static IReadOnlyList<LureColour> All { get; } =
    [
        White, Chartreuse, Yellow, YellowGreen, FluorescentOrange, Orange, FluorescentPink, Pink, Red, Gold, Copper, Tan, Green,
        Blue, NaturalSilverSide, NaturalGreenBack, ShrimpBrown, DarkGreenBrown, DarkPurple, Smoke, Clear, Black,
    ];

    /// <summary>Finds a ready-made colour by its name, whatever the case.</summary>
    /// <param name="name">Name such as "dark purple".</param>
    /// <param name="colour">The colour.</param>
    /// <returns>False when there is none of that name.</returns>
    public static bool TryFind(string name, [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out LureColour? colour)
    {
        colour = All.FirstOrDefault(c => string.Equals(c.Name, name?.Trim(), StringComparison.OrdinalIgnoreCase));
        return colour is not null;
    }

    private static LureColour Measured(string name, string patch) => new(name, Patches[patch], ColourBasis.Measured);

    private static LureColour Mixed(string name, params (double Share, string Patch)[] parts) =>
        new(name, parts.Select(p => p.Share * Patches[p.Patch]).Aggregate((a, b) => a + b), ColourBasis.StandIn);

    // The mirror shares are drawn, not measured: foil under a clear coat keeps about half of its light in the mirror direction.
    private static LureColour Metal(string name, Spectrum mirror, params (double Share, string Patch)[] parts) => new(
        name, parts.Select(p => p.Share * Patches[p.Patch]).Aggregate((a, b) => a + b), ColourBasis.StandIn, [], mirror, null, null);

    private static Spectrum Step(double middleNm, double widthNm, double low, double high) =>
        Spectrum.FromFunction(Grid, nm => low + ((high - low) / (1.0 + Math.Exp(-(nm - middleNm) / widthNm))));

    private static Spectrum Band(double fromNm, double toNm, double widthNm, double height) => Spectrum.FromFunction(Grid, nm =>
        height / (1.0 + Math.Exp(-(nm - fromNm) / widthNm)) / (1.0 + Math.Exp((nm - toNm) / widthNm)));

    private static Spectrum Bell(double middleNm, double widthNm, double height) =>
        Spectrum.FromFunction(Grid, nm => height * Math.Exp(-0.5 * (nm - middleNm) * (nm - middleNm) / (widthNm * widthNm)));

    private static Spectrum Emission(double peakNm, double shortWidthNm, double longWidthNm) => Spectrum.FromFunction(Grid, nm =>
    {
        double x = (nm - peakNm) / (nm < peakNm ? shortWidthNm : longWidthNm);
        return Math.Exp(-0.5 * x * x);
    });

    private static Dictionary<string, Spectrum> LoadPatches()
    {
        ReferenceTable table = ReferenceTable.Optics("colour_target_24_reflectance");
        string[] names = table.Text("patch");
        double[][] columns = table.Columns.Skip(1).Select(table.Numbers).ToArray();
        return Enumerable.Range(0, names.Length).ToDictionary(
            row => names[row], row => new Spectrum(Grid, [.. columns.Select(c => c[row])]), StringComparer.Ordinal);
    }
}
