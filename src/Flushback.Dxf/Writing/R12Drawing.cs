using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Writing;

/// <summary>A whole drawing in R12 (AC1009): no handles, no subclasses, the least a strict reader wants.</summary>
internal sealed class R12Drawing(DrawingUnit unit, IReadOnlyList<OverlayLayer> layers)
{
    private const string Mark = "AC1009";

    private readonly TagWriter _tags = new(TagForm.Ascii("\r\n"), isUtf8: false);
    private readonly Dialect _dialect = Dialect.Of(Mark);

    /// <summary>The file.</summary>
    public byte[] ToBytes()
    {
        _tags.Text(0, "SECTION").Text(2, "HEADER");
        _tags.Text(9, "$ACADVER").Text(1, Mark);

        // R12 itself knows no units; later readers look for them here, and R12 passes over names it does not know.
        _tags.Text(9, "$INSUNITS").Whole(70, (int)unit);
        _tags.Text(9, "$MEASUREMENT").Whole(70, unit.IsInchBased() ? 0 : 1);
        _tags.Text(0, "ENDSEC");

        _tags.Text(0, "SECTION").Text(2, "TABLES");
        LineTypes();
        Layers();
        _tags.Text(0, "ENDSEC");

        _tags.Text(0, "SECTION").Text(2, "ENTITIES");
        new EntityWriter(_tags, _dialect, handles: null, owner: "0", unit).Write(layers);
        _tags.Text(0, "ENDSEC").Text(0, "EOF");
        return _tags.ToBytes();
    }

    private void LineTypes()
    {
        TableWriter.Open(_tags, _dialect, null, "LTYPE", 1);
        _tags.Text(0, "LTYPE").Text(2, "CONTINUOUS").Whole(70, 0).Text(3, "Solid line");
        _tags.Whole(72, 65).Whole(73, 0).Number(40, 0).Text(0, "ENDTAB");
    }

    private void Layers()
    {
        OverlayLayer[] distinct = [.. layers.DistinctBy(layer => layer.Name, StringComparer.OrdinalIgnoreCase)];
        LayerEntry entry = new(_dialect, "0", null);
        TableWriter.Open(_tags, _dialect, null, "LAYER", distinct.Length + 1);
        entry.Write(_tags, null, "0", 7);
        foreach (OverlayLayer layer in distinct.Where(layer => layer.Name != "0"))
        {
            entry.Write(_tags, null, layer.Name, layer.ColourIndex);
        }

        _tags.Text(0, "ENDTAB");
    }
}
