using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Reading;

/// <summary>The header variables that matter to reading; null where the file does not state them.</summary>
internal sealed record HeaderVariables(string VersionMark, int? InsUnits, int? Measurement)
{
    public static HeaderVariables Of(TagFile file, Sections sections)
    {
        HeaderVariables header = new("", null, null);
        foreach (Range section in sections.Named("HEADER"))
        {
            (int first, int count) = section.GetOffsetAndLength(file.Tags.Count);
            for (int i = first; i + 1 < first + count; i++)
            {
                DxfTag name = file.Tags[i];
                if (name.Code == 9)
                {
                    header = header.With(file, name, file.Tags[i + 1]);
                }
            }
        }

        return header;
    }

    private HeaderVariables With(TagFile file, in DxfTag name, in DxfTag value)
    {
        if (file.Is(name, "$ACADVER"u8))
        {
            return this with { VersionMark = file.Text(value).ToUpperInvariant() };
        }

        if (file.Is(name, "$INSUNITS"u8))
        {
            return this with { InsUnits = file.TryInteger(value, out int unit) ? unit : null };
        }

        if (file.Is(name, "$MEASUREMENT"u8))
        {
            return this with { Measurement = file.TryInteger(value, out int system) ? system : null };
        }

        return this;
    }
}
