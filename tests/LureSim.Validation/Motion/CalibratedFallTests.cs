using LureSim.Decision.Observations;
using LureSim.Model;

namespace LureSim.Validation.Motion;

/// <summary>A drag that was calibrated on one weight predicts another: measured end to end.</summary>
public class CalibratedFallTests
{
    // The size of the bait fish is not in the abstract: assumed. The factor on the drag takes up what is wrong with it.
    private static readonly LureBody Bait = new(BodyProfile.SoftJerkbait, 0.25, 0.06, 0.045, 1025, "thawed bait");

    private static readonly FishingRig Tackle = new()
    {
        RodTipHeight = 1.5,
        Reel = new Reel(6.2, 0.045),
        Line = new LineSpecification(LineKind.Monofilament, 300, 0.9e-3),
        Head = new JigHead(0, HeadMetal.Lead, 0.02, "bare hook"),
        Body = Bait,
    };

    private static Observation Fall(double grams, double seconds) => new()
    {
        Kind = ObservationKind.PoolFall,
        Value = seconds,
        Length = 10,
        Head = grams > 0 ? new JigHead(grams * 1e-3, HeadMetal.Lead, 0.02, "sinker") : new JigHead(0, HeadMetal.Lead, 0.02, "bare hook"),
        Body = Bait,
        Salinity = 34,
        TemperatureCelsius = 8,
    };

    [Fact]
    public void A_baited_hook_timed_without_its_sinker_predicts_the_fall_with_it()
    {
        DragCalibration found = DragCalibration.Of(Tackle, [Fall(0, 40)])[0];
        double seconds = PoolFall.Seconds(Tackle, Fall(20, 1), found.Drag.Factor);
        ValidationLog.Relative(
            CheckClass.Measured,
            "Motion: measured sinking",
            "Thawed bait on a 20 g hook: drag calibrated on the bare hook (4 s a meter), fall with 20 g of lead predicted: stated discrepancy (a bait lighter than water, its size assumed)",
            "Brothers, Foster & Robertson 1995, CCAMLR Sci. 2:123, abstract",
            0.5,
            10 / seconds,
            0.35,
            "m/s");
    }
}
