using System.Globalization;
using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;
using Status = Google.Rpc.Status;

namespace Flushback.Service.Errors;

/// <summary>Tells a caller whose bytes are no message so; gRPC by itself would only say that something failed.</summary>
/// <remarks>
/// Whatever fails in a handler is INTERNAL already, by <see cref="LastResortInterceptor"/>. So UNKNOWN is what gRPC says
/// of bytes that it could not unpack or read before any handler saw them.
/// </remarks>
public sealed class UnreadableMessage(RequestDelegate next)
{
    /// <summary>Reason in the <see cref="ErrorInfo"/>.</summary>
    public const string Reason = "NOT_A_MESSAGE";

    private const string Sentence =
        "The request's bytes are no message of the contract, or were packed otherwise than they say; build the request from the contract.";

    /// <summary>Looks at the status when the call is over.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        await next(context);
        IHeaderDictionary headers = context.Response.Headers;
        if (!context.Response.HasStarted && headers.GrpcStatus == Number(StatusCode.Unknown))
        {
            headers.GrpcStatus = Number(StatusCode.InvalidArgument);
            headers.GrpcMessage = Sentence;
            headers[OversizedMessageDetails.DetailsHeader] = Convert.ToBase64String(Told().ToByteArray());
        }
    }

    /// <summary>INVALID_ARGUMENT, with the reason.</summary>
    internal static Status Told() =>
        new()
        {
            Code = (int)Code.InvalidArgument,
            Message = Sentence,
            Details = { Any.Pack(new ErrorInfo { Domain = RequestErrors.Domain, Reason = Reason }) },
        };

    private static string Number(StatusCode status) => ((int)status).ToString(CultureInfo.InvariantCulture);
}
