using Microsoft.Extensions.Options;

namespace Flushback.Service.Hosting;

/// <summary>Tells a configuration the operator must put right from a fault of ours.</summary>
internal static class StartRefusal
{
    /// <summary>What to print; null for a fault of ours, which is better seen whole.</summary>
    public static string? SentenceOf(Exception fault) =>
        fault switch
        {
            RefusedStartException or OptionsValidationException => fault.Message,
            // A setting with an unknown name, or a value that cannot be read; an address that is taken or not ours.
            InvalidOperationException { Source: "Microsoft.Extensions.Configuration.Binder" } => fault.Message,
            IOException => fault.Message,
            _ => null,
        };
}
