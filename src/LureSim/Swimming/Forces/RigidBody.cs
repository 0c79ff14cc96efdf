using LureSim.Swimming.Bodies;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace LureSim.Swimming.Forces;

/// <summary>
/// A rigid body with a tail on a hinge and the water that they carry: mass matrix of velocities of the origin, rates of turn and rate of the tail, and Kirchhoff's equations for
/// their momenta in body axes (Lamb 1932, art. 124).
/// </summary>
internal sealed class RigidBody
{
    // Degrees of freedom, the tail's included.
    private const int N = 7;

    // Tail: uniform stem with a paddle: first and second moments of mass about the hinge over m l and m l^2.
    private const double TailFirstMoment = 0.6, TailSecondMoment = 0.45;

    private readonly double[] mass = new double[N * N], inverse = new double[N * N];

    /// <summary>The body of a lure.</summary>
    /// <param name="body">The lure.</param>
    /// <param name="axis">Its axis.</param>
    /// <param name="waterDensity">Density of the water (kg/m3).</param>
    /// <param name="carriesWater">False for a body in empty space.</param>
    /// <exception cref="ArgumentOutOfRangeException">Mass and inertia of the whole cannot hold those of the tail.</exception>
    /// <param name="wet">Share of the body that is under water: near the surface it carries half of what it and its image carry far under it.</param>
    public RigidBody(ActionBody body, BentAxis axis, double waterDensity, bool carriesWater, double wet = 1)
        : this(Whole(body, axis, wet * waterDensity, carriesWater))
    {
    }

    private RigidBody(Matrix<double> m)
    {
        Cholesky<double> factor;
        try
        {
            factor = m.Cholesky();
        }
        catch (ArgumentException e)
        {
            throw new ArgumentOutOfRangeException("The body's inertia is too small for its tail: mass and inertia of the whole must include the tail.", e);
        }

        Matrix<double> inverted = factor.Solve(Matrix<double>.Build.DenseIdentity(N));
        for (int i = 0; i < N; i++)
        {
            for (int j = 0; j < N; j++)
            {
                mass[(N * i) + j] = m[i, j];
                inverse[(N * i) + j] = 0.5 * (inverted[i, j] + inverted[j, i]);
            }
        }
    }

    /// <summary>Row-major 7 x 7 matrix of body and water (kg, kg m, kg m2).</summary>
    public ReadOnlySpan<double> MassMatrix => mass;

    /// <summary>Inertia of the tail about its hinge with the water that it carries (kg m2); 1 without a tail.</summary>
    public double TailInertia => mass[(N * N) - 1];

    /// <summary>Half of u M u: kinetic energy of body and water (J).</summary>
    public double KineticEnergy(in BodyState state)
    {
        ReadOnlySpan<double> u = [state.Velocity.X, state.Velocity.Y, state.Velocity.Z, state.TurnRate.X, state.TurnRate.Y, state.TurnRate.Z, state.TailRate];
        double sum = 0;
        for (int i = 0; i < N; i++)
        {
            for (int j = 0; j < N; j++) sum += 0.5 * u[i] * mass[(N * i) + j] * u[j];
        }

        return sum;
    }

    /// <summary>Accelerations by Kirchhoff's equations: dp/dt = p x w + F, dh/dt = h x w + p x v + M, for the tail d(p_t)/dt = Q.</summary>
    /// <param name="state">State.</param>
    /// <param name="wrench">Sum of the forces.</param>
    /// <param name="rates">Where the rates of velocity (m/s2), turn rate (rad/s2) and tail rate (rad/s2) are written.</param>
    public void Accelerate(in BodyState state, in Wrench wrench, ref BodyState rates)
    {
        Vector3d v = state.Velocity, w = state.TurnRate;
        ReadOnlySpan<double> u = [v.X, v.Y, v.Z, w.X, w.Y, w.Z, state.TailRate];
        Span<double> momentum = stackalloc double[N];
        Multiply(mass, u, momentum);
        Vector3d p = new(momentum[0], momentum[1], momentum[2]);
        Vector3d h = new(momentum[3], momentum[4], momentum[5]);
        Vector3d dp = Vector3d.Cross(p, w) + wrench.Force;
        Vector3d dh = Vector3d.Cross(h, w) + Vector3d.Cross(p, v) + wrench.Moment;
        ReadOnlySpan<double> rate = [dp.X, dp.Y, dp.Z, dh.X, dh.Y, dh.Z, wrench.Hinge];
        Span<double> du = stackalloc double[N];
        Multiply(inverse, rate, du);
        rates.Velocity = new(du[0], du[1], du[2]);
        rates.TurnRate = new(du[3], du[4], du[5]);
        rates.TailRate = du[6];
    }

    /// <summary>Velocity of a point from that of the origin: v + w x r.</summary>
    public static Matrix<double> Shift(Vector3d r)
    {
        Matrix<double> s = Matrix<double>.Build.DenseIdentity(6);
        s[0, 4] = r.Z;
        s[0, 5] = -r.Y;
        s[1, 3] = -r.Z;
        s[1, 5] = r.X;
        s[2, 3] = r.Y;
        s[2, 4] = -r.X;
        return s;
    }

    /// <summary>7 x 7 matrix of a body with its tail and, unless in empty space, the water that they carry; without a tail its place is 1.</summary>
    public static Matrix<double> Whole(ActionBody body, BentAxis axis, double waterDensity, bool carriesWater)
    {
        Matrix<double> m = Matrix<double>.Build.Dense(N, N);
        m.SetSubMatrix(0, 0, Solid(body.Mass, body.CentreOfMass, body.Inertia));
        if (carriesWater) m.SetSubMatrix(0, 0, m.SubMatrix(0, 6, 0, 6) + AddedMass.Of(body, axis, waterDensity));
        if (carriesWater && body.Lip is { } lip) m.SetSubMatrix(0, 0, m.SubMatrix(0, 6, 0, 6) + AddedMass.OfLipAbout(lip, waterDensity));
        if (body.Tail is FlexibleTail tail) AddTail(m, tail, axis, carriesWater ? AddedMass.OfPaddle(tail, waterDensity) : 0);
        else m[6, 6] = 1;
        return m;
    }

    /// <summary>6 x 6 matrix of a solid about the origin.</summary>
    /// <param name="mass">Mass (kg).</param>
    /// <param name="centre">Centre of mass from the origin (m).</param>
    /// <param name="t">Tensor about the centre of mass (kg m2).</param>
    public static Matrix<double> Solid(double mass, Vector3d centre, InertiaTensor t)
    {
        Matrix<double> shift = Shift(centre);
        Matrix<double> rigid = Matrix<double>.Build.Dense(6, 6);
        for (int i = 0; i < 3; i++) rigid[i, i] = mass;
        rigid[3, 3] = t.Xx;
        rigid[4, 4] = t.Yy;
        rigid[5, 5] = t.Zz;
        rigid[3, 4] = rigid[4, 3] = t.Xy;
        rigid[3, 5] = rigid[5, 3] = t.Xz;
        rigid[4, 5] = rigid[5, 4] = t.Yz;
        return shift.TransposeThisAndMultiply(rigid) * shift;
    }

    // Momentum that the swing gives to the whole body: the stem lies behind its hinge P along -t, bent as the body is, and swings along e, so that with the moments m1 and m2
    // of its mass about the hinge the force on the body goes by m1 e and the moment by m1 P x e - m2 t x e. A tail that hangs out of the axis thus turns the body over as it swings;
    // without that its inertia would not fit into the body's.
    public static void AddTail(Matrix<double> m, FlexibleTail tail, BentAxis axis, double carried)
    {
        double l = tail.Length;
        double first = TailFirstMoment * tail.Mass * l, second = TailSecondMoment * tail.Mass * l * l;
        Vector3d hinge = axis.Point(new(tail.HingePosition, 0, 0)), along = axis.Tangent(tail.HingePosition);
        (double sine, double cosine) = Math.SinCos(Math.Atan2(-along.Y, along.X));
        Vector3d swing = new(sine, cosine, 0);
        Vector3d force = first * swing, moment = (first * Vector3d.Cross(hinge, swing)) - (second * Vector3d.Cross(along, swing));
        ReadOnlySpan<double> coupling = [force.X, force.Y, force.Z, moment.X, moment.Y, moment.Z];
        for (int i = 0; i < coupling.Length; i++) m[i, 6] = m[6, i] = coupling[i];
        m[6, 6] = second;
        Vector3d paddle = Vector3d.Cross(hinge - (l * along) - new Vector3d(0, 0, tail.Drop), swing);
        ReadOnlySpan<double> g = [swing.X, swing.Y, swing.Z, paddle.X, paddle.Y, paddle.Z, l];
        for (int i = 0; i < N; i++)
        {
            for (int j = 0; j < N; j++) m[i, j] += carried * g[i] * g[j];
        }
    }

    private static void Multiply(double[] matrix, ReadOnlySpan<double> x, Span<double> result)
    {
        for (int i = 0; i < N; i++)
        {
            int at = N * i;
            result[i] = (matrix[at] * x[0]) + (matrix[at + 1] * x[1]) + (matrix[at + 2] * x[2]) + (matrix[at + 3] * x[3])
                + (matrix[at + 4] * x[4]) + (matrix[at + 5] * x[5]) + (matrix[at + 6] * x[6]);
        }
    }
}
