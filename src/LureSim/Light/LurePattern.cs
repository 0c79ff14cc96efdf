namespace LureSim.Light;

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

    /// <summary>The colours an eye sees with their shares of the outline, which add to 1.</summary>
    /// <param name="direction">Where the eye looks.</param>
    public IReadOnlyList<(LureColour Colour, double Share)> Face(ViewDirection direction)
    {
        var parts = new List<(LureColour, double)>();
        double rest = 1.0;
        if (Head is not null)
        {
            parts.Add((Head, HeadShare));
            rest -= HeadShare;
        }

        if (Accent is not null)
        {
            parts.Add((Accent, AccentShare));
            rest -= AccentShare;
        }

        if (Eye is not null && direction is (ViewDirection.Level or ViewDirection.SlantUp))
        {
            parts.Add((Eye, EyeShare));
            rest -= EyeShare;
        }

        switch (direction)
        {
            case ViewDirection.Up:
                parts.Add((Belly, rest));
                break;
            case ViewDirection.SlantUp:
                parts.Add((Belly, 0.5 * rest));
                parts.Add((Side, 0.5 * rest));
                break;
            case ViewDirection.Level:
                // The upper edge of the flank shows the back, the lower edge the belly.
                parts.Add((Back, 0.2 * rest));
                parts.Add((Side, 0.6 * rest));
                parts.Add((Belly, 0.2 * rest));
                break;
            default:
                parts.Add((Back, rest));
                break;
        }

        return parts;
    }

    /// <summary>Mean radiance of the lure at no distance, weighted by area (W/(m2 sr nm)): what counts from afar, where the parts run together.</summary>
    /// <param name="field">Light in the water.</param>
    /// <param name="direction">Where the eye looks.</param>
    /// <param name="depth">Depth of the lure (m), 0-1000.</param>
    public Spectrum Inherent(LightField field, ViewDirection direction, double depth) =>
        Face(direction).Select(part => part.Share * Appearance.Inherent(field, part.Colour, direction, depth)).Aggregate((a, b) => a + b);
}
