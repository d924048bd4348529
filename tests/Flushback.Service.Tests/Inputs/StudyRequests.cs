using Grpc.Core;

namespace Flushback.Service.Tests.Inputs;

/// <summary>Tolerance studies of knives of the catalogue.</summary>
internal static class StudyRequests
{
    /// <summary>A study of a knife that reads as it should.</summary>
    public static Wire.StudyRequest Of(int parts, params Wire.ArtifactKind[] artifacts)
    {
        Wire.CheckRequest check = Requests.Outlines();
        return new()
        {
            Name = check.Name,
            Knife = check.Knife,
            Tolerances = new Wire.Tolerances { PinsMm = 0.02, ProfileMm = 0.03 },
            Parts = parts,
            Artifacts = { artifacts },
        };
    }

    /// <summary>Everything a study answers.</summary>
    public static async Task<List<Wire.StudyResponse>> AllAsync(
        this Wire.ToleranceStudy.ToleranceStudyClient client,
        Wire.StudyRequest request,
        CancellationToken cancellation = default
    )
    {
        using AsyncServerStreamingCall<Wire.StudyResponse> call = client.Study(
            request,
            cancellationToken: cancellation
        );
        List<Wire.StudyResponse> all = [];
        await foreach (Wire.StudyResponse response in call.ResponseStream.ReadAllAsync(cancellation))
        {
            all.Add(response);
        }

        return all;
    }
}
