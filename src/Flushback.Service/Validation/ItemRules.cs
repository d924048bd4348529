using System.Globalization;
using Flushback.Service.Errors;
using Flushback.Service.Limits;

namespace Flushback.Service.Validation;

/// <summary>What must hold for an item of a stream beside what holds for its request.</summary>
internal static class ItemRules
{
    /// <summary>Refuses an item that asks for nothing, or whose id is no id.</summary>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT with every violation.</exception>
    public static void Check(Wire.CheckManyRequest item, ServiceLimits limits)
    {
        Violations violations = new();
        if (item.ItemId.Length > limits.NameLength)
        {
            violations.Add(
                "item_id",
                "TOO_LONG",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The item's id is {item.ItemId.Length} characters long; shorten it to {limits.NameLength}."
                )
            );
        }

        if (item.WorkCase == Wire.CheckManyRequest.WorkOneofCase.None)
        {
            violations.Add("work", "MISSING", "The item does not say what is to be done; give a check or a pattern.");
        }

        violations.ThrowIfAny();
    }
}
