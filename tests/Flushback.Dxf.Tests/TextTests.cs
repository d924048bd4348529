using System.Text;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;

namespace Flushback.Dxf.Tests;

/// <summary>Names in code pages, UTF-8 and escapes.</summary>
public sealed class TextTests
{
    public static TheoryData<string, string, byte[], string> Spellings =>
        new()
        {
            // Byte values by the code pages' own tables (Unicode consortium mapping files, from memory).
            { "AC1015", "ANSI_1252", [0xC4], "\u00C4" },
            { "AC1015", "ANSI_1251", [0xC4], "\u0414" },
            { "AC1015", "ANSI_932", [0x83, 0x75], "\u30D6" },
            { "AC1009", "DOS850", [0x8E], "\u00C4" },
            { "AC1009", "", [0xC4], "\u00C4" },
            { "AC1015", "NONSENSE", [0xC4], "\u00C4" },
            { "AC1021", "ANSI_1252", [0xC3, 0x84], "\u00C4" },
            { "AC1032", "", [0xC3, 0x84], "\u00C4" },
            { "AC1032", "", [0xC4], "\u00C4" },
            { "AC1015", "ANSI_1252", [.. @"\U+00C4"u8], "\u00C4" },
            { "AC1015", "ANSI_1252", [.. @"\U+00"u8], @"\U+00" },
        };

    [Theory]
    [MemberData(nameof(Spellings))]
    public void A_layer_name_reads_in_the_files_own_spelling(string version, string codePage, byte[] raw, string name)
    {
        string header =
            $"9\n$ACADVER\n1\n{version}\n"
            + (codePage.Length > 0 ? $"9\n$DWGCODEPAGE\n3\n{codePage}\n" : "")
            + Drawn.InMillimetres;
        byte[] file = Encoding.Latin1.GetBytes(Drawn.File(Drawn.Circle(0, 0, 1, layer: "@"), header));
        int at = Array.IndexOf(file, (byte)'@');
        DxfDrawing? drawing = DxfReader
            .Read((byte[])[.. file[..at], .. raw, .. file[(at + 1)..]], DxfReadOptions.Default)
            .Drawing;
        Assert.Equal(name, Assert.Single(drawing!.Shapes).Layer);
    }
}
