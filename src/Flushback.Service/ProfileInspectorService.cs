using Flushback.Inspection;
using Flushback.Inspection.Repair;
using Flushback.Service.Artifacts;
using Flushback.Service.Drawings;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Validation;
using Grpc.Core;

namespace Flushback.Service;

/// <summary>Looks at a drawing as a shop does: validates, inspects, maps. It keeps nothing between calls.</summary>
public sealed class ProfileInspectorService(RequestValidator validator, InspectionReader reader, ServiceLimits limits)
    : Wire.ProfileInspector.ProfileInspectorBase
{
    /// <inheritdoc/>
    public override Task<Wire.InspectResponse> Inspect(Wire.InspectRequest request, ServerCallContext context)
    {
        using WorkTime time = new(limits, context.CancellationToken);
        validator.Validate(request);
        InspectionSource source = reader.Read(request, time.Token);
        InspectionSettings settings = request.Settings.ToSettings();
        InspectionReport report = ProfileInspection.Run(source.Read, settings, time.Token);
        if (source.IsUnitGuessed)
        {
            report = UnitGuess.Told(report);
        }

        RepairedDrawing? copy = request.Artifacts.Contains(Wire.ArtifactKind.RepairedDxf)
            ? RepairedDrawing.Make(source.File.Bytes, source.Read, settings, time.Token)
            : null;
        Wire.InspectReport wire = report.ToWire(request.Name, copy);
        Wire.InspectResponse response = new() { Report = wire };
        foreach (Wire.ArtifactKind kind in request.Artifacts)
        {
            time.Token.ThrowIfCancellationRequested();
            response.Artifacts.Add(InspectionArtifacts.Make(kind, wire, report, copy, source.File));
        }

        return Task.FromResult(response);
    }
}
