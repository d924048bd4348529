using System.Text;

namespace Flushback.Dxf.Writing;

/// <summary>How a new entity looks: its layer, colour and line, and how high it lies.</summary>
/// <param name="Layer">Name of its layer, spelled in the bytes of the file.</param>
/// <param name="Groups">Groups for colour, line type and the like as they stand in the file; empty for those of the layer.</param>
/// <param name="Height">Its z, in units of the file.</param>
internal readonly record struct EntityLook(ReadOnlyMemory<byte> Layer, ReadOnlyMemory<byte> Groups, double Height)
{
    /// <summary>The look of its layer, at a height of zero.</summary>
    /// <param name="layer">A name that every version accepts.</param>
    public static EntityLook OnLayer(string layer) => new(Encoding.ASCII.GetBytes(layer), default, 0);
}
