using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

public sealed class BadOutlinesTests(RunningService service) : IClassFixture<RunningService>
{
    private const string Blade = "knife.outlines.blade";
    private const string Spring = "knife.outlines.spring";

    /// <summary>What is spoiled, how, and the field and reason that must be named.</summary>
    public static TheoryData<string, Action<Wire.KnifeOutlines>, string, string> Spoiled =>
        new()
        {
            { "no blade", knife => knife.Blade = null, Blade, "MISSING" },
            { "no spring", knife => knife.Spring = null, Spring, "MISSING" },
            { "an empty blade", knife => knife.Blade.Vertices.Clear(), Blade, "MISSING" },
            { "a single vertex", knife => KeepVertices(knife.Blade, 1), $"{Blade}.vertices", "TOO_FEW_VERTICES" },
            { "a blade without a pivot", knife => knife.Pivot = null, "knife.outlines.pivot", "MISSING" },
            {
                "a pivot without a centre",
                knife => knife.Pivot.Centre = null,
                "knife.outlines.pivot.centre",
                "MISSING"
            },
            {
                "a spring without a centre pin",
                knife => knife.CentrePin = null,
                "knife.outlines.centre_pin",
                "MISSING"
            },
            {
                "a pin of no size",
                knife => knife.Pivot.DiameterMm = 0,
                "knife.outlines.pivot.diameter_mm",
                "OUT_OF_RANGE"
            },
            {
                "not a number",
                knife => knife.Blade.Vertices[3].XMm = double.NaN,
                $"{Blade}.vertices[3].x_mm",
                "NOT_FINITE"
            },
            {
                "an endless bulge",
                knife => knife.Spring.Vertices[1].Bulge = double.PositiveInfinity,
                $"{Spring}.vertices[1].bulge",
                "NOT_FINITE"
            },
            {
                "a coordinate at 1e9",
                knife => knife.Spring.Vertices[2].YMm = 1e9,
                $"{Spring}.vertices[2].y_mm",
                "OUT_OF_RANGE"
            },
            { "an edge of no length", Repeat, $"{Blade}.vertices[2]", "ZERO_LENGTH_EDGE" },
            {
                "a pivot outside the blade",
                knife => knife.Pivot.Centre.YMm -= 40,
                "knife.outlines.pivot",
                "PIN_OUTSIDE_PART"
            },
            {
                "a centre pin outside the spring",
                knife => knife.CentrePin.Centre.YMm += 40,
                "knife.outlines.centre_pin",
                "PIN_OUTSIDE_PART"
            },
            { "a three-metre knife", knife => Scale(knife, 25.4), "knife.outlines", "WRONG_UNIT" },
        };

    [Theory]
    [MemberData(nameof(Spoiled))]
    public async Task Spoiled_outlines_are_refused_by_field_and_reason(
        string what,
        Action<Wire.KnifeOutlines> spoil,
        string field,
        string reason
    )
    {
        Wire.CheckRequest request = Requests.Outlines();
        spoil(request.Knife.Outlines);

        Refused refused = await Refused.CheckAsync(service.Checker, request);

        Assert.True(refused.Code == StatusCode.InvalidArgument, $"{what}: {refused.Code} {refused.Message}");
        Assert.Contains((field, reason), refused.Violations);
        refused.AssertSentences();
    }

    [Fact]
    public async Task An_outline_that_crosses_itself_is_refused_with_the_place()
    {
        Wire.CheckRequest request = Requests.Outlines();
        request.Knife.Outlines.Handle = new Wire.Outline
        {
            Vertices = { Vertex(0, 0), Vertex(10, 10), Vertex(10, 0), Vertex(0, 10) },
        };

        Refused refused = await Refused.CheckAsync(service.Checker, request);

        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        Assert.Contains("SELF_CROSSING", refused.Violations.Select(violation => violation.Reason));
        Assert.Contains("(5, 5) mm", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Outlines_that_never_touch_are_refused()
    {
        Wire.CheckRequest request = Requests.Outlines();
        Wire.KnifeOutlines knife = request.Knife.Outlines;
        foreach (Wire.Vertex vertex in knife.Spring.Vertices)
        {
            vertex.YMm += 60;
        }

        knife.CentrePin.Centre.YMm += 60;
        knife.RearPin.Centre.YMm += 60;

        Refused refused = await Refused.CheckAsync(service.Checker, request);

        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        refused.AssertSentences();
    }

    [Fact]
    public async Task Everything_wrong_is_told_at_once()
    {
        Wire.CheckRequest request = Requests.Outlines(Wire.ArtifactKind.Text, Wire.ArtifactKind.Text);
        request.Name = "a\u001b[31mb";
        request.Knife.Outlines.Pivot = null;
        request.Knife.Outlines.Blade.Vertices[0].XMm = double.NaN;
        request.Knife.DrawnBladeAngleDeg = 400;
        request.Bench = new Wire.BenchSettings { StepDeg = 20 };

        Refused refused = await Refused.CheckAsync(service.Checker, request);

        Assert.Equal(
            [
                ("knife.outlines.blade.vertices[0].x_mm", "NOT_FINITE"),
                ("name", "CONTROL_CHARACTER"),
                ("artifacts[1]", "DUPLICATE"),
                ("knife.outlines.pivot", "MISSING"),
                ("knife.drawn_blade_angle_deg", "OUT_OF_RANGE"),
                ("bench.step_deg", "OUT_OF_RANGE"),
            ],
            refused.Violations
        );
        Assert.StartsWith("6 things are wrong", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_request_without_a_knife_is_refused()
    {
        Refused refused = await Refused.CheckAsync(service.Checker, new Wire.CheckRequest());

        Assert.Equal([("knife", "MISSING")], refused.Violations);
    }

    [Fact]
    public async Task More_violations_than_a_status_can_carry_are_counted()
    {
        Wire.CheckRequest request = Requests.Outlines();
        request.Knife.Outlines.Blade.Vertices.AddRange(Enumerable.Range(0, 5000).Select(_ => Vertex(double.NaN, 0)));

        Refused refused = await Refused.CheckAsync(service.Checker, request);

        Google.Rpc.BadRequest.Types.FieldViolation last = refused.BadRequest!.FieldViolations[^1];
        Assert.Equal("MORE_VIOLATIONS", last.Reason);
        int left = 5000 - (refused.BadRequest.FieldViolations.Count - 1);
        Assert.StartsWith($"{left} more", last.Description, StringComparison.Ordinal);
    }

    private static void KeepVertices(Wire.Outline outline, int count)
    {
        while (outline.Vertices.Count > count)
        {
            outline.Vertices.RemoveAt(count);
        }
    }

    private static void Repeat(Wire.KnifeOutlines knife)
    {
        Wire.Vertex twin = knife.Blade.Vertices[2].Clone();
        twin.Bulge = 0;
        knife.Blade.Vertices.Insert(2, twin);
    }

    private static void Scale(Wire.KnifeOutlines knife, double factor)
    {
        Wire.Outline[] outlines = [knife.Blade, knife.Spring, knife.Handle];
        foreach (Wire.Vertex vertex in outlines.SelectMany(outline => outline.Vertices))
        {
            (vertex.XMm, vertex.YMm) = (vertex.XMm * factor, vertex.YMm * factor);
        }

        Wire.Circle[] pins = [knife.Pivot, knife.CentrePin, knife.RearPin];
        foreach (Wire.Circle pin in pins)
        {
            (pin.Centre.XMm, pin.Centre.YMm) = (pin.Centre.XMm * factor, pin.Centre.YMm * factor);
            pin.DiameterMm *= factor;
        }
    }

    private static Wire.Vertex Vertex(double x, double y) => new() { XMm = x, YMm = y };
}
