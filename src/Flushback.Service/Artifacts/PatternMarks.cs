using Flushback.Dxf.Writing;
using Flushback.Patterns;

namespace Flushback.Service.Artifacts;

/// <summary>The layer of what is ground or milled, not cut through: nail nick and well.</summary>
internal static class PatternMarks
{
    private const int Cyan = 4;

    public static OverlayLayer On(IEnumerable<PatternMark> marks) =>
        new("FLUSHBACK_MARKS", Cyan, [.. marks.Select(mark => OverlayPath.Of(mark.Outline))]);
}
