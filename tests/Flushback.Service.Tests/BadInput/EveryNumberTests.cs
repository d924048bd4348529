using System.Collections;
using Flushback.Service.Limits;
using Flushback.Service.Validation;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

public sealed class EveryNumberTests
{
    /// <summary>The path of every number of a request, found from the contract.</summary>
    public static TheoryData<string> Numbers()
    {
        TheoryData<string> paths = [];
        List<(string Path, Action<double> Set)> numbers = [];
        Walk(Filled(), "", numbers);
        foreach (string path in numbers.Select(number => number.Path))
        {
            paths.Add(path);
        }

        return paths;
    }

    [Theory]
    [MemberData(nameof(Numbers))]
    public void No_number_of_a_request_may_be_other_than_finite(string path)
    {
        foreach (double value in (double[])[double.NaN, double.PositiveInfinity, double.NegativeInfinity])
        {
            Wire.CheckRequest request = Filled();
            Setter(request, path)(value);

            RpcException refused = Assert.Throws<RpcException>(() =>
                new RequestValidator(new ServiceLimits()).Validate(request)
            );

            Assert.Contains((path, "NOT_FINITE"), Refused.From(refused).Violations);
        }
    }

    [Fact]
    public void Every_message_of_a_request_was_looked_into() =>
        // 3 for each of three outlines, 3 for each of three pins, 2 for the dial, 2 for a face, 2 angles, 14 settings.
        Assert.Equal(50, Numbers().Count);

    /// <summary>A request with every message of the contract in it; of two ways to give something, the first.</summary>
    private static Wire.CheckRequest Filled() => (Wire.CheckRequest)Fill(new Wire.CheckRequest());

    private static IMessage Fill(IMessage message)
    {
        foreach (FieldDescriptor field in message.Descriptor.Fields.InDeclarationOrder())
        {
            bool isSecondOfOneof =
                field.RealContainingOneof is { } oneof && oneof.Accessor.GetCaseFieldDescriptor(message) is not null;
            if (field.FieldType == FieldType.Message && !isSecondOfOneof)
            {
                IMessage inner = Fill(field.MessageType.Parser.ParseFrom(ByteString.Empty));
                if (field.IsRepeated)
                {
                    ((IList)field.Accessor.GetValue(message)).Add(inner);
                }
                else
                {
                    field.Accessor.SetValue(message, inner);
                }
            }
        }

        return message;
    }

    private static Action<double> Setter(IMessage message, string path)
    {
        List<(string Path, Action<double> Set)> numbers = [];
        Walk(message, "", numbers);
        return numbers.Single(number => number.Path == path).Set;
    }

    private static void Walk(IMessage message, string prefix, List<(string Path, Action<double> Set)> numbers)
    {
        foreach (FieldDescriptor field in message.Descriptor.Fields.InDeclarationOrder())
        {
            string path = prefix + field.Name;
            object? value = field.Accessor.GetValue(message);
            if (field.FieldType == FieldType.Double)
            {
                numbers.Add((path, number => field.Accessor.SetValue(message, number)));
            }
            else if (field.FieldType == FieldType.Message && field.IsRepeated)
            {
                Walk((IMessage)((IList)value!)[0]!, $"{path}[0].", numbers);
            }
            else if (value is IMessage inner)
            {
                Walk(inner, $"{path}.", numbers);
            }
        }
    }
}
