namespace LureSim.Model;

/// <summary>What stands or lies in the water beside the cast.</summary>
public enum StructureKind
{
    /// <summary>Posts or pilings, through all the water.</summary>
    Posts,

    /// <summary>A dock, a bridge or branches over the water.</summary>
    Overhang,

    /// <summary>A clump of oysters on the bottom.</summary>
    OysterClump,
}
