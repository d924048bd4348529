namespace Flushback.Dxf.Writing;

/// <summary>The version of the format to write.</summary>
public enum DxfVersion
{
    /// <summary>R12 (AC1009): what the oldest machine reads.</summary>
    R12,

    /// <summary>2000 (AC1015): what every program of this century reads.</summary>
    R2000,
}
