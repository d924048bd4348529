using System.Diagnostics.Metrics;
using Flushback.Service.Queueing;

namespace Flushback.Service.Telemetry;

/// <summary>What the service counts and measures about its work.</summary>
public sealed class ServiceMetrics
{
    private readonly Histogram<double> _durations;
    private readonly Histogram<double> _items;
    private readonly Histogram<double> _waits;
    private readonly Counter<long> _findings;
    private readonly Counter<long> _overLimit;
    private readonly Counter<long> _parts;

    /// <summary>Creates the instruments.</summary>
    /// <param name="meters">Makes the meter, which ends with it.</param>
    /// <param name="gate">Tells how much is being done and how much waits.</param>
    public ServiceMetrics(IMeterFactory meters, WorkGate gate)
    {
        Meter meter = meters.Create(ServiceTracing.Name);
        _durations = meter.CreateHistogram<double>(
            "flushback.request.duration",
            "s",
            "Time from a request's headers to its status, by method and status."
        );
        _items = meter.CreateHistogram<double>(
            "flushback.item.duration",
            "s",
            "Time from an item of a stream read to its answer, by work and status."
        );
        _waits = meter.CreateHistogram<double>("flushback.queue.wait", "s", "Time a request waits for its turn.");
        _findings = meter.CreateCounter<long>("flushback.findings", "{finding}", "Findings told, by code.");
        _overLimit = meter.CreateCounter<long>(
            "flushback.requests.over_limit",
            "{request}",
            "Requests refused over a limit, by limit."
        );
        _parts = meter.CreateCounter<long>(
            "flushback.study.parts",
            "{part}",
            "Random parts of tolerance studies solved."
        );
        meter.CreateObservableGauge(
            "flushback.queue.waiting",
            () => gate.Waiting,
            "{request}",
            "Requests that wait for their turn."
        );
        meter.CreateObservableGauge(
            "flushback.queue.running",
            () => gate.Running,
            "{request}",
            "Requests that are being computed."
        );
    }

    /// <summary>A request is answered.</summary>
    /// <param name="method">Full name of the method, without a slash in front.</param>
    /// <param name="status">Name of the gRPC status.</param>
    /// <param name="duration">Time from its headers to its status.</param>
    public void Answered(string method, string status, TimeSpan duration) =>
        _durations.Record(duration.TotalSeconds, new("rpc.method", method), new("rpc.grpc.status", status));

    /// <summary>An item of a stream is answered.</summary>
    /// <param name="work">Name of the work in the contract.</param>
    /// <param name="status">Name of the gRPC status.</param>
    /// <param name="duration">Time from its reading to its answer.</param>
    public void AnsweredItem(string work, string status, TimeSpan duration) =>
        _items.Record(duration.TotalSeconds, new("work", work), new("rpc.grpc.status", status));

    /// <summary>A request has waited for its turn.</summary>
    public void Waited(TimeSpan duration) => _waits.Record(duration.TotalSeconds);

    /// <summary>A finding was told.</summary>
    public void Found(string code) => _findings.Add(1, new KeyValuePair<string, object?>("code", code));

    /// <summary>A request was refused over a limit.</summary>
    /// <param name="limit">Name of the setting.</param>
    public void OverLimit(string limit) => _overLimit.Add(1, new KeyValuePair<string, object?>("limit", limit));

    /// <summary>Parts of a tolerance study were solved.</summary>
    public void Solved(int parts) => _parts.Add(parts);
}
