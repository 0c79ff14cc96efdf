using System.Globalization;

namespace LureSim.Tests.Report;

/// <summary>Contrast of two colours by the Web Content Accessibility Guidelines 2.1 (W3C 2018): (lighter + 0.05) / (darker + 0.05) of their relative luminances.</summary>
internal static class Contrast
{
    public static double Of(string first, string second)
    {
        double a = Luminance(first), b = Luminance(second);
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    private static double Luminance(string hex)
    {
        string digits = hex.TrimStart('#');
        if (digits.Length == 3) digits = string.Concat(digits.Select(c => new string(c, 2)));
        double Channel(int at)
        {
            double v = int.Parse(digits.AsSpan(2 * at, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture) / 255.0;
            return v <= 0.03928 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);
        }

        return (0.2126 * Channel(0)) + (0.7152 * Channel(1)) + (0.0722 * Channel(2));
    }
}
