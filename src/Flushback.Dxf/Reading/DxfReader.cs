namespace Flushback.Dxf.Reading;

/// <summary>Reads DXF bytes into a drawing of lines, arcs and circles.</summary>
public static class DxfReader
{
    /// <summary>Reads a whole file from memory.</summary>
    /// <param name="bytes">The file's bytes as they are on disk.</param>
    /// <param name="options">Unit override and limits.</param>
    /// <param name="ct">Stops the reading with <see cref="OperationCanceledException"/>.</param>
    /// <returns>The drawing, or the sentences that say why there is none. Bad input never throws.</returns>
    public static DxfReadResult Read(
        ReadOnlyMemory<byte> bytes,
        DxfReadOptions options,
        CancellationToken ct = default
    ) => throw new NotImplementedException();
}
