namespace LureSim.Stepping;

/// <summary>Work and balance of a run.</summary>
/// <param name="Steps">Accepted steps.</param>
/// <param name="RejectedSteps">Steps that were repeated with a smaller size.</param>
/// <param name="Evaluations">Evaluations of the right-hand side.</param>
/// <param name="SmallestStep">Smallest accepted step (s).</param>
/// <param name="EnergyResidual">Energy balance residual over the run, divided by the energy exchanged (dimensionless).</param>
public sealed record SimulationStatistics(int Steps, int RejectedSteps, int Evaluations, double SmallestStep, double EnergyResidual);
