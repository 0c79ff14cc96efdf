namespace LureSim.Report.Words;

/// <summary>Something to watch out for, in the order of how close the danger is.</summary>
public enum CautionKind
{
    /// <summary>A boat in a channel or at a bridge.</summary>
    BoatAtBridge,

    /// <summary>Pilings, rocks or a structure that the current sets onto, without a channel.</summary>
    Structure,

    /// <summary>A heavy head over what snags.</summary>
    SnagComesBack,

    /// <summary>Water that one may wade.</summary>
    Wading,

    /// <summary>Rocks to stand on.</summary>
    SlickRocks,

    /// <summary>Dusk, dawn and night.</summary>
    Night,

    /// <summary>Cold water.</summary>
    ColdWater,

    /// <summary>Sun and heat.</summary>
    Heat,

    /// <summary>Hooks, casts and what is overhead.</summary>
    Cast,

    /// <summary>Thunder.</summary>
    Lightning,

    /// <summary>Being out alone.</summary>
    Alone,

    /// <summary>Lead tackle.</summary>
    Lead,

    /// <summary>Rules of the place.</summary>
    Rules,

    /// <summary>What a model is worth.</summary>
    Model,
}
