using Flushback.Mechanism.Tolerances;
using Flushback.Service.Artifacts;
using Flushback.Service.Mapping;

namespace Flushback.Service.Studies;

/// <summary>What a study answers once its last part is solved.</summary>
internal static class StudyAnswer
{
    /// <summary>The report and each file asked for, in the order in which they are sent.</summary>
    /// <param name="request">What was asked for; validated.</param>
    /// <param name="study">The study, every part of it solved.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    public static List<Wire.StudyResponse> Of(
        Wire.StudyRequest request,
        ToleranceStudy study,
        CancellationToken cancellation
    )
    {
        ToleranceReport report = study.Report(cancellation);
        Wire.StudyReport wire = report.ToWire(request.Name);
        List<Wire.StudyResponse> responses = [new() { Report = wire }];
        foreach (Wire.ArtifactKind kind in request.Artifacts)
        {
            cancellation.ThrowIfCancellationRequested();
            responses.Add(new() { Artifact = StudyArtifacts.Make(kind, wire, report, cancellation) });
        }

        return responses;
    }
}
