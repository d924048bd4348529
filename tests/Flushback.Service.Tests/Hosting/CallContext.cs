using Grpc.Core;

namespace Flushback.Service.Tests.Hosting;

/// <summary>A call without a connection, which can be cancelled.</summary>
internal sealed class CallContext(CancellationToken cancellation = default) : ServerCallContext
{
    protected override string MethodCore => "/flushback.v1.ProfileChecker/Check";
    protected override string HostCore => "";
    protected override string PeerCore => "";
    protected override DateTime DeadlineCore => DateTime.MaxValue;
    protected override Metadata RequestHeadersCore => [];
    protected override CancellationToken CancellationTokenCore => cancellation;
    protected override Metadata ResponseTrailersCore => [];
    protected override Status StatusCore { get; set; }
    protected override WriteOptions? WriteOptionsCore { get; set; }
    protected override AuthContext AuthContextCore => new(null, []);

    protected override ContextPropagationToken CreatePropagationTokenCore(ContextPropagationOptions? options) =>
        throw new NotSupportedException();

    protected override Task WriteResponseHeadersAsyncCore(Metadata responseHeaders) => Task.CompletedTask;
}
