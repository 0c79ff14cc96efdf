using LureSim.Model;

namespace LureSim.Lures;

/// <summary>What a body says of itself through its kind.</summary>
public static class LureBodyExtensions
{
    extension(LureBody body)
    {
        /// <summary>Its kind.</summary>
        public LureKind Kind => LureKinds.Of(body.Profile);

        /// <summary>True for a soft body, which goes on a jig head or a hook.</summary>
        public bool NeedsHead => body.Kind.NeedsHead;

        /// <summary>Size at which it is seen (m): from the side, a plate by its face.</summary>
        public double ApparentSize => body.Kind.ApparentSize(body);
    }
}
