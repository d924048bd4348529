using Flushback.Dxf;
using Flushback.Dxf.Reading;
using Flushback.Service.Errors;

namespace Flushback.Service.Limits;

/// <summary>The limits of the service as the reader of drawings knows them, and back.</summary>
internal static class DrawingLimits
{
    private const string ReaderPrefix = "Max";

    /// <summary>The reader's limits.</summary>
    public static DxfLimits ToDxf(this ServiceLimits limits) =>
        new()
        {
            MaxBytes = limits.MessageBytes,
            MaxVertices = limits.Vertices,
            MaxCoordinateMm = limits.CoordinateMm,
            MaxEntities = limits.Entities,
            MaxBlockDepth = limits.BlockDepth,
            MaxArrayCopies = limits.ArrayCopies,
            MaxSplinePoints = limits.SplinePoints,
            MaxSplineDegree = limits.SplineDegree,
        };

    /// <summary>A limit that the reader found passed, under the name of its setting.</summary>
    public static LimitExceeded Told(DxfIssue issue) =>
        new(issue.Code, SettingOf(issue.Limit), issue.Limit?.Allowed, issue.Limit?.Value, issue.Sentence);

    private static string SettingOf(DxfLimitHit? hit) =>
        hit?.Name switch
        {
            null => "Drawing",
            nameof(DxfLimits.MaxBytes) => nameof(ServiceLimits.MessageBytes),
            { } name => name[ReaderPrefix.Length..],
        };
}
