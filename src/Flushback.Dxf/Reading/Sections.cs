using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Reading;

/// <summary>Where the sections of a file lie, as ranges of groups without the section's own brackets.</summary>
internal sealed class Sections
{
    private readonly List<(string Name, Range Groups)> _found = [];

    private Sections() { }

    /// <summary>The groups of every section of a name.</summary>
    public IEnumerable<Range> Named(string name) =>
        _found.Where(section => section.Name == name).Select(section => section.Groups);

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
            return start == 0 ? NoDxf(file, opening, log) : PassStray(file, start, log);
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

        _found.Add((name, first..end));
        return end + 1;
    }

    private static int NoDxf(TagFile file, in DxfTag opening, ReadingLog log)
    {
        log.Error(
            DxfIssueCodes.NotDxf,
            $"This is no DXF file: it should begin with group 0 SECTION and {file.Place(opening.Line)} begins group "
                + $"{Wording.Whole(opening.Code)} with {Wording.Quoted(file.Text(opening))}; export the drawing as DXF.",
            opening.Line
        );
        return file.Tags.Count;
    }

    /// <summary>Passes over groups outside any section; returns the index after them.</summary>
    /// <remarks>
    /// Some programs close their header early and go on writing variables: no geometry is lost by that. An entity out
    /// there is another matter.
    /// </remarks>
    private static int PassStray(TagFile file, int start, ReadingLog log)
    {
        DxfTag first = file.Tags[start];
        int i = start;
        while (i < file.Tags.Count && file.Tags[i].Code != 0)
        {
            i++;
        }

        bool isHarmless = i == file.Tags.Count || file.Is(file.Tags[i], "SECTION"u8) || file.Is(file.Tags[i], "EOF"u8);
        bool hasLateEnd = i < file.Tags.Count && file.Is(file.Tags[i], "ENDSEC"u8);
        if (isHarmless || hasLateEnd)
        {
            log.Add(
                new DxfIssue(
                    DxfIssueCodes.Structure,
                    DxfIssueKind.Notice,
                    $"At {file.Place(first.Line)} stand {Wording.Count(i - start, "group", "groups")} outside any section, from "
                        + $"{Wording.Quoted(file.Text(first))}; they were left out, and what they say of the drawing with them.",
                    Line: first.Line
                )
            );
            return hasLateEnd ? i + 1 : i;
        }

        log.Error(
            DxfIssueCodes.Structure,
            $"At {file.Place(file.Tags[i].Line)} stands {Wording.Quoted(file.Text(file.Tags[i]))} outside any section, where SECTION or EOF "
                + "belongs; export the drawing again.",
            file.Tags[i].Line
        );
        return file.Tags.Count;
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
        if (_found.All(section => section.Name != "ENTITIES"))
        {
            log.Error(
                file.EndsWithMark || _found.Count == 0 ? DxfIssueCodes.Structure : DxfIssueCodes.Truncated,
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
