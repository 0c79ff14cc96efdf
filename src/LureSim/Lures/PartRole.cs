namespace LureSim.Lures;

/// <summary>What a part does in a lure: by this, never by a name, drag and drawing are chosen.</summary>
public enum PartRole
{
    /// <summary>A section of the body proper.</summary>
    Body,

    /// <summary>The thin section on which a tail swings.</summary>
    Stem,

    /// <summary>The end of a swinging tail, which the flow meets.</summary>
    Paddle,

    /// <summary>One of a pair of claws.</summary>
    Claw,

    /// <summary>Metal at the nose.</summary>
    Head,

    /// <summary>Metal on the shank of a hook, under the body.</summary>
    ShankWeight,

    /// <summary>Eye and shank of a single hook.</summary>
    Shank,

    /// <summary>Bend and point of a single hook, which stand in the flow.</summary>
    Point,

    /// <summary>Metal inside a hard bait.</summary>
    Ballast,

    /// <summary>A hook that hangs under the belly.</summary>
    BellyHook,

    /// <summary>A hook that trails behind.</summary>
    TailHook,

    /// <summary>Diving lip.</summary>
    Lip,

    /// <summary>Bent plate of metal.</summary>
    Plate,
}
