using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Reading;

/// <summary>Where the sections of a file lie, as ranges of groups without the section's own brackets.</summary>
internal sealed class Sections
{
    private readonly List<(string Name, Range Groups)> found = [];

    private Sections() { }

    /// <summary>The groups of every section of a name.</summary>
    public IEnumerable<Range> Named(string name) =>
        found.Where(section => section.Name == name).Select(section => section.Groups);

    /// <summary>Finds the sections and says what is wrong with them.</summary>
    public static Sections Find(TagFile file, ReadingLog log)
    {
        Sections sections = new();
        int i = 0;
        while (i < file.Tags.Count && !log.HasErrors)
        {
            i = sections.Take(file, i, log);
        }

        if (!log.HasErrors)
        {
            sections.CheckEnd(file, log);
        }

        return sections;
    }

    /// <summary>Takes the section (or stray group) at an index; returns the index after it.</summary>
    private int Take(TagFile file, int start, ReadingLog log)
    {
        DxfTag opening = file.Tags[start];
        if (opening.Code == 0 && file.Is(opening, "EOF"u8))
        {
            return start + 1;
        }

        if (opening.Code != 0 || !file.Is(opening, "SECTION"u8))
        {
            log.Error(
                start == 0 ? DxfIssueCodes.NotDxf : DxfIssueCodes.Structure,
                start == 0
                    ? $"This is no DXF file: it should begin with group 0 SECTION and {file.Place(opening.Line)} "
                        + $"begins group {Wording.Whole(opening.Code)} with {Wording.Quoted(file.Text(opening))}; export the drawing as DXF."
                    : $"Between two sections, {file.Place(opening.Line)} holds group {Wording.Whole(opening.Code)} "
                        + $"with {Wording.Quoted(file.Text(opening))}, where group 0 SECTION or EOF belongs; export the drawing again.",
                opening.Line
            );
            return file.Tags.Count;
        }

        int first = start + 2;
        if (first > file.Tags.Count || file.Tags[start + 1].Code != 2)
        {
            Truncated(file, "right after the word SECTION", log);
            return file.Tags.Count;
        }

        string name = file.Text(file.Tags[start + 1]).ToUpperInvariant();
        int end = EndOfSection(file, first);
        if (end < 0)
        {
            Truncated(file, $"inside section {name}", log);
            return file.Tags.Count;
        }

        if (!file.Is(file.Tags[end], "ENDSEC"u8))
        {
            int line = file.Tags[end].Line;
            log.Error(
                DxfIssueCodes.Structure,
                $"Section {name} is not closed: {file.Text(file.Tags[end])} at {file.Place(line)} comes before its "
                    + "ENDSEC, so part of the file is missing; export the drawing again.",
                line
            );
            return file.Tags.Count;
        }

        found.Add((name, first..end));
        return end + 1;
    }

    private static int EndOfSection(TagFile file, int first)
    {
        for (int i = first; i < file.Tags.Count; i++)
        {
            DxfTag tag = file.Tags[i];
            if (tag.Code == 0 && (file.Is(tag, "ENDSEC"u8) || file.Is(tag, "SECTION"u8) || file.Is(tag, "EOF"u8)))
            {
                return i;
            }
        }

        return -1;
    }

    private void CheckEnd(TagFile file, ReadingLog log)
    {
        if (found.All(section => section.Name != "ENTITIES"))
        {
            log.Error(
                file.EndsWithMark || found.Count == 0 ? DxfIssueCodes.Structure : DxfIssueCodes.Truncated,
                $"The file has no ENTITIES section, so nothing is drawn in it (it ends at {file.Place(file.LastLine)}); "
                    + "export the drawing again.",
                file.LastLine
            );
        }
        else if (!file.EndsWithMark)
        {
            log.Add(
                new DxfIssue(
                    DxfIssueCodes.EndOfFile,
                    DxfIssueKind.Notice,
                    $"The file lacks its EOF mark after {file.Place(file.LastLine)}; its sections are complete and were read.",
                    Line: file.LastLine
                )
            );
        }
        else if (file.HasTrailingBytes)
        {
            log.Add(
                new DxfIssue(
                    DxfIssueCodes.EndOfFile,
                    DxfIssueKind.Notice,
                    $"Something follows the EOF mark at {file.Place(file.LastLine)}; it was not read.",
                    Line: file.LastLine
                )
            );
        }
    }

    private static void Truncated(TagFile file, string where, ReadingLog log) =>
        log.Error(
            DxfIssueCodes.Truncated,
            $"The file is cut short: it ends at {file.Place(file.LastLine)} {where}; copy or export it again.",
            file.LastLine
        );
}
