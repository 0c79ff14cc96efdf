using CsCheck;
using LureSim.Hydrodynamics;
using LureSim.Lures;
using LureSim.Model;
using LureSim.Motion.Line;
using LureSim.Tackle;
using LureSim.Water;

namespace LureSim.Tests.Motion;

/// <summary>Analytic derivatives of the line's forces against differences, on random states.</summary>
public class LineDynamicsDerivativeTests
{
    private const int Segments = 5;

    private enum Place
    {
        DeepWater,
        Air,
        AcrossTheSurface,
        NearBottom,
        InGrass,
        OnSlope,
        InGrassOnSlope,
    }

    private sealed record Case(Place Place, LineDynamics Dynamics, double[] Position, double[] Velocity, double LineOut, double Rate, double Acceleration, double Stiffness, bool Leader);

    // Of the largest entry of a block. The engine's direction vector is shorter than one by half of (1e-3/stretch)^2, which keeps a slack segment defined; the
    // derivatives take it as a unit vector, so they are off where the stream runs within a degree of the line, and a little more where a segment is slack.
    private const double TautTolerance = 1e-3;
    private const double SlackTolerance = 2e-2;

    [Theory]
    [InlineData("DeepWater", false)]
    [InlineData("Air", false)]
    [InlineData("AcrossTheSurface", false)]
    [InlineData("NearBottom", false)]
    [InlineData("InGrass", false)]
    [InlineData("OnSlope", false)]
    [InlineData("InGrassOnSlope", false)]
    [InlineData("DeepWater", true)]
    [InlineData("Air", true)]
    [InlineData("AcrossTheSurface", true)]
    [InlineData("NearBottom", true)]
    [InlineData("InGrass", true)]
    [InlineData("OnSlope", true)]
    [InlineData("InGrassOnSlope", true)]
    public void Every_block_is_the_derivative_of_the_force(string place, bool slack) =>
        Gen.Select(Gen.Int[0, 1_000_000], Gen.Double[-2.0, 3.3], Gen.Bool, Gen.Bool).HoldsFor(
            (seed, logStiffness, leader, reeling) => CheckAll(Build(Enum.Parse<Place>(place), slack, new Random(seed), Math.Pow(10, logStiffness), leader, reeling), slack ? SlackTolerance : TautTolerance),
            iterations: 200);

    [Fact]
    public void Lift_is_across_the_flow_and_absent_in_a_vertical_fall() =>
        Gen.Select(Gen.Double[-3e-4, 3e-4], Gen.Double[-2.0, 2.0], Gen.Double[-2.0, 2.0], Gen.Double[-2.0, 2.0]).HoldsFor((area, vx, vy, vz) =>
        {
            double[] lift = Lift(area, vx, vy, vz);
            double squared = (vx * vx) + (vy * vy) + (vz * vz), speed = Math.Sqrt(squared);
            Assert.Equal(0, (lift[0] * vx) + (lift[1] * vy) + (lift[2] * vz), 1e-9);

            // 1/2 rho A U^2 cos(climb) by its definition.
            double expected = 0.5 * 1000 * area * (speed / (speed + 0.2)) * speed * Math.Sqrt((vx * vx) + (vy * vy));
            Assert.Equal(Math.Abs(expected), Math.Sqrt((lift[0] * lift[0]) + (lift[1] * lift[1]) + (lift[2] * lift[2])), 1e-9);
            Assert.True(lift[2] * area >= -1e-12);
            Assert.All(Lift(area, 0, 0, vz), f => Assert.Equal(0, f, 1e-12));
        });

    private static double[] Lift(double area, double vx, double vy, double vz)
    {
        double[] With(double a)
        {
            var dynamics = new LineDynamics(
                LiftingLure.Of(0.01, a), LineProperties.Uniform(LineMaterial.Round(2e-4, 1e-4, 1000)), WaterColumn.Unbounded(1000, 1e-3), LineDragLaw.ChooCasarella, new LineMesh(2, 1, 0.1));
            double[] position = [0, 0, -5, 1, 0, -5, 2, 0, -5], velocity = [vx, vy, vz, 0, 0, 0, 0, 0, 0], force = new double[6];
            dynamics.Evaluate(position, velocity, 2, 0, 0, force, false);
            return force;
        }

        double[] with = With(area), without = With(0);
        return [with[0] - without[0], with[1] - without[1], with[2] - without[2]];
    }

    private static Case Build(Place place, bool slack, Random random, double stiffness, bool leader, bool reeling)
    {
        double Range(double low, double high) => low + ((high - low) * random.NextDouble());
        double depth = 4;
        var main = new LineMaterial(Range(0.1e-3, 0.5e-3), Range(1e-5, 2e-4), stiffness, 4e-8);
        LineProperties line = leader ? new LineProperties(main, new LineMaterial(0.4e-3, 2e-4, 0.5 * stiffness, 1.2e-7), Range(0.1, 2)) : LineProperties.Uniform(main);
        int kind = random.Next(3);
        LureProperties lure = kind == 1 ? LiftingLure.Of(Range(1e-3, 3e-2), Range(-3e-4, 3e-4)) : kind == 0
            ? SphereLure.Of(Range(1e-3, 3e-2), Range(600, 11340))
            : TackleBuilder.Lure(
                new JigHead(Range(1e-3, 2e-2), HeadMetal.Lead, 0.6e-3, "test"), new LureBody(BodyProfile.PaddleTail, Range(0.05, 0.12), 0.02, 0.015, Range(900, 1200), "test"));
        var profile = new CurrentProfile((CurrentProfileKind)random.Next(3), Range(0, 1.5), Range(-3, 3), depth, 4e-4);
        var water = new WaterColumn(
            depth, 1020, 1.1e-3, profile, BottomProperties.Of((BottomKind)random.Next(4)), place == Place.InGrass ? 0.5 : 0, Range(-10, 10), Range(-10, 10));
        bool slope = place is Place.OnSlope or Place.InGrassOnSlope;
        Spot bank = Bank(Range(-1, 1), place == Place.InGrassOnSlope ? 0.5 : 0);
        double deep = bank.DepthAt(5, 0), steepness = 0.5;

        // Still water: what a slope does to the current changes over metres, and is left out of the derivatives.
        if (slope) water = WaterColumn.Of(bank);
        LineDragLaw law = random.Next(3) switch
        {
            0 => LineDragLaw.Constant(1.2, 0.01),
            1 => LineDragLaw.ChooCasarella,
            _ => LineDragLaw.ChurchillBernstein,
        };
        double grading = Range(1, 2), lineOut = Range(2, 6);
        var dynamics = new LineDynamics(lure, line, water, law, new LineMesh(Segments, grading, Range(0, 1)));
        double[] position = new double[3 * (Segments + 1)];
        double[] velocity = new double[3 * (Segments + 1)];
        double z = place switch
        {
            Place.DeepWater => Range(-2.5, -1.5),
            Place.Air => Range(3, 5),
            Place.AcrossTheSurface => Range(-0.012, 0.012),
            Place.OnSlope => -deep + (Math.Sqrt(1 + (steepness * steepness)) * (lure.ContactRadius + Range(-2e-3, 1e-3))),
            Place.InGrassOnSlope => -deep + Range(0.46, 0.54),
            Place.NearBottom => -depth + lure.ContactRadius + Range(-2e-3, 1e-3),
            _ => -depth + Range(0.46, 0.54),
        };
        position[0] = 5;
        position[2] = z;
        for (int j = 0; j < Segments; j++)
        {
            double length = lineOut * (dynamics.Fractions[j + 1] - dynamics.Fractions[j]);
            double stretch = slack && random.Next(3) == 0 ? Range(0.3, 0.99) : 1 + Range(-1e-4, 3e-4);

            // Directions that keep the line in the medium of its case.
            double tilt = place switch
            {
                Place.DeepWater => Range(-0.15, 0.15),
                Place.Air => Range(-0.2, 1),
                Place.AcrossTheSurface => Range(-0.02, 0.02),
                Place.NearBottom => Range(-2e-3, 2e-3),
                _ => Range(-0.02, 0.02),
            };
            // Down the slope: line on the bottom has no part in the derivatives by the line out.
            double azimuth = slope ? bank.ProfileDirection + Range(-0.5, 0.5) : Range(-3, 3);
            length *= stretch;
            position[(3 * j) + 3] = position[3 * j] + (length * Math.Cos(tilt) * Math.Cos(azimuth));
            position[(3 * j) + 4] = position[(3 * j) + 1] + (length * Math.Cos(tilt) * Math.Sin(azimuth));
            position[(3 * j) + 5] = position[(3 * j) + 2] + (length * Math.Sin(tilt));
        }

        for (int m = 0; m < velocity.Length; m++) velocity[m] = Range(-1, 1);
        return new Case(place, dynamics, position, velocity, lineOut, reeling ? Range(-2, 1) : 0, reeling && random.Next(2) == 0 ? Range(-3, 3) : 0, stiffness, leader);
    }

    // Falls away at one to two in a direction of its own.
    private static Spot Bank(double direction, double grass) => new()
    {
        Depth = 22,
        Profile = new BottomProfile { Points = [new(0, 2), new(40, 22)], Stretches = [new(0, 40) { Bottom = BottomKind.Mud }] },
        ProfileDirection = direction,
        GrassHeight = grass,
        Salinity = 30,
        TemperatureCelsius = 20,
        Clarity = new SecchiClarity(2, WaterKind.CoastalGreen),
        Sky = new SkyByElevation(0.5),
        StrikeZone = new StrikeZone(1, 2),
        TargetFish = "red drum",
    };

    private static void CheckAll(Case c, double relative)
    {
        int size = 3 * Segments;
        double[] force = new double[size];
        c.Dynamics.Evaluate(c.Position, c.Velocity, c.LineOut, c.Rate, c.Acceleration, force, true);
        double[][] byR = Blocks(c.Dynamics, false), byW = Blocks(c.Dynamics, true);
        double[] tipR = [.. c.Dynamics.TipTensionByPosition], tipW = [.. c.Dynamics.TipTensionByVelocity];
        CheckLine(c, relative);
        for (int column = 0; column < size; column++)
        {
            Difference(c, c.Position, column, out double[] byPosition, out double tensionByPosition, out double noisePosition);
            Difference(c, c.Velocity, column, out double[] byVelocity, out double tensionByVelocity, out double noiseVelocity);
            for (int row = 0; row < size; row++)
            {
                Compare(c, relative, "position", row, column, Entry(byR, row, column), byPosition[row], Scale(byR, row, column), noisePosition);
                Compare(c, relative, "velocity", row, column, Entry(byW, row, column), byVelocity[row], Scale(byW, row, column), noiseVelocity);
            }

            double expectedR = column / 3 == Segments - 1 ? tipR[column % 3] : 0, expectedW = column / 3 == Segments - 1 ? tipW[column % 3] : 0;
            Compare(c, relative, "tip tension by position", -1, column, expectedR, tensionByPosition, tipR.Max(Math.Abs), noisePosition);
            Compare(c, relative, "tip tension by velocity", -1, column, expectedW, tensionByVelocity, tipW.Max(Math.Abs), noiseVelocity);
        }
    }

    // By the line out and its speed, for an open bail; the leader's share of a segment and the surface's part of the sliding are left out of them.
    private static void CheckLine(Case c, double relative)
    {
        if (c.Place == Place.AcrossTheSurface || c.Leader || c.Acceleration != 0) return;
        double[] byRate = new double[3 * Segments], byBoth = new double[3 * Segments];
        c.Dynamics.LineColumn(0, byRate);
        c.Dynamics.LineColumn(1, byBoth);
        double[] At(double line, double rate)
        {
            double[] f = new double[3 * Segments];
            c.Dynamics.Evaluate(c.Position, c.Velocity, line, rate, 0, f, false);
            return f;
        }

        double[] Slope(Func<double, double[]> f, double step)
        {
            double[] a = f(-2 * step), b = f(-step), d = f(step), e = f(2 * step);
            return [.. a.Select((_, i) => ((8 * (d[i] - b[i])) - (e[i] - a[i])) / (12 * step))];
        }

        double[] rateExpected = Slope(h => At(c.LineOut, c.Rate + h), 2e-7), lineExpected = Slope(h => At(c.LineOut + h, c.Rate), 2e-8);
        double[] byLine = [.. byBoth.Select((v, i) => v - byRate[i])];
        for (int row = 0; row < byLine.Length; row++)
        {
            Compare(c, relative, "speed of the line out", row, -1, byRate[row], rateExpected[row], byRate.Max(Math.Abs), 3 * c.Stiffness * 4e-16 / 2e-7);
            Compare(c, relative, "line out", row, -1, byLine[row], lineExpected[row], byLine.Max(Math.Abs), 3 * c.Stiffness * 4e-16 / 2e-8);
        }
    }

    // Central difference of fourth order; noise is what rounding of the strain can do to it.
    private static void Difference(Case c, double[] variable, int index, out double[] result, out double tension, out double noise)
    {
        bool position = ReferenceEquals(variable, c.Position);
        double step = position ? 2e-8 : 2e-7;
        double[][] f = new double[4][];
        double[] t = new double[4];
        double[] offsets = [-2, -1, 1, 2];
        double keep = variable[index];
        for (int i = 0; i < 4; i++)
        {
            variable[index] = keep + (offsets[i] * step);
            f[i] = new double[3 * Segments];
            c.Dynamics.Evaluate(c.Position, c.Velocity, c.LineOut, c.Rate, c.Acceleration, f[i], false);
            t[i] = c.Dynamics.Tension[^1];
        }

        variable[index] = keep;
        result = new double[3 * Segments];
        for (int m = 0; m < result.Length; m++) result[m] = ((8 * (f[2][m] - f[1][m])) - (f[3][m] - f[0][m])) / (12 * step);
        tension = ((8 * (t[2] - t[1])) - (t[3] - t[0])) / (12 * step);
        noise = 3 * ((c.Stiffness * 4e-16) + (f[1].Max(Math.Abs) * 4e-16)) / step;
    }

    private static void Compare(Case c, double relative, string what, int row, int column, double analytic, double numeric, double scale, double noise)
    {
        double tolerance = (relative * scale) + noise;
        Assert.True(
            Math.Abs(analytic - numeric) <= tolerance,
            FormattableString.Invariant($"{c.Place}, {what}: force {row}, variable {column}: analytic {analytic:G8}, difference {numeric:G8}, tolerance {tolerance:G3}"));
    }

    private static double[][] Blocks(LineDynamics dynamics, bool byVelocity) =>
        [.. Enumerable.Range(0, Segments * Segments).Select(i => dynamics.Blocks.NodeBlock(byVelocity, i / Segments, i % Segments))];

    private static double Entry(double[][] blocks, int row, int column) => Block(blocks, row, column)[(3 * (row % 3)) + (column % 3)];

    private static double Scale(double[][] blocks, int row, int column) => Block(blocks, row, column).Max(Math.Abs);

    private static double[] Block(double[][] blocks, int row, int column) => blocks[(row / 3 * Segments) + (column / 3)];

    // A lure whose lift area comes in with the speed and that falls with another drag than it is drawn with.
    private sealed class LiftingLure : LureProperties
    {
        private double Area { get; init; }

        public static LiftingLure Of(double mass, double area) =>
            new() { Mass = mass, Volume = mass / 2000, AddedMassCoefficient = 0.5, ContactRadius = 0.01, Area = area };

        public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
        {
            slope = 2e-4;
            return 2e-4 * speed;
        }

        public override double FallDragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
        {
            slope = 9e-4 + (2e-4 * speed);
            return (9e-4 * speed) + (1e-4 * speed * speed);
        }

        public override double LiftAreaAt(double speed, out double slope)
        {
            slope = Area * 0.2 / ((speed + 0.2) * (speed + 0.2));
            return Area * speed / (speed + 0.2);
        }
    }
}
