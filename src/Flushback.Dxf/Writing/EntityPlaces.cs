using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Writing;

/// <summary>Where the entities of model space stand in a file, vertices and attributes with them.</summary>
internal sealed class EntityPlaces
{
    private readonly TagFile _file;
    private readonly Dictionary<int, EntityRecord> _byLine = [];

    /// <param name="file">The file.</param>
    /// <param name="sections">Its sections.</param>
    public EntityPlaces(TagFile file, Sections sections)
    {
        _file = file;
        EntityRecords records = new(file, new NamePool(file), new ReadingLog());
        foreach (Range section in sections.Named("ENTITIES"))
        {
            int end = section.End.Value;
            for (int i = section.Start.Value; i < end; )
            {
                EntityRecord record = records.At(i, end);
                _byLine.TryAdd(record.Line, record);
                i = record.FollowersEnd;
            }
        }
    }

    /// <summary>The entity that a shape was read from.</summary>
    /// <exception cref="ArgumentException">The file has no such entity.</exception>
    public EntityRecord Of(DxfShape shape) =>
        _byLine.TryGetValue(shape.Line, out EntityRecord record)
        && record.Type == shape.TypeName
        && record.Handle == shape.Handle
            ? record
            : throw new ArgumentException($"The file holds no {shape.Label}.", nameof(shape));

    /// <summary>The offsets of the first byte of an entity and past its last, with all that belongs to it.</summary>
    public (int From, int To) BytesOf(in EntityRecord record) =>
        (_file.Tags[record.First].At, _file.EndOf(_file.Tags[record.FollowersEnd - 1]));

    /// <summary>The group that spells a layer some entity lies on; null when none does.</summary>
    public DxfTag? LayerSpelling(string layer)
    {
        foreach (EntityRecord record in _byLine.Values)
        {
            for (int i = record.First + 1; i < record.End; i++)
            {
                DxfTag tag = _file.Tags[i];
                if (tag.Code == 8 && string.Equals(_file.Text(tag), layer, StringComparison.OrdinalIgnoreCase))
                {
                    return tag;
                }
            }
        }

        return null;
    }
}
