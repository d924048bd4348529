using Grpc.Core;

namespace Flushback.Service.Tests.Cancelling;

/// <summary>A call that can be cancelled, without a connection.</summary>
internal sealed class CancelledContext(CancellationToken cancellation) : ServerCallContext
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
