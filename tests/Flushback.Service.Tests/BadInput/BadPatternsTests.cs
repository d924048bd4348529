using Flushback.Service.Tests.Hosting;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

public sealed class BadPatternsTests(RunningService service) : IClassFixture<RunningService>
{
    /// <summary>What is asked, the field it is about, and the reason.</summary>
    public static TheoryData<Action<Wire.GenerateRequest>, string, string> Refusals =>
        new()
        {
            { request => request.Pattern.Tang = new() { HeightMm = 99 }, "pattern.tang.height_mm", "OUT_OF_RANGE" },
            { request => request.Pattern.Tang = new() { HeightMm = -1 }, "pattern.tang.height_mm", "OUT_OF_RANGE" },
            {
                request => request.Pattern.Tang = new() { ShoulderDeg = 5 },
                "pattern.tang.shoulder_deg",
                "OUT_OF_RANGE"
            },
            {
                request => request.Pattern.Blade = new() { LengthMm = double.NaN },
                "pattern.blade.length_mm",
                "NOT_FINITE"
            },
            {
                request => request.Pattern.Blade = new() { Family = (Wire.BladeFamily)77 },
                "pattern.blade.family",
                "UNKNOWN_VALUE"
            },
            { request => request.Unit = Wire.LengthUnit.Centimetre, "unit", "NOT_MADE" },
            { request => request.Paper = (Wire.PaperSize)9, "paper", "UNKNOWN_VALUE" },
            { request => request.DxfVersion = (Wire.DxfVersion)99, "dxf_version", "UNKNOWN_VALUE" },
            { request => request.Artifacts.Add(Wire.ArtifactKind.RepairedDxf), "artifacts[0]", "NOT_MADE" },
            { request => request.Artifacts.Add(Wire.ArtifactKind.HandleCsv), "artifacts[0]", "NEEDS_HANDLE" },
            { request => request.Bench = new() { StepDeg = 0 }, "bench.step_deg", "OUT_OF_RANGE" },
            { request => request.Handle = new() { WidthMm = -2 }, "handle.width_mm", "WIDTH_NOT_POSITIVE" },
            { request => request.Name = new string('n', 201), "name", "TOO_LONG" },
        };

    [Theory]
    [MemberData(nameof(Refusals))]
    public async Task Each_is_refused_with_its_field_and_a_sentence(
        Action<Wire.GenerateRequest> spoil,
        string field,
        string reason
    )
    {
        Wire.GenerateRequest request = new() { Pattern = new() };
        spoil(request);

        Refused refused = await Refused.GenerateAsync(service.Exporter, request);

        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        Assert.Equal([(field, reason)], refused.Violations);
        refused.AssertSentences();
    }

    [Fact]
    public async Task Numbers_that_do_not_go_together_are_named_each_with_one_sentence_for_all()
    {
        // A blade as long as the handle has no room in it.
        Wire.GenerateRequest request = new()
        {
            Pattern = new()
            {
                Handle = new() { ClosedLengthMm = 60 },
                Blade = new() { LengthMm = 120 },
            },
        };

        Refused refused = await Refused.GenerateAsync(service.Exporter, request);

        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        Assert.All(refused.Violations, violation => Assert.Equal("PARAMETERS_IN_CONFLICT", violation.Reason));
        Assert.Contains("pattern.blade.length_mm", refused.Violations.Select(violation => violation.Field));
        Assert.Single(refused.BadRequest!.FieldViolations.Select(violation => violation.Description).Distinct());
        refused.AssertSentences();
    }

    [Fact]
    public async Task A_step_finer_than_is_allowed_is_over_the_limit()
    {
        await using RunningServiceScope scope = new(await RunningService.StartAsync("--Limits:Samples=100"));

        Refused refused = await Refused.GenerateAsync(
            scope.Service.Exporter,
            new Wire.GenerateRequest { Bench = new() { StepDeg = 0.5 } }
        );

        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal("Samples", refused.Limit!.Metadata["limit"]);
    }

    [Fact]
    public async Task Work_beyond_the_time_allowed_is_over_the_limit()
    {
        await using RunningServiceScope scope = new(await RunningService.StartAsync("--Limits:Seconds=0.001"));

        // A pattern as it stands can be drawn within the millisecond; a fit draws it hundreds of times.
        Wire.GenerateRequest fit = new() { Handle = new Wire.HandleSettings { WantedPullN = 40 } };
        Refused refused = await Refused.GenerateAsync(scope.Service.Exporter, fit);

        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal("Seconds", refused.Limit!.Metadata["limit"]);
    }

    /// <summary>Stops a service at the end of a test.</summary>
    private sealed class RunningServiceScope(RunningService service) : IAsyncDisposable
    {
        public RunningService Service => service;

        public async ValueTask DisposeAsync() => await service.DisposeAsync();
    }
}
