using Flushback.Dxf.Tags;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>An INSERT: which block goes where, how often.</summary>
/// <param name="BlockName">Name of the block.</param>
/// <param name="ScaleX">Scale along x of the block.</param>
/// <param name="ScaleY">Scale along y of the block.</param>
/// <param name="Turn">Unit direction of the block's x axis, in the INSERT's own plane.</param>
/// <param name="At">Where the block's base point goes, in the INSERT's own plane.</param>
/// <param name="Columns">Copies along the turned x axis.</param>
/// <param name="Rows">Copies along the turned y axis.</param>
/// <param name="Spacing">Distance between columns (x) and rows (y); not scaled.</param>
/// <param name="IsFromBehind">True when the INSERT's plane is seen from behind.</param>
internal readonly record struct BlockInsert(
    string BlockName,
    double ScaleX,
    double ScaleY,
    Vector Turn,
    Point At,
    int Columns,
    int Rows,
    Vector Spacing,
    bool IsFromBehind
)
{
    /// <summary>The map from a block's coordinates to those around the INSERT, for one copy.</summary>
    public PlaneMap MapOf(Block block, int column, int row)
    {
        PlaneMap toBase = new(1, 0, 0, 1, -block.Base.X, -block.Base.Y);
        PlaneMap scaled = new(ScaleX, 0, 0, ScaleY, column * Spacing.X, row * Spacing.Y);
        PlaneMap turned = new(Turn.X, -Turn.Y, Turn.Y, Turn.X, At.X, At.Y);
        PlaneMap placed = toBase.Then(scaled).Then(turned);
        return IsFromBehind ? placed.Then(PlaneMap.FromBehind) : placed;
    }
}

/// <summary>Reads INSERT.</summary>
internal sealed class Inserts(TagFile file, NumberFields fields, ReadingLog log)
{
    /// <summary>The INSERT; null when it is faulty, which the log says.</summary>
    public BlockInsert? Insert(in EntityRecord record)
    {
        fields.Take(record);
        if (fields.IsDamaged)
        {
            return null;
        }

        string name = NameOf(record);
        Point at = fields.PointAt(10);
        double scaleX = fields.Or(41, 1);
        double scaleY = fields.Or(42, 1);
        if (name.Length == 0 || !at.IsFinite)
        {
            return Faulty(
                record,
                DxfIssueCodes.EntityInvalid,
                "lacks its block or its place (groups 2, 10, 20): draw it again"
            );
        }

        if (scaleX == 0 || scaleY == 0)
        {
            return Faulty(
                record,
                DxfIssueCodes.EntityInvalid,
                "scales its block to nothing (groups 41, 42): delete it or set its scale"
            );
        }

        if (record.Facing == Facing.Tilted)
        {
            return Faulty(
                record,
                DxfIssueCodes.EntityNotFlat,
                "lies in a tilted plane (groups 210, 220, 230): flatten the drawing to one plane"
            );
        }

        return new BlockInsert(
            name,
            scaleX,
            scaleY,
            Degrees.Direction(fields.Or(50, 0)),
            at,
            Math.Max(1, fields.Flags(70)),
            Math.Max(1, fields.Flags(71)),
            new Vector(fields.Or(44, 0), fields.Or(45, 0)),
            record.Facing == Facing.Down
        );
    }

    private string NameOf(in EntityRecord record)
    {
        for (int i = record.First + 1; i < record.End; i++)
        {
            if (file.Tags[i].Code == 2)
            {
                return file.Text(file.Tags[i]);
            }
        }

        return "";
    }

    private BlockInsert? Faulty(in EntityRecord record, string code, string what)
    {
        log.Fault(record, code, what);
        return null;
    }
}
