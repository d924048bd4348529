using System.Globalization;
using Flushback.Dxf.Reading;

namespace Flushback.Dxf.Tags;

/// <summary>Finds out what form a file has and reads its groups.</summary>
internal static class TagReader
{
    private const string Utf16 = "text in UTF-16";

    private static ReadOnlySpan<byte> BinaryMark => "AutoCAD Binary DXF\r\n\x1A\0"u8;

    private static ReadOnlySpan<byte> Utf8Mark => [0xEF, 0xBB, 0xBF];

    /// <summary>The groups of a file, in its own encoding; or the sentence that says why not.</summary>
    public static TagScan Read(ReadOnlyMemory<byte> memory, int maxBytes, CancellationToken ct)
    {
        ReadOnlySpan<byte> bytes = memory.Span;
        if (bytes.Length > maxBytes)
        {
            return TagScan.TooLarge(
                new DxfLimitHit(nameof(DxfLimits.MaxBytes), maxBytes, bytes.Length),
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The file has {bytes.Length} bytes and the limit is {maxBytes}; leave out what is not needed, or raise the limit."
                )
            );
        }

        if (bytes.IndexOfAnyExcept(" \t\r\n\0"u8) < 0)
        {
            return TagScan.Failed(DxfIssueCodes.Empty, "The file is empty; export the drawing again.");
        }

        if (OtherFormat(bytes) is { } format)
        {
            return TagScan.Failed(
                format == Utf16 ? DxfIssueCodes.FormUnsupported : DxfIssueCodes.NotDxf,
                $"This is no DXF file but {format}; export the drawing as DXF from the program it was drawn in."
            );
        }

        if (bytes.StartsWith(BinaryMark))
        {
            TagScan binary = BinaryTagReader.Read(memory, BinaryMark.Length, ct);
            return binary.File is { } binaryFile
                ? binary with
                {
                    File = HeaderMarks.WithEncoding(binaryFile, hasUtf8Mark: false),
                }
                : binary;
        }

        bool hasMark = bytes.StartsWith(Utf8Mark);
        TagScan scan = AsciiTagReader.Read(memory, hasMark ? Utf8Mark.Length : 0, ct);
        return scan.File is { } file ? scan with { File = HeaderMarks.WithEncoding(file, hasMark) } : scan;
    }

    private static string? OtherFormat(ReadOnlySpan<byte> bytes)
    {
        if (
            bytes.StartsWith("AC10"u8)
            && bytes.Length > 6
            && bytes[6] < 32
            && bytes[6] is not ((byte)'\r' or (byte)'\n')
        )
        {
            return "a DWG file";
        }

        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || bytes.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return Utf16;
        }

        return bytes switch
        {
            _ when bytes.StartsWith("%PDF"u8) => "a PDF file",
            _ when bytes.StartsWith("PK\x03\x04"u8) => "a ZIP archive",
            _ when bytes.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G']) => "a PNG picture",
            _ when bytes.StartsWith((ReadOnlySpan<byte>)[0x1F, 0x8B]) => "a gzip archive",
            _ when bytes.TrimStart(" \t\r\n"u8).StartsWith("<"u8) => "an XML, SVG or HTML file",
            _ => null,
        };
    }
}
