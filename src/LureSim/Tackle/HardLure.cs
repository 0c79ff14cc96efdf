using LureSim.Hydrodynamics;
using LureSim.Model;

namespace LureSim.Tackle;

/// <summary>A lure with its own mass, fished without a jig head: a hard twitchbait or a spoon, as a point on its path.</summary>
/// <remarks>
/// Mass and volume are those of its parts. Drag of a twitchbait: its body along the flow by Hoelzer &amp; Sommerfeld 2008, its treble hooks as bent wire across
/// the flow (Cd 1.1), its lip as a plate by the cross-flow part of its angle (1.17 sin^3, Hoerner's square plate; from memory). Drag of a spoon: friction on both
/// faces and the normal force of the plate at a mean incidence of 45 degrees, between gliding and broadside (assumed); the action model corrects it while it is towed.
/// </remarks>
public sealed class HardLure : LureProperties
{
    private const double PlateDragCoefficient = 1.17;
    private const double HookDragCoefficient = 1.1;

    // Wire of a treble hook in shadow-free length: three shanks' worth of wire, as multiples of its diameter (assumed).
    private const double TrebleWireLengths = 30;

    // Blasius friction on one side of a plate, 1.328/sqrt(Re), on two sides.
    private const double BothSides = 2 * 1.328;

    private const double SpoonIncidence = Math.PI / 4;

    private double stokesTerm;
    private double frictionTerm;
    private double formTerm;

    /// <summary>Builds the lure.</summary>
    /// <param name="body">A hard twitchbait or a spoon.</param>
    /// <exception cref="ArgumentNullException"><paramref name="body"/> is null.</exception>
    /// <exception cref="ArgumentException">The body needs a jig head.</exception>
    public static HardLure Of(LureBody body)
    {
        ArgumentNullException.ThrowIfNull(body);
        if (body.NeedsHead)
            throw new ArgumentException("A soft body needs a jig head or a hook.", nameof(body));
        LureAssembly parts = LureParts.Of(JigHead.None(body), body, new Rigging());
        return body.Profile == BodyProfile.Spoon ? Spoon(body, parts) : Twitchbait(body, parts);
    }

    /// <inheritdoc/>
    public override double DragAreaTimesSpeed(double speed, double kinematicViscosity, out double slope)
    {
        double u = Math.Max(speed, 1e-9);
        double root = Math.Sqrt(u * kinematicViscosity);
        slope = (0.5 * frictionTerm * root / u) + formTerm;
        return (stokesTerm * kinematicViscosity) + (frictionTerm * root) + (formTerm * u);
    }

    private static HardLure Twitchbait(LureBody body, LureAssembly parts)
    {
        double volume = Math.PI / 4 * body.Height * body.Width * body.Length * JigLure.Fill(body.Profile);
        SpheroidShape shape = SpheroidShape.Of(volume, body.Length);
        double trebles = 2 * HookArea(LureParts.Figure("treble_mass_share") * TacklePresets.HookMass(body.Length));
        double lip = body.Lip is { } l ? PlateDragCoefficient * l.Length * l.Width * Math.Pow(Math.Sin(l.Angle), 3) : 0;
        return new HardLure
        {
            Mass = parts.Mass,
            Volume = parts.Volume,
            AddedMassCoefficient = shape.AddedAlong * volume / parts.Volume,
            ContactRadius = body.Height / 2,
            stokesTerm = shape.Stokes,
            frictionTerm = shape.Friction,
            formTerm = shape.Form + trebles + lip,
        };
    }

    private static HardLure Spoon(LureBody body, LureAssembly parts)
    {
        double area = Math.PI / 4 * body.Length * body.Width;
        double sine = Math.Sin(SpoonIncidence);

        // Ellipsoidal plate broadside, between disc (8/3 a^3) and strip (pi/4 b^2 a unit length): the strip value with the disc's end correction for this aspect (assumed).
        double added = Math.PI / 4 * body.Width * body.Width * body.Length * (2.0 / 3.0);
        return new HardLure
        {
            Mass = parts.Mass,
            Volume = parts.Volume,
            AddedMassCoefficient = added * sine * sine / parts.Volume,
            ContactRadius = body.Width / 4,
            frictionTerm = BothSides * area / Math.Sqrt(body.Length),
            formTerm = (PlateDragCoefficient * area * sine * sine * sine) + HookArea(LureParts.Figure("spoon_hook_share") * TacklePresets.HookMass(body.Length)),
        };
    }

    private static double HookArea(double mass)
    {
        double wire = 1.1e-3 * Math.Cbrt(mass / 0.6e-3);
        return HookDragCoefficient * wire * TrebleWireLengths * wire;
    }

    // Body of a length and volume as a prolate spheroid moving along its axis.
    private readonly record struct SpheroidShape(double Stokes, double Friction, double Form, double AddedAlong)
    {
        public static SpheroidShape Of(double volume, double length)
        {
            double width = Math.Sqrt(6 * volume / (Math.PI * length));
            double aspect = Math.Max(1.0001, length / width);
            double eccentricity = Math.Sqrt(1 - (1 / (aspect * aspect)));
            double surface = Math.PI * width * width / 2 * (1 + (aspect / eccentricity * Math.Asin(eccentricity)));
            double equivalent = Math.Cbrt(6 * volume / Math.PI);
            double sphericity = Math.PI * equivalent * equivalent / surface;
            double area = Math.PI * equivalent * equivalent / 4;
            double crosswise = area / (Math.PI / 4 * width * width);
            SpheroidAddedMass.Coefficients(aspect, out double axial, out _);
            return new SpheroidShape(
                area / equivalent * ((8 / Math.Sqrt(crosswise)) + (16 / Math.Sqrt(sphericity))),
                area / Math.Sqrt(equivalent) * 3 / Math.Pow(sphericity, 0.75),
                area * 0.42 * Math.Pow(10, 0.4 * Math.Pow(Math.Max(0, -Math.Log10(sphericity)), 0.2)) / crosswise,
                axial);
        }
    }
}
