using LureSim.Swimming.Bodies;

namespace LureSim.Swimming.Forces;

/// <summary>One force on the lure: a function of its motion alone.</summary>
internal interface IForce
{
    /// <summary>Switch that takes it away.</summary>
    ActionTerms Term { get; }

    /// <summary>Adds the wrench to a sum. The sum is passed so that forces are added up in one order, to the last bit the same on every run.</summary>
    void AddTo(in BodyMotion motion, ref Wrench total);
}
