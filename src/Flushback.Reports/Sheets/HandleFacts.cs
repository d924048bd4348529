using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Materials;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>What hand and steel feel, a line each.</summary>
internal static class HandleFacts
{
    /// <summary>So near to the centre pin a stress is said to be at it.</summary>
    private const double AtThePinMm = 1;

    public static IEnumerable<Fact> Of(HandleReport report, Measure measure) =>
        [
            PullToOpen(report.Pull, measure),
            Torque("Torque to open", report, s => s.OpeningTorqueNmm, s => -s.TorqueNmm, measure),
            Torque("Torque to close", report, s => s.ClosingTorqueNmm, s => s.TorqueNmm, measure),
            new Fact(
                "Friction",
                $"coefficient {measure.Number(report.Settings.Friction, 2)}, at the contacts and on the pivot"
            ),
            new Fact("Spring rate", $"{measure.Rate(report.Spring.StiffnessNPerMm)}, lifted over the pivot"),
            LiftApart(report, measure),
            PeakStress(report, measure),
            .. Strength(report, measure),
            Hardness(report.Settings, measure),
            .. report.Suggestion is { } suggestion
                ? [new Fact("Pull wanted", suggestion.Sentence)]
                : Array.Empty<Fact>(),
        ];

    private static Fact PullToOpen(NailPull pull, Measure measure) =>
        new(
            "Pull to open",
            $"{measure.Force(pull.PullN)} at the nail nick, {measure.LongLength(pull.NailNickMm)} from the pivot; greatest with"
                + $" the blade at {measure.Degrees(pull.BladeAngle, 0)}. {measure.Force(pull.WithoutFrictionN)} without friction"
        );

    private static Fact Torque(
        string label,
        HandleReport report,
        Func<HandleSample, double> with,
        Func<HandleSample, double> without,
        Measure measure
    )
    {
        HandleSample most = report.Curve.MaxBy(with);
        return new Fact(
            label,
            $"{measure.Number(with(most), 0)} N mm at most, at {measure.Degrees(most.BladeAngle, 0)};"
                + $" {measure.Number(report.Curve.Max(without), 0)} N mm without friction"
        );
    }

    private static Fact LiftApart(HandleReport report, Measure measure)
    {
        HandleSample most = report.Curve.MaxBy(s => Math.Abs(s.LiftMm - s.BenchLiftMm));
        return new Fact(
            "Lift against the bench",
            $"{measure.Reading(most.LiftMm - most.BenchLiftMm)} at {measure.Degrees(most.BladeAngle, 0)}, where they are"
                + " farthest apart"
        );
    }

    private static Fact PeakStress(HandleReport report, Measure measure)
    {
        StrengthVerdict strength = report.Strength;
        double centrePin = -report.Spring.StiffNoseMm - report.Spring.OverhangMm;
        string place =
            Math.Abs(strength.AtXMm - centrePin) < AtThePinMm
                ? "at the centre pin"
                : $"{measure.Mm(-strength.AtXMm, 1)} mm behind the pivot";
        return new Fact(
            "Peak stress",
            $"{measure.Stress(strength.PeakStressMpa)}, {place}, with the blade at {measure.Degrees(strength.BladeAngle, 0)}"
        );
    }

    private static IEnumerable<Fact> Strength(HandleReport report, Measure measure)
    {
        StrengthVerdict strength = report.Strength;
        HandleSettings settings = report.Settings;
        string steel = $"{settings.SpringSteel.Designation} at {measure.Number(settings.SpringHardnessHrc, 1)} HRC";
        if (strength is not { TensileMpa: { } tensile, GerberMargin: { } gerber, YieldMargin: { } yield })
        {
            yield return new Fact("Set and fatigue", $"not known: no strength is published for {steel}");
            yield break;
        }

        yield return new Fact(
            "Set and fatigue",
            $"the spring {LifeWords(strength.Life)}: bent to {measure.Number(strength.PeakStressMpa / tensile.Low, 2)} of the"
                + $" tensile strength, {TensileWords(tensile, measure)} for {steel}. Up to"
                + $" {measure.Number(SpringStrength.EndlessShare, 2)} it lasts without end, up to"
                + $" {measure.Number(SpringStrength.LimitedShare, 2)} a thousand to a million openings; above"
                + $" {measure.Number(SpringStrength.RestShare, 2)} it takes a set"
        );
        yield return new Fact(
            "Margins",
            $"{measure.Number(gerber, 2)} against fatigue (Gerber), {measure.Number(yield, 2)} against yield: so many times the"
                + " mean stress could be had, the alternating part being fixed by the tang"
        );
    }

    private static Fact Hardness(HandleSettings settings, Measure measure) =>
        new(
            "Hardness",
            $"blade {measure.Number(settings.BladeHardnessHrc, 1)} HRC on spring"
                + $" {measure.Number(settings.SpringHardnessHrc, 1)} HRC: the {settings.SofterPart} is the one that yields where"
                + " they press on each other"
        );

    private static string TensileWords(ValueRange tensile, Measure measure) =>
        tensile.Low < tensile.High
            ? $"{measure.Number(tensile.Low, 0)} to {measure.Number(tensile.High, 0)} MPa"
            : $"{measure.Number(tensile.Low, 0)} MPa";

    private static string LifeWords(SpringLife life) =>
        life switch
        {
            SpringLife.Endless => "lasts without end",
            SpringLife.Limited => "lasts a thousand to a million openings",
            SpringLife.Short => "holds at rest but tires early",
            _ => "takes a set",
        };
}
