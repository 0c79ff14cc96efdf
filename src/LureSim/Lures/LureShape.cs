namespace LureSim.Lures;

/// <summary>What a piece of a drawn lure is.</summary>
public enum ShapePiece
{
    /// <summary>Body.</summary>
    Body,

    /// <summary>What swings, or stands off the body.</summary>
    Tail,

    /// <summary>Metal or a clear plate.</summary>
    Metal,
}

/// <summary>A closed flat outline.</summary>
/// <param name="Piece">What it is.</param>
/// <param name="Points">Its corners.</param>
public sealed record ShapeRing(ShapePiece Piece, IReadOnlyList<Station> Points);

/// <summary>A ball of metal.</summary>
/// <param name="Centre">Its centre.</param>
/// <param name="Radius">Its radius (m).</param>
public sealed record ShapeBall(Station Centre, double Radius);

/// <summary>A lure as flat pieces, bent as it is rigged, so that it can be drawn from any side: shapes as data, for any library that draws.</summary>
/// <param name="Rings">Closed outlines, those behind first.</param>
/// <param name="Wires">Wire of hooks, as open lines.</param>
/// <param name="Ball">The head or the weight on the shank, or null.</param>
public sealed record LureShape(IReadOnlyList<ShapeRing> Rings, IReadOnlyList<IReadOnlyList<Station>> Wires, ShapeBall? Ball)
{
    /// <summary>The middle line of the back from the nose aft, on which a hook should leave a soft bait (its seam); empty for a plate.</summary>
    public IReadOnlyList<Station> Seam { get; init; } = [];
}
