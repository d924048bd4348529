using System.Collections.Frozen;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>Entity types by what they are to a reader of outlines.</summary>
internal static class EntityTypes
{
    /// <summary>Annotation, filling and pictures: they may lie on any layer and never stand in the way.</summary>
    /// <remarks>A type that is in no list may carry an outline, so it is a fault where its layer is used.</remarks>
    public static FrozenSet<string> HaveNoOutline { get; } =
        FrozenSet.Create(
            StringComparer.Ordinal,
            "3DFACE",
            "ACAD_TABLE",
            "ARC_DIMENSION",
            "ARCALIGNEDTEXT",
            "ATTDEF",
            "ATTRIB",
            "CAMERA",
            "DGNUNDERLAY",
            "DIMENSION",
            "DWFUNDERLAY",
            "GEOPOSITIONMARKER",
            "HATCH",
            "IMAGE",
            "LARGE_RADIAL_DIMENSION",
            "LEADER",
            "LIGHT",
            "MLEADER",
            "MPOLYGON",
            "MTEXT",
            "MULTILEADER",
            "OLE2FRAME",
            "OLEFRAME",
            "PDFUNDERLAY",
            "POINT",
            "RAY",
            "RTEXT",
            "SEQEND",
            "SHAPE",
            "SOLID",
            "SUN",
            "TEXT",
            "TOLERANCE",
            "TRACE",
            "VIEWPORT",
            "WIPEOUT",
            "XLINE"
        );
}
