using System.Collections.Immutable;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Materials;

namespace Flushback.Mechanism.Handle;

/// <summary>Turns a report of the handle into what a maker should look at.</summary>
internal static class HandleRules
{
    // Common practice, no source: what a thumb nail pulls gladly.
    private static readonly ValueRange _pullN = new(10, 45);
    private static readonly ValueRange _bladeHrc = new(55, 60);
    private static readonly ValueRange _springHrc = new(40, 45);

    public static ImmutableArray<Finding> Judge(HandleReport report) =>
        [
            .. Strength(report.Strength)
                .Concat(Pull(report.Pull))
                .Concat(Pair(report.Settings))
                .Concat(report.Stops.SelectMany(stop => Stop(stop, report.Settings)))
                .OrderByDescending(finding => finding.Severity),
        ];

    private static IEnumerable<Finding> Strength(StrengthVerdict strength)
    {
        if (strength.TensileMpa is not { } tensile)
        {
            yield return new Finding(
                FindingCodes.StrengthUnknown,
                Severity.Note,
                FormattableString.Invariant(
                    $"At this hardness there is no published strength to hold the peak stress of {strength.PeakStressMpa:0} MPa against."
                ),
                "Give a hardness from 40 to 55 HRC, or the tensile strength of your own steel."
            );
            yield break;
        }

        (double share, Severity severity, string what) = strength.Life switch
        {
            SpringLife.TakesSet => (SpringStrength.RestShare, Severity.Fault, "takes a set"),
            SpringLife.Short => (SpringStrength.LimitedShare, Severity.Warning, "tires early"),
            _ => (0, Severity.Note, ""),
        };
        if (share > 0)
        {
            double limit = share * tensile.Low;
            yield return new Finding(
                strength.Life == SpringLife.TakesSet ? FindingCodes.SpringTakesSet : FindingCodes.SpringTires,
                severity,
                FormattableString.Invariant(
                    $"The spring {what}: it is bent to {strength.PeakStressMpa:0} MPa, {strength.PeakStressMpa / tensile.Low:0.00} of the tensile strength, where {share:0.00} is the most."
                ),
                "Leave more metal round the centre pin's hole, take less preload or lift, or lengthen the spring; a harder temper helps a little.",
                Value: strength.PeakStressMpa,
                Limit: limit,
                Unit: "MPa"
            );
        }
    }

    private static IEnumerable<Finding> Pull(NailPull pull)
    {
        if (pull.PullN >= _pullN.Low && pull.PullN <= _pullN.High)
        {
            yield break;
        }

        bool isHeavy = pull.PullN > _pullN.High;
        yield return new Finding(
            isHeavy ? FindingCodes.PullHeavy : FindingCodes.PullLight,
            Severity.Warning,
            FormattableString.Invariant(
                $"The blade takes {Said.Force(pull.PullN)} at the nail nick to open; from {_pullN.Low:0} to {_pullN.High:0} N is usual."
            ),
            isHeavy
                ? "Take less preload, or thin the spring's belly or its width."
                : "Give more preload, or a deeper or wider spring.",
            Value: pull.PullN,
            Limit: isHeavy ? _pullN.High : _pullN.Low,
            Unit: "N"
        );
    }

    private static IEnumerable<Finding> Pair(HandleSettings settings)
    {
        bool isUsual =
            settings.BladeHardnessHrc >= _bladeHrc.Low
            && settings.BladeHardnessHrc <= _bladeHrc.High
            && settings.SpringHardnessHrc >= _springHrc.Low
            && settings.SpringHardnessHrc <= _springHrc.High;
        if (!isUsual)
        {
            yield return new Finding(
                FindingCodes.HardnessPair,
                Severity.Warning,
                FormattableString.Invariant(
                    $"A blade of {settings.BladeHardnessHrc:0.#} HRC on a spring of {settings.SpringHardnessHrc:0.#} HRC is not the usual pair of 55 to 60 on 40 to 45: parts of like hardness gall, a softer tang wears away, a harder spring may break and a softer one sets."
                ),
                "Temper the spring to a blue of 40 to 45 HRC under a blade of 55 to 60.",
                Value: settings.BladeHardnessHrc - settings.SpringHardnessHrc,
                Unit: "HRC"
            );
        }
    }

    private static IEnumerable<Finding> Stop(HandleStop stop, HandleSettings settings)
    {
        if (!stop.Rests)
        {
            yield return new Finding(
                FindingCodes.HandleNoRest,
                Severity.Warning,
                FormattableString.Invariant($"In the handle the blade does not come to rest {Said.Of(stop.Stop)}."),
                "Look at the contacts at this stop on the bench first.",
                stop.Stop
            );
        }

        foreach (HandleContact contact in stop.Contacts)
        {
            if (contact is { PressureMpa: { } pressure, YieldPressureMpa: { } limit } && pressure > limit)
            {
                yield return new Finding(
                    FindingCodes.ContactYields,
                    Severity.Warning,
                    FormattableString.Invariant(
                        $"A contact {Said.Of(stop.Stop)} is pressed with {pressure:0} MPa, more than the {limit:0} MPa at which the {settings.SofterPart}, the softer part, begins to yield."
                    ),
                    "Give the corner a larger radius, or take less preload.",
                    stop.Stop,
                    contact.At,
                    pressure,
                    limit,
                    "MPa"
                );
            }
        }
    }
}
