using LureSim.Decision.RigChecks;
using LureSim.Decision.Trials;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Report.Figures;
using LureSim.Report.Sheets;
using LureSim.Report.Units;
using LureSim.Tests.Scenarios;
using OxyPlot;

namespace LureSim.Tests.Report;

public class RigFigureTests
{
    private static readonly string[] Names = ["rig-picture", "action-stills", "twitch-path", "action-by-speed", "spin-onset"];

    private static RigFocus Focus(LureBody body)
    {
        Scenario plain = TestScenario.Read(TestScenario.Text);
        Scenario scenario = plain with
        {
            Tackle = plain.Tackle with { Bodies = [body], JigHeads = body.NeedsHead ? plain.Tackle.JigHeads : [], Rigging = new Rigging { Bend = 0.3, Knot = KnotStyle.Snug, LoopLength = 0 } },
        };
        (JigHead head, LureBody first) = scenario.Tackle.Lures[0];
        return RigChecker.Focus(scenario, RigChecker.OnRetrieve(scenario, new Rig(head, first, scenario.Presentations[1]), null), full: true);
    }

    public static TheoryData<BodyProfile> Profiles => [.. Enum.GetValues<BodyProfile>()];

    private static LureBody Body(BodyProfile profile)
    {
        LureKind kind = LureKinds.Of(profile);
        return kind.Body(0.09, "a bait with quite a long name of its own") with { Lip = kind.TakesLip ? new LipShape(0.012, 0.01, 0.7) : null };
    }

    [Theory]
    [MemberData(nameof(Profiles))]
    public void Figures_of_every_kind_of_lure_hold_their_labels_apart_and_their_numbers_finite(BodyProfile profile)
    {
        foreach (FigureOptions options in (FigureOptions[])[new(UnitSystem.Us), new(UnitSystem.Metric, FigureWidth.Narrow)])
        {
            RigFocus focus = Focus(Body(profile));
            IReadOnlyList<Figure> figures = RigSheetWriter.Figures(focus, options.Units, options.Width);
            Assert.Equal(Body(profile).NeedsHead ? Names : Names[..^1], figures.Select(f => f.Name));
            foreach (Figure figure in figures)
            {
                string svg = System.Text.Encoding.UTF8.GetString(FigureWriter.Svg(figure));
                Assert.DoesNotContain("NaN", svg, StringComparison.Ordinal);
                Assert.DoesNotContain("Infinity", svg, StringComparison.Ordinal);
                Assert.NotEmpty(figure.AltText);
                Assert.InRange(figure.Height, 100, 1100);
                IReadOnlyList<PlacedText> placed = figure.Placed;
                for (int i = 0; i < placed.Count; i++)
                {
                    OxyRect a = placed[i].Box;
                    Assert.True(a.Left >= 0 && a.Right <= figure.Width, $"{figure.Name}, {options.Width}: '{placed[i].Text}' leaves the picture");
                    for (int j = i + 1; j < placed.Count; j++)
                    {
                        OxyRect b = placed[j].Box;
                        Assert.False(a.Left < b.Right && b.Left < a.Right && a.Top < b.Bottom && b.Top < a.Bottom, $"{figure.Name}, {options.Width}: '{placed[i].Text}' and '{placed[j].Text}' overlap");
                    }
                }
            }
        }
    }

    [Fact]
    public void The_same_rig_draws_the_same_bytes()
    {
        RigFocus focus = Focus(Body(BodyProfile.SoftJerkbait));
        Assert.Equal(
            RigSheetWriter.Figures(focus, UnitSystem.Us).Select(f => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(FigureWriter.Png(f, 1)))),
            RigSheetWriter.Figures(focus, UnitSystem.Us).Select(f => Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(FigureWriter.Png(f, 1)))));
    }
}
