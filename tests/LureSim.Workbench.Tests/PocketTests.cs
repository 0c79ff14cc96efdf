using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using LureSim.Decision.Trials;
using LureSim.Report.Units;
using LureSim.Scenarios;
using LureSim.Workbench.Pocket;

namespace LureSim.Workbench.Tests;

/// <summary>The pocket page and the table behind it.</summary>
public partial class PocketTests
{
    private static readonly Lazy<PocketSpot> Creek = new(() => PocketSpot.Compute(
        ScenarioReader.ReadText(LivePage.Scenario, "creek.yaml").Scenario!, new UnitFormat(UnitSystem.Us).LengthScale, new PocketBudget(60_000, TimeSpan.FromSeconds(1)), null, CancellationToken.None));

    [Fact]
    public void At_its_steps_the_table_says_what_the_engine_says()
    {
        PocketTable table = Creek.Value.Table;
        double[] node = [table.Axes[0].Steps[^1], table.Axes[1].Steps[0], table.Axes[2].Steps[1]];
        for (int head = 0; head < table.Rigs.Count; head++)
        {
            Candidate engine = table.Run(head, node, CancellationToken.None);
            PocketReading read = table.Read(head, node);
            if (table.Methods[head] is PocketMethod.Shares or PocketMethod.Nearest) Assert.Equal(engine.Coverage.ZoneShare, read.Zone, 0.003);
            Assert.Equal(engine.Coverage.TimeToZone ?? double.NaN, read.Wait, 0.26);
            Assert.Equal(engine.Score, read.Score, 0.003);
        }
    }

    [Fact]
    public void A_table_is_packed_without_loss()
    {
        PocketTable table = Creek.Value.Table;
        byte[] all = table.Bytes(), packed = table.Packed();
        Assert.Equal(all, PocketPacking.Unpack(packed, (table.Rigs.Count, table.Axes[0].Steps.Count, table.Axes[1].Steps.Count, table.Axes[2].Steps.Count), table.Layout.Size));
        Assert.True(packed.Length < 0.6 * all.Length, $"{packed.Length} of {all.Length} bytes");
    }

    // What a fine table is like: neighbors differ little, and by much the same.
    [Fact]
    public void A_smooth_table_takes_less_than_two_fifths_of_its_room()
    {
        (int Heads, int A, int B, int C) steps = (6, 17, 5, 9);
        const int Size = 19;
        byte[] all = new byte[steps.Heads * steps.A * steps.B * steps.C * Size];
        for (int at = 0; at < all.Length; at++)
        {
            int i = at % Size, node = at / Size, c = node % steps.C, b = node / steps.C % steps.B, a = node / steps.C / steps.B % steps.A, head = node / steps.C / steps.B / steps.A;
            all[at] = (byte)Math.Round(120 + (20 * Math.Sin((a * 0.3) + head)) + (15 * Math.Cos((c * 0.4) + (i * 0.2))) + (4 * b * Math.Sin(i + (0.1 * a * c))));
        }

        byte[] packed = PocketPacking.Pack(all, steps, Size);
        Assert.Equal(all, PocketPacking.Unpack(packed, steps, Size));
        Assert.True(packed.Length < 0.4 * all.Length, $"{packed.Length} of {all.Length} bytes");
    }

    // Noise, which nothing foretells, and long runs of one value, where a carry runs far.
    [Fact]
    public void Any_table_is_unpacked_as_it_was() =>
        Gen.Select(Gen.Int[1, 4], Gen.Int[2, 6], Gen.Int[2, 4], Gen.Int[2, 5], Gen.Int[7, 31], Gen.Int[0, 255], Gen.Int).Sample((heads, a, b, c, size, most, seed) =>
        {
            var random = new Random(seed);
            byte[] all = new byte[heads * a * b * c * size];
            for (int i = 0; i < all.Length; i++) all[i] = random.Next(20) == 0 ? (byte)255 : (byte)random.Next(most + 1);
            return PocketPacking.Unpack(PocketPacking.Pack(all, (heads, a, b, c), size), (heads, a, b, c), size).SequenceEqual(all);
        }, iter: 300);

    [Fact]
    public void Past_its_ends_it_is_the_end()
    {
        PocketTable table = Creek.Value.Table;
        double[] end = [.. table.Axes.Select(axis => axis.Steps[^1])], past = [.. table.Axes.Select(axis => axis.Steps[^1] + 5)];
        Assert.Equal(table.Read(0, end), table.Read(0, past));
    }

    [Fact]
    public void The_scenarios_own_values_are_computed_steps()
    {
        PocketSpot spot = Creek.Value;
        Assert.All(spot.Table.Axes.Zip(spot.Own), pair => Assert.Contains(pair.First.Steps, step => Math.Abs(step - pair.Second) < 1e-9));
    }

    [Fact]
    public void The_error_is_that_of_points_that_the_table_does_not_know()
    {
        PocketTable table = Creek.Value.Table;
        string words = PocketWriter.ErrorWords(table, new UnitFormat(UnitSystem.Us));
        Assert.NotEmpty(words);
        if (table.Error.Checks > 0) Assert.Contains($"{table.Error.Checks} checks", words, StringComparison.Ordinal);
        Assert.True(table.Error.Share.Half <= table.Error.Share.Most && table.Error.Share.Most <= table.Error.Share.Worst);
        for (int head = 0; head < table.Methods.Count; head++)
        {
            (double shares, double path, double spread) = table.Considered[head];
            double chosen = table.Methods[head] switch { PocketMethod.Shares => shares, PocketMethod.Path => path, PocketMethod.Spread => spread, _ => double.PositiveInfinity };
            Assert.True(chosen <= Math.Min(shares, Math.Min(path, spread)) || Math.Min(shares, Math.Min(path, spread)) > 0.05, $"{table.Methods[head]}: {shares}, {path}, {spread}");
            if (table.Methods[head] == PocketMethod.Nearest) Assert.Contains("nearest", words, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_page_is_small_asks_nobody_and_lets_its_own_script_alone_run()
    {
        byte[] page = PocketWriter.Page([Creek.Value], UnitSystem.Us, "test", new DateOnly(2026, 6, 1));
        string text = Encoding.UTF8.GetString(page);
        Assert.True(page.Length < 150_000, $"{page.Length} bytes");
        Assert.DoesNotContain("{{", text, StringComparison.Ordinal);
        Assert.Empty(Address().Matches(text.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal)));
        Assert.DoesNotContain(" src=", text, StringComparison.Ordinal);
        Assert.DoesNotContain("localStorage", text, StringComparison.Ordinal);
        Match script = Script().Match(text);
        string hash = Convert.ToBase64String(SHA256.HashData(Encoding.UTF8.GetBytes(script.Groups[1].Value)));
        Assert.Contains($"script-src 'sha256-{hash}'", text, StringComparison.Ordinal);
        Assert.DoesNotContain("will catch", text, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("★", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_title_with_a_script_in_it_is_text()
    {
        PocketSpot spot = Creek.Value with { Scenario = Creek.Value.Scenario with { Title = "</script><script>alert(1)</script>" } };
        string text = Encoding.UTF8.GetString(PocketWriter.Page([spot], UnitSystem.Us, "test", new DateOnly(2026, 6, 1)));
        Assert.DoesNotContain("<script>alert", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_picture_for_the_photo_roll_is_a_picture()
    {
        byte[] png = PocketPhoto.Png(Creek.Value, new UnitFormat(UnitSystem.Us));
        Assert.Equal("PNG", Encoding.ASCII.GetString(png, 1, 3));
    }

    [GeneratedRegex("(?:https?:)?//[a-z0-9]")]
    private static partial Regex Address();

    [GeneratedRegex("<script>(.*)</script>", RegexOptions.Singleline)]
    private static partial Regex Script();
}
