using System.Text;
using Flushback.Service.Tests.BadInput;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;

namespace Flushback.Service.Tests.Answers;

/// <summary>The handle over a real socket.</summary>
public sealed class HandleTests(RunningService service) : IClassFixture<RunningService>
{
    [Fact]
    public async Task Without_settings_for_it_the_handle_is_not_reported()
    {
        Wire.CheckResponse response = await service.Checker.CheckAsync(Requests.Outlines());
        Assert.Null(response.Report.Handle);
    }

    [Fact]
    public async Task Empty_settings_take_the_defaults_and_report_every_part()
    {
        Wire.CheckRequest request = Requests.Outlines(Wire.ArtifactKind.Text, Wire.ArtifactKind.Html);
        request.Handle = new Wire.HandleSettings();
        Wire.CheckResponse response = await service.Checker.CheckAsync(request);
        Wire.HandleReport handle = response.Report.Handle;

        Assert.Equal(0.5, handle.Spring.PreloadMm, 1e-9);
        Assert.Equal(2.4, handle.Spring.WidthMm);
        Assert.Equal([0, 90, 180], handle.Stops.Select(stop => stop.NominalAngleDeg));
        Assert.NotEmpty(handle.Samples);
        Assert.NotEmpty(handle.StressAlong);
        Assert.Equal(5, handle.Sensitivities.Count);
        Assert.Equal(handle.Pull.PullN / 4.4482216152605, handle.Pull.PullLbf, 1e-9);
        Assert.Contains(response.Report.Findings, finding => finding.Code == "PULL_LIGHT");
        Assert.All(
            response.Artifacts,
            file =>
                Assert.Contains("In the handle", Encoding.UTF8.GetString(file.Content.Span), StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task The_curve_in_the_handle_comes_as_a_file_with_a_row_a_sample()
    {
        Wire.CheckRequest request = Requests.Outlines(Wire.ArtifactKind.HandleCsv);
        request.Handle = new Wire.HandleSettings();
        Wire.CheckResponse response = await service.Checker.CheckAsync(request);

        Wire.Artifact file = response.Artifacts.Single();
        Assert.Equal(("handle-curve.csv", "text/csv"), (file.FileName, file.MediaType));
        string[] rows = file.Content.ToStringUtf8().Split("\r\n", StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(response.Report.Handle.Samples.Count + 1, rows.Length);
    }

    [Fact]
    public async Task The_curve_in_the_handle_is_refused_where_the_handle_is_not_asked_for()
    {
        Wire.CheckRequest request = Requests.Outlines(Wire.ArtifactKind.Text, Wire.ArtifactKind.HandleCsv);
        Refused refused = await Refused.CheckAsync(service.Checker, request);
        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        Assert.Contains(("artifacts[1]", "NEEDS_HANDLE"), refused.Violations);
        refused.AssertSentences();
    }

    [Theory]
    [InlineData(Wire.Dimension.Unspecified, Wire.Dimension.Preload)]
    [InlineData(Wire.Dimension.Preload, Wire.Dimension.Preload)]
    [InlineData(Wire.Dimension.SpringDepth, Wire.Dimension.SpringDepth)]
    [InlineData(Wire.Dimension.SpringWidth, Wire.Dimension.SpringWidth)]
    [InlineData(Wire.Dimension.CentrePinForward, Wire.Dimension.CentrePinForward)]
    public async Task A_wanted_pull_is_answered_by_what_is_to_be_varied(Wire.Dimension varied, Wire.Dimension answered)
    {
        Wire.CheckRequest request = Requests.Outlines();
        request.Handle = new Wire.HandleSettings { Varied = varied };
        double pull = (await service.Checker.CheckAsync(request)).Report.Handle.Pull.PullN;

        request.Handle.WantedPullN = pull + 0.5;
        request.Handle.MostStressMpa = 50_000;
        Wire.Suggestion suggestion = (await service.Checker.CheckAsync(request)).Report.Handle.Suggestion;
        Assert.Equal(answered, suggestion.Dimension);
        Assert.True(suggestion.HasValueMm);
        Assert.Equal(pull + 0.5, suggestion.PullN, 1e-2);

        request.Handle.MostStressMpa = 1;
        suggestion = (await service.Checker.CheckAsync(request)).Report.Handle.Suggestion;
        Assert.False(suggestion.HasValueMm);
        Assert.Contains("within 1 MPa", suggestion.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_steel_nobody_knows_is_refused_with_those_that_are()
    {
        Wire.CheckRequest request = Requests.Outlines();
        request.Handle = new Wire.HandleSettings { SpringSteel = "unobtainium" };
        Refused refused = await Refused.CheckAsync(service.Checker, request);
        Assert.Contains(("handle.spring_steel", "UNKNOWN_STEEL"), refused.Violations);
    }
}
