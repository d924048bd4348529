using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Layout;

/// <summary>What makes a family of blades: shares of length and width (common practice, no source; the numbers are ours).</summary>
/// <param name="Name">Its name in a sentence, with article.</param>
/// <param name="TipShare">Height of the tip over the edge, as a share of the width.</param>
/// <param name="PointOfLength">How far before the tip the spine begins to fall, as a share of the blade's length.</param>
/// <param name="PointOfFall">The same, as a multiple of the height by which the spine falls; the larger of the two holds.</param>
/// <param name="SweepOfLength">How far before the tip the edge begins to rise, as a share of the length; 0 for a straight edge.</param>
/// <param name="ClipHollow">Sagitta of a clip's hollow, as a share of its length; null where the spine falls in a round.</param>
internal sealed record BladeShape(
    string Name,
    double TipShare,
    double PointOfLength,
    double PointOfFall,
    double SweepOfLength,
    double? ClipHollow = null
)
{
    /// <summary>True when the edge is straight to the tip.</summary>
    public bool HasStraightEdge => SweepOfLength <= 0;

    /// <summary>The shape of a family.</summary>
    public static BladeShape Of(BladeFamily family) =>
        family switch
        {
            BladeFamily.ClipPoint => new("A clip point", 0.55, 0.36, 1.6, 0.32, ClipHollow: 0.045),
            BladeFamily.DropPoint => new("A drop point", 0.58, 0.48, 2, 0.4),
            BladeFamily.SpearPoint => new("A spear point", 0.5, 0.36, 1.6, 0.36),
            BladeFamily.Sheepsfoot => new("A sheepsfoot", 0, 0, 1.35, 0),
            BladeFamily.Wharncliffe => new("A wharncliffe", 0, 0.6, 2, 0),
            _ => new("A pen blade", 0.5, 0.22, 1.25, 0.26),
        };
}
