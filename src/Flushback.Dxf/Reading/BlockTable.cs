using Flushback.Dxf.Tags;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading;

/// <summary>A block: a drawing within the drawing, placed by INSERT.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Base">The point of it that an INSERT puts in place, in units of the file.</param>
/// <param name="First">Index of its first entity's first group.</param>
/// <param name="End">Index past its last group.</param>
/// <param name="IsExternal">True when it lives in another file.</param>
internal sealed record Block(string Name, Point Base, int First, int End, bool IsExternal);

/// <summary>The blocks of a drawing by name.</summary>
internal sealed class BlockTable
{
    private const int ExternalFlags = 4 | 8;

    private readonly Dictionary<string, Block> _blocks = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>Reads the BLOCKS section.</summary>
    public static BlockTable Of(TagFile file, Sections sections, ReadingLog log)
    {
        BlockTable table = new();
        foreach (Range section in sections.Named("BLOCKS"))
        {
            int i = section.Start.Value;
            while (i < section.End.Value && !log.HasErrors)
            {
                i =
                    file.Tags[i].Code == 0 && file.Is(file.Tags[i], "BLOCK"u8)
                        ? table.Take(file, i, section.End.Value, log)
                        : i + 1;
            }
        }

        return table;
    }

    /// <summary>The block of a name, compared without regard to case; null when there is none.</summary>
    public Block? Find(string name) => _blocks.GetValueOrDefault(name);

    private int Take(TagFile file, int start, int sectionEnd, ReadingLog log)
    {
        string name = "";
        double x = 0;
        double y = 0;
        int flags = 0;
        int i = start + 1;
        for (; i < sectionEnd && file.Tags[i].Code != 0; i++)
        {
            DxfTag tag = file.Tags[i];
            bool isSound = true;
            switch (tag.Code)
            {
                case 2:
                    name = file.Text(tag);
                    break;
                case 10:
                    isSound = file.TryNumber(tag, out x);
                    break;
                case 20:
                    isSound = file.TryNumber(tag, out y);
                    break;
                case 70:
                    isSound = file.TryInteger(tag, out flags);
                    break;
            }

            if (!isSound)
            {
                log.DamagedNumber(
                    file,
                    tag,
                    new EntityRecord("BLOCK", name, "0", file.Tags[start].Line, start, i, i)
                    {
                        PlaceWord = file.Form.PlaceWord,
                    }
                );
            }
        }

        int first = i;
        while (i < sectionEnd && !(file.Tags[i].Code == 0 && file.Is(file.Tags[i], "ENDBLK"u8)))
        {
            i++;
        }

        _blocks.TryAdd(name, new Block(name, new Point(x, y), first, i, (flags & ExternalFlags) != 0));
        return i;
    }
}
