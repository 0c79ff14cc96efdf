using LureSim.Light;
using LureSim.Model;
using LureSim.Sight;

namespace LureSim.Decision.Colours;

/// <summary>Why red turns black in one water.</summary>
/// <param name="Water">Kind of water.</param>
/// <param name="SecchiDepth">Secchi depth (m).</param>
/// <param name="Plate">Light x red = what is left, by depth.</param>
/// <param name="Dark">Depth at which red goes dark, by each criterion, to the eye of the lesson's fish.</param>
public sealed record RedLesson(WaterKind Water, double SecchiDepth, SpectralPlate Plate, IReadOnlyList<DarkDepth> Dark);
