using CsCheck;
using Flushback.Geometry.Approximation;
using Flushback.Geometry.Checking;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Approximation;

public class OutlineOverlapTests
{
    private const double Sagitta = 1e-4;

    [Fact]
    public void Two_squares_overlap_by_the_rectangle_they_share() =>
        Near.Equal(6 * 7, OutlineOverlap.AreaMm2(Named.Square(10), Moved(Named.Square(10), 4, -3), Sagitta));

    [Fact]
    public void Squares_side_by_side_overlap_by_nothing()
    {
        Assert.Equal(0, OutlineOverlap.AreaMm2(Named.Square(10), Moved(Named.Square(10), 10, 0), Sagitta));
        Assert.Equal(0, OutlineOverlap.AreaMm2(Named.Square(10), Moved(Named.Square(10), 30, 0), Sagitta));
    }

    /// <summary>Lens of two equal circles, 2 r^2 acos(d / 2r) - d/2 sqrt(4 r^2 - d^2). Source: elementary geometry.</summary>
    [Theory]
    [InlineData(1)]
    [InlineData(5)]
    [InlineData(9)]
    public void Two_discs_overlap_by_their_lens(double apart)
    {
        double lens = (50 * Math.Acos(apart / 10)) - (apart / 2 * Math.Sqrt(100 - (apart * apart)));
        Near.Equal(
            lens,
            OutlineOverlap.AreaMm2(Named.Disc(5), Moved(Named.Disc(5), apart, 0), Sagitta),
            Sagitta * Named.Disc(5).PerimeterMm
        );
    }

    [Fact]
    public void An_outline_overlaps_itself_by_its_area() =>
        Any.Outline.Sample(outline =>
            Near.Equal(
                outline.AreaMm2,
                OutlineOverlap.AreaMm2(outline, outline.Reversed(), Sagitta),
                Sagitta * outline.PerimeterMm
            )
        );

    [Fact]
    public void A_wall_thinner_than_the_sagitta_is_flattened_finer()
    {
        // Two arcs 0.02 mm apart, the inner one drawn in two pieces, so that its chords do not follow the outer one's.
        Edge inner = new(new Point(10, 0), new Point(-10, 0), 0.5);
        (Edge first, Edge second) = (inner.Part(0, 0.37), inner.Part(0.37, 1));
        Outline wall = Outline.FromVertices([
            new Vertex(-10.02, 0, -0.5),
            new Vertex(10.02, 0),
            new Vertex(first.Start, first.Bulge),
            new Vertex(second.Start, second.Bulge),
            new Vertex(second.End),
        ]);
        Assert.Empty(OutlineCheck.FlawsOf(wall.Vertices.AsSpan(), GeometryTolerances.Default));
        Assert.NotNull(Polygons.FlawOf(Polygons.Of(wall, [], 0.1, FlatteningBias.Centred)));
        Outline plate = Moved(Named.Square(100), -50, -50);
        Near.Equal(wall.AreaMm2, OutlineOverlap.AreaMm2(wall, plate, 0.1), 0.01 * wall.PerimeterMm);
    }

    [Fact]
    public void An_outline_that_crosses_itself_is_refused() =>
        Assert.Throws<ArgumentException>(() =>
            OutlineOverlap.AreaMm2(Named.Polygon((0, 0), (10, 10), (10, 0), (0, 10)), Named.Square(5), Sagitta)
        );

    private static Outline Moved(Outline outline, double x, double y) =>
        outline.Transformed(new RigidMotion(Angle.Zero, new Vector(x, y)));
}
