using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

public sealed class BadStudiesTests(RunningService service) : IClassFixture<RunningService>
{
    /// <summary>What is wrong, and the field and reason it is refused with.</summary>
    public static TheoryData<string, string, Action<Wire.StudyRequest>> Faults =>
        new()
        {
            { "tolerances", "MISSING", request => request.Tolerances = null },
            { "knife", "NOTHING_VARIES", request => request.Tolerances = new Wire.Tolerances() },
            { "knife", "NOTHING_VARIES", request => request.Tolerances = new Wire.Tolerances { WidthMm = 0.1 } },
            { "tolerances.pins_mm", "OUT_OF_RANGE", request => request.Tolerances.PinsMm = -0.01 },
            { "tolerances.profile_mm", "OUT_OF_RANGE", request => request.Tolerances.ProfileMm = 11 },
            { "tolerances.clearance_mm", "NOT_FINITE", request => request.Tolerances.ClearanceMm = double.NaN },
            { "tolerances.faces[0].face", "NO_PROFILE", request => Add(request, null) },
            { "tolerances.faces[0].face", "NO_PROFILE", request => Add(request, Wire.BladeFace.Edge) },
            { "tolerances.faces[0].profile_mm", "OUT_OF_RANGE", request => Add(request, Wire.BladeFace.Kick, -1) },
            {
                "tolerances.faces[1].face",
                "DUPLICATE",
                request =>
                {
                    Add(request, Wire.BladeFace.Kick);
                    Add(request, Wire.BladeFace.Kick);
                }
            },
            { "parts", "OUT_OF_RANGE", request => request.Parts = 0 },
            { "spread", "UNKNOWN_VALUE", request => request.Spread = (Wire.SpreadKind)9 },
            { "artifacts[0]", "NOT_MADE", request => request.Artifacts.Add(Wire.ArtifactKind.Dxf) },
            { "handle.width_mm", "WIDTH_NOT_POSITIVE", request => request.Handle = new() { WidthMm = -1 } },
        };

    [Theory]
    [MemberData(nameof(Faults))]
    public async Task A_study_that_breaks_the_contract_is_refused_with_field_and_reason(
        string field,
        string reason,
        Action<Wire.StudyRequest> spoil
    )
    {
        Wire.StudyRequest request = StudyRequests.Of(10);
        spoil(request);

        Refused refused = await RefusedAsync(service, request);

        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        Assert.Contains((field, reason), refused.Violations);
        refused.AssertSentences();
    }

    [Fact]
    public async Task More_parts_than_allowed_are_refused_with_the_limit()
    {
        RunningService small = await RunningService.StartAsync("--Limits:Parts=50");

        Refused refused = await RefusedAsync(small, StudyRequests.Of(51));

        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal("Parts", refused.Limit!.Metadata["limit"]);
        Assert.Equal("50", refused.Limit.Metadata["allowed"]);
        Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
        await small.DisposeAsync();
    }

    [Fact]
    public async Task A_turn_that_takes_longer_than_a_request_may_ends_the_study()
    {
        RunningService hurried = await RunningService.StartAsync("--Limits:Seconds=0.001");

        Refused refused = await RefusedAsync(hurried, StudyRequests.Of(20_000));

        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal("Seconds", refused.Limit!.Metadata["limit"]);
        await hurried.DisposeAsync();
    }

    private static void Add(Wire.StudyRequest request, Wire.BladeFace? face, double mm = 0.01) =>
        request.Tolerances.Faces.Add(
            new Wire.FaceProfile
            {
                Face = face is { } named ? new Wire.Site { BladeFace = named } : null,
                ProfileMm = mm,
            }
        );

    private static async Task<Refused> RefusedAsync(RunningService asked, Wire.StudyRequest request) =>
        Refused.From(await Assert.ThrowsAsync<RpcException>(() => asked.Study.AllAsync(request)));
}
