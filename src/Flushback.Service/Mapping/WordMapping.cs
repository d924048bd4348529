using Flushback.Dxf;
using Flushback.Dxf.Writing;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;

namespace Flushback.Service.Mapping;

/// <summary>The enums of the core and of the contract. Faces carry the same words on both sides, which a test holds them to.</summary>
internal static class WordMapping
{
    private static readonly Dictionary<BladeFace, Wire.BladeFace> _bladeFaces = SameWords<BladeFace, Wire.BladeFace>();
    private static readonly Dictionary<SpringFace, Wire.SpringFace> _springFaces = SameWords<
        SpringFace,
        Wire.SpringFace
    >();
    private static readonly Dictionary<Wire.BladeFace, BladeFace> _bladeFacesBack = Back(_bladeFaces);
    private static readonly Dictionary<Wire.SpringFace, SpringFace> _springFacesBack = Back(_springFaces);

    /// <summary>To the contract.</summary>
    public static Wire.BladeFace ToWire(this BladeFace face) => _bladeFaces[face];

    /// <summary>To the contract.</summary>
    public static Wire.SpringFace ToWire(this SpringFace face) => _springFaces[face];

    /// <summary>From the contract.</summary>
    public static BladeFace ToFace(this Wire.BladeFace face) => _bladeFacesBack[face];

    /// <summary>From the contract.</summary>
    public static SpringFace ToFace(this Wire.SpringFace face) => _springFacesBack[face];

    /// <summary>To the contract.</summary>
    public static Wire.Stop ToWire(this Stop stop) =>
        stop switch
        {
            Stop.Open => Wire.Stop.Open,
            Stop.HalfStop => Wire.Stop.HalfStop,
            _ => Wire.Stop.Closed,
        };

    /// <summary>To the contract.</summary>
    public static Wire.Verdict ToWire(this ReadingVerdict verdict) =>
        verdict switch
        {
            ReadingVerdict.Good => Wire.Verdict.Good,
            ReadingVerdict.Low => Wire.Verdict.Low,
            ReadingVerdict.High => Wire.Verdict.High,
            _ => Wire.Verdict.NoRest,
        };

    /// <summary>To the contract.</summary>
    public static Wire.Severity ToWire(this Severity severity) =>
        severity switch
        {
            Severity.Note => Wire.Severity.Note,
            Severity.Warning => Wire.Severity.Warning,
            _ => Wire.Severity.Fault,
        };

    /// <summary>To the contract.</summary>
    public static Wire.Dimension ToWire(this Dimension dimension) =>
        dimension switch
        {
            Dimension.SpringDepth => Wire.Dimension.SpringDepth,
            Dimension.SpringWidth => Wire.Dimension.SpringWidth,
            Dimension.Preload => Wire.Dimension.Preload,
            Dimension.CentrePinForward => Wire.Dimension.CentrePinForward,
            _ => Wire.Dimension.StiffNose,
        };

    /// <summary>From the contract; null when the caller does not say what to vary.</summary>
    public static Dimension? ToDimension(this Wire.Dimension dimension) =>
        dimension switch
        {
            Wire.Dimension.SpringDepth => Dimension.SpringDepth,
            Wire.Dimension.SpringWidth => Dimension.SpringWidth,
            Wire.Dimension.Preload => Dimension.Preload,
            Wire.Dimension.CentrePinForward => Dimension.CentrePinForward,
            _ => null,
        };

    /// <summary>From the contract; null when the caller leaves the unit to the file.</summary>
    public static DrawingUnit? ToDrawingUnit(this Wire.LengthUnit unit) =>
        unit switch
        {
            Wire.LengthUnit.Millimetre => DrawingUnit.Millimetre,
            Wire.LengthUnit.Centimetre => DrawingUnit.Centimetre,
            Wire.LengthUnit.Metre => DrawingUnit.Metre,
            Wire.LengthUnit.Inch => DrawingUnit.Inch,
            Wire.LengthUnit.Thou => DrawingUnit.Thou,
            _ => null,
        };

    /// <summary>To the contract; unspecified for a unit that no maker draws in and the contract has no word for.</summary>
    public static Wire.LengthUnit ToWire(this DrawingUnit unit) =>
        unit switch
        {
            DrawingUnit.Millimetre => Wire.LengthUnit.Millimetre,
            DrawingUnit.Centimetre => Wire.LengthUnit.Centimetre,
            DrawingUnit.Metre => Wire.LengthUnit.Metre,
            DrawingUnit.Inch => Wire.LengthUnit.Inch,
            DrawingUnit.Thou => Wire.LengthUnit.Thou,
            _ => Wire.LengthUnit.Unspecified,
        };

    /// <summary>From the contract; 2000 when the caller does not say.</summary>
    public static DxfVersion ToVersion(this Wire.DxfVersion version) =>
        version switch
        {
            Wire.DxfVersion.R12 => DxfVersion.R12,
            Wire.DxfVersion.R2007 => DxfVersion.R2007,
            Wire.DxfVersion.R2010 => DxfVersion.R2010,
            Wire.DxfVersion.R2013 => DxfVersion.R2013,
            Wire.DxfVersion.R2018 => DxfVersion.R2018,
            _ => DxfVersion.R2000,
        };

    // Only the word for what is not known differs: the contract's first value says that nothing was said.
    private static Dictionary<TCore, TWire> SameWords<TCore, TWire>()
        where TCore : struct, Enum
        where TWire : struct, Enum =>
        Enum.GetValues<TCore>()
            .ToDictionary(
                word => word,
                word => word.ToString() == "Unknown" ? default : Enum.Parse<TWire>(word.ToString())
            );

    private static Dictionary<TWire, TCore> Back<TCore, TWire>(Dictionary<TCore, TWire> words)
        where TCore : struct, Enum
        where TWire : struct, Enum => words.ToDictionary(word => word.Value, word => word.Key);
}
