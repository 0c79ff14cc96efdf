namespace LureSim.Model;

/// <summary>How clear the water is, in one of the forms below; there are no others.</summary>
public abstract record WaterClarity
{
    private protected WaterClarity()
    {
    }
}
