namespace LureSim.Swimming.Forces;

/// <summary>Forces that can be switched off one by one, to see what each does.</summary>
[Flags]
public enum ActionTerms
{
    /// <summary>A rigid body in empty space.</summary>
    None = 0,

    /// <summary>Added mass and with it the Munk moment.</summary>
    AddedMass = 1,

    /// <summary>Weight.</summary>
    Weight = 2,

    /// <summary>Buoyancy.</summary>
    Buoyancy = 4,

    /// <summary>Drag across the body, strip by strip, and roll damping.</summary>
    CrossFlow = 8,

    /// <summary>Drag along the body: skin friction and form.</summary>
    AxialDrag = 16,

    /// <summary>Lift of the trailing edges.</summary>
    Edges = 32,

    /// <summary>Drag of hooks and rings.</summary>
    Appendages = 64,

    /// <summary>Diving lip.</summary>
    Lip = 128,

    /// <summary>Forces of water and hinge on the soft tail.</summary>
    Tail = 256,

    /// <summary>The vortices behind the tail's paddle and the lip; they act through <see cref="Tail"/> and <see cref="Lip"/>.</summary>
    Wake = 512,

    /// <summary>Forces of a plate.</summary>
    Plate = 1024,

    /// <summary>Pull of the line.</summary>
    Line = 2048,

    /// <summary>Moment of a snug knot; it acts through <see cref="Line"/>.</summary>
    Knot = 4096,

    /// <summary>Side force of a head that sits askew.</summary>
    Head = 8192,

    /// <summary>What separation takes from the moment that turns a flat section broadside.</summary>
    Separation = 16384,

    /// <summary>Everything.</summary>
    All = 32767,
}
