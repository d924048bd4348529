using System.Diagnostics;
using Flushback.Service.Telemetry;
using Google.Rpc;
using Grpc.Core;

namespace Flushback.Service.Streaming;

/// <summary>Measures every item of a stream as a call of its own would be, and logs the refused ones.</summary>
public sealed partial class ItemTelemetry(ServiceMetrics metrics, ILogger<ItemTelemetry> logger)
{
    /// <summary>Starts the clock and the span of an item; its end is when the watch is disposed.</summary>
    internal ItemWatch Start(Wire.CheckManyRequest item) => new(this, item.WorkCase.ToString());

    /// <summary>An item is answered.</summary>
    internal void Tell(string work, Wire.CheckManyResponse answer, TimeSpan duration)
    {
        StatusCode status = (StatusCode)(answer.Error?.Code ?? 0);
        metrics.AnsweredItem(work, status.ToString(), duration);
        Wire.CheckReport?[] reports = [answer.Check?.Report, answer.Check?.Second?.Report];
        foreach (Wire.Finding finding in reports.SelectMany(report => report?.Findings ?? []))
        {
            metrics.Found(finding.Code);
        }

        if (LimitOf(answer) is { } limit)
        {
            metrics.OverLimit(limit);
        }

        if (status == StatusCode.OK)
        {
            LogAnswered(work, duration.TotalMilliseconds);
        }
        else
        {
            LogRefused(work, status, duration.TotalMilliseconds);
        }
    }

    private static string? LimitOf(Wire.CheckManyResponse answer)
    {
        ErrorInfo? info = answer
            .Error?.Details.FirstOrDefault(detail => detail.Is(ErrorInfo.Descriptor))
            ?.Unpack<ErrorInfo>();
        return info is not null && info.Metadata.TryGetValue("limit", out string? name) ? name : null;
    }

    [LoggerMessage(Level = LogLevel.Debug, Message = "An item ({Work}) was answered after {Milliseconds:0.0} ms.")]
    private partial void LogAnswered(string work, double milliseconds);

    [LoggerMessage(
        Level = LogLevel.Information,
        Message = "An item ({Work}) was refused with {Status} after {Milliseconds:0.0} ms."
    )]
    private partial void LogRefused(string work, StatusCode status, double milliseconds);
}

/// <summary>Follows one item from its reading to its answer.</summary>
internal sealed class ItemWatch(ItemTelemetry telemetry, string work) : IDisposable
{
    private readonly Activity? _span = ServiceTracing.Source.StartActivity("item");
    private readonly long _from = Stopwatch.GetTimestamp();

    /// <summary>The item is answered.</summary>
    public void Tell(Wire.CheckManyResponse answer)
    {
        if (answer.Error is { } error)
        {
            _span?.SetStatus(ActivityStatusCode.Error, error.Message);
        }

        telemetry.Tell(work, answer, Stopwatch.GetElapsedTime(_from));
    }

    /// <inheritdoc/>
    public void Dispose() => _span?.Dispose();
}
