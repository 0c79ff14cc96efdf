namespace LureSim.Light;

/// <summary>Where an eye in the water looks.</summary>
public enum ViewDirection
{
    /// <summary>Straight up at a target overhead: the belly is seen against the sky.</summary>
    Up,

    /// <summary>Up at 45 degrees, just inside Snell's window.</summary>
    SlantUp,

    /// <summary>Level: the side is seen against the water.</summary>
    Level,

    /// <summary>Straight down: the back is seen against the deep.</summary>
    Down,
}

/// <summary>Geometry of the view directions.</summary>
public static class ViewDirections
{
    /// <summary>Cosine, from the nadir, of the way the light travels to the eye: 1 for an eye that looks up.</summary>
    /// <param name="direction">Where the eye looks.</param>
    public static double LightCosine(this ViewDirection direction) => direction switch
    {
        ViewDirection.Up => 1.0,
        ViewDirection.SlantUp => Math.Sqrt(0.5),
        ViewDirection.Level => 0.0,
        ViewDirection.Down => -1.0,
        _ => throw new ArgumentOutOfRangeException(nameof(direction), direction, "Unknown view direction."),
    };
}
