using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Handle.Beams;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Handle;

/// <summary>Why a knife can not be put in the handle.</summary>
internal static class HandleProblems
{
    // A spring stressed beyond this many times its strength lifts nothing: it bends for good or breaks.
    private const double HopelessStress = 2;

    // Without a known strength: more than any spring steel bears.
    private const double AnyTensileMpa = 2200;

    /// <summary>What is wrong before anything is computed.</summary>
    public static ImmutableArray<KnifeProblem> Before(Placement placement, HandleSettings settings)
    {
        ImmutableArray<KnifeProblem>.Builder problems = ImmutableArray.CreateBuilder<KnifeProblem>();
        if (!(settings.WidthMm > 0))
        {
            problems.Add(
                new KnifeProblem(
                    "WIDTH_NOT_POSITIVE",
                    KnifeSubject.SpringWidth,
                    FormattableString.Invariant(
                        $"The spring's width of {settings.WidthMm:0.###} mm is not above zero; give the thickness of the stock it is cut from."
                    )
                )
            );
        }

        if (!(settings.PreloadMm >= 0))
        {
            problems.Add(
                new KnifeProblem(
                    "PRELOAD_NEGATIVE",
                    KnifeSubject.Preload,
                    FormattableString.Invariant(
                        $"The preload of {settings.PreloadMm:0.###} mm is below zero, so that the spring would not press on the tang; give how far its nose sinks when the blade is taken out."
                    )
                )
            );
        }

        if (PinProblem(placement) is { } pin)
        {
            problems.Add(pin);
        }
        else if (settings.StiffNoseMm is { } behind && -behind <= placement.Knife.CentrePin.Centre.X)
        {
            problems.Add(
                new KnifeProblem(
                    "STIFF_NOSE_BEHIND_CENTRE_PIN",
                    KnifeSubject.StiffNose,
                    FormattableString.Invariant(
                        $"The stiff nose is said to begin {behind:0.###} mm behind the pivot, but the centre pin lies only {-placement.Knife.CentrePin.Centre.X:0.###} mm behind it; let the nose begin in front of the centre pin."
                    )
                )
            );
        }

        return problems.ToImmutable();
    }

    /// <summary>What is wrong with the beam: too little metal at a hole.</summary>
    public static KnifeProblem? Thin(Placement placement, SpringBeam beam)
    {
        foreach (BeamStation station in beam.Stations)
        {
            BeamSection section = station.Section;
            if (section.HoleMm > 0 && Math.Min(section.OverHoleMm, section.UnderHoleMm) <= 0)
            {
                return new KnifeProblem(
                    "SPRING_THINNER_THAN_HOLE",
                    KnifeSubject.Spring,
                    FormattableString.Invariant(
                        $"The spring is {section.DepthMm:0.###} mm deep at a pin's hole that takes {section.HoleMm:0.###} mm of it and breaks through one side; make the hole smaller, or the spring deeper there."
                    ),
                    placement.ToDrawing.Apply(station.Centre)
                );
            }
        }

        return null;
    }

    /// <summary>A spring that can not be lifted by the tang.</summary>
    public static KnifeProblem? Stuck(HandleModel model, HandleSweep? sweep)
    {
        double tensile = model.Settings.SpringSteel.TensileAt(model.Settings.SpringHardnessHrc)?.High ?? AnyTensileMpa;
        if (sweep is not null && sweep.PeakStressMpa <= HopelessStress * tensile)
        {
            return null;
        }

        string why = sweep is null
            ? "the spring would have to bow out of all shape"
            : FormattableString.Invariant(
                $"the spring would have to bear {sweep.PeakStressMpa:0} MPa, more than {HopelessStress:0} times the {tensile:0} MPa its steel stands"
            );
        return new KnifeProblem(
            "PRELOAD_TOO_LARGE",
            KnifeSubject.Preload,
            FormattableString.Invariant(
                $"With a preload of {model.PreloadMm:0.###} mm the blade can not be turned: {why}; give less preload, or a thinner or longer spring."
            )
        );
    }

    private static KnifeProblem? PinProblem(Placement placement)
    {
        if (placement.Knife.RearPin is not { } rear)
        {
            return new KnifeProblem(
                "REAR_PIN_MISSING",
                KnifeSubject.RearPin,
                "The handle needs the pin at the rear end of the spring, which holds it down there; add the rear pin, or ask for the bench alone."
            );
        }

        Circle centre = placement.Knife.CentrePin;
        if (rear.Centre.X + rear.RadiusMm < centre.Centre.X - centre.RadiusMm)
        {
            return null;
        }

        Point at = placement.ToDrawing.Apply(rear.Centre);
        return new KnifeProblem(
            "REAR_PIN_NOT_BEHIND",
            KnifeSubject.RearPin,
            FormattableString.Invariant(
                $"The rear pin at ({at.X:0.###}, {at.Y:0.###}) mm does not lie behind the centre pin but at it or towards the nose; the centre pin is the one next to the tang, the rear pin the one at the far end."
            ),
            at
        );
    }
}
