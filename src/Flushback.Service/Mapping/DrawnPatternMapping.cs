using Flushback.Geometry;
using Flushback.Patterns;

namespace Flushback.Service.Mapping;

/// <summary>A pattern as drawn, to the contract.</summary>
internal static class DrawnPatternMapping
{
    /// <summary>To the contract.</summary>
    public static Wire.DrawnPattern ToWire(this DrawnPattern pattern)
    {
        Wire.DrawnPattern wire = new() { Dimensions = pattern.Dimensions.ToWire() };
        wire.Pieces.AddRange(pattern.Pieces.Select(ToWire));
        wire.HandleLine.AddRange(pattern.HandleLine.Select(edge => VertexOf(edge.Start, edge.Bulge)));
        wire.HandleLine.Add(VertexOf(pattern.HandleLine[^1].End, 0));
        return wire;
    }

    private static Wire.PatternPiece ToWire(PatternPiece piece)
    {
        Wire.PatternPiece wire = new()
        {
            Kind = piece.Kind switch
            {
                PieceKind.Blade => Wire.PieceKind.Blade,
                PieceKind.Spring => Wire.PieceKind.Spring,
                PieceKind.LinerBetween => Wire.PieceKind.LinerBetween,
                _ => Wire.PieceKind.Handle,
            },
            Finished = piece.Finished.ToWire(),
            Rough = piece.HasStock ? piece.Rough.ToWire() : null,
            Count = piece.Count,
            Second = piece.IsSecond,
        };
        if (piece.ThicknessMm is { } thickness)
        {
            wire.ThicknessMm = thickness;
        }

        wire.Holes.AddRange(
            piece.Holes.Select(hole => new Wire.PatternHole
            {
                Pin = ToWire(hole.Pin),
                Circle = hole.Circle.ToWire(),
                Second = hole.IsSecond,
            })
        );
        wire.Marks.AddRange(
            piece.Marks.Select(mark => new Wire.PatternMark
            {
                Kind = mark.Kind == MarkKind.NailNick ? Wire.MarkKind.NailNick : Wire.MarkKind.Well,
                Outline = mark.Outline.ToWire(),
            })
        );
        return wire;
    }

    private static Wire.PinKind ToWire(PinKind pin) =>
        pin switch
        {
            PinKind.Pivot => Wire.PinKind.Pivot,
            PinKind.Centre => Wire.PinKind.Centre,
            _ => Wire.PinKind.Rear,
        };

    private static Wire.Vertex VertexOf(Point at, double bulge) =>
        new()
        {
            XMm = at.X,
            YMm = at.Y,
            Bulge = bulge,
        };
}
