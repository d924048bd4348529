using System.Text.RegularExpressions;
using Flushback.Contract.V1;

namespace Flushback.Cli.Regression.Baselines;

/// <summary>Takes from an answer what is kept of it.</summary>
internal static partial class SnapshotOf
{
    private const int Decimals = 6;
    private const int CurveDecimals = 4;

    // How near a sample has to lie to an angle to be the one there: a step in radians has no exact degrees.
    private const double SameDeg = 1e-6;

    /// <summary>What is kept of an answer.</summary>
    /// <param name="answer">A report with the outlines, or two.</param>
    /// <param name="within">How far each number may be off, by unit.</param>
    public static Snapshot Answer(CheckResponse answer, IReadOnlyDictionary<string, double> within)
    {
        Gathering kept = new(within);
        if (answer.Second is not { } second)
        {
            Add(kept, answer.Report);
        }
        else
        {
            kept.Add(Snapshot.Arrangement, Words(second.Arrangement));
            kept.Of = Snapshot.FirstBlade;
            Add(kept, answer.Report);
            kept.Of = Snapshot.SecondBlade;
            Add(kept, second.Report);
            kept.Of = "";
            Add(kept, second.Clearance);
        }

        return new Snapshot(
            kept.Words,
            kept.Numbers,
            kept.Curves,
            OutlinesOf.Answer(answer, within[Allowances.Outline])
        );
    }

    private static void Add(Gathering kept, CheckReport report)
    {
        kept.Add("verdict", Words(report.Verdict));
        foreach (StopReading stop in report.Stops)
        {
            Add(kept, stop);
        }

        for (int i = 0; i < report.Peaks.Count; i++)
        {
            string name = FormattableString.Invariant($"peak {i + 1}");
            kept.Add($"{name}, at", report.Peaks[i].BladeAngleDeg, "deg");
            kept.Add($"{name}, lift", report.Peaks[i].LiftMm, "mm");
        }

        kept.Add("lift", report.Curve);
        Add(kept, report.Clearances, report.CornerGap);
        if (report.Handle is { } handle)
        {
            Add(kept, handle);
        }

        kept.Add("findings", Joined(report.Findings.Select(Words)));
        kept.Add("mended or left aside", Joined(report.Reading.Repairs));
    }

    private static void Add(Gathering kept, BladeClearance clearance)
    {
        kept.Add("between the blades' layers", clearance.SidewaysMm, "mm");
        foreach (BladePassing passing in clearance.Passings)
        {
            kept.Add(
                $"between the blades, first {Words(passing.First)}, second {Words(passing.Second)}",
                passing.DistanceMm,
                "mm"
            );
        }
    }

    private static void Add(Gathering kept, StopReading stop)
    {
        string name = Words(stop.Stop);
        kept.Add($"{name}, verdict", Words(stop.Verdict));
        kept.Add(
            $"{name}, contacts",
            Joined(stop.Contacts.Select(contact => $"{Words(contact.BladeFace)} on {Words(contact.SpringFace)}"))
        );
        kept.Add($"{name}, lift", stop.LiftMm, "mm");
        kept.Add($"{name}, rests at", stop.RestAngleDeg, "deg");
        kept.Add(
            $"{name}, lift held at the nominal angle",
            stop.HasLiftAtNominalMm && !RestsAtNominal(stop) ? stop.LiftAtNominalMm : null,
            "mm"
        );
        kept.Add($"{name}, contact spread", stop.ContactSpreadMm, "mm");
        kept.Add($"{name}, shoulder butts at", stop.HasShoulderAngleDeg ? stop.ShoulderAngleDeg : null, "deg");
    }

    // There the lift at rest says the same, and whether a pose is possible is a matter of the last digit.
    private static bool RestsAtNominal(StopReading stop) => Math.Abs(stop.RestAngleDeg - stop.NominalAngleDeg) < 1e-3;

    private static void Add(Gathering kept, Clearances clearances, CornerGap? corner)
    {
        kept.Add("notch corner, gap", corner?.GapMm, "mm");
        kept.Add("edge to spring, closed", clearances.EdgeClosedMm, "mm");
        kept.Add("edge to spring, least", clearances.EdgeLeastMm, "mm");
        kept.Add("tip to spring, least", clearances.TipLeastMm, "mm");
        kept.Add("tip in the handle, depth", clearances.HasTipDepthMm ? clearances.TipDepthMm : null, "mm");
        kept.Add("tail to blade, least", clearances.TailLeastMm, "mm");
    }

    private static void Add(Gathering kept, HandleReport handle)
    {
        foreach (HandleStop stop in handle.Stops)
        {
            string name = FormattableString.Invariant($"in the handle, {stop.NominalAngleDeg:0} deg");
            kept.Add($"{name}, lift", stop.LiftMm, "mm");
            kept.Add($"{name}, rests at", stop.RestAngleDeg, "deg");
            kept.Add($"{name}, snap", stop.SnapNmm, "Nmm");
            kept.Add($"{name}, takes over before", stop.TakesOverDeg, "deg");
            kept.Add($"{name}, stress", stop.PeakStressMpa, "MPa");
        }

        kept.Add("in the handle, pull", handle.Pull?.PullN, "N");
        kept.Add("in the handle, stiffness", handle.Spring?.StiffnessNPerMm, "N/mm");
        kept.Add("in the handle, peak stress", handle.Strength?.PeakStressMpa, "MPa");
        kept.Add("in the handle, the spring lasts", Words(handle.Strength?.Life ?? SpringLife.Unspecified));
    }

    private static string Words(Finding finding) =>
        finding.Stop == Stop.Unspecified
            ? $"{Words(finding.Severity)} {finding.Code}"
            : $"{Words(finding.Severity)} {finding.Code} at {Words(finding.Stop)}";

    // The contract's own word: HalfStop is "half stop".
    private static string Words<TEnum>(TEnum value)
        where TEnum : struct, Enum => WordStart().Replace($"{value}", " $0").TrimStart().ToLowerInvariant();

    private static string Joined(IEnumerable<string> texts)
    {
        string joined = string.Join("; ", texts);
        return joined.Length > 0 ? joined : "none";
    }

    [GeneratedRegex("[A-Z]")]
    private static partial Regex WordStart();

    private sealed class Gathering(IReadOnlyDictionary<string, double> within)
    {
        public List<KeptWord> Words { get; } = [];

        public List<KeptNumber> Numbers { get; } = [];

        public List<KeptCurve> Curves { get; } = [];

        /// <summary>Which blade is gathered of: what every name then begins with.</summary>
        public string Of { get; set; } = "";

        public void Add(string name, string text) => Words.Add(new KeptWord(Of + name, text));

        public void Add(string name, double? value, string unit)
        {
            if (value is { } given)
            {
                Numbers.Add(new KeptNumber(Of + name, Rounded.To(given, Decimals), unit, within[unit]));
            }
        }

        public void Add(string name, LiftCurve curve) =>
            Curves.Add(
                new KeptCurve(
                    Of + name,
                    [
                        .. KeptCurve.Angles.Select(angle =>
                            curve.Samples.FirstOrDefault(sample => Math.Abs(sample.BladeAngleDeg - angle) < SameDeg)
                                is { } sample
                                ? Rounded.To(sample.LiftMm, CurveDecimals)
                                : (double?)null
                        ),
                    ],
                    within["mm"]
                )
            );
    }
}
