namespace Flushback.Dxf.Writing;

/// <summary>The version of the format to write.</summary>
public enum DxfVersion
{
    /// <summary>R12 (AC1009): what the oldest machine reads.</summary>
    R12,

    /// <summary>2000 (AC1015): what every program of this century reads.</summary>
    R2000,

    /// <summary>2007 (AC1021): the first with text in UTF-8.</summary>
    R2007,

    /// <summary>2010 (AC1024).</summary>
    R2010,

    /// <summary>2013 (AC1027).</summary>
    R2013,

    /// <summary>2018 (AC1032): the newest.</summary>
    R2018,
}
