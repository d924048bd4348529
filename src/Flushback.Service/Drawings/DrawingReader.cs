using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Validation;

namespace Flushback.Service.Drawings;

/// <summary>Reads a DXF drawing and finds the knife on its layers.</summary>
internal sealed class DrawingReader(ServiceLimits limits)
{
    /// <summary>Path of the field that holds the file.</summary>
    public const string DxfField = "knife.drawing.dxf";

    /// <summary>Path of the field that overrides the file's unit.</summary>
    public const string UnitField = "knife.drawing.unit";

    /// <summary>Reads the drawing.</summary>
    /// <param name="request">The drawing and its layers, validated.</param>
    /// <param name="violations">Gathers what is wrong.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <returns>The knife; null when something is wrong, which is then among the violations.</returns>
    /// <exception cref="Grpc.Core.RpcException">RESOURCE_EXHAUSTED when the drawing is over a limit.</exception>
    public KnifeSource? Read(Wire.KnifeDrawing request, Violations violations, CancellationToken cancellation)
    {
        DxfReadOptions options = limits.ReadOptions(request.Unit.ToDrawingUnit());
        (DxfDrawing? drawing, ImmutableArray<DxfIssue> issues) = DxfReader.Read(
            request.Dxf.Memory,
            options,
            cancellation
        );
        DrawingIssues.Report(issues, new DrawingFields(DxfField, UnitField), violations);
        if (drawing is null)
        {
            return null;
        }

        LayerRoles roles = LayerRoles.From(request.Layers);
        LayerReader layers = new(drawing, options.JoinToleranceMm, violations, cancellation);
        DrawnKnife? drawn = FindKnife(layers, roles, violations);
        if (drawn is null || violations.Count > 0)
        {
            return null;
        }

        KnifeSize.Check(drawn, drawing.Unit, isUnitGiven: options.Unit is not null, violations);
        return new KnifeSource(
            drawn,
            drawing.Unit.ToWire(),
            [.. DrawingIssues.Told(issues), .. layers.Repairs],
            new DrawingFile(request.Dxf.Memory, drawing.Unit)
        );
    }

    private DrawnKnife? FindKnife(LayerReader layers, LayerRoles roles, Violations violations)
    {
        if (string.Equals(roles.Blade.Layer, roles.Spring.Layer, StringComparison.OrdinalIgnoreCase))
        {
            violations.Add(
                roles.Spring.Field,
                "SAME_LAYER",
                $"Blade and spring are both looked for on layer '{roles.Blade.Layer}'; draw each on a layer of its own."
            );
            return null;
        }

        Outline? blade = layers.RequiredOutline(roles.Blade);
        Outline? spring = layers.RequiredOutline(roles.Spring);
        Outline? handle = layers.OptionalOutline(roles.Handle);
        PinFinder pins = new(layers, roles, violations);
        Circle? pivot = blade is null ? null : pins.Pivot(blade);

        // Without a pivot any point tells as well that the spring has no pin at all.
        (Circle? centre, Circle? rear) = spring is null
            ? (null, null)
            : pins.SpringPins(spring, pivot ?? new Circle(spring.Bounds.Centre, 0));
        if (blade is null || spring is null || pivot is null || centre is null)
        {
            return null;
        }

        AmountRules.CheckVertices(blade.Edges.Length + spring.Edges.Length + (handle?.Edges.Length ?? 0), limits);
        return new DrawnKnife
        {
            Blade = blade,
            Spring = spring,
            Handle = handle,
            Pivot = pivot.Value,
            CentrePin = centre.Value,
            RearPin = rear,
        };
    }
}
