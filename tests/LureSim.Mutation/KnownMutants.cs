namespace LureSim.Mutation;

/// <summary>Mutants that every run tries: pupils' first mistakes, each of which once survived or was feared to. One whose formula is no longer written so is left out.</summary>
internal static class KnownMutants
{
    private const string HeadSet = "new HeadSet(new Vector3d(nose, 0, 0), SphereDrag.FrontalArea(head.Mass / Metals.Density(head.Metal)), ";

    /// <summary>File, right and wrong expression.</summary>
    public static IReadOnlyList<(string File, string Before, string After)> All { get; } =
    [
        ("Decision/Trials/Ranking.cs", "90", "45.0"),
        ("Swimming/Forces/KnotClamp.cs", "2 * Math.Sqrt(bending * held)", "Math.Sqrt(bending * held)"),
        ("Swimming/Forces/TurnedHead.cs", "q * Math.Sin(head.Yaw) * Math.Cos(head.Yaw)", "-q * Math.Sin(head.Yaw) * Math.Cos(head.Yaw)"),
        ("Swimming/ActionBodyBuilder.cs", HeadSet + "rigging.HeadTurn)", HeadSet + "-rigging.HeadTurn)"),
        ("Swimming/ActionBodyBuilder.cs", "SphereDrag.FrontalArea(head.Mass / Metals.Density(head.Metal))", "1.44 * SphereDrag.FrontalArea(head.Mass / Metals.Density(head.Metal))"),
        ("Lures/SoftBait.cs", "0.5 * headVolume", "0 * headVolume"),
        ("Lures/CurlTailGrub.cs", "0.02", "0.024"),
        ("Lures/Spoon.cs", "added * sine * sine / parts.Volume", "added * sine * sine * parts.Volume"),
        ("Motion/EventFinder.cs", "z > contactRadius", "z <= contactRadius"),
        ("Motion/Line/LineEnergy.cs", "(byD * s.Dx) + (byW * s.Wx)", "(byD * s.Dx) - (byW * s.Wx)"),
        ("Motion/Line/LineEnergy.cs", "-StraighteningStrain * stiffness", "-StraighteningStrain / stiffness"),
        ("Swimming/ActionAnalysis.cs", "0.5 * trace.Body.Length", "0.5 / trace.Body.Length"),
        ("Swimming/Bodies/Vector3d.cs", "this - other", "this + other"),
        ("Decision/BoxAdvice.cs", "3.0", "3.6"),
        ("Decision/Search/RetrieveSearch.cs", "60", "72.0"),
        ("Decision/Search/RetrieveSearch.cs", "1 - Math.Min(1, gap)", "1 + Math.Min(1, gap)"),
        ("Hydrodynamics/BodyDragComponents.cs", "parting.PressureDrag * frontal", "1.19 * parting.PressureDrag * frontal"),
    ];
}
