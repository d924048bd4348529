using System.Globalization;
using Flushback.Dxf.Tests;
using Flushback.Service.Tests.BadInput;
using Flushback.Service.Tests.Inputs;
using Xunit.Abstractions;
using static Flushback.Service.Tests.Cancelling.HeavyWork;

namespace Flushback.Service.Tests.Cancelling;

/// <summary>Cancelled work frees its core, wherever it is. What was measured is in DEVELOPERS.md.</summary>
/// <remarks>
/// Both the points at which work is cancelled and what it takes afterwards are processor time of its thread, which other
/// work on the machine hardly changes. FLUSHBACK_CANCEL_POINTS says at how many points; more of them find a stretch that
/// does not look at its token.
/// </remarks>
public sealed class FreedCoreTests(ITestOutputHelper output)
{
    private const int Tries = 3;
    private const int MostParts = 20_000;
    private static readonly TimeSpan _aim = TimeSpan.FromMilliseconds(50);

    // The aim is for a core of its own; one that is shared, or compiles meanwhile, is many times slower.
    private static readonly TimeSpan _most = TimeSpan.FromSeconds(2);

    private static readonly int _points = int.Parse(
        Environment.GetEnvironmentVariable("FLUSHBACK_CANCEL_POINTS") ?? "4",
        CultureInfo.InvariantCulture
    );

    // A second a point, so that few points are quick and many look further into work that takes longer.
    private static readonly TimeSpan _longestRun = TimeSpan.FromSeconds(Math.Min(_points, 12));

    private static readonly Dictionary<string, Func<Work>> _heavy = new()
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
        { "a plan from what was measured", () => MeasuredPlan(Requests.Outlines(FinelyDrawn.Wagtail(300))) },
        { "a hundred passes", () => Simulate(Requests.Drawing(LooseDrawing.Of(FinelyDrawn.Wagtail(100)))) },
        { "a study in the handle begun on a finely drawn blade", Study },
        { "figures and files of a study", () => StudyFiles(Math.Min(500 * _points, MostParts)) },
        { "a fit to a pull", () => Generate(Fit(pullN: 14, mostStressMpa: 900)) },
        { "a fit that nothing gives", () => Generate(Fit(pullN: 40, mostStressMpa: 300)) },
        { "all files of a pattern", () => Generate(AllPatternFiles()) },
        { "all files of two blades", () => Generate(TwoBlades()) },
        { "an inspection of many circles", () => Inspect(LimitsTests.SecondsOfWork()) },
        { "an inspection of loose lines", () => Inspect(LooseDrawing.Of(FinelyDrawn.Wagtail(2500)).ToBytes()) },
    };

    /// <summary>Work of seconds, heavy in one part or another.</summary>
    public static TheoryData<string> Heavy => [.. _heavy.Keys];

    [Theory]
    [MemberData(nameof(Heavy))]
    public void Cancelled_work_frees_its_core(string name)
    {
        Work work = _heavy[name]();
        TimeSpan whole = Cancel(work, _longestRun).Took;

        TimeSpan worst = TimeSpan.Zero;
        TimeSpan worstAt = TimeSpan.Zero;
        for (int i = 0; i < _points; i++)
        {
            TimeSpan at = whole * ((i + 0.5) / _points);
            TimeSpan late = LeastLate(work, at);
            output.WriteLine(
                $"{name}: cancelled at {at.TotalMilliseconds:0} ms, free after {late.TotalMilliseconds:0.0} ms"
            );
            if (late > worst)
            {
                (worst, worstAt) = (late, at);
            }
        }

        output.WriteLine(
            $"{name}: {whole.TotalSeconds:0.00} s, cancelled at {_points} points, free after {worst.TotalMilliseconds:0.0} ms at most (at {worstAt.TotalMilliseconds:0} ms)."
        );
        Assert.InRange(worst, TimeSpan.Zero, _most);
    }

    // What a collection of garbage took is not the work's: a point above the aim is tried again.
    private static TimeSpan LeastLate(Work work, TimeSpan at)
    {
        TimeSpan least = Cancel(work, at).Late;
        for (int i = 1; i < Tries && least > _aim; i++)
        {
            TimeSpan late = Cancel(work, at).Late;
            least = late < least ? late : least;
        }

        return least;
    }

    private static (TimeSpan Took, TimeSpan Late) Cancel(Work work, TimeSpan after)
    {
        using CancellationTokenSource source = new();
        ProcessorTime clock = ProcessorTime.OfThisThread();
        TimeSpan cancelledAt = TimeSpan.MaxValue;
        bool isOver = false;
        Thread canceller = new(() =>
        {
            SpinWait.SpinUntil(() => Volatile.Read(ref isOver) || clock.Spent >= after);
            if (!Volatile.Read(ref isOver))
            {
                cancelledAt = clock.Spent;
                source.Cancel();
            }
        });
        canceller.Start();
        TimeSpan ended;
        try
        {
            work(source.Token);
        }
        catch (OperationCanceledException)
        {
            // That is what is measured.
        }
        finally
        {
            ended = clock.Spent;
            Volatile.Write(ref isOver, true);
            canceller.Join();
        }

        return (ended, cancelledAt < ended ? ended - cancelledAt : TimeSpan.Zero);
    }
}
