using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using LureSim.Swimming.Bodies;
using MathNet.Numerics.LinearAlgebra;

namespace LureSim.Swimming.Forces;

/// <summary>
/// A soft body that gives way behind its hook: two stiff parts on an elastic joint with two angles, the rear with its tail, each with the water that it carries. Each part obeys
/// Kirchhoff's equations in its own axes (Lamb 1932, art. 124); the joint ties them together (d'Alembert's principle in the unknowns v, w, the two rates of the joint and the tail's).
/// </summary>
/// <remarks>The shape is followed exactly, whatever the angles; the mass matrix is built and factored in each evaluation, without allocating.</remarks>
internal sealed class JointedBody
{
    // Unknown speeds: six of the front, two of the joint, one of the tail; speeds of the rear: six and the tail's.
    private const int N = 9, R = 7;

    // Speeds of the rear in whole groups of four, and a row of the mass matrix with its right-hand side so: the arithmetic takes four neighbours at a time.
    private const int Padded = 8, Row = 12;

    // Beyond this angle (radians) a soft body kinks against itself; stiffness over inertia (1/s2). Both as for a tail; assumed.
    private const double StopAngle = 1.2, StopRate = 3.5e4;

    // Scaled eigenvalue below which a part is taken as stiff with the other; assumed.
    private const double LeastSoundness = 1e-3;

    private readonly double[] front = new double[36], rear = new double[R * R], rearColumns = new double[R * Padded];
    private readonly double joint, restSideways, restUpright;
    private readonly double springSideways, springUpright, damperSideways, damperUpright;

    /// <summary>The body of a lure.</summary>
    /// <param name="body">A body with a <see cref="ActionBody.Rear"/>.</param>
    /// <param name="waterDensity">Density of the water (kg/m3).</param>
    /// <param name="carriesWater">False for a body in empty space.</param>
    public JointedBody(ActionBody body, double waterDensity, bool carriesWater)
    {
        FlexibleRear part = body.Rear ?? throw new ArgumentException("The body is stiff.", nameof(body));
        joint = part.JointPosition;
        Vector3d origin = new(joint, 0, 0);
        Matrix<double> behind = Matrix<double>.Build.Dense(R, R);
        behind.SetSubMatrix(0, 0, RigidBody.Solid(part.Mass, part.CentreOfMass - origin, part.Inertia));
        Matrix<double> whole = RigidBody.Solid(body.Mass, body.CentreOfMass, body.Inertia);
        if (carriesWater)
        {
            behind.SetSubMatrix(0, 0, behind.SubMatrix(0, 6, 0, 6) + AddedMass.Behind(body, joint, waterDensity));
            whole += AddedMass.Of(body, new BentAxis(null), waterDensity);
        }

        Matrix<double> shift = RigidBody.Shift(origin);
        Matrix<double> ahead = whole - (shift.TransposeThisAndMultiply(behind.SubMatrix(0, 6, 0, 6)) * shift);
        double yaw = behind[5, 5], pitch = behind[4, 4];
        if (body.Tail is { } tail)
            RigidBody.AddTail(behind, tail with { HingePosition = tail.HingePosition - joint }, new BentAxis(null), carriesWater ? AddedMass.OfPaddle(tail, waterDensity) : 0);
        else
            behind[6, 6] = 1;
        for (int i = 0; i < 6; i++)
        {
            for (int j = 0; j < 6; j++) front[(6 * i) + j] = ahead[i, j];
        }

        for (int i = 0; i < R; i++)
        {
            for (int j = 0; j < R; j++) rear[(R * i) + j] = rearColumns[(Padded * j) + i] = behind[i, j];
        }

        (restSideways, restUpright) = Rest(body);
        (springSideways, springUpright) = (part.StiffnessSideways, part.StiffnessUpright);
        damperSideways = 2 * part.Damping * Math.Sqrt(springSideways * yaw);
        damperUpright = 2 * part.Damping * Math.Sqrt(springUpright * pitch);
        (StopSideways, StopUpright) = (StopRate * yaw, StopRate * pitch);
    }

    /// <summary>Inertia of the tail about its hinge with the water that it carries (kg m2); 1 without a tail.</summary>
    public double TailInertia => rear[(R * R) - 1];

    private double StopSideways { get; }

    private double StopUpright { get; }

    /// <summary>Angles of the joint at which it is at ease (radians): to the left and up.</summary>
    public static (double Sideways, double Upright) Rest(ActionBody body)
    {
        if (body.Bend is not { } bend) return (0, 0);
        (double s, double c) = Math.SinCos(bend.Angle);
        (double sr, double cr) = Math.SinCos(bend.Roll);
        return (Math.Atan2(s * cr, c), Math.Asin(Math.Clamp(s * sr, -1, 1)));
    }

    /// <summary>True if both parts can move by themselves without making energy: the strips share out the water, and the tail its mass, only about.</summary>
    /// <param name="body">A body with a <see cref="ActionBody.Rear"/>.</param>
    /// <param name="waterDensity">Density of the water (kg/m3).</param>
    public static bool IsSound(ActionBody body, double waterDensity)
    {
        var jointed = new JointedBody(body, waterDensity, true);
        return Soundness(jointed.front, 6) > LeastSoundness && Soundness(jointed.rear, R) > LeastSoundness;
    }

    // Least eigenvalue of the matrix scaled to a unit diagonal.
    private static double Soundness(double[] matrix, int n)
    {
        for (int i = 0; i < n; i++)
        {
            if (!(matrix[(n * i) + i] > 0)) return 0;
        }

        return Matrix<double>.Build.Dense(n, n, (i, j) => matrix[(n * i) + j] / Math.Sqrt(matrix[(n * i) + i] * matrix[(n * j) + j])).Evd(Symmetricity.Symmetric).EigenValues.Min(e => e.Real);
    }

    /// <summary>The rear at a state.</summary>
    public RearMotion Motion(in BodyState state) => new(state, joint);

    /// <summary>Kinetic energy of both parts and their water (J).</summary>
    public double KineticEnergy(in BodyState state)
    {
        RearMotion m = Motion(state);
        return 0.5 * (Product(front, 6, [state.Velocity.X, state.Velocity.Y, state.Velocity.Z, state.TurnRate.X, state.TurnRate.Y, state.TurnRate.Z])
            + Product(rear, R, [m.Velocity.X, m.Velocity.Y, m.Velocity.Z, m.TurnRate.X, m.TurnRate.Y, m.TurnRate.Z, state.TailRate]));
    }

    /// <summary>Moments of the joint's springs, dampers and stops on its two angles (N m).</summary>
    public (double Sideways, double Upright) JointMoments(in BodyState s) => (
        -(springSideways * (s.Sideways - restSideways)) - (damperSideways * s.SidewaysRate) - Stop(s.Sideways, StopSideways),
        -(springUpright * (s.Upright - restUpright)) - (damperUpright * s.UprightRate) - Stop(s.Upright, StopUpright));

    /// <summary>Accelerations of all unknowns.</summary>
    /// <param name="state">State.</param>
    /// <param name="m">The rear at it.</param>
    /// <param name="ahead">Wrench on the front about the body's origin.</param>
    /// <param name="behind">Wrench on the rear about the joint, in the rear's axes.</param>
    /// <param name="moments">Moments of the joint.</param>
    /// <param name="rates">Where the rates of velocity, turn rate, tail rate and the joint's rates are written.</param>
    public void Accelerate(in BodyState state, in RearMotion m, in Wrench ahead, in Wrench behind, (double Sideways, double Upright) moments, ref BodyState rates)
    {
        Vector3d v = state.Velocity, w = state.TurnRate;
        Span<double> momentum = stackalloc double[R];
        Multiply(front, 6, [v.X, v.Y, v.Z, w.X, w.Y, w.Z], momentum);
        Vector3d p = new(momentum[0], momentum[1], momentum[2]), h = new(momentum[3], momentum[4], momentum[5]);
        Vector3d force = Vector3d.Cross(p, w) + ahead.Force, moment = Vector3d.Cross(h, w) + Vector3d.Cross(p, v) + ahead.Moment;

        // The rear: what drives its momenta, less what its axes do by themselves.
        Multiply(rear, R, [m.Velocity.X, m.Velocity.Y, m.Velocity.Z, m.TurnRate.X, m.TurnRate.Y, m.TurnRate.Z, state.TailRate], momentum);
        p = new(momentum[0], momentum[1], momentum[2]);
        h = new(momentum[3], momentum[4], momentum[5]);
        Multiply(rear, R, [m.VelocityBias.X, m.VelocityBias.Y, m.VelocityBias.Z, m.TurnBias.X, m.TurnBias.Y, m.TurnBias.Z, 0], momentum);
        Wrench own = new()
        {
            Force = Vector3d.Cross(p, m.TurnRate) + behind.Force - new Vector3d(momentum[0], momentum[1], momentum[2]),
            Moment = Vector3d.Cross(h, m.TurnRate) + Vector3d.Cross(p, m.Velocity) + behind.Moment - new Vector3d(momentum[3], momentum[4], momentum[5]),
            Hinge = behind.Hinge - momentum[6],
        };
        Wrench carried = m.ToFront(own);
        force += carried.Force;
        moment += carried.Moment;
        Span<double> matrix = stackalloc double[N * Row], right = stackalloc double[N];
        Assemble(m, matrix, Row);
        matrix[(0 * Row) + N] = force.X;
        matrix[(1 * Row) + N] = force.Y;
        matrix[(2 * Row) + N] = force.Z;
        matrix[(3 * Row) + N] = moment.X;
        matrix[(4 * Row) + N] = moment.Y;
        matrix[(5 * Row) + N] = moment.Z;
        matrix[(6 * Row) + N] = moments.Sideways + Vector3d.Dot(m.SidewaysAxis, own.Moment);
        matrix[(7 * Row) + N] = moments.Upright + own.Moment.Y;
        matrix[(8 * Row) + N] = own.Hinge;
        Solve(matrix, right);
        rates.Velocity = new(right[0], right[1], right[2]);
        rates.TurnRate = new(right[3], right[4], right[5]);
        rates.SidewaysRate = right[6];
        rates.UprightRate = right[7];
        rates.TailRate = right[8];
    }

    /// <summary>Row-major 9 x 9 mass matrix of the unknown speeds at a state (kg, kg m, kg m2).</summary>
    public void MassMatrix(in BodyState state, Span<double> matrix) => Assemble(Motion(state), matrix, N);

    // Front + J^T rear J with the columns of J: the speeds of the rear for one of each unknown.
    private void Assemble(in RearMotion m, Span<double> matrix, int row)
    {
        Span<double> columns = stackalloc double[N * Padded], product = stackalloc double[N * Padded];
        columns.Clear();
        double x = m.Joint.X;

        // w x joint = (0, w_z x, -w_y x).
        Column(columns, 0, new(m.Forward.X, m.Left.X, m.Up.X), default);
        Column(columns, 1, new(m.Forward.Y, m.Left.Y, m.Up.Y), default);
        Column(columns, 2, new(m.Forward.Z, m.Left.Z, m.Up.Z), default);
        Column(columns, 3, default, new(m.Forward.X, m.Left.X, m.Up.X));
        Column(columns, 4, -x * new Vector3d(m.Forward.Z, m.Left.Z, m.Up.Z), new(m.Forward.Y, m.Left.Y, m.Up.Y));
        Column(columns, 5, x * new Vector3d(m.Forward.Y, m.Left.Y, m.Up.Y), new(m.Forward.Z, m.Left.Z, m.Up.Z));
        Column(columns, 6, default, m.SidewaysAxis);
        Column(columns, 7, default, new(0, 1, 0));
        columns[(8 * Padded) + 6] = 1;
        ref double column = ref MemoryMarshal.GetReference(columns), result = ref MemoryMarshal.GetReference(product), own = ref MemoryMarshal.GetArrayDataReference(rearColumns);
        for (int c = 0; c < N; c++)
        {
            Vector256<double> low = Vector256<double>.Zero, high = Vector256<double>.Zero;
            for (int k = 0; k < R; k++)
            {
                var factor = Vector256.Create(Unsafe.Add(ref column, (Padded * c) + k));
                low = Vector256.FusedMultiplyAdd(factor, Vector256.LoadUnsafe(ref own, (nuint)(Padded * k)), low);
                high = Vector256.FusedMultiplyAdd(factor, Vector256.LoadUnsafe(ref own, (nuint)((Padded * k) + 4)), high);
            }

            low.StoreUnsafe(ref result, (nuint)(Padded * c));
            high.StoreUnsafe(ref result, (nuint)((Padded * c) + 4));
        }

        for (int i = 0; i < N; i++)
        {
            Vector256<double> low = Vector256.LoadUnsafe(ref column, (nuint)(Padded * i)), high = Vector256.LoadUnsafe(ref column, (nuint)((Padded * i) + 4));
            for (int j = 0; j <= i; j++)
            {
                double sum = i < 6 ? front[(6 * i) + j] : 0;
                sum += Vector256.Sum(Vector256.FusedMultiplyAdd(low, Vector256.LoadUnsafe(ref result, (nuint)(Padded * j)), high * Vector256.LoadUnsafe(ref result, (nuint)((Padded * j) + 4))));
                matrix[(row * i) + j] = matrix[(row * j) + i] = sum;
            }
        }
    }

    private static void Column(Span<double> columns, int at, Vector3d velocity, Vector3d turn)
    {
        Span<double> c = columns.Slice(at * Padded, R);
        c[0] = velocity.X;
        c[1] = velocity.Y;
        c[2] = velocity.Z;
        c[3] = turn.X;
        c[4] = turn.Y;
        c[5] = turn.Z;
    }

    // The right-hand side stands in each row behind the matrix, which is symmetric and positive: elimination without pivots in the upper triangle, then backwards. Not a number where the
    // matrix is not positive.
    private static void Solve(Span<double> matrix, Span<double> result)
    {
        ref double first = ref MemoryMarshal.GetReference(matrix);
        for (int k = 0; k < N; k++)
        {
            ref double pivot = ref Unsafe.Add(ref first, Row * k);
            double diagonal = Unsafe.Add(ref pivot, k);
            double inverse = diagonal > 0 ? 1 / diagonal : double.NaN;
            for (int j = k + 1; j < N; j++)
            {
                ref double target = ref Unsafe.Add(ref first, Row * j);
                var factor = Vector256.Create(-inverse * Unsafe.Add(ref pivot, j));
                for (int at = j & ~3; at < Row; at += 4)
                    Vector256.FusedMultiplyAdd(factor, Vector256.LoadUnsafe(ref pivot, (nuint)at), Vector256.LoadUnsafe(ref target, (nuint)at)).StoreUnsafe(ref target, (nuint)at);
            }

            Unsafe.Add(ref pivot, k) = inverse;
        }

        for (int k = N - 1; k >= 0; k--)
        {
            double sum = matrix[(Row * k) + N];
            for (int j = k + 1; j < N; j++) sum -= matrix[(Row * k) + j] * result[j];
            result[k] = sum * matrix[(Row * k) + k];
        }
    }

    private static double Stop(double angle, double stiffness)
    {
        double excess = Math.Abs(angle) - StopAngle;
        return excess > 0 ? stiffness * excess * Math.Sign(angle) : 0;
    }

    private static void Multiply(double[] matrix, int n, ReadOnlySpan<double> x, Span<double> result)
    {
        for (int i = 0; i < n; i++)
        {
            double sum = 0;
            int at = n * i;
            for (int j = 0; j < n; j++) sum += matrix[at + j] * x[j];
            result[i] = sum;
        }
    }

    private static double Product(double[] matrix, int n, ReadOnlySpan<double> x)
    {
        Span<double> y = stackalloc double[R];
        Multiply(matrix, n, x, y);
        double sum = 0;
        for (int i = 0; i < n; i++) sum += x[i] * y[i];
        return sum;
    }
}
