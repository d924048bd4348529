using Flushback.Dxf;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Inspection;
using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Validation;

namespace Flushback.Service.Drawings;

/// <summary>Takes the drawing out of a request for an inspection, and guesses its unit where the caller allows that.</summary>
public sealed class InspectionReader(ServiceLimits limits)
{
    private static readonly DrawingFields _fields = new("dxf", "unit");

    /// <summary>Reads the drawing, or refuses it with everything that is wrong with it.</summary>
    /// <param name="request">A request that was validated.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT for a file that is no drawing, RESOURCE_EXHAUSTED over a limit.</exception>
    internal InspectionSource Read(Wire.InspectRequest request, CancellationToken cancellation)
    {
        DxfReadResult read = ReadIn(request.Unit.ToDrawingUnit(), request, cancellation);
        DrawingUnit? guessed = null;
        if (request.GuessUnit && read.Issues.Any(issue => issue.Code == DxfIssueCodes.UnitMissing))
        {
            guessed = Guess(request, cancellation);
            read = guessed is null ? read : ReadIn(guessed, request, cancellation);
        }

        Violations violations = new();
        DrawingIssues.Report(read.Issues, _fields, violations);
        if (read.Drawing is { } drawing)
        {
            CheckLayers(drawing, request.Settings, violations);
        }

        violations.ThrowIfAny();
        return new InspectionSource(
            read,
            new DrawingFile(request.Dxf.Memory, read.Drawing!.Unit),
            IsUnitGuessed: guessed is not null
        );
    }

    // A layer that is named must be there: an inspection of nothing finds nothing wrong.
    private static void CheckLayers(DxfDrawing drawing, Wire.InspectionSettings? settings, Violations violations)
    {
        FieldPath path = new(null, "settings");
        for (int i = 0; i < (settings?.CutLayers.Count ?? 0); i++)
        {
            CheckLayer(drawing, settings!.CutLayers[i], path.Of("cut_layers", i), violations);
        }

        if (settings is { FinishedLayer.Length: > 0 })
        {
            CheckLayer(drawing, settings.FinishedLayer, path.Of("finished_layer"), violations);
        }
    }

    private static void CheckLayer(DxfDrawing drawing, string name, FieldPath path, Violations violations)
    {
        DxfLayer? layer = drawing.FindLayer(name);
        if (layer is not { IsVisible: true })
        {
            string fault = layer is null
                ? $"The drawing has no layer '{name}'"
                : $"Layer '{layer.Name}' is switched off or frozen";
            violations.Add(
                $"{path}",
                "LAYER_MISSING",
                $"{fault}; {VisibleLayers.InWords(drawing)}: name one of them or show the layer."
            );
        }
    }

    private DrawingUnit? Guess(Wire.InspectRequest request, CancellationToken cancellation)
    {
        // Read in millimetres, the numbers are those of the file.
        DxfDrawing? bare = ReadIn(DrawingUnit.Millimetre, request, cancellation).Drawing;
        return bare is null ? null : UnitGuess.Of(bare, request.Settings.ToSettings().CutLayers);
    }

    private DxfReadResult ReadIn(DrawingUnit? unit, Wire.InspectRequest request, CancellationToken cancellation) =>
        DxfReader.Read(request.Dxf.Memory, limits.ReadOptions(unit), cancellation);
}

/// <summary>A drawing to inspect, as it came in.</summary>
/// <param name="Read">The drawing, and what the reader had to say.</param>
/// <param name="File">The file it was read from.</param>
/// <param name="IsUnitGuessed">True when neither the file nor the caller says the unit.</param>
internal sealed record InspectionSource(DxfReadResult Read, DrawingFile File, bool IsUnitGuessed);
