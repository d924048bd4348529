using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Reading;

/// <summary>Reads DXF bytes into a drawing of lines, arcs and circles.</summary>
public static class DxfReader
{
    /// <summary>Reads a whole file from memory.</summary>
    /// <param name="bytes">The file's bytes as they are on disk.</param>
    /// <param name="options">Unit override and limits.</param>
    /// <param name="ct">Stops the reading with <see cref="OperationCanceledException"/>.</param>
    /// <returns>The drawing, or the sentences that say why there is none. Bad input never throws.</returns>
    public static DxfReadResult Read(ReadOnlyMemory<byte> bytes, DxfReadOptions options, CancellationToken ct = default)
    {
        ArgumentNullException.ThrowIfNull(options);
        TagScan scan = TagReader.Read(bytes, options.Limits.MaxBytes, ct);
        if (scan.File is not { } file)
        {
            return new DxfReadResult(null, scan.Issue is { } issue ? [issue] : []);
        }

        ReadingLog log = new();
        Sections sections = Sections.Find(file, log);
        DxfDrawing? drawing = log.HasErrors ? null : Draw(file, sections, options, log, ct);
        return new DxfReadResult(log.HasErrors ? null : drawing, log.Issues);
    }

    private static DxfDrawing Draw(
        TagFile file,
        Sections sections,
        DxfReadOptions options,
        ReadingLog log,
        CancellationToken ct
    )
    {
        HeaderVariables header = HeaderVariables.Of(file, sections);
        LayerTable layers = LayerTable.Of(file, sections);

        // A drawing without a unit is read all the same, in bare units, to tell the maker how large it is.
        DrawingUnit? unit = UnitChoice.Of(header, options.Unit);
        double millimetresPerUnit = unit?.Millimetres() ?? 1;
        BlockTable blocks = BlockTable.Of(file, sections, log);
        ModelSpaceReader modelSpace = new(file, header.VersionMark, layers, blocks, millimetresPerUnit, options, log);
        ImmutableArray<DxfShape> shapes = modelSpace.Read(sections, ct);
        DxfDrawing drawing = new()
        {
            Unit = unit ?? DrawingUnit.Millimetre,
            VersionMark = header.VersionMark,
            Layers = layers.Layers,
            Shapes = shapes,
            LayerFaults = log.Faults,
        };
        UnitChoice.Explain(header, options.Unit, drawing.Bounds, log);
        return drawing;
    }
}
