using System.Collections.Immutable;
using CsCheck;
using Flushback.Geometry.Checking;

namespace Flushback.Geometry.Tests.Shapes;

/// <summary>Random areas of lines and arcs with what makes offsets hard: necks, bays, narrow mouths, holes, exact fits.</summary>
internal static class AnyRegion
{
    private const int MostBends = 8;

    /// <summary>At a sharp corner edges may otherwise cross once more by up to a nanometre, and so miss the distance by one.</summary>
    private static readonly GeometryTolerances Exact = new() { TouchingMm = 1e-9 };

    /// <summary>Stars and bands with up to four holes.</summary>
    public static Gen<Region> OfAnyKind { get; } = WithHoles(Gen.OneOf(Any.Outline.Where(IsExact), Band(grid: null)));

    /// <summary>
    /// Bands on a grid of half a millimetre, with half circles: parallel walls at round distances, collinear joints, and
    /// radii that an offset by a multiple of a quarter millimetre meets exactly.
    /// </summary>
    public static Gen<Region> OnGrid { get; } =
        Gen.OneOf(WithHoles(Band(grid: 0.5)), Steps().Select(steps => new Region(steps)));

    /// <summary>An offset that belongs to a region on the grid: a multiple of a quarter millimetre, either way.</summary>
    public static Gen<double> GridDistance { get; } =
        Gen.Int[-16, 16].Where(quarters => quarters != 0).Select(quarters => quarters / 4.0);

    /// <summary>Any offset of the size of a knife's features, either way.</summary>
    public static Gen<double> Distance { get; } = Gen.Double[-5, 5].Where(mm => Math.Abs(mm) > 1e-3);

    /// <summary>A region of either sort and a distance to offset it by.</summary>
    public static Gen<(Region Region, double DistanceMm)> WithDistance { get; } =
        Gen.OneOf(Gen.Select(OfAnyKind, Distance), Gen.Select(OnGrid, GridDistance));

    /// <summary>Five sharp convex corners far apart, one of the edges between them an arc, hollow or full.</summary>
    public static Gen<Region> WithSharpCorners { get; } =
        Gen.Select(
            Gen.Double[-0.3, 0.3].Array[5],
            Gen.Double[8, 14],
            Gen.Double[-0.1, 0.25],
            (shifts, radiusMm, bulge) =>
                new Region(
                    Outline.FromVertices([
                        .. shifts.Select(
                            (shift, i) =>
                            {
                                (double sin, double cos) = Math.SinCos((i * Math.Tau / 5) + shift);
                                return new Vertex(new Point(radiusMm * cos, radiusMm * sin), i == 0 ? bulge : 0);
                            }
                        ),
                    ])
                )
        );

    /// <summary>A band of varying width, straight or bent nearly to a ring: necks along it, a bay and a mouth if bent.</summary>
    private static Gen<Outline> Band(double? grid) =>
        Gen.Select(
            Gen.Select(Gen.Double[0.4, 6], Gen.Double[0.4, 6], Any.Bulge, Any.Bulge).Array[3, 9],
            Gen.Double[8, 20],
            Gen.Double[0.5, 5.9],
            Gen.Bool,
            (stations, radiusMm, bend, isStraight) => BandOf(stations, radiusMm, isStraight ? 0 : bend, grid)
        );

    private static Outline BandOf(
        (double Out, double In, double OuterBulge, double InnerBulge)[] stations,
        double radiusMm,
        double bend,
        double? grid
    )
    {
        List<Vertex> vertices = [];
        for (int i = 0; i < stations.Length; i++)
        {
            vertices.Add(new Vertex(At(i, stations[i].Out), stations[i].OuterBulge));
        }

        for (int i = stations.Length - 1; i >= 0; i--)
        {
            vertices.Add(new Vertex(At(i, -stations[i].In), stations[i].InnerBulge));
        }

        return SoundOf(vertices);

        Point At(int i, double outMm)
        {
            double along = (double)i / (stations.Length - 1);
            Point p =
                bend == 0
                    ? new Point(4 * i, outMm)
                    : Point.Origin + (Vector.FromDirection(new Angle(-bend * along)) * (radiusMm + outMm));
            return grid is { } step ? new Point(Math.Round(p.X / step) * step, Math.Round(p.Y / step) * step) : p;
        }
    }

    /// <summary>A wall of square steps on the grid, with half circles in or out where a step is wide enough.</summary>
    private static Gen<Outline> Steps() =>
        Gen.Select(Gen.Int[1, 8], Gen.Int[1, 16], Gen.Int[-1, 1])
            .Array[1, 12]
            .Select(steps =>
            {
                List<Vertex> vertices = [new Vertex(0, 0)];
                double x = 0;
                foreach ((int width, int _, int _) in steps)
                {
                    x += width / 2.0;
                }

                vertices.Add(new Vertex(x, 0));
                foreach ((int width, int height, int bulge) in Enumerable.Reverse(steps))
                {
                    vertices.Add(new Vertex(x, height / 2.0, bulge));
                    x -= width / 2.0;
                    vertices.Add(new Vertex(x, height / 2.0));
                }

                List<Vertex> distinct =
                [
                    .. vertices.Where((vertex, i) => vertex.Position != vertices[(i + 1) % vertices.Count].Position),
                ];
                return SoundOf(distinct);
            });

    /// <summary>The vertices as an outline, their arcs made flatter one after another until it is sound.</summary>
    private static Outline SoundOf(List<Vertex> vertices)
    {
        for (int tries = 0; tries < MostBends; tries++)
        {
            if (TrySound(vertices, out Outline? outline, out ImmutableArray<OutlineFlaw> flaws))
            {
                return outline;
            }

            foreach (OutlineFlaw flaw in flaws)
            {
                Flatten(flaw.VertexIndex);
                Flatten(flaw.OtherVertexIndex ?? flaw.VertexIndex);
            }
        }

        return TrySound([.. vertices.Select(vertex => vertex with { Bulge = 0 })], out Outline? straight, out _)
            ? straight
            : Named.Slot(12, 1.5);

        void Flatten(int i) =>
            vertices[i] = vertices[i] with { Bulge = Math.Abs(vertices[i].Bulge) > 0.2 ? vertices[i].Bulge / 4 : 0 };
    }

    private static bool IsExact(Outline outline) => OutlineCheck.FlawsOf([.. outline.Vertices], Exact).IsEmpty;

    private static bool TrySound(
        List<Vertex> vertices,
        [System.Diagnostics.CodeAnalysis.NotNullWhen(true)] out Outline? outline,
        out ImmutableArray<OutlineFlaw> flaws
    ) => OutlineCheck.TryOutline([.. vertices], Exact, out outline, out flaws);

    /// <summary>Up to four discs, slots and stars cut out, each where it finds room.</summary>
    private static Gen<Region> WithHoles(Gen<Outline> borders) =>
        Gen.Select(
                borders,
                Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1], Gen.Double[0.1, 0.99], Gen.Int[0, 2], Any.Outline).Array[
                    0,
                    12
                ]
            )
            .Select(
                (border, holes) =>
                {
                    Region region = new(border);
                    foreach ((double x, double y, double share, int kind, Outline star) in holes)
                    {
                        Box box = border.Bounds;
                        Point centre = new(box.MinX + (x * box.WidthMm), box.MinY + (y * box.HeightMm));
                        double roomMm = region.SignedDistanceMm(centre) * share;
                        if (roomMm > 0.05 && region.Holes.Length < 4)
                        {
                            region = new Region(region.Border, [.. region.Holes, Hole(centre, roomMm, kind, star)]);
                        }
                    }

                    return region;
                }
            );

    private static Outline Hole(Point centre, double roomMm, int kind, Outline star)
    {
        // Arcs of a star reach a little beyond its vertices, no farther than half a chord.
        double reachMm = star.Bounds.HalfPerimeterMm;
        return kind switch
        {
            0 => Moved(Named.Disc(roomMm)),
            1 => Moved(Named.Slot(roomMm / 2, roomMm / 3)),
            _ => Moved(
                Outline.FromVertices([
                    .. star.Vertices.Select(vertex =>
                        vertex with
                        {
                            Position = Point.Origin + ((vertex.Position - Point.Origin) * (roomMm / reachMm)),
                        }
                    ),
                ])
            ),
        };

        Outline Moved(Outline outline) => outline.Transformed(new RigidMotion(Angle.Zero, centre - Point.Origin));
    }
}
