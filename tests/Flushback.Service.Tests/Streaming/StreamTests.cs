using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;

namespace Flushback.Service.Tests.Streaming;

/// <summary>A library over one stream, over a socket.</summary>
public sealed class StreamTests(RunningService service) : IClassFixture<RunningService>
{
    [Fact]
    public async Task Every_item_is_answered_once_as_a_single_call_answers_it()
    {
        IReadOnlyList<Wire.CheckManyRequest> items = Library.Of(60);

        List<Wire.CheckManyResponse> answers = await Library.CheckAsync(service.Checker, items);

        Assert.Equal(
            items.Select(item => item.ItemId).Order(StringComparer.Ordinal),
            answers.Select(answer => answer.ItemId).Order(StringComparer.Ordinal)
        );
        Wire.CheckResponse[] single =
        [
            .. await Task.WhenAll(items.Take(3).Select(item => service.Checker.CheckAsync(item.Check).ResponseAsync)),
        ];
        Assert.All(
            answers,
            answer => Assert.Equal(single[Number(answer) % 3].ToByteArray(), answer.Check.ToByteArray())
        );
    }

    [Fact]
    public async Task A_stream_without_items_ends_well()
    {
        Assert.Empty(await Library.CheckAsync(service.Checker, []));
    }

    [Fact]
    public async Task An_item_that_is_refused_carries_what_a_single_call_is_refused_with_and_the_stream_goes_on()
    {
        Wire.CheckRequest bad = Requests.Outlines();
        bad.Knife.Outlines.Pivot = null;
        bad.Bench = new Wire.BenchSettings { StepDeg = -1 };
        RpcException single = await Assert.ThrowsAsync<RpcException>(async () => await service.Checker.CheckAsync(bad));

        List<Wire.CheckManyResponse> answers = await Library.CheckAsync(
            service.Checker,
            [Library.Item("before"), Library.Item("bad", bad), Library.Item("after")]
        );

        Assert.Equal(3, answers.Count);
        Wire.ItemError error = answers.Single(answer => answer.ItemId == "bad").Error;
        Assert.Equal((int)single.StatusCode, error.Code);
        Assert.Equal(single.Status.Detail, error.Message);
        Assert.Equal(single.GetRpcStatus()!.Details, error.Details);
        Assert.All(answers.Where(answer => answer.ItemId != "bad"), answer => Assert.NotNull(answer.Check));
    }

    [Fact]
    public async Task The_error_of_an_item_can_be_read_as_a_status_of_gRPC()
    {
        List<Wire.CheckManyResponse> answers = await Library.CheckAsync(
            service.Checker,
            [Library.Item("bad", new Wire.CheckRequest())]
        );

        var status = Google.Rpc.Status.Parser.ParseFrom(answers[0].Error.ToByteArray());

        Assert.Equal(Code.InvalidArgument, (Code)status.Code);
        Assert.Equal("knife", status.GetDetail<BadRequest>()!.FieldViolations[0].Field);
    }

    [Fact]
    public async Task An_item_that_asks_for_nothing_or_has_an_endless_id_is_refused_alone()
    {
        string endless = new('x', 201);

        List<Wire.CheckManyResponse> answers = await Library.CheckAsync(
            service.Checker,
            [new Wire.CheckManyRequest { ItemId = "nothing" }, Library.Item(endless), Library.Item("")]
        );

        Assert.Equal(("work", "MISSING"), Violation(answers, "nothing"));
        Assert.Equal(("item_id", "TOO_LONG"), Violation(answers, endless));
        Assert.NotNull(answers.Single(answer => answer.ItemId.Length == 0).Check);
    }

    [Fact]
    public async Task Outlines_come_back_as_they_were_read_when_asked_for()
    {
        Wire.CheckRequest request = Requests.Drawing(
            LooseDrawing.Of(Catalogue.Designs.KnifeCatalogue.Wagtail.ToDrawn())
        );
        Assert.Null((await service.Checker.CheckAsync(request)).Outlines);
        request.WithOutlines = true;

        Wire.KnifeOutlines read = (await service.Checker.CheckAsync(request)).Outlines;

        Wire.KnifeOutlines drawn = Requests.Outlines().Knife.Outlines;
        Assert.Equal(drawn.Blade.Vertices.Count, read.Blade.Vertices.Count);
        Assert.Equal(drawn.Spring.Vertices.Count, read.Spring.Vertices.Count);
        Assert.Equal(drawn.Pivot.Centre.XMm, read.Pivot.Centre.XMm, 1e-6);

        // What comes back can be sent: it is the same knife.
        Wire.CheckRequest again = new()
        {
            Name = request.Name,
            Knife = new Wire.Knife { Outlines = read },
        };
        Assert.Equal(
            (await service.Checker.CheckAsync(request)).Report.Stops,
            (await service.Checker.CheckAsync(again)).Report.Stops
        );
    }

    [Fact]
    public async Task The_build_is_told_before_anything_is_sent()
    {
        using var call = service.Checker.CheckMany();

        await Eventually.EndsAsync(call.ResponseHeadersAsync);
        Metadata headers = await call.ResponseHeadersAsync;

        Assert.Matches("^[0-9]+[.][0-9]+[.][0-9]+-[0-9a-f]{12}$", headers.GetValue("flushback-build"));
        await call.RequestStream.CompleteAsync();
    }

    [Fact]
    public async Task A_pattern_is_answered_as_a_single_call_draws_and_checks_it()
    {
        Wire.PatternCheckRequest pattern = new()
        {
            Name = "Dipper",
            Pattern = new Wire.Pattern { Readings = new Wire.ReadingsParameters { HalfStopMm = 0.1 } },
            Handle = new Wire.HandleSettings(),
            WithOutlines = true,
        };
        Wire.GenerateResponse single = await new Wire.ProfileExporter.ProfileExporterClient(
            service.Channel
        ).GenerateAsync(
            new Wire.GenerateRequest
            {
                Name = pattern.Name,
                Pattern = pattern.Pattern,
                Handle = pattern.Handle,
            }
        );
        Wire.PatternCheckRequest impossible = new()
        {
            Pattern = new Wire.Pattern { Readings = new Wire.ReadingsParameters { HalfStopMm = 1e4 } },
        };

        List<Wire.CheckManyResponse> answers = await Library.CheckAsync(
            service.Checker,
            [
                new Wire.CheckManyRequest { ItemId = "good", Pattern = pattern },
                new Wire.CheckManyRequest { ItemId = "bad", Pattern = impossible },
            ]
        );

        Wire.CheckResponse good = answers.Single(answer => answer.ItemId == "good").Check;
        Assert.Equal(single.Report.ToByteArray(), good.Report.ToByteArray());
        Assert.NotEmpty(good.Outlines.Blade.Vertices);
        Assert.Equal("pattern.readings.half_stop_mm", Violation(answers, "bad").Field);
    }

    [Theory]
    [InlineData(Wire.Arrangement.SharedSpring, true)]
    [InlineData(Wire.Arrangement.TwoSprings, true)]
    [InlineData(Wire.Arrangement.TwoSprings, false)]
    public async Task A_pattern_of_two_blades_is_answered_with_both_as_a_single_call_draws_and_checks_them(
        Wire.Arrangement arrangement,
        bool isAtOtherEnd
    )
    {
        Wire.PatternCheckRequest pattern = new()
        {
            Arrangement = arrangement,
            Pattern = new()
            {
                Handle = new() { ClosedLengthMm = 94, FrontMm = 7 },
            },
            SecondBlade = new()
            {
                AtOtherEnd = isAtOtherEnd,
                Blade = new() { LengthMm = 44 },
            },
            WithOutlines = true,
        };
        Wire.GenerateResponse single = await service.Exporter.GenerateAsync(
            new Wire.GenerateRequest
            {
                Pattern = pattern.Pattern,
                Arrangement = arrangement,
                SecondBlade = pattern.SecondBlade,
            }
        );

        Wire.CheckResponse both = await CheckAsync(pattern);

        Assert.Equal(single.Report, both.Report);
        Assert.Equal(single.Second.Report, both.Second.Report);
        Assert.Equal(single.Second.Clearance, both.Second.Clearance);
        Assert.Equal(5, both.Second.Clearance.Passings.Count);
        Assert.Equal(
            (arrangement, isAtOtherEnd, single.Second.SpanMm),
            (both.Second.Arrangement, both.Second.AtOtherEnd, both.Second.SpanMm)
        );
        Assert.Equal("second blade", both.Second.Report.Name);

        // What comes back of the second blade is a knife by itself, which reads what was told of it.
        Wire.CheckRequest alone = new() { Knife = new() { Outlines = both.Second.Outlines } };
        Wire.CheckReport read = (await service.Checker.CheckAsync(alone)).Report;
        Assert.Equal(
            both.Second.Report.Stops.Select(stop => Math.Round(stop.LiftMm, 6)),
            read.Stops.Select(stop => Math.Round(stop.LiftMm, 6))
        );
        pattern.WithOutlines = false;
        Assert.Null((await CheckAsync(pattern)).Second.Outlines);
    }

    [Fact]
    public async Task Of_a_pattern_of_one_blade_the_second_is_not_read_and_not_answered()
    {
        Wire.PatternCheckRequest pattern = new() { SecondBlade = new() { Blade = new() { LengthMm = 44 } } };
        Wire.CheckResponse unsaid = await CheckAsync(pattern);
        pattern.Arrangement = Wire.Arrangement.OneBlade;

        Assert.Null(unsaid.Second);
        Assert.Equal(unsaid, await CheckAsync(pattern));
        Assert.Equal(unsaid, await CheckAsync(new Wire.PatternCheckRequest()));
    }

    [Fact]
    public async Task What_is_wrong_with_a_second_blade_is_told_by_the_field_of_its_item()
    {
        Wire.PatternCheckRequest high = new()
        {
            Arrangement = Wire.Arrangement.TwoSprings,
            SecondBlade = new() { Tang = new() { HeightMm = 99 } },
        };
        Wire.PatternCheckRequest bent = new()
        {
            Arrangement = Wire.Arrangement.SharedSpring,
            Handle = new Wire.HandleSettings(),
        };

        List<Wire.CheckManyResponse> answers = await Library.CheckAsync(
            service.Checker,
            [
                new Wire.CheckManyRequest { ItemId = "high", Pattern = high },
                new Wire.CheckManyRequest { ItemId = "bent", Pattern = bent },
            ]
        );

        Assert.Equal(("second_blade.tang.height_mm", "OUT_OF_RANGE"), Violation(answers, "high"));
        Assert.Equal(("handle", "NOT_MADE"), Violation(answers, "bent"));
    }

    [Fact]
    public async Task A_deadline_ends_the_whole_stream()
    {
        using var call = service.Checker.CheckMany(
            deadline: TimeProvider.System.GetUtcNow().UtcDateTime.AddMilliseconds(300)
        );

        RpcException late = await Assert.ThrowsAsync<RpcException>(() => Library.GatherAsync(call.ResponseStream));

        Assert.Equal(StatusCode.DeadlineExceeded, late.StatusCode);
    }

    private async Task<Wire.CheckResponse> CheckAsync(Wire.PatternCheckRequest pattern) =>
        Assert
            .Single(
                await Library.CheckAsync(
                    service.Checker,
                    [new Wire.CheckManyRequest { ItemId = "1", Pattern = pattern }]
                )
            )
            .Check;

    private static int Number(Wire.CheckManyResponse answer) =>
        int.Parse(answer.ItemId, System.Globalization.CultureInfo.InvariantCulture);

    private static (string Field, string Reason) Violation(List<Wire.CheckManyResponse> answers, string id)
    {
        Any details = Assert.Single(answers.Single(answer => answer.ItemId == id).Error.Details);
        BadRequest.Types.FieldViolation violation = Assert.Single(details.Unpack<BadRequest>().FieldViolations);
        return (violation.Field, violation.Reason);
    }
}
