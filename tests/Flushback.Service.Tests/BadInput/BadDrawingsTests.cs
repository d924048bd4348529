using System.Text;
using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

public sealed class BadDrawingsTests(RunningService service) : IClassFixture<RunningService>
{
    private const string Dxf = "knife.drawing.dxf";

    private static DrawnKnife Wagtail => KnifeCatalogue.Wagtail.ToDrawn();

    /// <summary>What is wrong, the file, and the field and reason that must be named.</summary>
    public static TheoryData<string, byte[], string, string> Spoiled =>
        new()
        {
            { "an empty file", [], Dxf, "EMPTY" },
            { "a letter", Encoding.ASCII.GetBytes("Dear maker,\nhere is the knife.\n"), Dxf, "DXF_NOT_DXF" },
            {
                "a drawing without a unit",
                LooseDrawing.Of(Wagtail, units: null).ToBytes(),
                "knife.drawing.unit",
                "DXF_UNIT_MISSING"
            },
            { "a three-metre knife", LooseDrawing.Of(Wagtail, units: 1).ToBytes(), "knife.drawing.unit", "WRONG_UNIT" },
            {
                "a knife of three millimetres",
                LooseDrawing.Of(Wagtail, scale: 1 / 25.4).ToBytes(),
                "knife.drawing.unit",
                "WRONG_UNIT"
            },
            { "an open blade", Parts(bladeWithout: 1).ToBytes(), Dxf, "DXF_OPEN_CHAIN" },
            {
                "no blade layer",
                new LooseDrawing().Add("SPRING", Wagtail.Spring).ToBytes(),
                "knife.drawing.layers.blade",
                "OUTLINE_MISSING"
            },
            {
                "no spring layer",
                new LooseDrawing().Add("BLADE", Wagtail.Blade).ToBytes(),
                "knife.drawing.layers.spring",
                "OUTLINE_MISSING"
            },
            { "a blade without a pivot", Parts(pins: [Wagtail.CentrePin]).ToBytes(), Dxf, "PIVOT_MISSING" },
            { "a spring without a centre pin", Parts(pins: [Wagtail.Pivot]).ToBytes(), Dxf, "CENTRE_PIN_MISSING" },
            {
                "two circles in the blade",
                Parts(pins: [Wagtail.Pivot, Wagtail.CentrePin, InTheBlade]).ToBytes(),
                Dxf,
                "PIVOT_AMBIGUOUS"
            },
            {
                "a pin outside its part",
                Parts(pins: [Wagtail.Pivot, Beside(Wagtail.CentrePin)]).ToBytes(),
                Dxf,
                "CENTRE_PIN_MISSING"
            },
            { "a coordinate at 1e9", Far().ToBytes(), Dxf, "DXF_COORDINATE_RANGE" },
            { "not a number", WithNan(), Dxf, "DXF_NUMBER" },
            { "a blade that crosses itself", Crossing().ToBytes(), Dxf, "SELF_CROSSING" },
        };

    [Theory]
    [MemberData(nameof(Spoiled))]
    public async Task Spoiled_drawings_are_refused_by_field_and_reason(
        string what,
        byte[] dxf,
        string field,
        string reason
    )
    {
        Refused refused = await Refused.CheckAsync(service.Checker, Requests.Drawing(dxf));

        Assert.True(refused.Code == StatusCode.InvalidArgument, $"{what}: {refused.Code} {refused.Message}");
        Assert.Contains((field, reason), refused.Violations);
        refused.AssertSentences();
    }

    [Fact]
    public async Task A_missing_layer_is_told_with_the_layers_there_are()
    {
        byte[] dxf = new LooseDrawing().Add("Klinge", Wagtail.Blade).Add("Feder", Wagtail.Spring).ToBytes();

        Refused refused = await Refused.CheckAsync(service.Checker, Requests.Drawing(dxf));

        Assert.Equal(
            [("knife.drawing.layers.blade", "OUTLINE_MISSING"), ("knife.drawing.layers.spring", "OUTLINE_MISSING")],
            refused.Violations
        );
        Assert.Contains(
            "'Klinge', 'Feder'",
            refused.BadRequest!.FieldViolations[0].Description,
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task A_wrong_unit_is_told_with_both_sizes()
    {
        byte[] dxf = LooseDrawing.Of(Wagtail, units: 1).ToBytes();

        Refused refused = await Refused.CheckAsync(service.Checker, Requests.Drawing(dxf));

        Assert.Contains("Read in inches", refused.Message, StringComparison.Ordinal);
        Assert.Contains("in millimetres it would be", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_unit_that_the_caller_names_settles_the_size()
    {
        Wire.CheckRequest request = Requests.Drawing(LooseDrawing.Of(Wagtail, units: 1));
        request.Knife.Drawing.Unit = Wire.LengthUnit.Millimetre;

        Wire.CheckResponse response = await service.Checker.CheckAsync(request);

        Assert.Equal(Wire.LengthUnit.Millimetre, response.Report.Reading.Unit);
    }

    [Fact]
    public async Task Pins_are_found_on_the_layer_of_their_part_too()
    {
        LooseDrawing drawing = new LooseDrawing().Add("blade", Wagtail.Blade).Add("Spring", Wagtail.Spring);
        drawing.Add("BLADE", Wagtail.Pivot).Add("SPRING", Wagtail.CentrePin).Add("pins", Wagtail.RearPin!.Value);

        Wire.CheckResponse response = await service.Checker.CheckAsync(Requests.Drawing(drawing));

        Assert.Equal(3, response.Report.Stops.Count);
    }

    private static Circle InTheBlade => Wagtail.Pivot with { Centre = Wagtail.Pivot.Centre + new Vector(12, 0) };

    private static Circle Beside(Circle pin) => pin with { Centre = pin.Centre + new Vector(0, 60) };

    private static LooseDrawing Parts(int bladeWithout = 0, Circle[]? pins = null)
    {
        LooseDrawing drawing = new LooseDrawing()
            .Add("BLADE", Wagtail.Blade, leaveOut: bladeWithout)
            .Add("SPRING", Wagtail.Spring);
        foreach (Circle pin in pins ?? [Wagtail.Pivot, Wagtail.CentrePin])
        {
            drawing.Add("PINS", pin);
        }

        return drawing;
    }

    private static LooseDrawing Far() =>
        LooseDrawing.Of(Wagtail).Add("BLADE", new Edge(new Point(1e9, 0), new Point(1e9, 5)));

    private static LooseDrawing Crossing()
    {
        Outline bow = Outline.FromVertices([new(-20, -9), new(60, 9), new(60, -9), new(-20, 9)]);
        LooseDrawing drawing = new LooseDrawing().Add("BLADE", bow).Add("SPRING", Wagtail.Spring);
        return drawing.Add("PINS", Wagtail.Pivot).Add("PINS", Wagtail.CentrePin);
    }

    private static byte[] WithNan()
    {
        // The y of the first line or arc.
        string text = LooseDrawing.Of(Wagtail).ToString();
        int number = text.IndexOf("\n20\n", StringComparison.Ordinal) + "\n20\n".Length;
        int end = text.IndexOf('\n', number);
        return Encoding.ASCII.GetBytes(string.Concat(text.AsSpan(0, number), "nan", text.AsSpan(end)));
    }
}
