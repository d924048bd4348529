using System.Collections.Frozen;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>The version of the format in which an entity type first appeared.</summary>
/// <remarks>From memory of the published references of each version; a type that is not listed is as old as R12.</remarks>
internal static class EntityVersions
{
    private const string R13 = "AC1012";
    private const string R14 = "AC1014";
    private const string V2000 = "AC1015";
    private const string V2004 = "AC1018";
    private const string V2007 = "AC1021";
    private const string V2010 = "AC1024";
    private const string V2013 = "AC1027";

    private static readonly FrozenDictionary<string, string> First = new Dictionary<string, string>
    {
        ["3DSOLID"] = R13,
        ["ACAD_PROXY_ENTITY"] = R13,
        ["ACAD_TABLE"] = V2004,
        ["ARC_DIMENSION"] = V2004,
        ["ARCALIGNEDTEXT"] = V2000,
        ["BODY"] = R13,
        ["CAMERA"] = V2007,
        ["DGNUNDERLAY"] = V2007,
        ["DWFUNDERLAY"] = V2007,
        ["ELLIPSE"] = R13,
        ["EXTRUDEDSURFACE"] = V2007,
        ["GEOPOSITIONMARKER"] = V2013,
        ["HATCH"] = R14,
        ["HELIX"] = V2007,
        ["IMAGE"] = R14,
        ["LARGE_RADIAL_DIMENSION"] = V2004,
        ["LEADER"] = R13,
        ["LIGHT"] = V2007,
        ["LOFTEDSURFACE"] = V2007,
        ["LWPOLYLINE"] = R14,
        ["MESH"] = V2010,
        ["MLEADER"] = V2007,
        ["MLINE"] = R13,
        ["MTEXT"] = R13,
        ["MULTILEADER"] = V2007,
        ["NURBSURFACE"] = V2010,
        ["OLE2FRAME"] = R14,
        ["OLEFRAME"] = R13,
        ["PDFUNDERLAY"] = V2010,
        ["PLANESURFACE"] = V2007,
        ["RAY"] = R13,
        ["REGION"] = R13,
        ["REVOLVEDSURFACE"] = V2007,
        ["RTEXT"] = V2000,
        ["SPLINE"] = R13,
        ["SUN"] = V2007,
        ["SURFACE"] = V2007,
        ["SWEPTSURFACE"] = V2007,
        ["TOLERANCE"] = R13,
        ["WIPEOUT"] = V2000,
        ["XLINE"] = R13,
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>True when an entity type is newer than a version mark; false when the mark is none.</summary>
    public static bool IsNewer(string type, string versionMark) =>
        versionMark.Length == R13.Length
        && versionMark.StartsWith("AC", StringComparison.Ordinal)
        && First.TryGetValue(type, out string? first)
        && string.CompareOrdinal(versionMark, first) < 0;
}
