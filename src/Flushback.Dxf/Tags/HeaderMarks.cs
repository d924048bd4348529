namespace Flushback.Dxf.Tags;

/// <summary>The two header variables that decide how text is spelled.</summary>
internal static class HeaderMarks
{
    /// <summary>The file with its encoding chosen.</summary>
    public static TagFile WithEncoding(TagFile file, bool hasUtf8Mark) =>
        file with
        {
            Encoding = DxfText.Choose(ValueOf(file, "$ACADVER"u8), ValueOf(file, "$DWGCODEPAGE"u8), hasUtf8Mark),
        };

    private static string ValueOf(TagFile file, ReadOnlySpan<byte> name)
    {
        for (int i = 0; i + 1 < file.Tags.Count; i++)
        {
            DxfTag tag = file.Tags[i];
            if (tag.Code == 9 && file.Is(tag, name))
            {
                return file.Text(file.Tags[i + 1]).ToUpperInvariant();
            }

            if (tag.Code == 0 && file.Is(tag, "ENDSEC"u8))
            {
                // The header is the first section wherever it exists.
                break;
            }
        }

        return "";
    }
}
