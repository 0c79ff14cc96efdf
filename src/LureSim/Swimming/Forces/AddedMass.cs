using LureSim.Hydrodynamics;
using LureSim.Swimming.Bodies;
using MathNet.Numerics.LinearAlgebra;

namespace LureSim.Swimming.Forces;

/// <summary>
/// Water that the body carries, as a matrix beside that of its own mass: its reaction is that of Kirchhoff's equations, the Munk moment within it (Lamb 1932, art. 124).
/// </summary>
internal static class AddedMass
{
    // Thickness of a paddle along the flow over its width; assumed.
    private const double PaddleThickness = 0.4;

    // Thickness of the disc that stands for a thin plate over its shorter half side.
    private const double Flat = 1e-3;

    // Slices of a rear part.
    private const int Slices = 48;

    /// <summary>Row-major order: velocities of the origin, rates of turn; 6 x 6 (kg, kg m, kg m2).</summary>
    public static Matrix<double> Of(ActionBody body, BentAxis axis, double waterDensity)
    {
        Span<double> k = stackalloc double[6];
        Whole(body, waterDensity, k);
        Vector3d a = body.SemiAxes;
        BodyBend bend = axis.Bend;
        Matrix<double> diagonal = Matrix<double>.Build.DenseOfDiagonalArray(k.ToArray());
        if (bend.Angle == 0) return diagonal;

        // A bent body is seen as its ellipsoid turned by the bend in proportion to the share that lies behind it, about the bend.
        double share = Math.Clamp((bend.Position + a.X) / (2 * a.X), 0, 1);
        Vector3d t = new BentAxis(new BodyBend(bend.Angle * share, bend.Roll, bend.Position)).Tangent(double.NegativeInfinity);
        double turned = Math.Asin(Math.Clamp(Math.Sqrt((t.Y * t.Y) + (t.Z * t.Z)), 0, 1));
        (double sr, double cr) = Math.SinCos(bend.Roll);

        // Turn about the axis x cross t.
        Vector3d about = new(0, sr, -cr);
        (double s, double c) = Math.SinCos(turned / 2);
        var attitude = new Attitude(c, s * about.X, s * about.Y, s * about.Z);
        Matrix<double> rotation = Matrix<double>.Build.Dense(6, 6);
        Span<Vector3d> columns = [attitude.ToWater(new(1, 0, 0)), attitude.ToWater(new(0, 1, 0)), attitude.ToWater(new(0, 0, 1))];
        for (int j = 0; j < 3; j++)
        {
            rotation[0, j] = rotation[3, j + 3] = columns[j].X;
            rotation[1, j] = rotation[4, j + 3] = columns[j].Y;
            rotation[2, j] = rotation[5, j + 3] = columns[j].Z;
        }

        double reach = 0.5 * (bend.Position + a.X) * share;
        (double sb, double cb) = Math.SinCos(bend.Angle);
        Vector3d centre = new(reach * (1 - cb), reach * sb * cr, reach * sb * sr);
        Matrix<double> shift = RigidBody.Shift(centre);
        return shift.TransposeThisAndMultiply(rotation * diagonal * rotation.Transpose()) * shift;
    }

    /// <summary>
    /// The share of the part behind a joint, about the joint; row-major order as in <see cref="Of"/>. Slices of the ellipsoid carry water by their section (strip theory), less at the
    /// ends: by p + q (x/a)^2 with p and q so that all slices together carry the ellipsoid's own water along and about each axis.
    /// </summary>
    public static Matrix<double> Behind(ActionBody body, double joint, double waterDensity)
    {
        Span<double> k = stackalloc double[6];
        Whole(body, waterDensity, k);
        double a = body.SemiAxes.X, end = Math.Clamp(joint / a, -1, 1);
        Matrix<double> m = Matrix<double>.Build.Dense(6, 6);
        (double pSide, double qSide) = EndLoss(k[1], k[5], a);
        (double pUp, double qUp) = EndLoss(k[2], k[4], a);
        double step = (end + 1) / Slices;
        for (int i = 0; i < Slices; i++)
        {
            double x = -1 + ((i + 0.5) * step), square = x * x, arm = (a * x) - joint;

            // Sections of an ellipsoid go by 1 - (x/a)^2, 4/3 in all.
            double section = 0.75 * step * (1 - square);
            double side = k[1] * section * (pSide + (qSide * square)), up = k[2] * section * (pUp + (qUp * square));
            m[0, 0] += k[0] * section;
            m[1, 1] += side;
            m[2, 2] += up;
            m[3, 3] += k[3] * section;
            m[4, 4] += up * arm * arm;
            m[5, 5] += side * arm * arm;
            m[1, 5] = m[5, 1] += side * arm;
            m[2, 4] = m[4, 2] -= up * arm;
        }

        return m;
    }

    /// <summary>Water carried by the paddle as it moves edgewise (kg): rho (pi/4) t^2 per height (elliptic cylinder, Lamb 1932, art. 71), t its thickness along the flow.</summary>
    public static double OfPaddle(FlexibleTail tail, double waterDensity)
    {
        double thickness = PaddleThickness * tail.PaddleWidth;
        return waterDensity * Math.PI / 4 * thickness * thickness * tail.PaddleHeight;
    }

    /// <summary>Water carried by the lip as it moves square to its face (kg): that of a flat elliptic disc of the lip's area and sides (Lamb 1932, art. 114).</summary>
    public static double OfLip(DivingLip lip, double waterDensity) => LipWater(lip, waterDensity).Across;

    /// <summary>The same as a matrix about the body's origin, with the water that it carries as it turns about its own middle lines; row-major order as in <see cref="Of"/>.</summary>
    public static Matrix<double> OfLipAbout(DivingLip lip, double waterDensity)
    {
        (double carried, double aboutAcross, double aboutAlong) = LipWater(lip, waterDensity);
        (Vector3d along, Vector3d across, Vector3d normal) = lip.Axes;
        Matrix<double> m = Matrix<double>.Build.Dense(6, 6);
        ReadOnlySpan<double> n = [normal.X, normal.Y, normal.Z], c = [along.X, along.Y, along.Z], a = [across.X, across.Y, across.Z];
        for (int i = 0; i < 3; i++)
        {
            for (int j = 0; j < 3; j++)
            {
                m[i, j] = carried * n[i] * n[j];
                m[i + 3, j + 3] = (aboutAcross * a[i] * a[j]) + (aboutAlong * c[i] * c[j]);
            }
        }

        Matrix<double> shift = RigidBody.Shift(lip.Position);
        return shift.TransposeThisAndMultiply(m) * shift;
    }

    private static (double Across, double AboutAcross, double AboutAlong) LipWater(DivingLip lip, double waterDensity)
    {
        double stretch = Math.Sqrt(4 / Math.PI), length = 0.5 * stretch * lip.Area / lip.Width, width = 0.5 * stretch * lip.Width, thick = Flat * Math.Min(length, width);
        Span<double> k = stackalloc double[6];
        EllipsoidAddedMass.Coefficients(length, width, thick, k);
        double displaced = waterDensity * 4.0 / 3 * Math.PI * length * width * thick;
        return (displaced * k[2], displaced * k[4], displaced * k[3]);
    }

    // Along and about the three axes of the ellipsoid (kg, kg m2).
    private static void Whole(ActionBody body, double waterDensity, Span<double> k)
    {
        if (body.AddedMassOverride is IReadOnlyList<double> given)
        {
            for (int i = 0; i < 6; i++) k[i] = given[i];
            return;
        }

        Vector3d a = body.SemiAxes;
        EllipsoidAddedMass.Coefficients(a.X, a.Y, a.Z, k);
        double displaced = waterDensity * 4.0 / 3 * Math.PI * a.X * a.Y * a.Z;
        for (int i = 0; i < 6; i++) k[i] *= displaced;
    }

    // p + q/5 = 1 and p/5 + 3 q/35 = about/(across a^2); no slice carries less than nothing.
    private static (double P, double Q) EndLoss(double across, double about, double a)
    {
        double q = across > 0 ? Math.Max(-1.25, 35.0 / 8 * ((5 * about / (across * a * a)) - 1)) : 0;
        return (1 - (q / 5), q);
    }
}
