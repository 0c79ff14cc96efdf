namespace LureSim.Stepping;

/// <summary>
/// Steps a stiff system of second order by a diagonally implicit Runge-Kutta method with explicit first stage. Positions are eliminated: Newton's method solves each stage for the
/// velocities. Knows neither what moves nor how long a step should be. Steps allocate nothing.
/// </summary>
internal sealed class Esdirk
{
    // Newton ends when what is left of the iteration is below this share of the tolerance: a line that is stiff along itself turns what is left into tension.
    private const double NewtonTolerance = 1e-2;

    // The matrix is kept for the next iteration when an increment is below this share of the tolerance and shrinks faster than that.
    private const double SmallIncrement = 0.1;
    private const double FastContraction = 0.15;

    // An iteration is taken for the last one where the curvature seen in solutions before says that the next increment would be below this share of the tolerance, if the
    // secondary unknowns fit there. After so many stages in a row the curvature is seen anew.
    private const double PredictedTolerance = 0.03;
    private const int UnseenLimit = 20;

    private const int IterationLimit = 12;

    private readonly EsdirkTableau tableau;
    private readonly IStiffSystem system;
    private readonly int size;
    private readonly double[][] stageW;
    private readonly double[][] stageA;
    private readonly double[] previousVelocity;
    private readonly double[] baseR;
    private readonly double[] baseW;
    private readonly double[] trialR;
    private readonly double[] trialW;
    private readonly double[] increment;
    private readonly double[] errorR;
    private readonly double[] errorW;

    // By stage: the second increment of Newton's method over the square of the first, and the stages since it was seen.
    private readonly double[] curvature;
    private readonly int[] unseen;
    private double previousStep;

    public Esdirk(EsdirkTableau tableau, IStiffSystem system)
    {
        this.tableau = tableau;
        this.system = system;
        size = system.Size;
        stageW = new double[tableau.Stages][];
        stageA = new double[tableau.Stages][];
        for (int i = 0; i < tableau.Stages; i++)
        {
            stageW[i] = new double[size];
            stageA[i] = new double[size];
        }

        curvature = new double[tableau.Stages];
        unseen = new int[tableau.Stages];
        Acceleration = new double[size];
        previousVelocity = new double[size];
        Position = new double[size];
        Velocity = new double[size];
        NextPosition = new double[size];
        NextVelocity = new double[size];
        trialR = new double[size];
        trialW = new double[size];
        baseR = new double[size];
        baseW = new double[size];
        increment = new double[size];
        errorR = new double[size];
        errorW = new double[size];
    }

    /// <summary>Method.</summary>
    public EsdirkTableau Tableau => tableau;

    /// <summary>Time reached (s).</summary>
    public double Time { get; set; }

    /// <summary>Positions at <see cref="Time"/>.</summary>
    public double[] Position { get; }

    /// <summary>Velocities at <see cref="Time"/>.</summary>
    public double[] Velocity { get; }

    /// <summary>Accelerations at <see cref="Time"/>; to be written before the first step after a <see cref="Restart"/>.</summary>
    public double[] Acceleration { get; }

    /// <summary>Positions at the end of the trial step.</summary>
    public double[] NextPosition { get; }

    /// <summary>Velocities at the end of the trial step.</summary>
    public double[] NextVelocity { get; }

    /// <summary>Increment of the velocities in the last iteration.</summary>
    public ReadOnlySpan<double> LastIncrement => increment;

    /// <summary>Forgets what steps before have shown: the equations have changed.</summary>
    public void Restart()
    {
        previousStep = 0;
        Array.Clear(curvature);
    }

    /// <summary>Computes a trial step and returns its error in units of the tolerance (infinite if it failed).</summary>
    public double TryStep(double step)
    {
        system.BeginStep();
        Velocity.CopyTo(stageW[0], 0);
        Acceleration.CopyTo(stageA[0], 0);
        double g = tableau.Gamma * step;
        for (int i = 1; i < tableau.Stages; i++)
        {
            Position.CopyTo(baseR, 0);
            Velocity.CopyTo(baseW, 0);
            for (int j = 0; j < i; j++)
            {
                double a = step * tableau.GetA(i, j);
                Spans.AddScaled(baseR, stageW[j], a);
                Spans.AddScaled(baseW, stageA[j], a);
            }

            Predict(i, step);
            if (!SolveStage(i, Time + (tableau.C[i] * step), g, tableau.C[i] != tableau.C[i - 1])) return double.PositiveInfinity;
            trialW.CopyTo(stageW[i], 0);
            Spans.Difference(trialW, baseW, 1 / g, stageA[i]);
        }

        double[] w = stageW[tableau.Stages - 1];
        w.CopyTo(NextVelocity, 0);
        baseR.CopyTo(NextPosition, 0);
        Spans.AddScaled(NextPosition, w, g);
        system.BeginStage(Time + step);
        system.Hold(NextPosition, NextVelocity);
        return EstimateError(step);
    }

    /// <summary>Makes the trial step the current state.</summary>
    public void Accept(double step)
    {
        Velocity.CopyTo(previousVelocity, 0);
        previousStep = step;
        NextPosition.CopyTo(Position, 0);
        NextVelocity.CopyTo(Velocity, 0);
        stageA[tableau.Stages - 1].CopyTo(Acceleration, 0);
        Time += step;
    }

    // Starting value of a stage's velocities: a parabola through what is known.
    private void Predict(int stage, double step)
    {
        double[] a0 = stageA[0];
        double at = tableau.C[stage] * step;
        if (stage == 1)
        {
            double q = previousStep > 0 ? at * at / (previousStep * previousStep) : 0;
            Combine(a0, at + (q * previousStep), previousVelocity, q);
            return;
        }

        if (tableau.C[stage] == tableau.C[stage - 1])
        {
            stageW[stage - 1].CopyTo(trialW, 0);
            return;
        }

        double[] w1 = stageW[stage - 1];
        double before = tableau.C[stage - 1] * step, share = at * at / (before * before);
        Combine(a0, at - (share * before), w1, share);
    }

    // trialW := w + byRate a + share (other - w).
    private void Combine(double[] rate, double byRate, double[] other, double share)
    {
        Velocity.CopyTo(trialW, 0);
        Spans.AddScaled(trialW, Velocity, -share);
        Spans.AddScaled(trialW, rate, byRate);
        Spans.AddScaled(trialW, other, share);
    }

    // A stage at the time of the one before starts with its matrix.
    private bool SolveStage(int stage, double time, double g, bool renew)
    {
        system.BeginStage(time);
        double before = double.PositiveInfinity;
        for (int iteration = 0; iteration < IterationLimit; iteration++)
        {
            Place(g);
            if (!system.Iterate(trialR, trialW, baseW, g, renew, increment)) return false;
            bool own = renew;
            renew = false;
            Spans.AddScaled(trialW, increment, 1);
            system.Follow(increment, g, own);
            double norm = system.IncrementSize(increment, g);
            if (!double.IsFinite(norm)) return false;
            bool fits = system.Fits;
            if (own && iteration == 1 && before > 0)
            {
                curvature[stage] = Math.Max(norm / (before * before), 0.5 * curvature[stage]);
                unseen[stage] = 0;
            }

            bool small = norm < 1e-2 * NewtonTolerance || (own && norm < NewtonTolerance);
            if (!small && own && iteration == 0 && unseen[stage] < UnseenLimit && curvature[stage] > 0 && 2 * curvature[stage] * norm * norm < PredictedTolerance && FitsAfter(g))
            {
                unseen[stage]++;
                return true;
            }

            double contraction = norm / before;
            if (fits && (small || (iteration > 0 && contraction < 1 && contraction / (1 - contraction) * norm < NewtonTolerance)))
                return true;

            renew = !fits || norm > SmallIncrement || contraction > FastContraction;
            before = norm;
        }

        return false;
    }

    private void Place(double g)
    {
        baseR.CopyTo(trialR, 0);
        Spans.AddScaled(trialR, trialW, g);
        system.Hold(trialR, trialW);
    }

    private bool FitsAfter(double g)
    {
        Place(g);
        return system.FitsAt(trialR, increment, g);
    }

    private double EstimateError(double step)
    {
        Array.Clear(errorR);
        Array.Clear(errorW);
        for (int i = 0; i < tableau.Stages; i++)
        {
            double e = step * tableau.E[i];
            Spans.AddScaled(errorR, stageW[i], e);
            Spans.AddScaled(errorW, stageA[i], e);
        }

        if (tableau.DampsError) system.Damp(errorR, errorW, tableau.Gamma * step);
        double error = system.ErrorSize(errorR, errorW);
        return double.IsFinite(error) ? error : double.PositiveInfinity;
    }
}
