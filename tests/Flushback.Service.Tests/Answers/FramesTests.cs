using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Service.Tests.Answers;

/// <summary>A drawing may lie anywhere: the readings stay, and the points come back on the drawing.</summary>
public sealed class FramesTests(RunningService service) : IClassFixture<RunningService>
{
    // Below what the mechanism promises for a moved knife; rounding of coordinates near 100 mm leaves far less.
    private const double Mm = 1e-6;

    private static readonly RigidMotion _elsewhere = new(Angle.FromDegrees(137), new Vector(80, -45), Mirrored: true);

    [Fact]
    public async Task Contacts_of_a_turned_and_mirrored_drawing_lie_on_that_drawing()
    {
        Wire.CheckResponse here = await service.Checker.CheckAsync(Requests.Outlines());
        Wire.CheckResponse there = await service.Checker.CheckAsync(
            Requests.Outlines(KnifeCatalogue.Wagtail.ToDrawn(_elsewhere, Angle.Zero))
        );

        Assert.Equal(here.Report.Stops.Count, there.Report.Stops.Count);
        Assert.True(there.Report.Reading.Mirrored);
        foreach ((Wire.StopReading first, Wire.StopReading second) in here.Report.Stops.Zip(there.Report.Stops))
        {
            Assert.Equal(first.LiftMm, second.LiftMm, Mm);
            Assert.Equal(first.Contacts.Count, second.Contacts.Count);
            foreach ((Wire.Contact a, Wire.Contact b) in first.Contacts.Zip(second.Contacts))
            {
                AssertAt(_elsewhere.Apply(new Point(a.At.XMm, a.At.YMm)), b.At);
                AssertAt(new Point(a.AtKnife.XMm, a.AtKnife.YMm), b.AtKnife);
            }
        }
    }

    [Fact]
    public async Task Where_the_shoulder_butts_is_told_at_open_and_nowhere_else()
    {
        Wire.CheckResponse drawn = await service.Checker.CheckAsync(Requests.Outlines());

        // The design draws the shoulder against the end face with the blade at 0.
        Wire.StopReading open = Assert.Single(drawn.Report.Stops, stop => stop.HasShoulderAngleDeg);
        Assert.Equal(Wire.Stop.Open, open.Stop);
        Assert.Equal(0, open.ShoulderAngleDeg, 1e-6);
    }

    [Fact]
    public async Task A_drawing_in_inches_reads_as_the_outlines_in_millimetres()
    {
        LooseDrawing inches = LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn(), units: 1, scale: 1 / 25.4);

        Wire.CheckResponse drawn = await service.Checker.CheckAsync(Requests.Drawing(inches));
        Wire.CheckResponse given = await service.Checker.CheckAsync(Requests.Outlines());

        Assert.Equal(Wire.LengthUnit.Inch, drawn.Report.Reading.Unit);
        foreach ((Wire.StopReading first, Wire.StopReading second) in given.Report.Stops.Zip(drawn.Report.Stops))
        {
            Assert.Equal(first.LiftMm, second.LiftMm, Mm);
            Assert.Equal(first.RestAngleDeg, second.RestAngleDeg, Mm);
        }
    }

    [Fact]
    public async Task A_blade_drawn_closed_is_found_closed()
    {
        Wire.CheckRequest request = Requests.Outlines(
            KnifeCatalogue.Wagtail.ToDrawn(RigidMotion.Identity, Angle.FromDegrees(180))
        );

        Wire.CheckResponse response = await service.Checker.CheckAsync(request);

        Wire.Reading reading = response.Report.Reading;
        Assert.True(reading.DrawnBladeAngleFound);
        Assert.Equal(180, reading.DrawnBladeAngleDeg, 1.0);

        // The named edges lie where they are drawn: the whole blade behind the pivot or about it.
        Assert.All(
            reading.BladeEdges.Where(edge => edge.Face == Wire.BladeFace.Spine),
            edge => Assert.True(edge.Middle.XMm < 0)
        );
    }

    private static void AssertAt(Point expected, Wire.Point actual) =>
        Assert.True(
            expected.IsWithin(Mm, new Point(actual.XMm, actual.YMm)),
            $"expected {expected}, but it is {actual}"
        );
}
