using System.Text.Json.Serialization;
using LureSim.Decision;
using LureSim.Decision.Observations;
using LureSim.Decision.Trials;

namespace LureSim.Cli.Output;

/// <summary>What observations did, in JSON.</summary>
internal sealed record SeenJson(bool Moved, string Before, int BestBefore, int BestNow, int Tries, double EffectiveStates, int States, bool TriesReused, IReadOnlyList<SeenJson.Input> Inputs, IReadOnlyList<SeenJson.Seen> Observations)
{
    public static SeenJson Of(CalibratedChoice seen, Choice choice) => new(
        seen.Moved,
        seen.Before.First.Rig.Head.Label,
        seen.BestBefore,
        choice.AsGoodIn,
        choice.Numbers?.Tries ?? 1,
        seen.Update.Effective,
        seen.Update.States,
        seen.Reused,
        [.. seen.Update.Inputs.Select(input => new Input(input.Kind, input.Body?.Label, Band.Of(input.Before), Band.Of(input.After), input.Learned))],
        [.. seen.Update.Fits.Select(fit => new Seen(fit.Observation.Kind, fit.Observation.Value, fit.Observation.Happened, Band.Of(fit.Before), fit.Conflict?.Kind))]);

    internal sealed record Band([property: JsonPropertyName("one_in_ten_below")] double Low, double Median, [property: JsonPropertyName("one_in_ten_above")] double High)
    {
        public static Band Of(Interval range) => new(range.Low, range.Median, range.High);
    }

    internal sealed record Input(LearnedInputKind Kind, string? Bait, Band Before, Band After, bool Learned);

    internal sealed record Seen(Model.ObservationKind Kind, double Value, bool Happened, Band Expected, ConflictKind? Conflict);
}

/// <summary>Drags from timings, in JSON.</summary>
internal sealed record CalibrationJson(IReadOnlyList<CalibrationJson.Lure> Lures)
{
    public static CalibrationJson Of(IReadOnlyList<DragCalibration> found) =>
        new([.. found.Select(own => new Lure(own.Body.Label, own.Drag.Factor, own.Drag.Margin, own.Low, own.High, own.Timings.Count, own.Impossible.Count, own.Scatter))]);

    internal sealed record Lure(string Bait, double DragFactor, double PlusOrMinusShare, double OneInTenBelow, double OneInTenAbove, int Timings, int LeftOut, double Scatter);
}
