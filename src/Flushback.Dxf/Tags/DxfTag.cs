namespace Flushback.Dxf.Tags;

/// <summary>One group of a DXF file: a code and where its value stands in the bytes.</summary>
/// <param name="Code">Group code; it says what the value means and how it is written.</param>
/// <param name="Start">Offset of the value's first byte.</param>
/// <param name="Length">Bytes of the value.</param>
/// <param name="At">Offset of the group's first byte, where something could be inserted before it.</param>
/// <param name="Line">Line of the group code, from 1; for a binary file the byte offset.</param>
internal readonly record struct DxfTag(int Code, int Start, int Length, int At, int Line)
{
    /// <summary>Line of the value, which is what a reader of the file looks for.</summary>
    public int ValueLine(bool isBinary) => isBinary ? At : Line + 1;
}
