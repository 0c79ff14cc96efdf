using LureSim.Model;

namespace LureSim.Lures;

/// <summary>Soft grub: a short round body and a thin ribbon of a tail, moulded as a sickle, that swims at the slowest pull.</summary>
/// <remarks>
/// The ribbon's section in the table gives its mass and its stiffness as a beam; the flow meets the breadth of the sickle, which stands out of the wake of the
/// body when it swings. No coefficient is its own: drag of the sickle as that of a paddle.
/// </remarks>
public sealed class CurlTailGrub : SoftBait
{
    // Breadth that the sickle shows the flow as a share of the body's width, assumed: a ribbon half as broad as the body, twisted a little.
    private const double SickleBreadth = 0.6;

    // The drawn sickle: straight part and half length of its bow as shares of the tail's length, and the end of the bow (radians); invented.
    private const double Straight = 0.5, BowAlong = 0.5, BowEnd = 3.9;
    private const double RibbonHalf = 0.07, RibbonThick = 0.025;
    private const int Steps = 24;

    /// <inheritdoc/>
    public override BodyProfile Profile => BodyProfile.CurlTailGrub;

    /// <inheritdoc/>
    public override string Word => "curl-tail grub";

    /// <inheritdoc/>
    public override string Meaning => "a short soft body with a thin curled tail";

    private protected override (double Height, double Width) Paddle(LureBody body, OutlineSection section) => (section.Height * body.Height, SickleBreadth * body.Width);

    private protected override IEnumerable<ShapeRing> TailRings(BodyOutline outline, double tailAngle)
    {
        double tail = outline.End - outline.SolidEnd, deep = Paddle(outline.Body, Sections[^1]).Height / 2;
        List<Station> outer = [], inner = [], left = [], right = [];
        for (int i = 0; i <= Steps; i++)
        {
            // Along the straight part, then round the bow, the ribbon tapering to its tip.
            double t = (double)i / Steps, bow = BowEnd * Math.Max(0, (t - 0.3) / 0.7);
            (double sine, double cosine) = Math.SinCos(bow);
            double behind = tail * (t < 0.3 ? Straight * t / 0.3 : Straight + (BowAlong * sine));
            double up = -deep * (1 - cosine);
            double half = tail * RibbonHalf * Math.Sqrt(Math.Max(0.02, 1 - t)), thick = tail * RibbonThick * (1 - (0.6 * t));
            outer.Add(outline.OnTail(behind + (half * sine), 0, up + (half * cosine), tailAngle));
            inner.Add(outline.OnTail(behind - (half * sine), 0, up - (half * cosine), tailAngle));
            left.Add(outline.OnTail(behind, thick, up, tailAngle));
            right.Add(outline.OnTail(behind, -thick, up, tailAngle));
        }

        inner.Reverse();
        right.Reverse();
        return [new(ShapePiece.Tail, [.. left, .. right]), new(ShapePiece.Tail, [.. outer, .. inner])];
    }
}
