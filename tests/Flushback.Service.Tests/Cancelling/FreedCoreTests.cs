using System.Diagnostics;
using System.Globalization;
using Flushback.Catalogue.Designs;
using Flushback.Service.Drawings;
using Flushback.Service.Limits;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Flushback.Service.Validation;
using Xunit.Abstractions;

namespace Flushback.Service.Tests.Cancelling;

/// <summary>A cancelled check frees its core, wherever in its work it is. What was measured is in DEVELOPERS.md.</summary>
/// <remarks>
/// FLUSHBACK_CANCEL_POINTS says at how many points of a check it is cancelled; more of them find a stretch that does not
/// look at its token.
/// </remarks>
public sealed class FreedCoreTests(ITestOutputHelper output)
{
    private const int Tries = 3;
    private static readonly TimeSpan _aim = TimeSpan.FromMilliseconds(50);

    // Seconds of slack: the aim is for a quiet machine, which a build machine is not.
    private static readonly TimeSpan _slack = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan _warmUp = TimeSpan.FromSeconds(2);
    private static readonly TimeSpan _longestRun = TimeSpan.FromSeconds(12);

    private static readonly ServiceLimits _limits = new() { Seconds = 3600 };

    /// <summary>Checks of seconds, each heavy in another part of the work.</summary>
    public static TheoryData<string, Func<Wire.CheckRequest>> Heavy =>
        new()
        {
            { "a finely drawn blade", () => Requests.Outlines(FinelyDrawn.Wagtail(1000)) },
            { "a blade at the limit of vertices", () => Requests.Outlines(FinelyDrawn.Wagtail(19_990)) },
            { "a drawing of loose lines", () => Requests.Drawing(LooseDrawing.Of(FinelyDrawn.Wagtail(2500))) },
            { "all files of the finest curve", AllFiles },
            { "the knife in its handle", InTheHandle },
        };

    [Theory]
    [MemberData(nameof(Heavy))]
    public void A_cancelled_check_frees_its_core(string name, Func<Wire.CheckRequest> make)
    {
        Wire.CheckRequest request = make();
        int points = int.Parse(
            Environment.GetEnvironmentVariable("FLUSHBACK_CANCEL_POINTS") ?? "4",
            CultureInfo.InvariantCulture
        );
        // Once to have it compiled, once to time it.
        Cancel(request, _warmUp);
        TimeSpan whole = Cancel(request, _longestRun).Ran;

        TimeSpan worst = TimeSpan.Zero;
        TimeSpan worstAt = TimeSpan.Zero;
        for (int i = 0; i < points; i++)
        {
            TimeSpan at = whole * ((i + 0.5) / points);
            TimeSpan late = LeastLate(request, at);
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
        Assert.InRange(worst, TimeSpan.Zero, _slack);
    }

    // What another process took of the core is not the check's: a point above the aim is tried again.
    private static TimeSpan LeastLate(Wire.CheckRequest request, TimeSpan at)
    {
        TimeSpan least = Cancel(request, at).Late;
        for (int i = 1; i < Tries && least > _aim; i++)
        {
            TimeSpan late = Cancel(request, at).Late;
            least = late < least ? late : least;
        }

        return least;
    }

    private static (TimeSpan Ran, TimeSpan Late) Cancel(Wire.CheckRequest request, TimeSpan after)
    {
        ProfileCheckerService service = new(new RequestValidator(_limits), new KnifeReader(_limits), _limits);
        using CancellationTokenSource source = new();
        long cancelledAt = long.MaxValue;
        using CancellationTokenRegistration seen = source.Token.Register(() => cancelledAt = Stopwatch.GetTimestamp());
        long from = Stopwatch.GetTimestamp();
        source.CancelAfter(after);
        try
        {
            _ = service.Check(request, new CallContext(source.Token));
        }
        catch (OperationCanceledException)
        {
            // That is what is measured.
        }

        long ended = Stopwatch.GetTimestamp();
        return (
            Stopwatch.GetElapsedTime(from, ended),
            cancelledAt < ended ? Stopwatch.GetElapsedTime(cancelledAt, ended) : TimeSpan.Zero
        );
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
