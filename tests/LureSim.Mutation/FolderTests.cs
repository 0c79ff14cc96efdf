namespace LureSim.Mutation;

/// <summary>The tests that judge a folder's mutants: those that look at its formulas and take seconds, the quickest first.</summary>
internal static class FolderTests
{
    private static readonly Dictionary<string, string[]> Classes = new(StringComparer.Ordinal)
    {
        ["Hydrodynamics"] =
        [
            "LureSim.Validation.Hydrodynamics.BodyDragTests",
            "LureSim.Validation.Hydrodynamics.LineDragTests",
            "LureSim.Validation.Hydrodynamics.SpheroidTests",
            "LureSim.Validation.Lures.PathLureTests",
            "LureSim.Validation.Swimming.PlateTests",
            "LureSim.Tests.Lures.LureAssemblyTests",
            "LureSim.Tests.Swimming.TermTests",
            "LureSim.Tests.Motion.LineDynamicsDerivativeTests",
        ],
        ["Lures"] =
        [
            "LureSim.Tests.Lures.InertiaTests",
            "LureSim.Tests.Lures.LureAssemblyTests",
            "LureSim.Tests.Lures.HardBaitTests",
            "LureSim.Tests.Swimming.ActionBodyBuilderTests",
            "LureSim.Validation.Lures.PathLureTests",
            "LureSim.Validation.Motion.FallingBodyTests",
            "LureSim.Validation.Lures.KindsPracticeTests",
            "LureSim.Tests.Lures.LureKindsTests",
        ],
        ["Swimming"] =
        [
            "LureSim.Tests.Swimming.Vector3dTests",
            "LureSim.Tests.Swimming.ActionAnalysisTests",
            "LureSim.Tests.Swimming.TermTests",
            "LureSim.Tests.Swimming.ActionBodyBuilderTests",
            "LureSim.Validation.Swimming.BentBodyTests",
            "LureSim.Validation.Swimming.ClampTests",
            "LureSim.Validation.Swimming.PlateTests",
            "LureSim.Validation.Swimming.RigidBodyTests",
            "LureSim.Tests.Swimming.ActionPropertyTests",
            "LureSim.Validation.Swimming.WakeTests",
            "LureSim.Validation.Swimming.BalanceTests",
            "LureSim.Validation.Swimming.PracticeTests",
        ],
        ["Motion"] =
        [
            "LureSim.Tests.Motion.EventFinderTests",
            "LureSim.Tests.Motion.SwingWatchTests",
            "LureSim.Tests.Motion.CurrentProfileLanesTests",
            "LureSim.Tests.Motion.CastProgramTests",
            "LureSim.Tests.Motion.RetrieveMovesTests",
            "LureSim.Tests.Motion.EngineTests",
            "LureSim.Tests.Motion.LineDynamicsDerivativeTests",
            "LureSim.Tests.Motion.EnergyBalanceTests",
            "LureSim.Validation.Motion.FallingBodyTests",
        ],
        ["Decision"] =
        [
            "LureSim.Tests.Decision.CoverageMeasureTests",
            "LureSim.Tests.Decision.RankingTests",
            "LureSim.Tests.Decision.Search.RetrieveWorthTests",
            "LureSim.Tests.Decision.WaterMapTests",
            "LureSim.Tests.Decision.Uncertainty.LatinHypercubeTests",
            "LureSim.Tests.Decision.BoxAdviceTests",
            "LureSim.Tests.Decision.BodyChoiceTests",
            "LureSim.Tests.Decision.Uncertainty.SpreadDriversTests",
            "LureSim.Tests.Decision.ColourAdviceTests",
            "LureSim.Tests.Decision.RigCheckerTests",
            "LureSim.Tests.Decision.RigComparisonTests",
            "LureSim.Tests.Decision.Inverse.InverseQuestionsTests",
        ],
    };

    /// <summary>Folders of src/LureSim whose formulas are mutated.</summary>
    public static IReadOnlyList<string> Folders { get; } = ["Hydrodynamics", "Lures", "Swimming", "Motion", "Decision"];

    /// <summary>Full names of test classes for a folder.</summary>
    public static IReadOnlyList<string> Of(string folder) => Classes[folder];
}
