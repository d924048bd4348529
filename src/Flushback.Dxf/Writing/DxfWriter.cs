namespace Flushback.Dxf.Writing;

/// <summary>Writes a new drawing.</summary>
public static class DxfWriter
{
    /// <summary>A drawing with the given layers, as ASCII DXF.</summary>
    /// <param name="version">Version of the format.</param>
    /// <param name="unit">Unit of the written coordinates.</param>
    /// <param name="layers">
    /// Layers in millimetres; coordinates are divided by the unit and written so that they read back exactly.
    /// </param>
    /// <exception cref="ArgumentException">A layer name the format does not allow, or a number that is not finite.</exception>
    public static byte[] Write(DxfVersion version, DrawingUnit unit, IReadOnlyList<OverlayLayer> layers)
    {
        ArgumentNullException.ThrowIfNull(layers);
        OverlayCheck.ThrowIfUnfit(layers);
        return version == DxfVersion.R12
            ? new R12Drawing(unit, layers).ToBytes()
            : new ModernDrawing(MarkOf(version), unit, layers).ToBytes();
    }

    private static string MarkOf(DxfVersion version) =>
        version switch
        {
            DxfVersion.R2000 => "AC1015",
            DxfVersion.R2007 => "AC1021",
            DxfVersion.R2010 => "AC1024",
            DxfVersion.R2013 => "AC1027",
            DxfVersion.R2018 => "AC1032",
            _ => throw new ArgumentOutOfRangeException(nameof(version), version, "Not a version to write."),
        };
}
