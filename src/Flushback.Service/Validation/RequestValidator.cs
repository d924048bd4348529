using System.Globalization;
using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Google.Protobuf.Collections;

namespace Flushback.Service.Validation;

/// <summary>Says all that is wrong with a request before anything is computed from it.</summary>
public sealed class RequestValidator(ServiceLimits limits)
{
    /// <summary>Refuses a request that breaks the contract, with every violation.</summary>
    /// <exception cref="Grpc.Core.RpcException">
    /// INVALID_ARGUMENT with every violation; RESOURCE_EXHAUSTED when the request asks for more than is allowed.
    /// </exception>
    public void Validate(Wire.CheckRequest request)
    {
        AmountRules.Check(request, limits);
        Violations violations = new();
        new FieldRules(limits.CoordinateMm, violations).Check(request);
        CheckName(request.Name, violations);
        CheckArtifacts(request, violations);
        KnifeRules.Check(request.Knife, limits, violations);
        if (request.Bench is { } bench)
        {
            BenchRules.Check(bench, violations);
        }

        if (request.Handle is { } handle)
        {
            HandleRules.Check(handle, violations);
        }

        violations.ThrowIfAny();
    }

    private void CheckName(string name, Violations violations)
    {
        if (name.Length > limits.NameLength)
        {
            violations.Add(
                "name",
                "TOO_LONG",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The name is {name.Length} characters long; shorten it to {limits.NameLength}."
                )
            );
        }

        if (name.Any(char.IsControl))
        {
            violations.Add(
                "name",
                "CONTROL_CHARACTER",
                "The name holds a control character; leave only what can be printed."
            );
        }
    }

    // A file asked for twice would cost twice and say nothing new; a million times, it would be an attack.
    private static void CheckArtifacts(Wire.CheckRequest request, Violations violations)
    {
        RepeatedField<Wire.ArtifactKind> artifacts = request.Artifacts;
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
            else if (artifacts[i] == Wire.ArtifactKind.HandleCsv && request.Handle is null)
            {
                violations.Add(
                    field,
                    "NEEDS_HANDLE",
                    $"{field} asks for the curve in the handle, but the request has no handle settings; give them, even empty, or leave the file out."
                );
            }
        }
    }
}
