using Flushback.Geometry.Offsets;

namespace Flushback.Geometry.Tests.Offsets;

/// <summary>Arcs so flat that their centres are far off.</summary>
public class FlatArcTests
{
    [Theory]
    [InlineData(1e5)]
    [InlineData(1e6)]
    [InlineData(1e7)]
    [InlineData(3e7)]
    [InlineData(1e8)]
    [InlineData(3e8)]
    [InlineData(1e9)]
    [InlineData(1e11)]
    public void A_plate_with_sides_that_hardly_bend_is_offset_as_one_with_straight_sides(double radiusMm)
    {
        double longBulge = Math.Tan(Math.Asin(30 / radiusMm) / 2);
        double shortBulge = -Math.Tan(Math.Asin(6 / radiusMm) / 2);
        for (int turn = 0; turn < 36; turn++)
        {
            Outline plate = Outline
                .FromVertices([
                    new Vertex(new Point(-30, -6), longBulge),
                    new Vertex(new Point(30, -6), shortBulge),
                    new Vertex(new Point(30, 6), -longBulge),
                    new Vertex(new Point(-30, 6), 0),
                ])
                .Transformed(RigidMotion.RotationAbout(new Point(3, -2), Angle.FromDegrees(turn * 10.3)));
            foreach (double distance in new[] { 0.1, 0.2, 1.7, -0.1, -2.3 })
            {
                // The bend changes the area by two thirds of chord times sagitta at most, and that by a little.
                double slack = 1e-6 + (60 * 60 * 60 / radiusMm);
                double grown = Assert.Single(Offset.Of(plate, distance)).AreaMm2;
                double expected =
                    distance > 0
                        ? 720 + (144 * distance) + (Math.PI * distance * distance)
                        : (60 + (2 * distance)) * (12 + (2 * distance));
                Assert.Equal(expected, grown, slack);
            }
        }
    }
}
