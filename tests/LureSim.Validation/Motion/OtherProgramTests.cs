using LureSim.Hydrodynamics;
using LureSim.Tackle;
using LureSim.Validation.Reference;

namespace LureSim.Validation.Motion;

/// <summary>The engine on a towed jig, lifted and reeled in, against two open line codes written elsewhere.</summary>
public class OtherProgramTests
{
    private const string Area = "Motion: other programs";
    private const double ReelStart = 20, ReelTime = 32, ReelSpeed = 0.5, Ramp = 2;

    // The engine's own limit is a few tenths of a millimetre from these settings.
    private static readonly EngineSettings Fine = new() { Segments = 160, Tolerance = 0.01 };

    private static readonly Lazy<EngineRun> SteadyTow = new(() => TowedJig.Settle(0.3, LineDragLaw.Constant(1.2, 0.01), Fine));

    [Fact]
    public void A_towed_jig() => Follow("tow", TowedJig.Tow(lift: false, Fine), 0.002, 0.0013);

    [Fact]
    public void A_towed_jig_that_is_lifted() => Follow("lift", TowedJig.Tow(lift: true, Fine), 0.001, 0.002);

    [Fact]
    public void A_towed_jig_that_is_reeled_in() => Follow("reel", Reel(), 0.002, 0.0003);

    // Each row of the table is one check of the place and one of the tension.
    private static void Follow(string name, EngineRun run, double place, double pull)
    {
        HydroTable table = HydroTable.Read("line_other_programs");
        foreach (int i in Enumerable.Range(0, table.Count).Where(i => table.Text(i, "case") == name).OrderBy(i => Time(table.Text(i, "time_s"))))
        {
            string at = table.Text(i, "time_s"), code = table.Text(i, "code"), title = $"{name}, {(at == "steady" ? at : at + " s")}, {code}";
            string source = code.StartsWith("MoorDyn", StringComparison.Ordinal) ? "MoorDyn 2.7.1 (Hall & Goupee 2015)" : "WHOI Cable 3.12 (Gobat & Grosenbaugh)";
            double x, z, tension;
            if (at == "steady")
            {
                // In the stream the jig hangs behind a tip that rests.
                EngineRun settled = SteadyTow.Value;
                (x, z, tension) = (settled.X, -50 - settled.Z, settled.TipTensionExtrapolated);
            }
            else
            {
                double time = Time(at);
                run.RunTo(time);
                var tip = TowedJig.Tip(time, name == "lift");
                (x, z, tension) = (tip.X - run.X, tip.Z - run.Z, run.TipTensionExtrapolated);
            }

            ValidationLog.Absolute(CheckClass.OtherProgram, Area, $"{title}: behind the tip", source, table.Value(i, "behind_m"), x, place, "m");
            ValidationLog.Absolute(CheckClass.OtherProgram, Area, $"{title}: below the tip", source, table.Value(i, "below_m"), z, place, "m");
            ValidationLog.Relative(CheckClass.OtherProgram, Area, $"{title}: tension at the tip", source, table.Value(i, "tension_tip_N"), tension, pull, "N");
        }
    }

    private static double Time(string text) => text == "steady" ? double.MaxValue : double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    private static EngineRun Reel()
    {
        var run = new EngineRun(
            TowedJig.Body, LineProperties.Uniform(TowedJig.Line), TowedJig.Stream(0), LineDragLaw.Constant(1.2, 0.01),
            new GivenBoundary { TipAt = t => TowedJig.Tip(t, lift: false), LineAt = LineOut }, Fine);
        run.Start(0, TowedJig.Hanging);
        return run;
    }

    // 20 to 5 m over 32 s from 20 s on, the speed with a quintic smoothstep of 2 s at both ends.
    private static (double Length, double Rate, double Acceleration) LineOut(double time)
    {
        double t = Math.Clamp(time - ReelStart, 0, ReelTime);
        double way, speed, acceleration;
        if (t < Ramp) (way, speed, acceleration) = Rise(t);
        else if (t <= ReelTime - Ramp) (way, speed, acceleration) = ((ReelSpeed * Ramp / 2) + (ReelSpeed * (t - Ramp)), ReelSpeed, 0);
        else
        {
            (double left, double slow, double change) = Rise(ReelTime - t);
            (way, speed, acceleration) = ((ReelSpeed * (ReelTime - Ramp)) - left, slow, -change);
        }

        return (TowedJig.Length - way, -speed, -acceleration);
    }

    private static (double Way, double Speed, double Acceleration) Rise(double t)
    {
        double u = t / Ramp;
        return (
            ReelSpeed * Ramp * u * u * u * u * (2.5 + (u * (-3 + u))),
            ReelSpeed * u * u * u * (10 + (u * (-15 + (6 * u)))),
            ReelSpeed / Ramp * 30 * u * u * (1 - u) * (1 - u));
    }
}
