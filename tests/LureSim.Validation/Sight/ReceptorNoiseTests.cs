using LureSim.Sight;

namespace LureSim.Validation.Sight;

/// <summary>Receptor noise against the printed forms of Vorobyev and Osorio 1998.</summary>
public class ReceptorNoiseTests
{
    [Fact]
    public void Two_cones()
    {
        // dS = |f1 - f2|/sqrt(e1^2 + e2^2), worked by hand.
        double[] noise = ReceptorNoise.Noise(0.05, [1.0, 2.0]);
        Assert.Equal(0.0707107, noise[0], 7);
        Assert.Equal(0.05, noise[1], 7);
        ValidationLog.Absolute(CheckClass.SameEquations, "Sight: receptor noise", "two cones", "Vorobyev & Osorio 1998, by hand", 6.7872, ReceptorNoise.Chromatic([0.2, 0.6], [0.3, 0.5], noise), 5e-5);
    }

    [Fact]
    public void Three_cones()
    {
        // Vorobyev and Osorio 1998 eq. 4, worked by hand.
        double[] noise = ReceptorNoise.Noise(0.1, [1.0, 2.0, 2.0]);
        ValidationLog.Absolute(CheckClass.SameEquations, "Sight: receptor noise", "three cones", "Vorobyev & Osorio 1998 eq. 4, by hand", 3.3952, ReceptorNoise.Chromatic([0.2, 0.4, 0.6], [0.3, 0.4, 0.5], noise), 5e-5);
    }

    [Fact]
    public void Four_cones_agree_with_the_printed_form()
    {
        // Vorobyev and Osorio 1998 eq. 5.
        double[] e = [0.1, 0.08, 0.06, 0.05], f = [0.1, -0.2, 0.3, 0.05];
        double Sq(double x) => x * x;
        double top = (Sq(e[0] * e[1]) * Sq(f[3] - f[2])) + (Sq(e[0] * e[2]) * Sq(f[3] - f[1])) + (Sq(e[0] * e[3]) * Sq(f[2] - f[1]))
            + (Sq(e[1] * e[2]) * Sq(f[3] - f[0])) + (Sq(e[1] * e[3]) * Sq(f[2] - f[0])) + (Sq(e[2] * e[3]) * Sq(f[1] - f[0]));
        double bottom = Sq(e[0] * e[1] * e[2]) + Sq(e[0] * e[1] * e[3]) + Sq(e[0] * e[2] * e[3]) + Sq(e[1] * e[2] * e[3]);
        double[] one = [1.0, 1.0, 1.0, 1.0];
        Assert.Equal(Math.Sqrt(top / bottom), ReceptorNoise.Chromatic([.. f.Select(Math.Exp)], one, e), 10);
    }

    [Fact]
    public void Three_cones_agree_with_pavo()
    {
        // pavo's coldist with weber.ref set to the commonest class; its default is the longest-wave class.
        var assembly = typeof(ReceptorNoiseTests).Assembly;
        using var reader = new StreamReader(assembly.GetManifestResourceStream(assembly.GetManifestResourceNames().Single(r => r.EndsWith(".sight.receptor_noise_pavo.csv", StringComparison.Ordinal)))!);
        int n = 0;
        foreach (var row in LureSim.Data.ReferenceTable.Parse("pavo", reader.ReadToEnd()).Rows)
        {
            double[] Three(string name) => [row.Number(name + "1"), row.Number(name + "2"), row.Number(name + "3")];
            double computed = ReceptorNoise.Chromatic(Three("a"), Three("b"), ReceptorNoise.Noise(row.Number("w"), Three("n")));
            ValidationLog.Absolute(CheckClass.OtherProgram, "Sight: receptor noise", FormattableString.Invariant($"colour distance, pair {++n}"), "R package pavo, coldist", row.Number("dS"), computed, 2e-12 * Math.Max(1.0, row.Number("dS")));
        }

        Assert.Equal(5, n);
    }

    [Fact]
    public void Brightness_alone_has_no_colour()
    {
        // A property the model's authors state: scaling all catches of one stimulus leaves the chromatic distance.
        double[] e = [0.1, 0.07, 0.05], q = [0.2, 0.4, 0.6], p = [0.3, 0.4, 0.5];
        Assert.Equal(ReceptorNoise.Chromatic(q, p, e), ReceptorNoise.Chromatic([.. q.Select(x => 7.0 * x)], p, e), 10);
        Assert.Equal(0.0, ReceptorNoise.Chromatic(q, [.. q.Select(x => 0.1 * x)], e), 10);
    }
}
