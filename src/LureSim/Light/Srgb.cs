using System.Globalization;

namespace LureSim.Light;

/// <summary>An 8-bit sRGB colour for a screen (IEC 61966-2-1).</summary>
/// <param name="Red">Red, 0-255.</param>
/// <param name="Green">Green, 0-255.</param>
/// <param name="Blue">Blue, 0-255.</param>
public readonly record struct Srgb(byte Red, byte Green, byte Blue)
{
    // Linear value at which 8-bit value i gives way to i + 1.
    private static readonly double[] LimitAbove = [.. Enumerable.Range(0, 255).Select(i => Decode((i + 0.5) / 255.0))];

    // Value at the lower end of each of 4096 steps of linear light: never too high, at most one too low.
    private static readonly byte[] FirstGuess = [.. Enumerable.Range(0, 4096).Select(i => (byte)LimitAbove.Count(limit => limit <= i / 4096.0))];

    /// <summary>The colour as "#RRGGBB".</summary>
    public string Hex => string.Create(CultureInfo.InvariantCulture, $"#{Red:X2}{Green:X2}{Blue:X2}");

    /// <inheritdoc/>
    public override string ToString() => Hex;

    /// <summary>Reads "#RRGGBB" or "RRGGBB".</summary>
    /// <param name="text">The text.</param>
    /// <param name="colour">The colour read.</param>
    /// <returns>False when the text is anything else.</returns>
    public static bool TryParse(string? text, out Srgb colour)
    {
        colour = default;
        ReadOnlySpan<char> digits = text.AsSpan().Trim();
        if (digits.Length > 0 && digits[0] == '#')
            digits = digits[1..];
        if (digits.Length != 6 || !int.TryParse(digits, NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out int value))
            return false;
        colour = new Srgb((byte)(value >> 16), (byte)(value >> 8), (byte)value);
        return true;
    }

    /// <summary>Linear light of the three channels, 0-1.</summary>
    public (double Red, double Green, double Blue) ToLinear() => (Decode(Red / 255.0), Decode(Green / 255.0), Decode(Blue / 255.0));

    /// <summary>Tristimulus values under D65 with Y = 1 for white.</summary>
    public Xyz ToXyz()
    {
        (double r, double g, double b) = ToLinear();
        return new Xyz(
            (0.4124564 * r) + (0.3575761 * g) + (0.1804375 * b),
            (0.2126729 * r) + (0.7151522 * g) + (0.0721750 * b),
            (0.0193339 * r) + (0.1191920 * g) + (0.9503041 * b));
    }

    /// <summary>Linear sRGB of tristimulus values under D65; outside 0-1 when the colour is outside the gamut.</summary>
    /// <param name="value">Tristimulus values, white Y = 1.</param>
    public static (double Red, double Green, double Blue) LinearFrom(Xyz value) => (
        (3.2404542 * value.X) - (1.5371385 * value.Y) - (0.4985314 * value.Z),
        (-0.9692660 * value.X) + (1.8760108 * value.Y) + (0.0415560 * value.Z),
        (0.0556434 * value.X) - (0.2040259 * value.Y) + (1.0572252 * value.Z));

    /// <summary>
    /// The sRGB colour nearest in hue that keeps the luminance: a colour outside the gamut is mixed with the grey of its
    /// own luminance Y just as far as needed. In linear light the mixture leaves Y unchanged exactly, which a clip of the
    /// channels would not. Y above 1 is shown as 1.
    /// </summary>
    /// <param name="value">Tristimulus values under D65, white Y = 1; finite.</param>
    public static Srgb FromXyz(Xyz value) => FromXyz(value, out _);

    /// <inheritdoc cref="FromXyz(Xyz)"/>
    /// <param name="value">Tristimulus values under D65, white Y = 1; finite.</param>
    /// <param name="saturationKept">Share of the colour's distance from grey that was kept: 1 inside the gamut.</param>
    public static Srgb FromXyz(Xyz value, out double saturationKept)
    {
        (double r, double g, double b) = LinearFrom(value);
        double grey = (0.2126729 * r) + (0.7151522 * g) + (0.0721750 * b);
        if (!(grey > 0.0))
        {
            saturationKept = 0.0;
            return default;
        }

        if (grey >= 1.0)
        {
            saturationKept = 0.0;
            return new Srgb(255, 255, 255);
        }

        double keep = Math.Min(1.0, Math.Min(Limit(r, grey), Math.Min(Limit(g, grey), Limit(b, grey))));
        saturationKept = keep;
        return new Srgb(Quantise(grey + (keep * (r - grey))), Quantise(grey + (keep * (g - grey))), Quantise(grey + (keep * (b - grey))));
    }

    /// <summary>
    /// The sRGB colour of a stimulus that is too bright for a screen at its saturation, darker instead of greyer: dimmed until nine tenths of its distance from grey fit under the screen's
    /// white, to four tenths of its luminance at most. What fits is shown as it is.
    /// </summary>
    /// <param name="value">Tristimulus values under D65, white Y = 1; finite.</param>
    public static Srgb Vivid(Xyz value)
    {
        const double Kept = 0.9, Least = 0.4;
        (double r, double g, double b) = LinearFrom(value);
        double top = Math.Max(r, Math.Max(g, b)), grey = (0.2126729 * r) + (0.7151522 * g) + (0.0721750 * b);
        return FromXyz(Math.Clamp(1.0 / (grey + (Kept * (top - grey))), Least, 1.0) * value);
    }

    /// <summary>The share of a stimulus that keeps all its channels within the screen's range, 1 or less.</summary>
    /// <param name="value">Tristimulus values under D65, white Y = 1; finite.</param>
    internal static double RoomFor(Xyz value)
    {
        (double r, double g, double b) = LinearFrom(value);
        return 1.0 / Math.Max(1.0, Math.Max(r, Math.Max(g, b)));
    }

    private static double Limit(double channel, double grey) =>
        channel > 1.0 ? (1.0 - grey) / (channel - grey) :
        channel < 0.0 ? grey / (grey - channel) : 1.0;

    /// <summary>The 8-bit value whose encoded value is nearest: a first guess from a table, put right by the limits between values, which spares a power.</summary>
    private static byte Quantise(double linear)
    {
        if (!(linear > 0.0))
            return 0;
        int value = linear >= 1.0 ? 255 : FirstGuess[(int)(linear * FirstGuess.Length)];
        while (value < 255 && linear >= LimitAbove[value])
            value++;
        return (byte)value;
    }

    private static double Decode(double encoded) =>
        encoded <= 0.04045 ? encoded / 12.92 : Math.Pow((encoded + 0.055) / 1.055, 2.4);
}
