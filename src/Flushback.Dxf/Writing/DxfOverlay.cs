namespace Flushback.Dxf.Writing;

/// <summary>Adds layers of our own to a drawing and leaves everything else in it as it is, byte for byte.</summary>
public static class DxfOverlay
{
    /// <summary>The user's file with our layers beside what is in it.</summary>
    /// <param name="original">A file that <c>DxfReader</c> has accepted.</param>
    /// <param name="unit">The unit of the file's coordinates, as the reader found it.</param>
    /// <param name="layers">Layers in millimetres in the drawing's frame.</param>
    /// <remarks>
    /// Layers go into the LAYER table, entities before the end of the ENTITIES section, in the words of the file's own
    /// version and with its line endings. New handles lie above every handle in the file, and <c>$HANDSEED</c> is raised.
    /// </remarks>
    /// <exception cref="ArgumentException">
    /// The file is none the reader accepts, a layer name is not allowed, or a number is not finite.
    /// </exception>
    public static byte[] AddTo(ReadOnlyMemory<byte> original, DrawingUnit unit, IReadOnlyList<OverlayLayer> layers) =>
        throw new NotImplementedException();
}
