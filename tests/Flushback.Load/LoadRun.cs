using System.Diagnostics;
using System.Globalization;
using Flushback.Catalogue.Designs;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Grpc.Net.Client;

namespace Flushback.Load;

/// <summary>Callers who each call as soon as they are answered: what comes out is what the machine can do.</summary>
internal sealed class LoadRun(ServiceProcess service, int callers)
{
    private const int WarmUps = 200;

    private readonly Wire.CheckRequest[] _library =
    [
        Requests.Drawing(LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn())),
        Requests.Outlines(KnifeCatalogue.Wagtail.ToDrawn()),
        Requests.Drawing(LooseDrawing.Of(KnifeCatalogue.Sandpiper.ToDrawn())),
        Requests.Outlines(KnifeCatalogue.Curlew.ToDrawn()),
    ];

    private readonly Latencies _latencies = new();
    private ByteString[] _right = [];
    private int _wrong;

    /// <summary>Calls for a time and prints a row after each part of it.</summary>
    /// <returns>True when every answer was right.</returns>
    public async Task<bool> RunAsync(TimeSpan whole, TimeSpan every, CancellationToken cancellation)
    {
        await WarmUpAsync(cancellation);
        Print($"{callers} callers, {Environment.ProcessorCount} cores, service and callers on loopback.");
        Print($"| seconds | checks | checks/s | p50 ms | p99 ms | most ms | service MB | handles |");
        Print($"| ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |");
        using CancellationTokenSource enough = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        Task[] calling = [.. Enumerable.Range(0, callers).Select(i => CallAsync(i, enough.Token))];
        long from = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(from) < whole)
        {
            await Task.Delay(every, cancellation);
            PrintRow(Stopwatch.GetElapsedTime(from), every, _latencies.TakePart());
        }

        await enough.CancelAsync();
        await Task.WhenAll(calling);
        Print($"All of it:");
        PrintRow(Stopwatch.GetElapsedTime(from), Stopwatch.GetElapsedTime(from), _latencies.Whole());
        Print($"{_wrong} answers were wrong.");
        return _wrong == 0;
    }

    private async Task WarmUpAsync(CancellationToken cancellation)
    {
        using GrpcChannel channel = service.Open();
        Wire.ProfileChecker.ProfileCheckerClient checker = new(channel);
        for (int i = 0; i < WarmUps; i++)
        {
            await checker.CheckAsync(_library[i % _library.Length], cancellationToken: cancellation);
        }

        _right = new ByteString[_library.Length];
        for (int i = 0; i < _library.Length; i++)
        {
            _right[i] = (await checker.CheckAsync(_library[i], cancellationToken: cancellation)).ToByteString();
        }
    }

    // One who is told to stop finishes the call under way, so that none is lost unnoticed.
    private async Task CallAsync(int first, CancellationToken enough)
    {
        using GrpcChannel channel = service.Open();
        Wire.ProfileChecker.ProfileCheckerClient checker = new(channel);
        for (int i = first; !enough.IsCancellationRequested; i++)
        {
            int knife = i % _library.Length;
            long from = Stopwatch.GetTimestamp();
            Wire.CheckResponse response = await checker.CheckAsync(
                _library[knife],
                cancellationToken: CancellationToken.None
            );
            _latencies.Add(Stopwatch.GetElapsedTime(from));
            if (!response.ToByteString().Equals(_right[knife]))
            {
                Interlocked.Increment(ref _wrong);
            }
        }
    }

    private void PrintRow(TimeSpan at, TimeSpan span, double[] sortedMs) =>
        Print(
            $"| {at.TotalSeconds:0} | {sortedMs.Length:N0} | {sortedMs.Length / span.TotalSeconds:0} | {Latencies.At(sortedMs, 0.5):0.0} | {Latencies.At(sortedMs, 0.99):0.0} | {Latencies.At(sortedMs, 1):0.0} | {service.MemoryMb:0} | {service.Handles} |"
        );

    private static void Print(FormattableString line) => Console.WriteLine(line.ToString(CultureInfo.InvariantCulture));
}
