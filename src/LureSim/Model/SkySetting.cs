namespace LureSim.Model;

/// <summary>Where the light comes from, in one of the forms below; there are no others.</summary>
public abstract record SkySetting
{
    private protected SkySetting()
    {
    }
}
