using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances;
using Flushback.Service.Drawings;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Queueing;
using Flushback.Service.Studies;
using Flushback.Service.Telemetry;
using Flushback.Service.Validation;
using Grpc.Core;

namespace Flushback.Service;

/// <summary>Studies random parts of a drawing: validates, has them solved in turns, maps. It keeps nothing between calls.</summary>
public sealed class ToleranceStudyService(
    RequestValidator validator,
    KnifeReader reader,
    Turns turns,
    ServiceLimits limits,
    ServiceMetrics metrics
) : Wire.ToleranceStudy.ToleranceStudyBase
{
    /// <inheritdoc/>
    public override async Task Study(
        Wire.StudyRequest request,
        IServerStreamWriter<Wire.StudyResponse> responseStream,
        ServerCallContext context
    )
    {
        ToleranceStudy study;
        using (Turn turn = await turns.TakeAsync(context))
        {
            study = Begin(request, context.CancellationToken);
        }

        StudySlices slices = new(study, turns, limits, metrics, context);
        await slices.SolveAsync(solved => responseStream.WriteAsync(Progress(solved, study.Settings.Parts)));
        foreach (Wire.StudyResponse response in await slices.InTurnAsync(time => StudyAnswer.Of(request, study, time)))
        {
            await responseStream.WriteAsync(response, context.CancellationToken);
        }
    }

    private ToleranceStudy Begin(Wire.StudyRequest request, CancellationToken caller)
    {
        using WorkTime time = new(limits, caller);
        validator.Validate(request);
        KnifeSource source = reader.Read(request.Knife, time.Token);
        Placement placement = KnifeFrame.Place(source, time.Token);
        (ToleranceStudy? study, var problems) = ToleranceStudy.Begin(placement, request.ToSettings(), time.Token);
        KnifeFrame.ThrowIfAny(problems, source);
        return study!;
    }

    private static Wire.StudyResponse Progress(int solved, int parts) =>
        new()
        {
            Progress = new Wire.StudyProgress { Solved = solved, Parts = parts },
        };
}
