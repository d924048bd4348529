using Google.Rpc;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

/// <summary>What a client sees of a refused request: the status and its details, decoded.</summary>
internal sealed record Refused(StatusCode Code, string Message, BadRequest? BadRequest, ErrorInfo? Limit)
{
    /// <summary>Calls the service, which must refuse.</summary>
    public static async Task<Refused> CheckAsync(
        Wire.ProfileChecker.ProfileCheckerClient checker,
        Wire.CheckRequest request
    )
    {
        RpcException refused = await Assert.ThrowsAsync<RpcException>(async () => await checker.CheckAsync(request));
        return From(refused);
    }

    /// <inheritdoc cref="CheckAsync"/>
    public static async Task<Refused> InspectAsync(
        Wire.ProfileInspector.ProfileInspectorClient inspector,
        Wire.InspectRequest request
    )
    {
        RpcException refused = await Assert.ThrowsAsync<RpcException>(async () =>
            await inspector.InspectAsync(request)
        );
        return From(refused);
    }

    /// <inheritdoc cref="CheckAsync"/>
    public static async Task<Refused> SimulateAsync(
        Wire.BenchSimulator.BenchSimulatorClient simulator,
        Wire.SimulateRequest request
    )
    {
        RpcException refused = await Assert.ThrowsAsync<RpcException>(async () =>
            await simulator.SimulateAsync(request)
        );
        return From(refused);
    }

    /// <inheritdoc cref="CheckAsync"/>
    public static async Task<Refused> GenerateAsync(
        Wire.ProfileExporter.ProfileExporterClient exporter,
        Wire.GenerateRequest request
    )
    {
        RpcException refused = await Assert.ThrowsAsync<RpcException>(async () =>
            await exporter.GenerateAsync(request)
        );
        return From(refused);
    }

    /// <summary>Decodes a status.</summary>
    public static Refused From(RpcException refused)
    {
        Google.Rpc.Status? status = refused.GetRpcStatus();
        return new Refused(
            refused.StatusCode,
            refused.Status.Detail,
            status?.GetDetail<BadRequest>(),
            status?.GetDetail<ErrorInfo>()
        );
    }

    /// <summary>The violations as field and reason.</summary>
    public IEnumerable<(string Field, string Reason)> Violations =>
        BadRequest?.FieldViolations.Select(violation => (violation.Field, violation.Reason)) ?? [];

    /// <summary>Every sentence is one: it begins with a capital or the path of a field, ends with a full stop, and fits on a line.</summary>
    public void AssertSentences()
    {
        Assert.NotNull(BadRequest);
        Assert.All(
            BadRequest.FieldViolations,
            violation =>
            {
                Assert.EndsWith(".", violation.Description, StringComparison.Ordinal);
                Assert.DoesNotContain('\n', violation.Description);
                Assert.DoesNotContain("   at ", violation.Description, StringComparison.Ordinal);
                Assert.True(
                    char.IsUpper(violation.Description[0])
                        || violation.Description.StartsWith(violation.Field, StringComparison.Ordinal),
                    violation.Description
                );
            }
        );
    }
}
