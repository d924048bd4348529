using Flushback.Geometry.Approximation;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Approximation;

public class PolygonsTests
{
    private const double Sagitta = 1e-5;

    [Fact]
    public void A_plate_with_a_hole_has_the_area_between()
    {
        Outline hole = At(Named.Disc(2), 5, 5);
        Near.Equal(
            100 - (4 * Math.PI),
            Polygons.Of(Named.Square(10), [hole], Sagitta).Area,
            Sagitta * hole.PerimeterMm
        );
        Assert.Null(Polygons.FlawOf(Polygons.Of(Named.Square(10), [hole], Sagitta)));
    }

    [Fact]
    public void What_makes_a_polygon_unsound_is_named()
    {
        Assert.Equal(PolygonFlawKind.HoleOutside, FlawWith(At(Named.Disc(2), 50, 5)));
        Assert.Equal(PolygonFlawKind.SelfCrossing, FlawWith(At(Named.Disc(2), 10, 5)));
        Assert.Equal(PolygonFlawKind.HoleInHole, FlawWith(At(Named.Disc(4), 5, 5), At(Named.Disc(2), 5, 5)));
        Assert.Equal(
            PolygonFlawKind.SelfCrossing,
            Polygons.FlawOf(Polygons.Of(Named.Polygon((0, 0), (10, 10), (10, 0), (0, 10)), [], Sagitta))?.Kind
        );
        Assert.Equal(
            PolygonFlawKind.SelfTouching,
            Polygons
                .FlawOf(
                    Polygons.Of(
                        Named.Polygon((0, 0), (10, 0), (10, 10), (5, 5), (0, 10), (-10, 10), (5, 5), (-10, 0)),
                        [],
                        Sagitta
                    )
                )
                ?.Kind
        );
    }

    [Fact]
    public void The_place_of_a_flaw_is_given()
    {
        PolygonFlaw? flaw = Polygons.FlawOf(
            Polygons.Of(Named.Polygon((0, 0), (10, 10), (10, 0), (0, 10)), [], Sagitta)
        );
        Near.Equal(new Point(5, 5), Assert.NotNull(flaw).At);
    }

    private static PolygonFlawKind? FlawWith(params Outline[] holes) =>
        Polygons.FlawOf(Polygons.Of(Named.Square(10), holes, Sagitta))?.Kind;

    private static Outline At(Outline outline, double x, double y) =>
        outline.Transformed(new RigidMotion(Angle.Zero, new Vector(x, y)));
}
