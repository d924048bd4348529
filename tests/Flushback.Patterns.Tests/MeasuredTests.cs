using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests;

/// <summary>The dimensions of the page, measured again on the outlines of random patterns.</summary>
public sealed class MeasuredTests
{
    private const double Mm = 1e-9;
    private static readonly DrawnPattern[] _patterns =
    [
        .. RandomPatterns.FiveHundred.Take(100).Select(item => item.Pattern),
    ];

    [Fact]
    public void Closed_and_overall_length_are_those_of_the_outlines()
    {
        foreach (DrawnPattern pattern in _patterns)
        {
            HandleParameters handle = pattern.Dimensions.Handle;
            Box box = pattern.Handle.Finished.Bounds;
            Assert.Equal(handle.ClosedLengthMm, box.WidthMm, Mm);
            Assert.Equal(handle.FrontMm!.Value, box.MaxX, Mm);
            Assert.Equal(handle.OverallLengthMm!.Value, pattern.Blade.Finished.Bounds.MaxX - box.MinX, Mm);
            Assert.Equal(pattern.Dimensions.Blade.LengthMm!.Value, pattern.Blade.Finished.Bounds.MaxX - box.MaxX, Mm);
        }
    }

    [Fact]
    public void Pins_lie_where_the_page_says()
    {
        foreach (DrawnPattern pattern in _patterns)
        {
            PinParameters pins = pattern.Dimensions.Pins;
            Circle pivot = pattern.Handle.Holes[0].Circle;
            Circle centre = pattern.Handle.Holes[1].Circle;
            Circle rear = pattern.Handle.Holes[2].Circle;
            Assert.Equal(Point.Origin, pivot.Centre);
            Assert.Equal(pins.PivotDiameterMm, pivot.DiameterMm);
            Assert.Equal(-pins.CentreBehindMm!.Value, centre.Centre.X, Mm);
            Assert.Equal(-pins.RearBehindMm!.Value, rear.Centre.X, Mm);
            Assert.Equal(pins.CentreDepthMm!.Value, LineAt(pattern, centre.Centre.X) - centre.Centre.Y, Mm);
            Assert.Equal(pins.RearDepthMm!.Value, LineAt(pattern, rear.Centre.X) - rear.Centre.Y, Mm);
            foreach (PatternHole hole in pattern.Pieces.SelectMany(piece => piece.Holes))
            {
                PatternPiece piece = pattern.Pieces.First(piece => piece.Holes.Contains(hole));
                double wall = piece.Finished.SignedDistanceMm(hole.Circle.Centre) - hole.Circle.RadiusMm;
                Assert.True(wall >= pins.WallMm);
            }
        }
    }

    [Fact]
    public void Tang_and_blade_are_as_high_wide_and_long_as_the_page_says()
    {
        foreach (DrawnPattern pattern in _patterns)
        {
            PatternParameters page = pattern.Dimensions;
            Outline blade = pattern.Blade.Finished;
            Edge[] edge = [.. Faces(pattern, BladeFace.Edge)];
            Edge[] spine = [.. Faces(pattern, BladeFace.Spine)];
            Edge[] shoulder = [.. Faces(pattern, BladeFace.Shoulder)];
            Assert.Equal(page.Tang.HeightMm, HighestBehindPivot(pattern), Mm);
            Assert.Equal(page.Tang.HeightMm + page.Tang.OpenFlatDepthMm!.Value, blade.Bounds.MaxY, Mm);
            Assert.Equal(page.Blade.WidthMm!.Value, blade.Bounds.MaxY - edge[0].Start.Y, Mm);
            double falls = blade.Bounds.MaxX - page.Blade.PointMm!.Value;
            if (page.Blade.Family == BladeFamily.ClipPoint)
            {
                // The corner of a clip is rounded: it lay between the ends of its round.
                Assert.InRange(falls, spine[^2].End.X, spine[^2].Start.X);
            }
            else
            {
                Assert.Equal(falls, spine[^1].Start.X, Mm);
            }

            Edge wall = shoulder.Single(one => !one.IsArc);
            double foot = wall.Start.X + (wall.Chord.X * (page.Tang.HeightMm - wall.Start.Y) / wall.Chord.Y);
            Assert.Equal(page.Tang.LengthMm!.Value, foot - blade.Bounds.MinX, Mm);
            Assert.Equal(page.Tang.ShoulderDeg, -wall.Chord.Direction.Degrees, Mm);
            Edge kick = Faces(pattern, BladeFace.Kick).Single();
            Assert.Equal(page.Tang.KickRadiusMm, kick.RadiusMm, Mm);
            Assert.Equal(page.Tang.KickPlaceMm!.Value, kick.Start.X, Mm);
            Assert.Equal(page.Tang.KickHeightMm!.Value, edge[0].Start.Y - kick.Start.Y, Mm);
            Assert.Equal(page.Blade.NickPlaceMm!.Value, pattern.Blade.Marks[0].Outline.Bounds.Centre.X, Mm);
            Assert.Equal(page.Blade.NickLengthMm, pattern.Blade.Marks[0].Outline.Bounds.WidthMm, Mm);
            Assert.Equal(page.Blade.NickWidthMm, pattern.Blade.Marks[0].Outline.Bounds.HeightMm, Mm);
        }
    }

    [Fact]
    public void The_spring_is_as_deep_as_the_page_says_and_its_stock_lies_on_its_back()
    {
        foreach (DrawnPattern pattern in _patterns)
        {
            SpringParameters spring = pattern.Dimensions.Spring;
            double back = pattern.Dimensions.Tang.HeightMm + spring.NoseDepthMm;
            Assert.Equal(back + spring.FrontStockMm, pattern.Knife.DialPoint.Y, Mm);
            Assert.Equal(back, pattern.HandleLine[0].Start.Y + pattern.Parameters.Readings.OpenMm, Mm);
            Point centre = pattern.Knife.CentrePin.Centre;
            double under = centre.Y - LowestUnder(pattern.Spring.Finished, centre.X + 0.1);
            double over = LineAt(pattern, centre.X) + pattern.Parameters.Readings.OpenMm - centre.Y;
            Assert.Equal(spring.CentreDepthMm!.Value, under + over, 1e-5);
            Edge pad = pattern.Knife.Spring.Edges[^1];
            Assert.Equal(-spring.PadEndMm!.Value, pad.Start.X, 1e-6);
            Assert.Equal(pattern.Dimensions.Tang.HeightMm, pad.Start.Y, Mm);
        }
    }

    [Fact]
    public void The_tip_is_buried_the_nick_is_not_and_the_edge_clears_the_spring()
    {
        foreach (DrawnPattern pattern in _patterns)
        {
            BenchReport report = Bench.Read(pattern);
            RigidMotion closed = Knife.BladeAt(report.At(Stop.Closed)!.RestAngle);
            Outline nick = pattern.Blade.Marks[0].Outline.Transformed(closed);
            Assert.True(report.Clearances.TipDepthMm >= pattern.Parameters.Handle.TipDepthMm);
            Assert.True(report.Clearances.EdgeLeast.DistanceMm >= 0.3);
            Assert.All(nick.Vertices, vertex => Assert.False(pattern.Handle.Finished.Contains(vertex.Position)));
        }
    }

    [Fact]
    public void On_its_pins_the_spring_sinks_over_the_pivot_by_the_preload_and_its_rear_hole_meets_the_handles()
    {
        foreach (DrawnPattern pattern in _patterns)
        {
            Circle inSpring = pattern.SpringToFree.Apply(pattern.Spring.Holes[1].Circle);
            Assert.True(inSpring.Centre.IsWithin(Mm, pattern.Handle.Holes[2].Circle.Centre));
            Point overPivot = new(0, pattern.Knife.CentrePin.Centre.Y);
            double sunk = overPivot.Y - pattern.SpringToFree.Apply(overPivot).Y;
            Assert.Equal(pattern.Dimensions.Spring.PreloadMm!.Value, sunk, Mm);
        }
    }

    // Source: the check in the handle, which takes the preload either as a number or from a spring drawn free.
    [Fact]
    public void Drawn_free_the_spring_has_the_preload_that_the_page_says()
    {
        DrawnPattern pattern = Bench.Make(PatternParameters.Default);
        Knife knife = pattern.Knife;
        Knife free = knife with
        {
            Spring = knife.Spring.Transformed(pattern.SpringToFree),
            RearPin = pattern.Handle.Holes[2].Circle,
            DialPoint = pattern.SpringToFree.Apply(knife.DialPoint),
        };
        BenchReport bench = BenchCheck.Run(
            new Placement(free, RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false),
            new BenchSettings { Step = Angle.FromDegrees(2) }
        );

        (HandleReport? report, _) = HandleCheck.Run(
            bench,
            new HandleSettings { PreloadKind = PreloadKind.DrawnFree, WidthMm = pattern.Dimensions.Spring.WidthMm }
        );

        Assert.Equal(pattern.Dimensions.Spring.PreloadMm!.Value, report!.Spring.PreloadMm, 1e-9);
    }

    [Fact]
    public void Stock_lies_all_around_and_no_nearer_anywhere()
    {
        foreach (DrawnPattern pattern in _patterns)
        {
            StockParameters stock = pattern.Parameters.Stock;
            foreach (
                (PatternPiece piece, double mm) in new[]
                {
                    (pattern.Blade, stock.BladeMm),
                    (pattern.Spring, stock.SpringMm),
                }
            )
            {
                Assert.Equal(mm > 0, piece.HasStock);
                foreach (Edge edge in piece.Rough.Edges)
                {
                    double distance = Distance.Between(edge.PointAt(0.5), piece.Finished).DistanceMm;
                    Assert.InRange(distance, mm - 0.01, mm + 0.01);
                }
            }
        }
    }

    private static IEnumerable<Edge> Faces(DrawnPattern pattern, BladeFace face) =>
        pattern.Knife.Blade.Edges.Where((_, i) => pattern.Knife.BladeFaces[i] == face);

    private static double HighestBehindPivot(DrawnPattern pattern) =>
        pattern
            .Knife.Blade.Edges.Where(
                (_, i) => pattern.Knife.BladeFaces[i] is BladeFace.OpenCorner or BladeFace.OpenFlat
            )
            .Max(edge => edge.Bounds.MaxY);

    private static double LineAt(DrawnPattern pattern, double x)
    {
        Edge up = new(new Point(x, -100), new Point(x, 100));
        return pattern
            .HandleLine.Select(edge => Flushback.Geometry.Crossings.Crossing.Between(up, edge, 1e-9))
            .Where(meetings => meetings.Count > 0)
            .Max(meetings => meetings[0].At.Y);
    }

    private static double LowestUnder(Outline outline, double x)
    {
        Edge up = new(new Point(x, -100), new Point(x, 100));
        return outline
            .Edges.Select(edge => Flushback.Geometry.Crossings.Crossing.Between(up, edge, 1e-9))
            .Where(meetings => meetings.Count > 0)
            .Min(meetings => meetings[0].At.Y);
    }
}
