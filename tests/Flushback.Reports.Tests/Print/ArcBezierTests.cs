using CsCheck;
using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Tests.Print;

public class ArcBezierTests
{
    // The curve's own polynomial, sampled, is the referee of the bound.
    [Fact]
    public void A_curve_leaves_its_arc_by_no_more_than_half_a_micrometre() =>
        AnyArc.Sample(arc =>
        {
            Point centre = arc.Centre;
            foreach (Bezier curve in ArcBeziers.Along(arc))
            {
                for (int i = 0; i <= 60; i++)
                {
                    double off = At(curve, i / 60.0).DistanceTo(centre) - arc.RadiusMm;
                    Assert.InRange(off, -1e-9, ArcBeziers.LargestErrorMm + 1e-9);
                }
            }
        });

    [Fact]
    public void The_stated_error_is_the_greatest_that_there_is() =>
        Gen.Double[0.05, Math.PI / 2]
            .Sample(sweep =>
            {
                Point start = new(10, 0);
                Edge arc = Edge.Arc(start, start.RotatedAbout(Point.Origin, new Angle(sweep)), new Angle(sweep));
                double handle = 4.0 / 3 * Math.Tan(sweep / 4) * 10;
                Bezier curve = new(
                    arc.Start,
                    arc.Start + (arc.TangentAt(0) * handle),
                    arc.End - (arc.TangentAt(1) * handle),
                    arc.End
                );
                double greatest = Enumerable
                    .Range(0, 2001)
                    .Max(i => At(curve, i / 2000.0).DistanceTo(Point.Origin) - 10);
                Assert.Equal(ArcBeziers.ErrorMm(10, sweep), greatest, 1e-5 * greatest + 1e-12);
            });

    [Fact]
    public void Curves_follow_one_another_from_end_to_end() =>
        AnyArc.Sample(arc =>
        {
            Bezier[] curves = [.. ArcBeziers.Along(arc)];
            Assert.Equal(arc.Start, curves[0].Start);
            Assert.Equal(arc.End, curves[^1].End);
            foreach ((Bezier before, Bezier after) in curves.Zip(curves.Skip(1)))
            {
                Assert.Equal(before.End, after.Start);
            }
        });

    private static Gen<Edge> AnyArc =>
        Gen.Select(
            Gen.Double[0.05, 2000],
            Gen.Double[0.01, 6.2],
            Gen.Double[0, Math.Tau],
            Gen.Bool,
            (radius, sweep, from, back) =>
            {
                Point centre = new(105, 148);
                Point start = centre + (Vector.FromDirection(new Angle(from)) * radius);
                Angle turn = new(back ? -sweep : sweep);
                return Edge.Arc(start, start.RotatedAbout(centre, turn), turn);
            }
        );

    private static Point At(Bezier curve, double t)
    {
        double s = 1 - t;
        Vector from = (curve.Start - Point.Origin) * (s * s * s);
        Vector first = (curve.FirstControl - Point.Origin) * (3 * s * s * t);
        Vector second = (curve.SecondControl - Point.Origin) * (3 * s * t * t);
        Vector to = (curve.End - Point.Origin) * (t * t * t);
        return Point.Origin + from + first + second + to;
    }
}
