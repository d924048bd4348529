namespace Flushback.Geometry.Offsets;

/// <summary>A stretch of a curve between two places where curves meet.</summary>
/// <param name="Curve">The index of the curve.</param>
/// <param name="From">Where the stretch begins, as a fraction of the curve's length.</param>
/// <param name="To">Where it ends, as a fraction.</param>
/// <param name="Start">The place it begins at: the index of a node.</param>
/// <param name="End">The place it ends at: the index of a node.</param>
internal readonly record struct Piece(int Curve, double From, double To, int Start, int End)
{
    /// <summary>The fraction of the curve in the middle of the stretch.</summary>
    public double Middle => (From + To) / 2;
}
