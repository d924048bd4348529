using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Pairs;
using NetTopologySuite.Geometries;

namespace Flushback.Patterns.Tests.Pairs;

/// <summary>Distances of two blades against another library's, on outlines flattened densely.</summary>
public sealed class BladeClearanceTests
{
    // Chords lie within this of their arcs, so that the distance is right within twice that.
    private const double SagittaMm = 1e-5;
    private static readonly double[] _others = [0, 70, 180];

    [Theory]
    [InlineData(Arrangement.SharedSpring)]
    [InlineData(Arrangement.TwoSprings)]
    public void Distances_and_overlaps_agree_with_another_library(Arrangement arrangement)
    {
        foreach (DrawnPair pair in PairTests.Some(arrangement).Take(6))
        {
            BladeClearance clearance = new(pair.First.Knife.Blade, pair.Second.Knife.Blade, pair.SecondToFirst);
            for (int i = 0; i <= 6; i++)
            {
                foreach (double other in _others)
                {
                    (Angle first, Angle second) = (Angle.FromDegrees(30 * i), Angle.FromDegrees(other));
                    (Flushback.Geometry.Distances.Nearest nearest, bool overlaps) = clearance.At(first, second);
                    Polygon one = Flat(pair.First.Knife.Blade, Knife.BladeAt(first));
                    Polygon two = Flat(pair.Second.Knife.Blade, Knife.BladeAt(second).Then(pair.SecondToFirst));

                    double distance = one.Distance(two);
                    Assert.Equal(distance, nearest.DistanceMm, 3 * SagittaMm);
                    Assert.True(overlaps == distance <= 0 || distance < 3 * SagittaMm);
                }
            }
        }
    }

    private static Polygon Flat(Outline outline, RigidMotion motion)
    {
        List<Coordinate> ring = [];
        foreach (Edge edge in outline.Transformed(motion).Edges)
        {
            int pieces = edge.IsArc
                ? (int)Math.Ceiling(Math.Abs(4 * Math.Atan(edge.Bulge)) / Math.Sqrt(8 * SagittaMm / edge.RadiusMm)) + 1
                : 1;
            for (int i = 0; i < pieces; i++)
            {
                Flushback.Geometry.Point at = edge.PointAt((double)i / pieces);
                ring.Add(new Coordinate(at.X, at.Y));
            }
        }

        ring.Add(ring[0].Copy());
        return new GeometryFactory().CreatePolygon([.. ring]);
    }
}
