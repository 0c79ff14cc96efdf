using LureSim.Hydrodynamics;
using LureSim.Model;
using MathNet.Numerics.RootFinding;

namespace LureSim.Tackle;

/// <summary>
/// A soft body on a weighted head or on a bare hook: mass, volume, added mass, drag, and the attitude in which it falls.
/// </summary>
/// <remarks>
/// Drag is the sum of: the soft body as an elongated body by Hoelzer &amp; Sommerfeld 2008 (along the flow, or at an angle between along and across by the
/// projected area); the part of a ball head that stands out beyond the body, by Brown &amp; Lawler 2003; the exposed hook as a cylinder across the flow
/// (Cd 1.1); and the paddle of a paddle tail as a disc in the body's wake (Cd 0.6 on its area, assumed until the action model gives it).
/// </remarks>
public sealed class JigLure : LureProperties
{
    // Share of length x height x width x pi/4 that a soft body fills: between a spheroid (2/3) and a cylinder (1); assumed.
    private const double FillPaddleTail = 0.62;
    private const double FillStraight = 0.66;

    // Cylinder across the flow, subcritical: Wieselsberger 1921.
    private const double HookDragCoefficient = 1.1;
    private const double PaddleDragCoefficient = 0.6;

    // Cylinder across the flow, for the fall attitude.
    private const double CrossFlowDragCoefficient = 1.1;

    // Reynolds number of the body at which its drag area is taken for the fall attitude: 0.4 m/s on 25 mm.
    private const double AttitudeReynolds = 1e4;

    // The fall attitude is found for brackish water at large; it hardly changes between fresh and sea water.
    private const double ReferenceWaterDensity = 1015;

    // Body drag of Hoelzer & Sommerfeld 2008 times U, as c0 + c1 sqrt(U) + c2 U (m3/s).
    private double stokesTerm;
    private double frictionTerm;
    private double formTerm;
    private double exposedHeadArea;

    /// <summary>Diameter of the ball head (m), 0 for a bare hook.</summary>
    public double HeadDiameter { get; private init; }

    /// <summary>
    /// Angle between the body's axis and the flow on a free fall (radians): 0 nose first, pi/2 broadside. From the balance of buoyancy, cross-flow drag and Munk moment.
    /// </summary>
    public double FallIncidence { get; private init; }

    /// <summary>Density of the whole lure (kg/m3).</summary>
    public double MeanDensity => Mass / Volume;

    /// <summary>Builds the lure.</summary>
    /// <param name="head">Head; mass 0 is a bare hook.</param>
    /// <param name="body">Soft body.</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A dimension is not positive.</exception>
    public static JigLure Of(JigHead head, LureBody body)
    {
        ArgumentNullException.ThrowIfNull(head);
        ArgumentNullException.ThrowIfNull(body);
        Guard.InRange(head.Mass, 0, 1);
        Guard.InRange(head.HookMass, 0, 0.1);
        Guard.Positive(body.Length);
        Guard.Positive(body.Height);
        Guard.Positive(body.Width);
        Guard.InRange(body.Density, 500, 3000);

        double fill = Fill(body.Profile);
        double bodyVolume = Math.PI / 4 * body.Height * body.Width * body.Length * fill;
        double headVolume = head.Mass / Materials.Density(head.Metal);
        double hookVolume = head.HookMass / Materials.SteelDensity;
        double bodyMass = bodyVolume * body.Density;
        double mass = bodyMass + head.Mass + head.HookMass;
        double volume = bodyVolume + headVolume + hookVolume;
        double headDiameter = Math.Cbrt(6 * headVolume / Math.PI);

        // The body as a prolate spheroid of the same volume and length.
        double width = Math.Sqrt(6 * bodyVolume / (Math.PI * body.Length));
        double aspect = Math.Max(1.0001, body.Length / width);
        double eccentricity = Math.Sqrt(1 - (1 / (aspect * aspect)));
        double surface = Math.PI * width * width / 2 * (1 + (aspect / eccentricity * Math.Asin(eccentricity)));
        double equivalent = Math.Cbrt(6 * bodyVolume / Math.PI);
        double sphericity = Math.PI * equivalent * equivalent / surface;

        // Fall attitude: moments about the centre of mass, x forward from the body's middle. The head sits at the nose, the hook in the front half.
        double noseX = body.Length / 2;
        bool onShank = head.Place == WeightPlace.Shank;
        double weightX = onShank ? noseX - (LureParts.Figure("shank_weight_station") * LureParts.CommonShankShare(body.Profile) * body.Length) : noseX;
        double massCentre = ((head.Mass * weightX) + (head.HookMass * 0.2 * body.Length)) / mass;
        double buoyancyCentre = ((headVolume * weightX) + (hookVolume * 0.2 * body.Length)) / volume;
        SpheroidAddedMass.Coefficients(aspect, out double axial, out double transverse);
        double frontal = Math.PI * width * width / 4;
        double paddle = body.Profile == BodyProfile.PaddleTail ? Math.PI / 4 * body.Height * body.Height * 0.8 : 0;
        double equivalentArea = Math.PI * equivalent * equivalent / 4;
        double hookWire = 1.1e-3 * Math.Cbrt(head.HookMass / 0.6e-3);
        double hookDragArea = HookDragCoefficient * hookWire * 18 * hookWire;

        // Metal on the shank lies half in the body.
        double headArea = Math.PI * headDiameter * headDiameter / 4 * (onShank ? 0.5 : 1);
        double bodyDragArea = (equivalentArea * BodyDrag.HoelzerSommerfeld2008(AttitudeReynolds, sphericity, equivalentArea / frontal))
            + (0.42 * ExposedArea(headArea, frontal, onShank)) + hookDragArea;
        double paddleDragArea = PaddleDragCoefficient * paddle;
        double baseArea = body.Profile == BodyProfile.PaddleTail ? paddle : 0.1 * frontal;
        double incidence = FallIncidenceOf(new FallBalance(
            ReferenceWaterDensity * volume * 9.80665,
            Math.Max(mass - (ReferenceWaterDensity * volume), 1e-6) * 9.80665,
            massCentre,
            buoyancyCentre,
            -noseX * paddleDragArea / (bodyDragArea + paddleDragArea),
            Math.PI / 4 * body.Length * width,
            bodyDragArea + paddleDragArea,
            Math.Max(0, ((transverse - axial) * bodyVolume) - (baseArea * (noseX + massCentre)))));

        // Weighted by attitude: a lure nose first moves along its axis.
        double sine = Math.Sin(incidence);
        double added = axial + ((transverse - axial) * sine * sine);
        double projected = (frontal * Math.Cos(incidence)) + (Math.PI / 4 * body.Length * width * sine);
        double crosswise = equivalentArea / projected;
        return new JigLure
        {
            Mass = mass,
            Volume = volume,
            AddedMassCoefficient = ((added * bodyVolume) + (0.5 * headVolume)) / volume,
            ContactRadius = Math.Max(headDiameter, body.Height) / 2,
            FallIncidence = incidence,
            HeadDiameter = headDiameter,
            exposedHeadArea = ExposedArea(headArea, frontal * Math.Cos(incidence), onShank),
            stokesTerm = equivalentArea / equivalent * ((8 / Math.Sqrt(crosswise)) + (16 / Math.Sqrt(sphericity))),
            frictionTerm = equivalentArea / Math.Sqrt(equivalent) * 3 / Math.Pow(sphericity, 0.75),
            formTerm = (equivalentArea * 0.42 * Math.Pow(10, 0.4 * Math.Pow(Math.Max(0, -Math.Log10(sphericity)), 0.2)) / crosswise)
                + hookDragArea
                + (paddleDragArea * Math.Cos(incidence)),
        };
    }

    /// <summary>Share of length x height x width x pi/4 that a body fills.</summary>
    internal static double Fill(BodyProfile profile) => profile == BodyProfile.PaddleTail ? FillPaddleTail : FillStraight;

    /// <inheritdoc/>
    public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double u = Math.Max(speed, 1e-9);
        double root = Math.Sqrt(u * kinematicViscosity);
        double value = (stokesTerm * kinematicViscosity) + (frictionTerm * root) + (formTerm * u);
        slope = (0.5 * frictionTerm * root / u) + formTerm;
        if (exposedHeadArea > 0)
        {
            double reynolds = u * HeadDiameter / kinematicViscosity;
            double drag = BodyDrag.SphereBrownLawler2003(reynolds);
            value += exposedHeadArea * drag * u;

            // d(Cd U)/dU by a small relative difference: smooth, and cheap beside the line.
            const double Relative = 1e-4;
            double next = BodyDrag.SphereBrownLawler2003(reynolds * (1 + Relative)) * (1 + Relative);
            slope += exposedHeadArea * (next - drag) / Relative;
        }

        return value;
    }

    // A head at the nose shelters the body behind it; metal under the shank stands beside it.
    private static double ExposedArea(double headArea, double frontal, bool onShank) => onShank ? headArea : Math.Max(0, headArea - frontal);

    // Equilibrium angle a between axis and flow on a free fall. Drag balances the wet weight W and acts at the body's middle (or towards the tail, where a
    // paddle drags), buoyancy B at its own centre: about the centre of mass both turn the nose down, in proportion to sin a. The Munk moment
    // 1/2 rho U^2 sin 2a (V (k2 - k1) - A_b x_b) turns the body broadside (Munk 1924, NACA TR 184), less by the base area A_b of a blunt tail at the distance x_b
    // (Jorgensen 1977, NASA TR R-474, from memory).
    private static double FallIncidenceOf(in FallBalance balance)
    {
        double restoring = (balance.Buoyancy * (balance.MassCentre - balance.BuoyancyCentre)) + (balance.WetWeight * (balance.MassCentre - balance.DragCentre));
        FallBalance b = balance;
        double Excess(double a)
        {
            double s = Math.Sin(a), c = Math.Cos(a);
            double drag = 0.5 * ReferenceWaterDensity * ((CrossFlowDragCoefficient * b.SideArea * s * s * s) + (b.AxialDragArea * c * c * c));
            double munk = ReferenceWaterDensity * b.OverturningVolume * b.WetWeight / drag * c;
            return munk - restoring;
        }

        double high = Math.PI / 2;
        if (Excess(0) <= 0) return 0;
        if (Excess(high) >= 0) return high;
        return Bisection.FindRoot(Excess, 0, high, 1e-6, 200);
    }

    private readonly record struct FallBalance(
        double Buoyancy,
        double WetWeight,
        double MassCentre,
        double BuoyancyCentre,
        double DragCentre,
        double SideArea,
        double AxialDragArea,
        double OverturningVolume);
}
