using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Handle;
using Flushback.Service.Drawings;

namespace Flushback.Service.Mapping;

/// <summary>A bench report to the contract: degrees, and points back on the user's drawing.</summary>
internal static class ReportMapping
{
    /// <summary>To the contract.</summary>
    /// <param name="bench">What the bench shows.</param>
    /// <param name="name">Name of the pattern.</param>
    /// <param name="source">How the knife came in.</param>
    public static Wire.CheckReport ToWire(this BenchReport bench, string name, KnifeSource source)
    {
        RigidMotion toDrawing = bench.Placement.ToDrawing;
        Wire.CheckReport report = new()
        {
            Name = name,
            Verdict = bench.IsClean ? Wire.Verdict.Good : Wire.Verdict.NeedsWork,
            Curve = bench.Curve.ToWire(),
            Clearances = ToWire(bench.Clearances, toDrawing),
            Reading = ReadingMapping.ToWire(bench, source),
        };
        report.Stops.AddRange(bench.Stops.Select(stop => stop.ToWire(toDrawing)));
        report.Peaks.AddRange(bench.Peaks.Select(ToWire));
        report.Findings.AddRange(bench.Findings.Select(finding => finding.ToWire(toDrawing)));
        if (bench.CornerGap is { } gap)
        {
            report.CornerGap = ToWire(gap, toDrawing);
        }

        return report;
    }

    /// <summary>Adds the handle to a report: its findings join the others, worst first, and count for the verdict.</summary>
    public static void Add(this Wire.CheckReport report, HandleReport handle, RigidMotion toDrawing)
    {
        report.Handle = handle.ToWire(toDrawing);
        Wire.Finding[] findings =
        [
            .. report
                .Findings.Concat(handle.Findings.Select(finding => finding.ToWire(toDrawing)))
                .OrderByDescending(finding => finding.Severity),
        ];
        report.Findings.Clear();
        report.Findings.AddRange(findings);
        if (findings.Any(finding => finding.Severity > Wire.Severity.Note))
        {
            report.Verdict = Wire.Verdict.NeedsWork;
        }
    }

    private static Wire.LiftPeak ToWire(LiftPeak peak) =>
        new()
        {
            BladeAngleDeg = peak.BladeAngle.Degrees,
            LiftMm = peak.LiftMm,
            BladeFace = peak.BladeFace.ToWire(),
        };

    private static Wire.CornerGap ToWire(CornerGap gap, RigidMotion toDrawing) =>
        new()
        {
            GapMm = gap.GapMm,
            Corner = toDrawing.Apply(gap.Corner).ToWire(),
            Nose = toDrawing.Apply(gap.Nose).ToWire(),
        };

    private static Wire.Clearances ToWire(Clearances clearances, RigidMotion toDrawing)
    {
        Wire.Clearances wire = new()
        {
            EdgeClosedMm = clearances.EdgeClosed.DistanceMm,
            EdgeClosedAt = toDrawing.Apply(clearances.EdgeClosed.At).ToWire(),
            EdgeLeastMm = clearances.EdgeLeast.DistanceMm,
            EdgeLeastAngleDeg = clearances.EdgeLeast.BladeAngle.Degrees,
            TipLeastMm = clearances.TipLeast.DistanceMm,
            TipLeastAngleDeg = clearances.TipLeast.BladeAngle.Degrees,
            TipClosedAt = toDrawing.Apply(clearances.TipClosedAt).ToWire(),
            TailLeastMm = clearances.TailLeast.DistanceMm,
            TailLeastAngleDeg = clearances.TailLeast.BladeAngle.Degrees,
        };
        if (clearances.TipDepthMm is { } depth)
        {
            wire.TipDepthMm = depth;
        }

        return wire;
    }

    /// <summary>A finding to the contract.</summary>
    public static Wire.Finding ToWire(this Finding finding, RigidMotion toDrawing)
    {
        Wire.Finding wire = new()
        {
            Code = finding.Code,
            Severity = finding.Severity.ToWire(),
            Message = finding.Message,
            Advice = finding.Advice,
            Stop = finding.Stop?.ToWire() ?? Wire.Stop.Unspecified,
            At = finding.At is { } at ? toDrawing.Apply(at).ToWire() : null,
            Unit = finding.Unit,
        };
        if (finding.Value is { } value)
        {
            wire.Value = value;
        }

        if (finding.Limit is { } limit)
        {
            wire.Limit = limit;
        }

        return wire;
    }
}
