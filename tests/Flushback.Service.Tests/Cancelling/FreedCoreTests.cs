using System.Globalization;
using Flushback.Catalogue.Designs;
using Flushback.Dxf.Tests;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances;
using Flushback.Service.Checks;
using Flushback.Service.Drawings;
using Flushback.Service.Limits;
using Flushback.Service.Tests.BadInput;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Flushback.Service.Validation;
using Google.Protobuf;
using Xunit.Abstractions;

namespace Flushback.Service.Tests.Cancelling;

/// <summary>Cancelled work frees its core, wherever it is. What was measured is in DEVELOPERS.md.</summary>
/// <remarks>
/// FLUSHBACK_CANCEL_POINTS says at how many points of a check it is cancelled; more of them find a stretch that does not
/// look at its token.
/// </remarks>
public sealed class FreedCoreTests(ITestOutputHelper output)
{
    // The aim is 50 ms of a core of its own; one that is shared, or compiles meanwhile, is many times slower.
    private static readonly TimeSpan _most = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan _longestRun = TimeSpan.FromSeconds(12);

    private static readonly ServiceLimits _limits = new() { Seconds = 3600 };

    /// <summary>Work of seconds, heavy in one part or another.</summary>
    public static TheoryData<string, Func<Work>> Heavy =>
        new()
        {
            { "a finely drawn blade", () => Check(Requests.Outlines(FinelyDrawn.Wagtail(1000))) },
            { "a blade at the limit of vertices", () => Check(Requests.Outlines(FinelyDrawn.AtTheLimit())) },
            { "a drawing of loose lines", () => Check(Requests.Drawing(LooseDrawing.Of(FinelyDrawn.Wagtail(2500)))) },
            { "all files of the finest curve", () => Check(AllFiles()) },
            { "the knife in its handle", () => Check(InTheHandle()) },
            { "a plan of a finely drawn blade", () => Plan(Requests.Outlines(FinelyDrawn.Wagtail(1000))) },
            {
                "all files of a plan",
                () =>
                    Plan(
                        Requests.Drawing(LooseDrawing.Of(FinelyDrawn.Wagtail(100))),
                        Wire.ArtifactKind.Text,
                        Wire.ArtifactKind.Html,
                        Wire.ArtifactKind.Json,
                        Wire.ArtifactKind.CorrectedDxf,
                        Wire.ArtifactKind.CardHtml,
                        Wire.ArtifactKind.CardPdf
                    )
            },
            { "a study in the handle begun on a finely drawn blade", Study },
            { "an inspection of many circles", () => Inspect(LimitsTests.SecondsOfWork()) },
            { "an inspection of loose lines", () => Inspect(LooseDrawing.Of(FinelyDrawn.Wagtail(2500)).ToBytes()) },
        };

    /// <summary>Work that ends early when it is cancelled.</summary>
    public delegate void Work(CancellationToken cancellation);

    [Theory]
    [MemberData(nameof(Heavy))]
    public void Cancelled_work_frees_its_core(string name, Func<Work> make)
    {
        Work request = make();
        int points = int.Parse(
            Environment.GetEnvironmentVariable("FLUSHBACK_CANCEL_POINTS") ?? "4",
            CultureInfo.InvariantCulture
        );
        TimeSpan whole = Cancel(request, _longestRun).Ran;

        TimeSpan worst = TimeSpan.Zero;
        TimeSpan worstAt = TimeSpan.Zero;
        for (int i = 0; i < points; i++)
        {
            TimeSpan at = whole * ((i + 0.5) / points);
            TimeSpan late = Cancel(request, at).Late;
            output.WriteLine(
                $"{name}: cancelled at {at.TotalMilliseconds:0} ms, free after {late.TotalMilliseconds:0.0} ms"
            );
            if (late > worst)
            {
                (worst, worstAt) = (late, at);
            }
        }

        output.WriteLine(
            $"{name}: {whole.TotalSeconds:0.00} s, cancelled at {points} points, free after {worst.TotalMilliseconds:0.0} ms at most (at {worstAt.TotalMilliseconds:0} ms)."
        );
        Assert.InRange(worst, TimeSpan.Zero, _most);
    }

    // How long it ran, and what it computed after it was cancelled: processor time, as others may have the core meanwhile.
    private static (TimeSpan Ran, TimeSpan Late) Cancel(Work request, TimeSpan after)
    {
        using CancellationTokenSource source = new();
        ProcessorTime clock = ProcessorTime.OfThisThread();
        long cancelledAt = long.MaxValue;
        using CancellationTokenRegistration seen = source.Token.Register(() =>
            Volatile.Write(ref cancelledAt, clock.Spent.Ticks)
        );
        long from = TimeProvider.System.GetTimestamp();
        source.CancelAfter(after);
        try
        {
            request(source.Token);
        }
        catch (OperationCanceledException)
        {
            // That is what is measured.
        }

        long late = clock.Spent.Ticks - Volatile.Read(ref cancelledAt);
        return (TimeProvider.System.GetElapsedTime(from), TimeSpan.FromTicks(Math.Max(0, late)));
    }

    private static Work Check(Wire.CheckRequest request)
    {
        KnifeChecker checker = new(new RequestValidator(_limits), new KnifeReader(_limits), _limits);
        return cancellation => checker.Check(request, cancellation);
    }

    private static Work Plan(Wire.CheckRequest knife, params Wire.ArtifactKind[] artifacts)
    {
        BenchSimulatorService service = new(new RequestValidator(_limits), new KnifeReader(_limits), _limits);
        Wire.PlanRequest request = PlanRequests.Of(knife, artifacts);
        request.Bench = new Wire.BenchSettings { TargetSet = Wire.TargetSet.Finished };
        return cancellation => service.Plan(request, new CallContext(cancellation));
    }

    private static Work Study()
    {
        (Placement? placement, _) = KnifePlacement.Place(FinelyDrawn.Wagtail(100));
        ToleranceSettings settings = new()
        {
            PinsMm = 0.02,
            ProfileMm = 0.03,
            Parts = 200,
            Handle = new HandleSettings(),
        };
        return cancellation =>
        {
            // As the service does it, but one slice after the other: what runs on one thread can be timed there.
            ToleranceStudy study = ToleranceStudy.Begin(placement!, settings, cancellation).Study!;
            for (int slice = 0; slice < study.Slices; slice++)
            {
                study.ReadSlice(slice, cancellation);
            }
        };
    }

    private static Work Inspect(byte[] dxf)
    {
        ProfileInspectorService service = new(new RequestValidator(_limits), new InspectionReader(_limits), _limits);
        Wire.InspectRequest request = new()
        {
            Dxf = ByteString.CopyFrom(dxf),
            Settings = new Wire.InspectionSettings { CutterDiameterMm = 1, KerfMm = 0.2 },
        };
        return cancellation => service.Inspect(request, new CallContext(cancellation));
    }

    private static Wire.CheckRequest AllFiles()
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

    private static Wire.CheckRequest InTheHandle()
    {
        Wire.CheckRequest request = Requests.Outlines();
        request.Handle = new Wire.HandleSettings { WantedPullN = 12 };
        return request;
    }
}
