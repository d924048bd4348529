using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

/// <summary>What no handle can hold, over a real socket: one sentence each, with its field.</summary>
public sealed class HandleFaultsTests(RunningService service) : IClassFixture<RunningService>
{
    private static readonly DrawnKnife _knife = KnifeCatalogue.Wagtail.ToDrawn();

    [Theory]
    [InlineData(0.0, "WIDTH_NOT_POSITIVE")]
    [InlineData(-2.4, "WIDTH_NOT_POSITIVE")]
    [InlineData(double.NaN, "NOT_FINITE")]
    [InlineData(1000, "OUT_OF_RANGE")]
    public Task A_width_that_is_none(double width, string reason) =>
        RefusedAsync(_knife, new() { WidthMm = width }, "handle.width_mm", reason);

    [Theory]
    [InlineData(-0.1, "PRELOAD_NEGATIVE")]
    [InlineData(25, "PRELOAD_TOO_LARGE")]
    public Task A_preload_that_presses_not_at_all_or_holds_the_blade_fast(double preload, string reason) =>
        RefusedAsync(_knife, new() { PreloadMm = preload }, "handle.preload_mm", reason);

    [Fact]
    public Task A_rear_pin_that_is_missing() =>
        RefusedAsync(_knife with { RearPin = null }, new(), "knife.outlines.rear_pin", "REAR_PIN_MISSING");

    [Fact]
    public Task A_rear_pin_between_centre_pin_and_nose() =>
        RefusedAsync(
            _knife with
            {
                RearPin = new Circle(new Point(-8, _knife.CentrePin.Centre.Y), 0.3),
            },
            new(),
            "knife.outlines.rear_pin",
            "REAR_PIN_NOT_BEHIND"
        );

    [Fact]
    public Task A_rear_pin_outside_the_spring() =>
        RefusedAsync(
            _knife with
            {
                RearPin = new Circle(_knife.RearPin!.Value.Centre + new Vector(0, 15), 1),
            },
            new(),
            "knife.outlines.rear_pin"
        );

    [Fact]
    public Task A_spring_thinner_than_its_holes() =>
        RefusedAsync(
            _knife with
            {
                CentrePin = _knife.CentrePin with { RadiusMm = 2.5 },
            },
            new(),
            "knife.outlines.centre_pin"
        );

    [Fact]
    public Task A_stiff_nose_that_begins_behind_the_centre_pin() =>
        RefusedAsync(_knife, new() { StiffNoseMm = 60 }, "handle.stiff_nose_mm", "STIFF_NOSE_BEHIND_CENTRE_PIN");

    [Fact]
    public Task An_assumption_to_be_varied() =>
        RefusedAsync(_knife, new() { Varied = Wire.Dimension.StiffNose }, "handle.varied", "NOT_A_DIMENSION");

    [Fact]
    public Task A_dimension_that_the_contract_does_not_know() =>
        RefusedAsync(_knife, new() { Varied = (Wire.Dimension)99 }, "handle.varied", "UNKNOWN_VALUE");

    private async Task RefusedAsync(DrawnKnife knife, Wire.HandleSettings handle, string field, string? reason = null)
    {
        Wire.CheckRequest request = Requests.Outlines(knife);
        request.Handle = handle;
        Refused refused = await Refused.CheckAsync(service.Checker, request);
        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        refused.AssertSentences();
        (string Field, string Reason) violation = Assert.Single(refused.Violations);
        Assert.Equal(field, violation.Field);
        Assert.Equal(reason ?? violation.Reason, violation.Reason);
    }
}
