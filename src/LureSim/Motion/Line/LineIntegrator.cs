using LureSim.Stepping;

namespace LureSim.Motion.Line;

/// <summary>Lure and line in time: the system, the method that steps it, and the powers at the ends of a step. Trial steps are judged and repeated by the caller.</summary>
internal sealed class LineIntegrator
{
    private readonly LineDynamics dynamics;
    private readonly LineSystem system;
    private readonly Esdirk method;
    private readonly double[] force;
    private bool accelerationValid;
    private bool evaluated;

    public LineIntegrator(LineDynamics dynamics, ILineBoundary boundary, EsdirkTableau tableau)
    {
        this.dynamics = dynamics;
        system = new LineSystem(dynamics, boundary);
        method = new Esdirk(tableau, system);
        force = new double[system.Free];
    }

    public double Time => method.Time;

    /// <summary>Node positions from the lure to the rod tip (m).</summary>
    public ReadOnlySpan<double> Position => method.Position.AsSpan(0, system.Line);

    /// <summary>Node velocities from the lure to the rod tip (m/s).</summary>
    public ReadOnlySpan<double> Velocity => method.Velocity.AsSpan(0, system.Line);

    /// <summary>Positions at the end of the trial step.</summary>
    public ReadOnlySpan<double> NextPosition => method.NextPosition.AsSpan(0, system.Line);

    /// <summary>Velocities at the end of the trial step.</summary>
    public ReadOnlySpan<double> NextVelocity => method.NextVelocity.AsSpan(0, system.Line);

    /// <summary>Unstretched line out (m).</summary>
    public double LineOut => method.Position[system.Line];

    /// <summary>Its rate (m/s).</summary>
    public double LineRate => method.Velocity[system.Line];

    /// <summary>Unstretched line out at the end of the trial step (m).</summary>
    public double NextLineOut => method.NextPosition[system.Line];

    /// <summary>Its rate (m/s).</summary>
    public double NextLineRate => method.NextVelocity[system.Line];

    /// <summary>Whether line leaves the spool by itself.</summary>
    public bool SpoolIsFree => system.SpoolIsFree;

    /// <summary>Evaluations of the forces, with derivatives or without.</summary>
    public int Evaluations => system.Evaluations;

    /// <summary>Evaluations of the derivatives, each with a factorisation.</summary>
    public int Factorisations => system.Factorisations;

    public LineDynamics Dynamics => dynamics;

    /// <summary>Method.</summary>
    public EsdirkTableau Tableau => method.Tableau;

    /// <summary>Powers at the current state (W).</summary>
    public EnergyRates Powers { get; private set; }

    /// <summary>Powers at the start of the step that was accepted last (W).</summary>
    public EnergyRates PreviousPowers { get; private set; }

    /// <summary>Energy of the current state, the tensions by their law.</summary>
    public StoredEnergy StoredEnergy => dynamics.EvaluateStoredEnergy(Position, Velocity, LineOut);

    /// <summary>Sets the state: node positions and velocities without the tip, which the boundary gives.</summary>
    public void Initialise(double time, ReadOnlySpan<double> position, ReadOnlySpan<double> velocity)
    {
        position[..system.Free].CopyTo(method.Position);
        velocity[..system.Free].CopyTo(method.Velocity);
        method.Time = time;
        system.BeginStage(time);
        system.Hold(method.Position, method.Velocity);
        Restart();
    }

    /// <summary>Opens the bail: line out becomes part of the state.</summary>
    public void OpenBail(FreeSpool freeSpool)
    {
        system.Open(freeSpool);
        method.Velocity[system.Line] = 0;
        Restart();
    }

    /// <summary>Closes the bail: from now on the boundary gives the line out.</summary>
    public void CloseBail()
    {
        system.Close();
        Restart();
    }

    /// <summary>
    /// Evaluates the forces at the current state, which puts tensions and powers of <see cref="Dynamics"/> there.
    /// </summary>
    public void Prepare()
    {
        if (evaluated && accelerationValid) return;
        system.BeginStage(Time);
        system.Evaluate(method.Position, method.Velocity, force, false);
        evaluated = true;
        dynamics.KeepTensions(false);
        if (accelerationValid) return;
        system.Accelerate(force, method.Velocity, method.Acceleration);
        accelerationValid = true;
        Powers = system.Powers(method.Position, method.Velocity, force);
    }

    /// <summary>Computes a trial step into the Next properties and returns its error in units of the tolerance (infinite if it failed).</summary>
    public double TryStep(double step, in StepControl control)
    {
        if (!accelerationValid) Prepare();
        evaluated = false;
        system.Tolerances = control;
        return method.TryStep(step);
    }

    /// <summary>The node that moved most in the last iteration, 0 for the lure.</summary>
    public int WorstNode(out double depth)
    {
        ReadOnlySpan<double> increment = method.LastIncrement;
        int worst = 0;
        double largest = -1;
        for (int m = 0; m < system.Free; m++)
        {
            double value = double.IsNaN(increment[m]) ? double.MaxValue : Math.Abs(increment[m]);
            if (value <= largest) continue;
            largest = value;
            worst = m / 3;
        }

        depth = -Position[(3 * worst) + 2];
        return worst;
    }

    /// <summary>Makes the trial step the current state.</summary>
    public void Accept(double step)
    {
        method.Accept(step);
        evaluated = false;
        dynamics.KeepTensions(true);

        // What the iteration has converged to: forces that give the masses the accelerations of the last stage.
        system.Forces(method.Acceleration, force);
        PreviousPowers = Powers;
        Powers = system.Powers(method.Position, method.Velocity, force);
    }

    private void Restart()
    {
        accelerationValid = false;
        evaluated = false;
        method.Restart();
    }
}
