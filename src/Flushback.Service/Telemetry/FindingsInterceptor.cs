using System.Collections;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Grpc.Core;
using Grpc.Core.Interceptors;

namespace Flushback.Service.Telemetry;

/// <summary>Counts the findings in answers by their codes, wherever the contract has <c>report.findings[].code</c>, of a second blade too.</summary>
public sealed class FindingsInterceptor(ServiceMetrics metrics) : Interceptor
{
    /// <inheritdoc/>
    public override async Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
        TRequest request,
        ServerCallContext context,
        UnaryServerMethod<TRequest, TResponse> continuation
    )
    {
        TResponse response = await continuation(request, context);
        if (response is IMessage message)
        {
            IMessage? second = message.Descriptor.FindFieldByName("second")?.Accessor.GetValue(message) as IMessage;
            foreach (string code in CodesIn(message).Concat(second is null ? [] : CodesIn(second)))
            {
                metrics.Found(code);
            }
        }

        return response;
    }

    private static IEnumerable<string> CodesIn(IMessage response)
    {
        FieldDescriptor? report = response.Descriptor.FindFieldByName("report");
        if (report?.Accessor.GetValue(response) is not IMessage told)
        {
            yield break;
        }

        FieldDescriptor? findings = told.Descriptor.FindFieldByName("findings");
        if (findings?.Accessor.GetValue(told) is not IList list)
        {
            yield break;
        }

        foreach (object? finding in list)
        {
            if (
                finding is IMessage one
                && one.Descriptor.FindFieldByName("code")?.Accessor.GetValue(one) is string code
            )
            {
                yield return code;
            }
        }
    }
}
