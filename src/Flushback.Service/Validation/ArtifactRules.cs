using System.Globalization;
using Flushback.Service.Errors;
using Google.Protobuf.Collections;

namespace Flushback.Service.Validation;

/// <summary>Which files a request may ask for.</summary>
internal static class ArtifactRules
{
    /// <summary>Gathers files that are not named, asked for twice, or not made by this call.</summary>
    /// <param name="artifacts">The files asked for.</param>
    /// <param name="made">The files that the call makes.</param>
    /// <param name="call">What the call is, in words, such as <c>a check</c>.</param>
    /// <param name="violations">Gathers what is wrong.</param>
    public static void Check(
        RepeatedField<Wire.ArtifactKind> artifacts,
        IReadOnlyCollection<Wire.ArtifactKind> made,
        string call,
        Violations violations
    )
    {
        // A file asked for twice would cost twice and say nothing new; a million times, it would be an attack.
        HashSet<Wire.ArtifactKind> seen = [];
        for (int i = 0; i < artifacts.Count; i++)
        {
            string field = string.Create(CultureInfo.InvariantCulture, $"artifacts[{i}]");
            if (artifacts[i] == Wire.ArtifactKind.Unspecified)
            {
                violations.Add(
                    field,
                    "UNSPECIFIED",
                    $"{field} does not say which file to make; name one or leave it out."
                );
            }
            else if (!seen.Add(artifacts[i]))
            {
                violations.Add(field, "DUPLICATE", $"{field} asks for a file a second time; ask for each once.");
            }
            else if (Enum.IsDefined(artifacts[i]) && !made.Contains(artifacts[i]))
            {
                violations.Add(field, "NOT_MADE", $"{field} asks for a file that {call} does not make; leave it out.");
            }
        }
    }

    /// <summary>Gathers the curve in the handle asked for without the handle.</summary>
    public static void CheckHandleCurve(
        RepeatedField<Wire.ArtifactKind> artifacts,
        Wire.HandleSettings? handle,
        Violations violations
    )
    {
        int at = artifacts.IndexOf(Wire.ArtifactKind.HandleCsv);
        if (at >= 0 && handle is null)
        {
            string field = string.Create(CultureInfo.InvariantCulture, $"artifacts[{at}]");
            violations.Add(
                field,
                "NEEDS_HANDLE",
                $"{field} asks for the curve in the handle, but the request has no handle settings; give them, even empty, or leave the file out."
            );
        }
    }
}
