using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf.Collections;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

public sealed class BadPassesTests(RunningService service) : IClassFixture<RunningService>
{
    /// <summary>What is asked, the field it is about, and the reason.</summary>
    public static TheoryData<Action<Wire.SimulateRequest>, string, string> Refusals =>
        new()
        {
            { request => request.Passes.Clear(), "passes", "MISSING" },
            { Add(new Wire.Pass()), "passes[1]", "MISSING" },
            { Add(new Wire.Pass { FlatSlice = new Wire.FlatSlice() }), "passes[1].flat_slice.face", "MISSING" },
            { Add(Round(Wire.BladeFace.Unspecified, 1)), "passes[1].round_corner.corner", "MISSING" },
            { Add(Round((Wire.BladeFace)99, 1)), "passes[1].round_corner.corner.blade_face", "UNKNOWN_VALUE" },
            { Add(Round(Wire.BladeFace.OpenCorner, double.NaN)), "passes[1].round_corner.radius_mm", "NOT_FINITE" },
            { Add(Round(Wire.BladeFace.OpenCorner, 101)), "passes[1].round_corner.radius_mm", "OUT_OF_RANGE" },
            { Add(EndFace(29)), "passes[1].dress_end_face.angle_deg", "OUT_OF_RANGE" },
            { request => request.Remains = new() { LeastPinWallMm = -1 }, "remains.least_pin_wall_mm", "OUT_OF_RANGE" },
            { request => request.Artifacts.Add(Wire.ArtifactKind.Csv), "artifacts[0]", "NOT_MADE" },
            { Add(Slice(Wire.BladeFace.HalfStopFace, -0.1, 0)), "passes[1]", "ADDS_METAL" },
            { Add(Slice(Wire.BladeFace.HalfStopFace, 0, 0)), "passes[1]", "NOTHING_TAKEN" },
            { Add(Slice(Wire.BladeFace.Run, 0.1, 0.1)), "passes[1]", "UNKNOWN_FACE" },
            { Add(Slice(Wire.BladeFace.Spine, 0.1, 0.1)), "passes[1]", "UNKNOWN_FACE" },
            { Add(Slice(Wire.BladeFace.HalfStopFace, 2.7, 2.7)), "passes[1]", "CUTS_PIN" },
            { Add(Round(Wire.BladeFace.OpenCorner, 0.1)), "passes[1]", "ADDS_METAL" },
            { Add(Round(Wire.BladeFace.NotchCorner, 0.1)), "passes[1]", "ADDS_METAL" },
            { Add(Round(Wire.BladeFace.Edge, 0.1)), "passes[1]", "NO_CORNER" },
            { Add(Tip(1, allowed: false)), "passes[1]", "TIP_NOT_ALLOWED" },
            { Add(Tip(60, allowed: true)), "passes[1]", "CONSUMES_FACE" },
        };

    [Theory]
    [MemberData(nameof(Refusals))]
    public async Task Each_is_refused_with_its_field_and_a_sentence(
        Action<Wire.SimulateRequest> spoil,
        string field,
        string reason
    )
    {
        Wire.SimulateRequest request = PassRequests.Of(Round(Wire.BladeFace.OpenCorner, 0.4));
        spoil(request);

        Refused refused = await Refused.SimulateAsync(service.Simulator, request);

        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        Assert.Equal([(field, reason)], refused.Violations);
        refused.AssertSentences();
    }

    [Fact]
    public async Task More_passes_than_allowed_are_refused_with_the_limit()
    {
        RunningService small = await RunningService.StartAsync("--Limits:Passes=2");
        Wire.Pass[] three = [.. Enumerable.Repeat(Round(Wire.BladeFace.OpenCorner, 0.4), 3)];

        Refused refused = await Refused.SimulateAsync(small.Simulator, PassRequests.Of(three));

        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal("TOO_MANY_PASSES", refused.Limit!.Reason);
        Assert.Equal(("Passes", "2", "3"), Told(refused.Limit.Metadata));
        await small.DisposeAsync();
    }

    private static (string, string, string) Told(MapField<string, string> metadata) =>
        (metadata["limit"], metadata["allowed"], metadata["value"]);

    private static Action<Wire.SimulateRequest> Add(Wire.Pass pass) => request => request.Passes.Add(pass);

    private static Wire.Pass Round(Wire.BladeFace corner, double radiusMm) => PassRequests.Round(corner, radiusMm);

    private static Wire.Pass Slice(Wire.BladeFace face, double frontMm, double rearMm) =>
        PassRequests.Slice(face, frontMm, rearMm);

    private static Wire.Pass EndFace(double degrees) =>
        new() { DressEndFace = new Wire.DressEndFace { AngleDeg = degrees } };

    private static Wire.Pass Tip(double mm, bool allowed) =>
        new()
        {
            ShortenTip = new Wire.ShortenTip { LengthMm = mm, Allowed = allowed },
        };
}
