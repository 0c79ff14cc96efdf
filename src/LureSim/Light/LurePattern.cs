namespace LureSim.Light;

/// <summary>A part of a lure.</summary>
public enum PatternPart
{
    /// <summary>What is seen from above.</summary>
    Back,

    /// <summary>The flank.</summary>
    Side,

    /// <summary>What is seen from below.</summary>
    Belly,

    /// <summary>Head or jig head.</summary>
    Head,

    /// <summary>Tail tip, throat or dot.</summary>
    Accent,

    /// <summary>A drawn or glued eye.</summary>
    Eye,
}

/// <summary>A part of a lure as an eye sees it.</summary>
/// <param name="Part">The part.</param>
/// <param name="Colour">Its colour.</param>
/// <param name="Share">Its share of the outline, above 0 to 1.</param>
public readonly record struct PatternRegion(PatternPart Part, LureColour Colour, double Share);

/// <summary>A lure of several colours. Immutable.</summary>
/// <param name="Name">Plain words.</param>
/// <param name="Back">Colour seen from above.</param>
/// <param name="Side">Colour of the flank.</param>
/// <param name="Belly">Colour seen from below.</param>
/// <param name="Head">Colour of head or jig head; null for the flank's.</param>
/// <param name="Accent">Colour of tail tip, throat or dot; null for none.</param>
/// <param name="Eye">Colour of a drawn or glued eye; null for none.</param>
public sealed record LurePattern(
    string Name, LureColour Back, LureColour Side, LureColour Belly, LureColour? Head = null, LureColour? Accent = null, LureColour? Eye = null)
{
    // Shares of the outline, assumed: a head of a fifth of the length, an accent of a tenth of the area.
    private const double HeadShare = 0.2;
    private const double AccentShare = 0.1;

    // An eye of a sixth of the height on a body five times as long as high (assumed).
    private const double EyeShare = 0.01;

    /// <summary>A lure of one colour.</summary>
    /// <param name="colour">The colour.</param>
    public static LurePattern Plain(LureColour colour)
    {
        ArgumentNullException.ThrowIfNull(colour);
        return new LurePattern(colour.Name, colour, colour, colour);
    }

    /// <summary>The colours of the lure, each once.</summary>
    public IReadOnlyList<LureColour> Parts => [.. new[] { Back, Side, Belly, Head, Accent, Eye }.OfType<LureColour>().Distinct()];

    /// <summary>The colour of a part; a part that the lure does not have has the colour of its flank.</summary>
    /// <param name="part">The part.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no part.</exception>
    public LureColour ColourOf(PatternPart part) => part switch
    {
        PatternPart.Back => Back,
        PatternPart.Side => Side,
        PatternPart.Belly => Belly,
        PatternPart.Head => Head ?? Side,
        PatternPart.Accent => Accent ?? Side,
        PatternPart.Eye => Eye ?? Side,
        _ => throw new ArgumentOutOfRangeException(nameof(part), part, "Unknown part."),
    };

    /// <summary>The parts an eye sees with their shares of the outline, which add to 1.</summary>
    /// <param name="direction">Where the eye looks.</param>
    /// <exception cref="ArgumentOutOfRangeException">It is no direction.</exception>
    public IReadOnlyList<PatternRegion> Face(ViewDirection direction)
    {
        var parts = new List<PatternRegion>();
        double rest = 1.0;
        if (Head is not null)
            Add(PatternPart.Head, HeadShare);
        if (Accent is not null)
            Add(PatternPart.Accent, AccentShare);
        if (Eye is not null && direction is (ViewDirection.Level or ViewDirection.SlantUp))
            Add(PatternPart.Eye, EyeShare);
        double body = rest;
        switch (direction)
        {
            case ViewDirection.Up:
                Add(PatternPart.Belly, body);
                break;
            case ViewDirection.SlantUp:
                Add(PatternPart.Belly, 0.5 * body);
                Add(PatternPart.Side, 0.5 * body);
                break;
            case ViewDirection.Level:
                // The upper edge of the flank shows the back, the lower edge the belly.
                Add(PatternPart.Back, 0.2 * body);
                Add(PatternPart.Side, 0.6 * body);
                Add(PatternPart.Belly, 0.2 * body);
                break;
            case ViewDirection.Down:
                Add(PatternPart.Back, body);
                break;
            default:
                throw new ArgumentOutOfRangeException(nameof(direction), direction, "Unknown view direction.");
        }

        return parts;

        void Add(PatternPart part, double share)
        {
            parts.Add(new PatternRegion(part, ColourOf(part), share));
            rest -= share;
        }
    }

    /// <summary>Mean radiance of the lure at no distance, weighted by area (W/(m2 sr nm)): what counts from afar, where the parts run together.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="depth">Depth of the lure (m), 0-1000.</param>
    public Spectrum Inherent(LightField field, ViewDirection direction, double depth) =>
        Face(direction).Select(region => region.Share * Appearance.Inherent(field, region.Colour, direction, depth)).Aggregate((a, b) => a + b);
}
