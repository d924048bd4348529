using Flushback.Geometry.Crossings;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Crossings;

/// <summary>Every way two edges can meet, by example. Source: elementary geometry.</summary>
public class CrossingTests
{
    private const double Tolerance = 1e-6;

    private static readonly Edge UpperHalf = new(new Point(5, 0), new Point(-5, 0), 1);

    [Fact]
    public void Two_lines_that_cross_meet_once_at_their_fractions()
    {
        Meeting meeting = Single(Line(0, 0, 10, 0), Line(4, -3, 4, 1));
        Assert.Equal(MeetingKind.Crossing, meeting.Kind);
        Near.Equal(new Point(4, 0), meeting.At);
        Near.Equal(0.4, meeting.OnFirst.From);
        Near.Equal(0.75, meeting.OnSecond.From);
    }

    [Fact]
    public void Lines_that_end_before_they_would_cross_do_not_meet() =>
        Assert.Equal(0, Crossing.Between(Line(0, 0, 10, 0), Line(4, 1, 4, 3), Tolerance).Count);

    [Fact]
    public void A_line_through_an_arc_meets_it_twice()
    {
        Meetings meetings = Crossing.Between(Line(-10, 3, 10, 3), UpperHalf, Tolerance);
        Assert.Equal(2, meetings.Count);
        Near.Equal(new Point(-4, 3), meetings[0].At);
        Near.Equal(new Point(4, 3), meetings[1].At);
        Near.Equal(0.3, meetings[0].OnFirst.From);
        Near.Equal(Math.Atan2(3, 4) / Math.PI, meetings[1].OnSecond.From);
    }

    [Fact]
    public void A_line_through_the_other_half_of_the_circle_does_not_meet_the_arc() =>
        Assert.Equal(Meetings.None, Crossing.Between(Line(-10, -3, 10, -3), UpperHalf, Tolerance));

    [Theory]
    [InlineData(0)]
    [InlineData(5e-7)]
    [InlineData(-5e-7)]
    public void A_line_that_grazes_an_arc_is_tangent_once(double off)
    {
        Meeting meeting = Single(Line(-10, 5 + off, 10, 5 + off), UpperHalf);
        Assert.Equal(MeetingKind.Tangency, meeting.Kind);
        Near.Equal(new Point(0, 5), meeting.At, 1e-6);
        Near.Equal(0.5, meeting.OnSecond.From, 1e-6);
    }

    [Fact]
    public void A_line_that_cuts_deeper_than_the_tolerance_crosses_twice() =>
        Assert.Equal(2, Crossing.Between(Line(-10, 5 - 2e-6, 10, 5 - 2e-6), UpperHalf, Tolerance).Count);

    [Fact]
    public void A_line_that_passes_farther_than_the_tolerance_does_not_meet_the_arc() =>
        Assert.Equal(0, Crossing.Between(Line(-10, 5 + 2e-6, 10, 5 + 2e-6), UpperHalf, Tolerance).Count);

    [Fact]
    public void Two_arcs_meet_where_their_circles_do()
    {
        Edge shifted = new(new Point(11, 0), new Point(1, 0), 1);
        Meeting meeting = Single(UpperHalf, shifted);
        Assert.Equal(MeetingKind.Crossing, meeting.Kind);
        Near.Equal(new Point(3, 4), meeting.At);
    }

    [Fact]
    public void Arcs_tangent_from_inside_or_outside_meet_once()
    {
        Edge inside = new(new Point(3, 2), new Point(-3, 2), 1);
        Edge above = new(new Point(-3, 8), new Point(3, 8), 1);
        Assert.Equal(MeetingKind.Tangency, Single(UpperHalf, inside).Kind);
        Assert.Equal(MeetingKind.Tangency, Single(UpperHalf, above).Kind);
        Near.Equal(new Point(0, 5), Single(UpperHalf, inside).At);
        Near.Equal(new Point(0, 5), Single(UpperHalf, above).At);
    }

    [Fact]
    public void An_end_on_an_edge_or_on_an_end_touches_it()
    {
        Meeting onMiddle = Single(Line(0, 0, 10, 0), Line(4, 0, 7, 5));
        Assert.Equal(MeetingKind.Touch, onMiddle.Kind);
        Near.Equal(0.4, onMiddle.OnFirst.From);
        Assert.Equal(0, onMiddle.OnSecond.From);
        Assert.Equal(MeetingKind.Touch, Single(Line(0, 0, 10, 0), Line(10, 0, 10, 8)).Kind);
        Assert.Equal(MeetingKind.Touch, Single(Line(0, 0, 10, 0), Line(20, 0, 10, 0)).Kind);
        Assert.Equal(MeetingKind.Touch, Single(UpperHalf, Line(3, 4, 8, 9)).Kind);
    }

    [Fact]
    public void Lines_along_one_another_share_a_stretch_whichever_way_they_run()
    {
        foreach (Edge other in (Edge[])[Line(6, 0, 16, 0), Line(16, 0, 6, 0)])
        {
            Meeting meeting = Single(Line(0, 0, 10, 0), other);
            Assert.Equal(MeetingKind.Overlap, meeting.Kind);
            Near.Equal(0.6, meeting.OnFirst.From);
            Near.Equal(1, meeting.OnFirst.To);
            Near.Equal(0.4, meeting.OnSecond.To - meeting.OnSecond.From);
            Near.Equal(new Point(8, 0), meeting.At);
        }
    }

    [Fact]
    public void A_line_within_another_is_shared_whole()
    {
        Meeting meeting = Single(Line(0, 0, 10, 0), Line(7, 0, 2, 0));
        Near.Equal(0.2, meeting.OnFirst.From);
        Near.Equal(0.7, meeting.OnFirst.To);
        Assert.Equal(new Stretch(0, 1), meeting.OnSecond);
    }

    [Fact]
    public void Parallel_lines_farther_than_the_tolerance_do_not_meet() =>
        Assert.Equal(0, Crossing.Between(Line(0, 0, 10, 0), Line(0, 2e-6, 10, 2e-6), Tolerance).Count);

    [Fact]
    public void Arcs_of_one_circle_share_a_stretch()
    {
        Edge quarterOn = Edge.Arc(new Point(0, 5), new Point(0, -5), Angle.FromDegrees(180));
        foreach (Edge other in (Edge[])[quarterOn, quarterOn.Reversed])
        {
            Meeting meeting = Single(UpperHalf, other);
            Assert.Equal(MeetingKind.Overlap, meeting.Kind);
            Near.Equal(0.5, meeting.OnFirst.From);
            Near.Equal(1, meeting.OnFirst.To);
            Near.Equal(0.5, meeting.OnSecond.To - meeting.OnSecond.From);
        }
    }

    [Fact]
    public void Two_long_arcs_of_one_circle_share_both_ends()
    {
        Edge right = Edge.Arc(On(-120), On(120), Angle.FromDegrees(240));
        Edge left = Edge.Arc(On(60), On(-60), Angle.FromDegrees(240));
        Meetings meetings = Crossing.Between(right, left, Tolerance);
        Assert.Equal(2, meetings.Count);
        Assert.All([meetings[0], meetings[1]], meeting => Assert.Equal(MeetingKind.Overlap, meeting.Kind));
        Assert.Equal(
            [-90.0, 90.0],
            new[] { meetings[0], meetings[1] }.Select(m => Math.Round((m.At - Point.Origin).Direction.Degrees, 9))
        );
    }

    [Fact]
    public void Two_halves_of_a_circle_touch_at_both_ends()
    {
        Meetings meetings = Crossing.Between(UpperHalf, new Edge(UpperHalf.End, UpperHalf.Start, 1), Tolerance);
        Assert.Equal(2, meetings.Count);
        Assert.All([meetings[0], meetings[1]], meeting => Assert.Equal(MeetingKind.Touch, meeting.Kind));
    }

    [Fact]
    public void A_smooth_joint_that_rounding_makes_cross_again_is_one_meeting()
    {
        // The arc leaves the line's end two millionths of a radian too low, and so cuts the line 2e-5 mm later.
        Edge line = Line(-10, 0, 1, 0);
        Edge arc = new Edge(new Point(0, 0), new Point(5, 5), Math.Tan(Math.PI / 8));
        Meetings meetings = Crossing.Between(
            line,
            RigidMotion.RotationAbout(Point.Origin, new Angle(-2e-6)).Apply(arc),
            Tolerance
        );
        Assert.Equal(1, meetings.Count);
    }

    [Fact]
    public void Asking_for_a_meeting_that_is_not_there_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => Meetings.None[0]);

    private static Point On(double degrees) => Point.Origin + (Vector.FromDirection(Angle.FromDegrees(degrees)) * 5);

    private static Meeting Single(Edge a, Edge b)
    {
        Meetings meetings = Crossing.Between(a, b, Tolerance);
        Assert.Equal(1, meetings.Count);
        Assert.Equal(meetings.First.Kind, Crossing.Between(b, a, Tolerance).First.Kind);
        Assert.Equal(1, Crossing.Between(b.Reversed, a.Reversed, Tolerance).Count);
        return meetings.First;
    }

    private static Edge Line(double x1, double y1, double x2, double y2) => new(new Point(x1, y1), new Point(x2, y2));
}
