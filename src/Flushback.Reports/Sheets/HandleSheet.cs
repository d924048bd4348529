using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>The handle in words, before it is laid out.</summary>
internal sealed record HandleSheet
{
    private const double NewtonsPerPound = 4.4482216152605;

    public required string Assumed { get; init; }

    public required IReadOnlyList<HandleStopRow> Stops { get; init; }

    public required IReadOnlyList<Fact> Facts { get; init; }

    public required IReadOnlyList<SensitivityRow> Sensitivities { get; init; }

    public required string Limits { get; init; }

    /// <summary>Puts a report into words.</summary>
    public static HandleSheet Of(HandleReport report, Measure measure) =>
        new()
        {
            Assumed = AssumedIn(report, measure),
            Stops = [.. report.Stops.Select(stop => HandleStopRow.Of(stop, measure))],
            Facts = [.. FactsOf(report, measure)],
            Sensitivities = [.. report.Sensitivities.Select(row => SensitivityRow.Of(row, measure))],
            Limits =
                "Estimates, not a certification: a beam through both pins with a stiff nose, bending alone, the net section at"
                + " the pins' holes without stress raisers, friction felt by the hand but not by the spring. Forces and stresses"
                + " are linear in the modulus, forces in the width too. Heat treatment belongs in a qualified shop.",
        };

    /// <summary>The bench report with the handle's findings among its own, worst first.</summary>
    public static BenchReport Together(BenchReport bench, HandleReport? handle) =>
        handle is null
            ? bench
            : bench with
            {
                Findings = [.. bench.Findings.Concat(handle.Findings).OrderByDescending(finding => finding.Severity)],
            };

    private static string AssumedIn(HandleReport report, Measure measure)
    {
        SpringFigures spring = report.Spring;
        HandleSettings settings = report.Settings;
        return $"Spring of {settings.SpringSteel.Designation}, {measure.Number(settings.SpringHardnessHrc, 1)} HRC,"
            + $" {measure.Length(settings.WidthMm)} wide, modulus {measure.Number(spring.ModulusMpa / 1000, 0)} GPa; preload"
            + $" {measure.Length(spring.PreloadMm)} over the pivot; friction {measure.Number(settings.Friction, 2)}. The nose is"
            + $" taken as stiff from {measure.Number(spring.StiffNoseMm, 1)} mm behind the pivot.";
    }

    private static IEnumerable<Fact> FactsOf(HandleReport report, Measure measure)
    {
        NailPull pull = report.Pull;
        StrengthVerdict strength = report.Strength;
        yield return new Fact(
            "Pull to open",
            $"{Force(pull.PullN, measure)} at the nail nick, {measure.Number(pull.NailNickMm, 1)} mm from the pivot, greatest at"
                + $" {measure.Degrees(pull.BladeAngle, 0)}; {Force(pull.WithoutFrictionN, measure)} without friction"
        );
        yield return new Fact(
            "Spring rate",
            $"{measure.Number(report.Spring.StiffnessNPerMm, 1)} N for a millimetre over the pivot"
        );
        yield return new Fact(
            "Lift against the bench",
            $"{measure.Length(report.Curve.Max(s => Math.Abs(s.LiftMm - s.BenchLiftMm)))} apart at most"
        );
        yield return new Fact(
            "Peak stress",
            $"{Mpa(strength.PeakStressMpa, measure)} at {measure.Degrees(strength.BladeAngle, 0)}, at x"
                + $" {measure.Mm(strength.AtXMm, 1)} mm along the spring"
        );
        if (strength is { TensileMpa: { } tensile, GerberMargin: { } gerber, YieldMargin: { } yield })
        {
            yield return new Fact(
                "Steel",
                $"tensile strength {measure.Number(tensile.Low, 0)} to {Mpa(tensile.High, measure)} by its hardness; the spring"
                    + $" {LifeWords(strength.Life)}"
            );
            yield return new Fact(
                "Margins",
                $"{measure.Number(gerber, 2)} against fatigue (Gerber) and {measure.Number(yield, 2)} against yield, on the mean"
                    + " stress, the alternating part being fixed by the tang"
            );
        }

        if (report.Suggestion is { } suggestion)
        {
            yield return new Fact("Pull wanted", suggestion.Sentence);
        }
    }

    private static string LifeWords(SpringLife life) =>
        life switch
        {
            SpringLife.Endless => "lasts without end",
            SpringLife.Limited => "lasts a thousand to a million openings",
            SpringLife.Short => "holds at rest but tires early",
            _ => "takes a set",
        };

    private static string Force(double newtons, Measure measure) =>
        $"{measure.Number(newtons, 1)} N ({measure.Number(newtons / NewtonsPerPound, 1)} lbf)";

    private static string Mpa(double mpa, Measure measure) => $"{measure.Number(mpa, 0)} MPa";
}

/// <summary>A stop in the handle in words.</summary>
internal sealed record HandleStopRow(
    string Name,
    string RestsAt,
    string Lift,
    string Bench,
    string Forces,
    string Stress,
    string Snap
)
{
    public static HandleStopRow Of(HandleStop stop, Measure measure) =>
        new(
            StopNames.Of(stop.Stop),
            stop.Rests ? measure.DegreesOnly(stop.RestAngle) : "no rest",
            measure.SignedThou(stop.LiftMm),
            measure.SignedThou(stop.BenchLiftMm),
            stop.Contacts.IsEmpty
                ? "none"
                : string.Join(" + ", stop.Contacts.Select(contact => measure.Number(contact.ForceN, 0))),
            measure.Number(stop.PeakStressMpa, 0),
            $"{measure.Number(stop.SnapNmm, 0)} from {measure.DegreesOnly(stop.TakesOver, 0)}"
        );
}

/// <summary>What a tenth of a millimetre more of a dimension changes, in words.</summary>
internal sealed record SensitivityRow(string Name, string Pull, string Stress, string Lift)
{
    public static SensitivityRow Of(Sensitivity row, Measure measure) =>
        new(
            row.Of switch
            {
                Dimension.SpringDepth => "spring deeper",
                Dimension.SpringWidth => "spring wider",
                Dimension.Preload => "more preload",
                Dimension.CentrePinForward => "centre pin forward",
                _ => "stiff nose longer (assumed)",
            },
            measure.Number(row.PullNPerMm / 10, 2),
            measure.Number(row.StressMpaPerMm / 10, 1),
            measure.Number(row.LiftPerMm / 10, 4)
        );
}
