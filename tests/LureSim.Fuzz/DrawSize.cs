namespace LureSim.Fuzz;

/// <summary>How much a drawn scenario asks of the machine, and how far its values go.</summary>
internal enum DrawSize
{
    /// <summary>A head or two, a lure and a way of fishing it, short casts into shallow water: computed in a fraction of a second.</summary>
    Small,

    /// <summary>Boxes and casts as anglers have them.</summary>
    Usual,

    /// <summary>As small, with one value in four at an end of its range.</summary>
    Extreme,
}
