using System.Numerics;

namespace LureSim.Stepping;

/// <summary>Sums of states, several numbers at a time. Each product is rounded before it is added, so that the bits do not depend on the machine's width.</summary>
internal static class Spans
{
    /// <summary>target += factor source.</summary>
    public static void AddScaled(Span<double> target, ReadOnlySpan<double> source, double factor)
    {
        int width = Vector<double>.Count, m = 0;
        var f = new Vector<double>(factor);
        for (; m <= source.Length - width; m += width)
        {
            Span<double> t = target.Slice(m, width);
            (new Vector<double>(t) + (f * new Vector<double>(source.Slice(m, width)))).CopyTo(t);
        }

        for (; m < source.Length; m++) target[m] += factor * source[m];
    }

    /// <summary>result := (x - less) factor.</summary>
    public static void Difference(ReadOnlySpan<double> x, ReadOnlySpan<double> less, double factor, Span<double> result)
    {
        int width = Vector<double>.Count, m = 0;
        var f = new Vector<double>(factor);
        for (; m <= x.Length - width; m += width) ((new Vector<double>(x.Slice(m, width)) - new Vector<double>(less.Slice(m, width))) * f).CopyTo(result.Slice(m, width));
        for (; m < x.Length; m++) result[m] = (x[m] - less[m]) * factor;
    }
}
