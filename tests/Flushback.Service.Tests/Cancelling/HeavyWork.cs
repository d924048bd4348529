using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances;
using Flushback.Service.Checks;
using Flushback.Service.Drawings;
using Flushback.Service.Limits;
using Flushback.Service.Studies;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Flushback.Service.Validation;
using Google.Protobuf;

namespace Flushback.Service.Tests.Cancelling;

/// <summary>Work that ends early when it is cancelled.</summary>
public delegate void Work(CancellationToken cancellation);

/// <summary>What the service does for a caller, all of it on the thread that asks.</summary>
internal static class HeavyWork
{
    private static readonly ServiceLimits _limits = new() { Seconds = 3600 };
    private static readonly RequestValidator _validator = new(_limits);
    private static readonly KnifeReader _reader = new(_limits);

    /// <summary>A check.</summary>
    public static Work Check(Wire.CheckRequest request)
    {
        KnifeChecker checker = new(_validator, _reader, _limits);
        return cancellation => checker.Check(request, cancellation);
    }

    /// <summary>A check with all its files of the finest curve there is.</summary>
    public static Wire.CheckRequest AllFiles()
    {
        Wire.CheckRequest request = Requests.Drawing(
            LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn()),
            Wire.ArtifactKind.Text,
            Wire.ArtifactKind.Html,
            Wire.ArtifactKind.Json,
            Wire.ArtifactKind.Csv,
            Wire.ArtifactKind.Dxf
        );
        request.Bench = new Wire.BenchSettings { StepDeg = 0.025 };
        return request;
    }

    /// <summary>A check in the handle, with the preload looked for that gives a pull.</summary>
    public static Wire.CheckRequest InTheHandle()
    {
        Wire.CheckRequest request = Requests.Outlines();
        request.Handle = new Wire.HandleSettings { WantedPullN = 12 };
        return request;
    }

    /// <summary>A plan.</summary>
    public static Work Plan(Wire.CheckRequest knife, params Wire.ArtifactKind[] artifacts)
    {
        Wire.PlanRequest request = PlanRequests.Of(knife, artifacts);
        request.Bench = new Wire.BenchSettings { TargetSet = Wire.TargetSet.Finished };
        return Plan(request);
    }

    /// <summary>A plan from what the dial really reads.</summary>
    public static Work MeasuredPlan(Wire.CheckRequest knife)
    {
        Wire.PlanRequest request = PlanRequests.Of(knife);
        request.Measured = new Wire.MeasuredReadings { HalfStopMm = 0.2, ClosedMm = 0.5 };
        return Plan(request);
    }

    /// <summary>As many passes as are allowed, each a micrometre off another face, with all files.</summary>
    public static Work Simulate(Wire.CheckRequest knife)
    {
        BenchSimulatorService service = new(_validator, _reader, _limits);
        Wire.SimulateRequest request = PassRequests.On(
            knife,
            [
                .. Enumerable
                    .Range(0, _limits.Passes)
                    .Select(i => i % 2 == 0 ? Wire.BladeFace.HalfStopFace : Wire.BladeFace.ClosedFace)
                    .Select(face => PassRequests.Slice(face, 0.001, 0.001)),
            ]
        );
        request.Artifacts.Add([
            Wire.ArtifactKind.Text,
            Wire.ArtifactKind.Html,
            Wire.ArtifactKind.Json,
            Wire.ArtifactKind.Dxf,
        ]);
        return cancellation => service.Simulate(request, new CallContext(cancellation));
    }

    /// <summary>A study begun and solved.</summary>
    public static Work Study()
    {
        (Placement? placement, _) = KnifePlacement.Place(FinelyDrawn.Wagtail(100));
        ToleranceSettings settings = Tolerances(200) with { Handle = new HandleSettings() };
        return cancellation =>
        {
            ToleranceStudy study = ToleranceStudy.Begin(placement!, settings, cancellation).Study!;
            for (int slice = 0; slice < study.Slices; slice++)
            {
                study.ReadSlice(slice, cancellation);
            }
        };
    }

    /// <summary>What comes after the last part of a study: figures and files.</summary>
    public static Work StudyFiles(int parts)
    {
        (Placement? placement, _) = KnifePlacement.Place(KnifeCatalogue.Wagtail.ToDrawn());
        ToleranceStudy study = ToleranceStudy.Begin(placement!, Tolerances(parts)).Study!;
        Parallel.For(0, study.Slices, slice => study.ReadSlice(slice));
        Wire.StudyRequest request = StudyRequests.Of(
            parts,
            Wire.ArtifactKind.Text,
            Wire.ArtifactKind.Html,
            Wire.ArtifactKind.Json,
            Wire.ArtifactKind.SpreadCsv
        );
        return cancellation => StudyAnswer.Of(request, study, cancellation);
    }

    /// <summary>A knife drawn from its dimensions.</summary>
    public static Work Generate(Wire.GenerateRequest request)
    {
        ProfileExporterService service = new(new PatternChecker(_validator, _limits), _limits);
        return cancellation => service.Generate(request, new CallContext(cancellation));
    }

    /// <summary>A page fitted to a pull under a stress.</summary>
    public static Wire.GenerateRequest Fit(double pullN, double mostStressMpa) =>
        new()
        {
            Handle = new Wire.HandleSettings { WantedPullN = pullN, MostStressMpa = mostStressMpa },
        };

    /// <summary>Every file of a pattern with stock and kerf, its curve the finest there is.</summary>
    public static Wire.GenerateRequest AllPatternFiles() =>
        new()
        {
            Pattern = new Wire.Pattern
            {
                Stock = new()
                {
                    BladeMm = 0.25,
                    SpringMm = 0.2,
                    KerfMm = 0.18,
                },
            },
            Bench = new Wire.BenchSettings { StepDeg = 0.025 },
            Handle = new Wire.HandleSettings(),
            Artifacts =
            {
                Wire.ArtifactKind.PatternDxf,
                Wire.ArtifactKind.CutSheetDxf,
                Wire.ArtifactKind.PatternSvg,
                Wire.ArtifactKind.TemplatePdf,
                Wire.ArtifactKind.Text,
                Wire.ArtifactKind.Html,
                Wire.ArtifactKind.Json,
                Wire.ArtifactKind.Csv,
                Wire.ArtifactKind.Dxf,
                Wire.ArtifactKind.HandleCsv,
            },
        };

    /// <summary>Two blades on a shared spring with the files of both.</summary>
    public static Wire.GenerateRequest TwoBlades()
    {
        Wire.GenerateRequest request = AllPatternFiles();
        request.Handle = null;
        request.Artifacts.Remove(Wire.ArtifactKind.HandleCsv);
        request.Arrangement = Wire.Arrangement.SharedSpring;
        request.SecondBlade = new Wire.SecondBlade { Blade = new() { LengthMm = 40 } };
        return request;
    }

    /// <summary>An inspection.</summary>
    public static Work Inspect(byte[] dxf)
    {
        ProfileInspectorService service = new(_validator, new InspectionReader(_limits), _limits);
        Wire.InspectRequest request = new()
        {
            Dxf = ByteString.CopyFrom(dxf),
            Settings = new Wire.InspectionSettings { CutterDiameterMm = 1, KerfMm = 0.2 },
        };
        return cancellation => service.Inspect(request, new CallContext(cancellation));
    }

    private static Work Plan(Wire.PlanRequest request)
    {
        BenchSimulatorService service = new(_validator, _reader, _limits);
        return cancellation => service.Plan(request, new CallContext(cancellation));
    }

    private static ToleranceSettings Tolerances(int parts) =>
        new()
        {
            PinsMm = 0.02,
            ProfileMm = 0.03,
            Parts = parts,
        };
}
