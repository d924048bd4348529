using System.Collections.Immutable;
using Flushback.Dxf.Refitting;
using Flushback.Geometry;
using Flushback.Inspection.Checks;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Repair;

/// <summary>A chain with arcs for the lines that stood for them, and without segments too short to cut.</summary>
internal sealed class MendedPieces
{
    private readonly ChainToMend _chain;
    private readonly double _shortMm;
    private readonly Func<int, string> _nameAt;
    private readonly List<(int Edge, string Sentence)> _sentences = [];

    /// <param name="chain">The chain.</param>
    /// <param name="shortMm">Shorter segments are too short.</param>
    /// <param name="nameAt">How a sentence names the entity of an edge.</param>
    public MendedPieces(ChainToMend chain, double shortMm, Func<int, string> nameAt)
    {
        _chain = chain;
        _shortMm = shortMm;
        _nameAt = nameAt;
        ImmutableArray<Refit> refits = Refits();
        foreach (Refit refit in refits)
        {
            Tell(refit);
        }

        if (refits is [var whole] && whole.From == whole.To)
        {
            Circle = whole.Circle;
            Pieces = [new Piece(CutContour.OutlineOf(whole.Circle).Edges, 0, chain.Edges.Length)];
        }
        else
        {
            Pieces = ArcsFromLines.Pieces(chain.Edges, refits);
            JoinShort();
        }
    }

    /// <summary>The pieces, along the chain.</summary>
    public List<Piece> Pieces { get; }

    /// <summary>The circle that the whole chain became, if it did.</summary>
    public Circle? Circle { get; }

    /// <summary>What was done, each with an edge it was done to.</summary>
    public IReadOnlyList<(int Edge, string Sentence)> Sentences => _sentences;

    private ImmutableArray<Refit> Refits()
    {
        RefittedShape refitted = _chain.IsClosed
            ? ArcRefitting.Of(
                Outline.FromVertices([.. _chain.Edges.Select(edge => new Vertex(edge.Start, edge.Bulge))]),
                RefitTolerances.Default
            )
            : ArcRefitting.Of(_chain.Edges, RefitTolerances.Default);
        return [.. refitted.Refits.Where(refit => PolygonsForArcs.AreLines(refit, _chain.Edges))];
    }

    private void Tell(Refit refit)
    {
        string what =
            refit.From == refit.To
                ? $"a circle of {Said.Length(refit.Circle.DiameterMm)} at {Said.At(refit.Circle.Centre)}"
                : $"an arc of radius {Said.Length(refit.Circle.RadiusMm)} from {Said.At(refit.From)} to {Said.At(refit.To)}";
        _sentences.Add(
            (
                refit.FirstEdge,
                $"{Said.Count(refit.EdgeCount, "edge", "edges")} of {_nameAt(refit.FirstEdge)} became {what}, within "
                    + $"{Said.Length(refit.DeviationMm)}."
            )
        );
    }

    private void JoinShort()
    {
        int[] shorts = [.. ShortAmong(Pieces)];
        ShortEdgeJoining.Join(Pieces, _chain.IsClosed, _shortMm);
        int[] gone = [.. shorts.Except(ShortAmong(Pieces))];
        if (gone.Length == 0)
        {
            return;
        }

        string[] names = [.. gone.Select(_nameAt).Distinct()];
        string of = names.Length == 1 ? names[0] : $"{Said.Whole(names.Length)} entities, {names[0]} to {names[^1]},";
        _sentences.Add(
            (
                gone[0],
                $"{Said.Count(gone.Length, "segment", "segments")} of {of} shorter than {Said.Length(_shortMm)} went into what stands "
                    + $"next to {(gone.Length == 1 ? "it" : "them")}."
            )
        );
    }

    private IEnumerable<int> ShortAmong(List<Piece> pieces) =>
        pieces
            .Where(piece =>
                piece.Count == 1 && piece.Edges is [var edge] && edge.LengthMm < _shortMm - CutTolerances.TouchingMm
            )
            .Select(piece => piece.First % _chain.Edges.Length);
}
