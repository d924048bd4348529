namespace Flushback.Dxf.Reading;

/// <summary>Counts entities and vertices against the limits, whatever blocks they come from.</summary>
internal sealed class DrawingBudget(DxfLimits limits, ReadingLog log)
{
    private int _entities;
    private int _vertices;

    /// <summary>Counts an entity, or a copy of a block; false when that was one too many, which the log says.</summary>
    public bool TryTakeEntity(in EntityRecord record, CancellationToken ct)
    {
        if ((++_entities & 0x3FF) == 0)
        {
            ct.ThrowIfCancellationRequested();
        }

        if (_entities <= limits.MaxEntities)
        {
            return true;
        }

        log.LimitExceeded(
            new DxfLimitHit(nameof(DxfLimits.MaxEntities), limits.MaxEntities, _entities),
            $"The drawing has more than {Wording.Whole(limits.MaxEntities)} entities, blocks exploded (reached at "
                + $"{record.Place}); leave out what is not needed, or raise the limit.",
            record.Line
        );
        return false;
    }

    /// <summary>Counts the vertices of an entity; false when they were too many, which the log says.</summary>
    public bool TryTakeVertices(int count, in EntityRecord record)
    {
        _vertices += count;
        if (_vertices <= limits.MaxVertices)
        {
            return true;
        }

        log.LimitExceeded(
            new DxfLimitHit(nameof(DxfLimits.MaxVertices), limits.MaxVertices, _vertices),
            $"The drawing has more than {Wording.Whole(limits.MaxVertices)} vertices (reached in {record.Label}); leave "
                + "out what is not needed, or raise the limit.",
            record.Line
        );
        return false;
    }
}
