using LureSim.Decision.Trials;
using LureSim.Decision.Uncertainty;
using LureSim.Model;

namespace LureSim.Decision.Search;

/// <summary>A rig in the race for the choice, with what has been run of it.</summary>
internal sealed class RaceArm(Rig rig, Presentation own, SinkTarget target, double appeal)
{
    public Rig Rig { get; } = rig;

    public Presentation Own { get; } = own;

    public SinkTarget Target { get; } = target;

    public double Appeal { get; } = appeal;

    /// <summary>The run of the scenario itself; null before it was made.</summary>
    public Candidate? Look { get; set; }

    /// <summary>Hands that differ from the scenario's own figures, the sink count not counted: it follows the lure.</summary>
    public int Changed { get; } =
        (rig.Presentation.RetrieveSpeed != own.RetrieveSpeed ? 1 : 0) + (rig.Presentation.Aim != own.Aim ? 1 : 0) + (rig.Presentation.Moves.SequenceEqual(own.Moves) ? 0 : 1);

    public IReadOnlyList<UncertainDraw> Draws { get; set; } = [];

    /// <summary>Runs of the tries, null where not made yet; empty before the first.</summary>
    public UncertaintyStudy.DrawRun?[] Outcomes { get; set; } = [];

    public double Reach { get; set; }

    /// <summary>Score of a try; -1 stands for the scenario itself.</summary>
    public double ScoreOf(int t) => t < 0 ? Look!.Score : Outcomes[t]!.Score;

    public bool Has(int t) => t < 0 ? Look is not null : Outcomes.Length > t && Outcomes[t] is not null;

    public double MeanOf(IReadOnlyList<int> tries) => tries.Average(ScoreOf);

    public double ValueOf(IReadOnlyList<int> tries) => MeanOf(tries) * Appeal;

    public double[] ScoresOf(IReadOnlyList<int> tries) => [.. tries.Select(ScoreOf)];

    public SearchedRig Searched()
    {
        if (Outcomes.Length == 0) return new SearchedRig(Rig, Own, [Look!.Coverage], [Look.Score], Appeal) { Target = Target };
        UncertaintyStudy.DrawRun[] made = [.. Outcomes.OfType<UncertaintyStudy.DrawRun>()];
        return new SearchedRig(Rig, Own, [.. made.Select(run => run.Coverage)], [.. made.Select(run => run.Score)], Appeal) { Runs = made, Draws = Draws, Target = Target };
    }
}
