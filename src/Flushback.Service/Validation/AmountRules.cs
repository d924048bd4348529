using System.Globalization;
using Flushback.Service.Errors;
using Flushback.Service.Limits;

namespace Flushback.Service.Validation;

/// <summary>How much a request may ask for.</summary>
internal static class AmountRules
{
    /// <summary>Holds the amounts of a request against the limits.</summary>
    /// <exception cref="Grpc.Core.RpcException">RESOURCE_EXHAUSTED over a limit.</exception>
    public static void Check(Wire.CheckRequest request, ServiceLimits limits)
    {
        Check(request.Knife, limits);
        Check(request.Bench, limits);
    }

    /// <inheritdoc cref="Check(Wire.CheckRequest, ServiceLimits)"/>
    public static void Check(Wire.SimulateRequest request, ServiceLimits limits)
    {
        Check(request.Knife, limits);
        Check(request.Bench, limits);
        if (request.Passes.Count > limits.Passes)
        {
            throw RequestErrors.OverLimit(
                new LimitExceeded(
                    "TOO_MANY_PASSES",
                    nameof(ServiceLimits.Passes),
                    limits.Passes,
                    request.Passes.Count,
                    Sentence(
                        $"{request.Passes.Count:N0} passes are asked for, more than the {limits.Passes:N0} allowed; simulate them in parts, each from the outlines of the one before."
                    )
                )
            );
        }
    }

    /// <inheritdoc cref="Check(Wire.CheckRequest, ServiceLimits)"/>
    public static void Check(Wire.PlanRequest request, ServiceLimits limits)
    {
        Check(request.Knife, limits);
        Check(request.Bench, limits);
    }

    /// <inheritdoc cref="Check(Wire.CheckRequest, ServiceLimits)"/>
    public static void Check(Wire.GenerateRequest request, ServiceLimits limits) => Check(request.Bench, limits);

    /// <inheritdoc cref="Check(Wire.CheckRequest, ServiceLimits)"/>
    public static void Check(Wire.StudyRequest request, ServiceLimits limits)
    {
        Check(request.Knife, limits);
        Check(request.Bench, limits);
        if (request.Parts > limits.Parts)
        {
            throw RequestErrors.OverLimit(
                new LimitExceeded(
                    "TOO_MANY_PARTS",
                    nameof(ServiceLimits.Parts),
                    limits.Parts,
                    request.Parts,
                    Sentence(
                        $"{request.Parts:N0} parts are asked for, more than the {limits.Parts:N0} allowed; a share is known to one percent with 10,000."
                    )
                )
            );
        }
    }

    /// <inheritdoc cref="Check(Wire.CheckRequest, ServiceLimits)"/>
    public static void Check(Wire.InspectRequest request, ServiceLimits limits)
    {
        CheckListed(
            request.Settings?.CutLayers.Count ?? 0,
            limits.CutLayers,
            "TOO_MANY_CUT_LAYERS",
            nameof(ServiceLimits.CutLayers),
            "layers are named as cut"
        );
        CheckListed(
            request.Settings?.PinDiametersMm.Count ?? 0,
            limits.PinDiameters,
            "TOO_MANY_PIN_DIAMETERS",
            nameof(ServiceLimits.PinDiameters),
            "pins are named"
        );
    }

    /// <summary>Holds a count of vertices, sent or read from a drawing, against its limit.</summary>
    /// <exception cref="Grpc.Core.RpcException">RESOURCE_EXHAUSTED over it.</exception>
    public static void CheckVertices(int vertices, ServiceLimits limits)
    {
        if (vertices > limits.Vertices)
        {
            throw RequestErrors.OverLimit(
                new LimitExceeded(
                    "TOO_MANY_VERTICES",
                    nameof(ServiceLimits.Vertices),
                    limits.Vertices,
                    vertices,
                    Sentence(
                        $"The outlines have {vertices:N0} vertices together, more than the {limits.Vertices:N0} allowed; draw curves as arcs instead of many short lines."
                    )
                )
            );
        }
    }

    private static void Check(Wire.Knife? knife, ServiceLimits limits)
    {
        CheckVertices(VerticesOf(knife?.Outlines), limits);
        CheckFaceOverrides(knife?.FaceOverrides.Count ?? 0, limits);
    }

    private static void Check(Wire.BenchSettings? bench, ServiceLimits limits)
    {
        if (bench is { HasStepDeg: true })
        {
            CheckSamples(bench.StepDeg, limits);
        }
    }

    private static void CheckListed(int listed, int allowed, string reason, string limit, string what)
    {
        if (listed > allowed)
        {
            throw RequestErrors.OverLimit(
                new LimitExceeded(
                    reason,
                    limit,
                    allowed,
                    listed,
                    Sentence(
                        $"{listed:N0} {what}, more than the {allowed:N0} allowed; name only those of this drawing."
                    )
                )
            );
        }
    }

    private static void CheckFaceOverrides(int overrides, ServiceLimits limits)
    {
        if (overrides > limits.FaceOverrides)
        {
            throw RequestErrors.OverLimit(
                new LimitExceeded(
                    "TOO_MANY_FACE_OVERRIDES",
                    nameof(ServiceLimits.FaceOverrides),
                    limits.FaceOverrides,
                    overrides,
                    Sentence(
                        $"{overrides:N0} faces are named, more than the {limits.FaceOverrides:N0} allowed; name only those that are found wrong."
                    )
                )
            );
        }
    }

    private static void CheckSamples(double stepDeg, ServiceLimits limits)
    {
        // The tolerance lets a step such as 0.025, which no double holds exactly, come out at its own count.
        double samples = stepDeg > 0 ? Math.Floor((180 / stepDeg) + 1e-6) + 1 : 0;
        if (samples > limits.Samples && stepDeg >= BenchRules.LeastStepDeg)
        {
            throw RequestErrors.OverLimit(
                new LimitExceeded(
                    "TOO_MANY_SAMPLES",
                    nameof(ServiceLimits.Samples),
                    limits.Samples,
                    samples,
                    Sentence(
                        $"A step of {stepDeg} degrees makes {samples:N0} samples over half a turn, more than the {limits.Samples:N0} allowed; ask for a larger step."
                    )
                )
            );
        }
    }

    private static int VerticesOf(Wire.KnifeOutlines? outlines) =>
        VerticesOf(outlines?.Blade) + VerticesOf(outlines?.Spring) + VerticesOf(outlines?.Handle);

    private static int VerticesOf(Wire.Outline? outline) => outline?.Vertices.Count ?? 0;

    private static string Sentence(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
