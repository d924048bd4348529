using Flushback.Dxf.Reading.Entities;

namespace Flushback.Dxf.Reading;

/// <summary>Finds the block that an INSERT places, and refuses those without end or measure.</summary>
internal sealed class BlockChoice(BlockTable blocks, DxfLimits limits, ReadingLog log)
{
    /// <summary>The block to draw; null when there is none to draw, which the log says.</summary>
    public Block? Of(in EntityRecord record, in BlockInsert insert, Placement placement)
    {
        string name = Wording.Quoted(insert.BlockName);
        if (blocks.Find(insert.BlockName) is not { } block)
        {
            log.Fault(
                record,
                DxfIssueCodes.BlockMissing,
                $"places block {name}, which the drawing does not hold: draw it again"
            );
            return null;
        }

        if (block.IsExternal)
        {
            log.Fault(
                record,
                DxfIssueCodes.BlockMissing,
                $"places {name} from another file: bind the external reference before exporting"
            );
            return null;
        }

        if (placement.IsWithin(block.Name))
        {
            log.Error(
                DxfIssueCodes.BlockCycle,
                $"{record.Label} places block {name} inside itself, which has no end: take it out of the block.",
                record.Line
            );
            return null;
        }

        long copies = (long)insert.Columns * insert.Rows;
        if (copies > limits.MaxArrayCopies)
        {
            log.LimitExceeded(
                new DxfLimitHit(nameof(DxfLimits.MaxArrayCopies), limits.MaxArrayCopies, copies),
                $"{record.Label} places {copies} copies of block {name}, and {Wording.Whole(limits.MaxArrayCopies)} is the limit: explode what is needed.",
                record.Line
            );
            return null;
        }

        if (placement.Depth >= limits.MaxBlockDepth)
        {
            log.LimitExceeded(
                new DxfLimitHit(nameof(DxfLimits.MaxBlockDepth), limits.MaxBlockDepth, placement.Depth + 1),
                $"{record.Label} places block {name} more than {Wording.Whole(limits.MaxBlockDepth)} blocks deep, which is the limit: explode the outer blocks.",
                record.Line
            );
            return null;
        }

        return block;
    }
}
