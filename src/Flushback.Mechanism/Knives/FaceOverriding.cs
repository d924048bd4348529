using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Distances;

namespace Flushback.Mechanism.Knives;

/// <summary>Puts the faces a maker names in place of those found.</summary>
internal static class FaceOverriding
{
    /// <summary>The knife with each named face on the edge nearest to its point.</summary>
    public static Knife Apply(Placement placement, ImmutableArray<FaceOverride> overrides)
    {
        Knife knife = placement.Knife;
        RigidMotion toKnife = placement.ToDrawing.Inverse;
        RigidMotion toOpenBlade = toKnife.Then(Knife.BladeAt(-placement.DrawnBladeAngle));
        foreach (FaceOverride named in overrides)
        {
            if (named.BladeFace is { } bladeFace)
            {
                int edge = NearestEdge(knife.Blade, toOpenBlade.Apply(named.Near));
                knife = knife with { BladeFaces = knife.BladeFaces.SetItem(edge, bladeFace) };
            }

            if (named.SpringFace is { } springFace)
            {
                int edge = NearestEdge(knife.Spring, toKnife.Apply(named.Near));
                knife = knife with { SpringFaces = knife.SpringFaces.SetItem(edge, springFace) };
            }
        }

        return knife;
    }

    private static int NearestEdge(Outline outline, Point to) =>
        Enumerable.Range(0, outline.Edges.Length).MinBy(i => Distance.Between(to, outline.Edges[i]).DistanceMm);
}
