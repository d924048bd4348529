using Flushback.Service.Checks;
using Flushback.Service.Streaming;
using Grpc.Core;

namespace Flushback.Service;

/// <summary>Reads the dial from outlines, of one knife or of a library. It keeps nothing between calls.</summary>
public sealed class ProfileCheckerService(KnifeChecker checker, LibraryAnswers library)
    : Wire.ProfileChecker.ProfileCheckerBase
{
    /// <inheritdoc/>
    public override Task<Wire.CheckResponse> Check(Wire.CheckRequest request, ServerCallContext context) =>
        Task.FromResult(checker.Check(request, context.CancellationToken));

    /// <inheritdoc/>
    public override Task CheckMany(
        IAsyncStreamReader<Wire.CheckManyRequest> requestStream,
        IServerStreamWriter<Wire.CheckManyResponse> responseStream,
        ServerCallContext context
    ) => library.AnswerAsync(requestStream, responseStream, context);
}
