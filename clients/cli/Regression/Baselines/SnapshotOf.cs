using System.Text.RegularExpressions;
using Flushback.Contract.V1;

namespace Flushback.Cli.Regression.Baselines;

/// <summary>Takes from an answer what is kept of it.</summary>
internal static partial class SnapshotOf
{
    private const int Decimals = 6;
    private const int OutlineDecimals = 4;

    /// <summary>What is kept of an answer.</summary>
    /// <param name="answer">A report with the outlines.</param>
    /// <param name="within">How far each number may be off, by unit.</param>
    public static Snapshot Answer(CheckResponse answer, IReadOnlyDictionary<string, double> within)
    {
        CheckReport report = answer.Report;
        Gathering kept = new(within);
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

        Add(kept, report.Clearances, report.CornerGap);
        if (report.Handle is { } handle)
        {
            Add(kept, handle);
        }

        kept.Add("findings", Joined(report.Findings.Select(Words)));
        kept.Add("mended or left aside", Joined(report.Reading.Repairs));
        return new Snapshot(kept.Words, kept.Numbers, Outlines(answer.Outlines, within[Allowances.Outline]));
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

    private static KeptOutlines Outlines(KnifeOutlines drawn, double withinMm)
    {
        List<KeptPart> parts = [Part("blade", drawn.Blade), Part("spring", drawn.Spring)];
        if (drawn.Handle is { } handle)
        {
            parts.Add(Part("handle", handle));
        }

        List<KeptPin> pins = [Pin("pivot", drawn.Pivot), Pin("centre pin", drawn.CentrePin)];
        if (drawn.RearPin is { } rear)
        {
            pins.Add(Pin("rear pin", rear));
        }

        return new KeptOutlines(withinMm, parts, pins);
    }

    private static KeptPart Part(string name, Outline outline) =>
        new(
            name,
            [
                .. outline.Vertices.Select(vertex => new KeptVertex(
                    Rounded(vertex.XMm, OutlineDecimals),
                    Rounded(vertex.YMm, OutlineDecimals),
                    Rounded(vertex.Bulge, Decimals)
                )),
            ]
        );

    private static KeptPin Pin(string name, Circle pin) =>
        new(
            name,
            Rounded(pin.Centre.XMm, OutlineDecimals),
            Rounded(pin.Centre.YMm, OutlineDecimals),
            Rounded(pin.DiameterMm, OutlineDecimals)
        );

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

    // No minus before a zero: it would come and go with the last digit.
    private static double Rounded(double value, int decimals) =>
        Math.Round(value, decimals, MidpointRounding.AwayFromZero) + 0.0;

    [GeneratedRegex("[A-Z]")]
    private static partial Regex WordStart();

    private sealed class Gathering(IReadOnlyDictionary<string, double> within)
    {
        public List<KeptWord> Words { get; } = [];

        public List<KeptNumber> Numbers { get; } = [];

        public void Add(string name, string text) => Words.Add(new KeptWord(name, text));

        public void Add(string name, double? value, string unit)
        {
            if (value is { } given)
            {
                Numbers.Add(new KeptNumber(name, Rounded(given, Decimals), unit, within[unit]));
            }
        }
    }
}
