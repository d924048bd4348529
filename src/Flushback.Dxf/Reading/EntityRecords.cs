using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Reading;

/// <summary>Cuts a run of groups into entities.</summary>
internal sealed class EntityRecords(TagFile file, NamePool names, ReadingLog log)
{
    /// <summary>How far a normal may lean and still count as straight, as a component of a unit vector.</summary>
    private const double NormalTolerance = 1e-9;

    /// <summary>The entity that begins at an index, with the vertices or attributes that follow it.</summary>
    /// <param name="first">Index of a group 0.</param>
    /// <param name="sectionEnd">Index past the last group of the section or block.</param>
    public EntityRecord At(int first, int sectionEnd)
    {
        DxfTag opening = file.Tags[first];
        string type = names.NameOf(opening).ToUpperInvariant();
        int end = EndOf(first, sectionEnd);
        EntityRecord record = WithOwnGroups(
            new EntityRecord(type, "", "0", opening.Line, first, end, end) { PlaceWord = file.Form.PlaceWord }
        );
        return type is "POLYLINE" or "INSERT" ? record with { FollowersEnd = EndOfFollowers(end, sectionEnd) } : record;
    }

    private EntityRecord WithOwnGroups(EntityRecord record)
    {
        double normalX = 0;
        double normalY = 0;
        double normalZ = 1;
        for (int i = record.First + 1; i < record.End; i++)
        {
            DxfTag tag = file.Tags[i];
            switch (tag.Code)
            {
                case 5 when record.Handle.Length == 0:
                    record = record with { Handle = file.Text(tag).ToUpperInvariant() };
                    break;
                case 8:
                    record = record with { Layer = names.NameOf(tag) };
                    break;
                case 60:
                    record = record with { IsInvisible = file.TryInteger(tag, out int hidden) && hidden == 1 };
                    break;
                case 67:
                    record = record with { IsInPaperSpace = file.TryInteger(tag, out int paper) && paper == 1 };
                    break;
                case 210:
                    normalX = Number(tag, record);
                    break;
                case 220:
                    normalY = Number(tag, record);
                    break;
                case 230:
                    normalZ = Number(tag, record);
                    break;
                default:
                    break;
            }
        }

        return record with
        {
            Facing = FacingOf(normalX, normalY, normalZ),
        };
    }

    private double Number(in DxfTag tag, in EntityRecord record)
    {
        if (file.TryNumber(tag, out double value))
        {
            return value;
        }

        log.DamagedNumber(file, tag, record);
        return 0;
    }

    private static Facing FacingOf(double x, double y, double z)
    {
        bool isStraight = Math.Abs(x) <= NormalTolerance * Math.Abs(z) && Math.Abs(y) <= NormalTolerance * Math.Abs(z);
        if (!isStraight || z == 0)
        {
            return Facing.Tilted;
        }

        return z > 0 ? Facing.Up : Facing.Down;
    }

    private int EndOf(int first, int sectionEnd)
    {
        int i = first + 1;
        while (i < sectionEnd && file.Tags[i].Code != 0)
        {
            i++;
        }

        return i;
    }

    private int EndOfFollowers(int i, int sectionEnd)
    {
        while (i < sectionEnd)
        {
            DxfTag tag = file.Tags[i];
            if (file.Is(tag, "SEQEND"u8))
            {
                return EndOf(i, sectionEnd);
            }

            if (!file.Is(tag, "VERTEX"u8) && !file.Is(tag, "ATTRIB"u8))
            {
                return i;
            }

            i = EndOf(i, sectionEnd);
        }

        return i;
    }
}
