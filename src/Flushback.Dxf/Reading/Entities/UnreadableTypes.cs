using System.Collections.Frozen;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>Entity types that may carry an outline which is not read, and what to do about each.</summary>
internal static class UnreadableTypes
{
    private const string Body = "is a solid body: draw its outline with lines and arcs";
    private const string Surface = "is a surface: draw its outline with lines and arcs";

    private static readonly FrozenDictionary<string, string> Known = new Dictionary<string, string>
    {
        ["3DSOLID"] = Body,
        ["ACAD_PROXY_ENTITY"] =
            "stands for an object of another program (a proxy): explode it in the program that made it",
        ["BODY"] = Body,
        ["EXTRUDEDSURFACE"] = Surface,
        ["HELIX"] = "is a helix: draw the outline with lines and arcs",
        ["LOFTEDSURFACE"] = Surface,
        ["MESH"] = "is a mesh: draw the outline with lines and arcs",
        ["MLINE"] = "is a multiline: explode it to lines",
        ["NURBSURFACE"] = Surface,
        ["PLANESURFACE"] = Surface,
        ["REGION"] = "is a region: explode it to lines and arcs",
        ["REVOLVEDSURFACE"] = Surface,
        ["SURFACE"] = Surface,
        ["SWEPTSURFACE"] = Surface,
        ["VERTEX"] = "is a vertex without its polyline: draw the polyline again",
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>What is the matter with an entity of a type that is not read, to follow its name.</summary>
    public static string WhatIsWrong(string type) =>
        Known.GetValueOrDefault(type, "is of a type that is not known here: explode it to lines and arcs");
}
