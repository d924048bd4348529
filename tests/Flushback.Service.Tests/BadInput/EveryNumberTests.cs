using System.Collections;
using Flushback.Service.Limits;
using Flushback.Service.Validation;
using Google.Protobuf;
using Google.Protobuf.Reflection;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

public sealed class EveryNumberTests
{
    /// <summary>The path of every number of a request for a check, found from the contract.</summary>
    public static TheoryData<string> Numbers() => NumbersOf(new Wire.CheckRequest());

    /// <summary>The path of every number of a request for an inspection.</summary>
    public static TheoryData<string> InspectionNumbers() => NumbersOf(new Wire.InspectRequest());

    [Theory]
    [MemberData(nameof(Numbers))]
    public void No_number_of_a_check_may_be_other_than_finite(string path) =>
        Refuses(path, () => new Wire.CheckRequest(), (validator, request) => validator.Validate(request));

    [Theory]
    [MemberData(nameof(InspectionNumbers))]
    public void No_number_of_an_inspection_may_be_other_than_finite(string path) =>
        Refuses(path, () => new Wire.InspectRequest(), (validator, request) => validator.Validate(request));

    /// <summary>The path of every number of a request to draw a pattern.</summary>
    public static TheoryData<string> PatternNumbers() => NumbersOf(new Wire.GenerateRequest());

    [Theory]
    [MemberData(nameof(PatternNumbers))]
    public void No_number_of_a_pattern_may_be_other_than_finite(string path) =>
        Refuses(path, () => new Wire.GenerateRequest(), (validator, request) => validator.Validate(request));

    [Fact]
    public void Every_message_of_a_request_was_looked_into() =>
        // 3 for each of three outlines, 3 for each of three pins, 2 for the dial, 2 for a face, 2 angles, 14 settings.
        Assert.Equal(50, Numbers().Count);

    [Fact]
    public void Every_setting_of_an_inspection_was_looked_into() => Assert.Equal(8, InspectionNumbers().Count);

    private static TheoryData<string> NumbersOf(IMessage request)
    {
        TheoryData<string> paths = [];
        List<(string Path, Action<double> Set)> numbers = [];
        Walk(Fill(request), "", numbers);
        foreach (string path in numbers.Select(number => number.Path))
        {
            paths.Add(path);
        }

        return paths;
    }

    private static void Refuses<TRequest>(
        string path,
        Func<TRequest> create,
        Action<RequestValidator, TRequest> validate
    )
        where TRequest : IMessage
    {
        foreach (double value in (double[])[double.NaN, double.PositiveInfinity, double.NegativeInfinity])
        {
            TRequest request = create();
            Fill(request);
            Setter(request, path)(value);

            RpcException refused = Assert.Throws<RpcException>(() =>
                validate(new RequestValidator(new ServiceLimits()), request)
            );

            Assert.Contains((path, "NOT_FINITE"), Refused.From(refused).Violations);
        }
    }

    /// <summary>Puts every message of the contract into a request; of two ways to give something, the first.</summary>
    private static IMessage Fill(IMessage message)
    {
        foreach (FieldDescriptor field in message.Descriptor.Fields.InDeclarationOrder())
        {
            bool isSecondOfOneof =
                field.RealContainingOneof is { } oneof && oneof.Accessor.GetCaseFieldDescriptor(message) is not null;
            if (field.FieldType == FieldType.Double && field.IsRepeated)
            {
                ((IList)field.Accessor.GetValue(message)).Add(1.0);
            }
            else if (field.FieldType == FieldType.Message && !isSecondOfOneof)
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
            if (field.FieldType == FieldType.Double && field.IsRepeated)
            {
                numbers.Add(($"{path}[0]", number => ((IList)value!)[0] = number));
            }
            else if (field.FieldType == FieldType.Double)
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
