using CsCheck;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Values;

public class RigidMotionTests
{
    [Fact]
    public void The_inverse_brings_every_point_back() =>
        Gen.Select(Any.Motion, Any.Point)
            .Sample(
                (motion, p) =>
                {
                    Near.Equal(p, motion.Inverse.Apply(motion.Apply(p)));
                    Near.Equal(p, motion.Apply(motion.Inverse.Apply(p)));
                }
            );

    [Fact]
    public void One_motion_then_another_moves_as_both_in_turn() =>
        Gen.Select(Any.Motion, Any.Motion, Any.Point)
            .Sample((first, second, p) => Near.Equal(second.Apply(first.Apply(p)), first.Then(second).Apply(p)));

    [Fact]
    public void Distances_are_kept() =>
        Gen.Select(Any.Motion, Any.Point, Any.Point)
            .Sample((motion, p, q) => Near.Equal(p.DistanceTo(q), motion.Apply(p).DistanceTo(motion.Apply(q))));

    [Fact]
    public void A_moved_edge_passes_the_moved_points() =>
        Gen.Select(Any.Motion, Any.Edge, Gen.Double[0, 1])
            .Sample(
                (motion, edge, fraction) =>
                    Near.Equal(motion.Apply(edge.PointAt(fraction)), motion.Apply(edge).PointAt(fraction))
            );

    [Fact]
    public void A_turn_about_a_point_leaves_that_point() =>
        Gen.Select(Any.Point, Gen.Double[-7, 7])
            .Sample(
                (centre, turn) => Near.Equal(centre, RigidMotion.RotationAbout(centre, new Angle(turn)).Apply(centre))
            );

    [Fact]
    public void A_quarter_turn_about_a_point_is_counter_clockwise() =>
        Near.Equal(
            new Point(1, 3),
            RigidMotion.RotationAbout(new Point(1, 1), Angle.FromDegrees(90)).Apply(new Point(3, 1))
        );

    [Fact]
    public void The_default_motion_moves_nothing() =>
        Assert.Equal(new Point(3, -4), RigidMotion.Identity.Apply(new Point(3, -4)));
}
