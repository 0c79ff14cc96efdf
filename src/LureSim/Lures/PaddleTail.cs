using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Soft body with a thick tail that swings a paddle.</summary>
public sealed class PaddleTail : SoftBait
{
    // Cd of the paddle as a disc in the wake of the body, assumed; the action model corrects it while the lure is towed.
    private const double PaddleDragCoefficient = 0.6;

    // Area of a paddle over that of a disc of the body's height, assumed.
    private const double PaddleShare = 0.8;

    /// <inheritdoc/>
    public override BodyProfile Profile => BodyProfile.PaddleTail;

    /// <inheritdoc/>
    public override string Word => "paddle tail";

    /// <inheritdoc/>
    public override string Meaning => "a thick tail that swings";

    private protected override double TailDragArea(LureBody body) => PaddleDragCoefficient * PaddleArea(body);

    private protected override double BaseArea(LureBody body, double frontal) => PaddleArea(body);

    private static double PaddleArea(LureBody body) => Math.PI / 4 * body.Height * body.Height * PaddleShare;
}
