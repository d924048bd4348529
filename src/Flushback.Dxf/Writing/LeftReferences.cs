using System.Globalization;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Writing;

/// <summary>Finds what still names an entity that is gone: groups, fillings and dimensions made of it.</summary>
internal static class LeftReferences
{
    /// <summary>The notice about them; null when there is nothing to say.</summary>
    /// <param name="file">The file.</param>
    /// <param name="gone">For every group, whether it is left out.</param>
    public static DxfIssue? In(TagFile file, bool[] gone)
    {
        HashSet<ulong> handles = [];
        for (int i = 0; i < file.Tags.Count; i++)
        {
            if (gone[i] && file.Tags[i].Code == 5 && HandleOf(file, file.Tags[i]) is { } handle)
            {
                handles.Add(handle);
            }
        }

        int count = 0;
        DxfTag first = default;
        DxfTag opening = default;
        string ofFirst = "";
        for (int i = 0; i < file.Tags.Count && handles.Count > 0; i++)
        {
            DxfTag tag = file.Tags[i];
            if (tag.Code == 0)
            {
                opening = tag;
            }
            else if (!gone[i] && IsPointer(tag.Code) && HandleOf(file, tag) is { } named && handles.Contains(named))
            {
                first = count == 0 ? opening : first;
                ofFirst = count == 0 ? file.Text(tag) : ofFirst;
                count++;
            }
        }

        return count == 0
            ? null
            : new DxfIssue(
                DxfIssueCodes.ReferenceLeft,
                DxfIssueKind.Notice,
                $"{Wording.Count(count, "reference", "references")} to entities that were left out remain in the file; the first is "
                    + $"to {Wording.Quoted(ofFirst)} in {file.Text(first)} at {file.Place(first.Line)}: look at what was "
                    + "made of them, such as groups and fillings.",
                Line: first.Line
            );
    }

    // Pointers, owners and handles in data of other programs.
    private static bool IsPointer(int code) => code is (>= 320 and <= 369) or 1005;

    private static ulong? HandleOf(TagFile file, in DxfTag tag) =>
        ulong.TryParse(file.Raw(tag), NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out ulong handle)
            ? handle
            : null;
}
