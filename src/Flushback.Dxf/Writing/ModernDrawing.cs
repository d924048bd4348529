using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Writing;

/// <summary>A whole drawing in 2000 or newer, with the tables, block records and objects that strict readers ask for.</summary>
/// <remarks>
/// The body is written first, since it alone knows how many handles it takes; the header with the handle seed goes in
/// front of it.
/// </remarks>
/// <param name="mark">Version mark, <c>AC1015</c> or later.</param>
/// <param name="unit">Unit of the written coordinates.</param>
/// <param name="layers">What to draw.</param>
internal sealed class ModernDrawing(string mark, DrawingUnit unit, IReadOnlyList<OverlayLayer> layers)
{
    private readonly TagWriter _tags = new(TagForm.Ascii("\r\n"), Dialect.Of(mark).IsUtf8);
    private readonly Dialect _dialect = Dialect.Of(mark);
    private readonly HandleSource _handles = new(1);
    private string _modelSpace = "0";
    private string _paperSpace = "0";

    /// <summary>The file.</summary>
    public byte[] ToBytes()
    {
        _tags.Text(0, "SECTION").Text(2, "CLASSES").Text(0, "ENDSEC");
        Tables();
        Blocks();
        _tags.Text(0, "SECTION").Text(2, "ENTITIES");
        new EntityWriter(_tags, _dialect, _handles, _modelSpace, unit).Write(layers);
        _tags.Text(0, "ENDSEC");
        Objects();
        _tags.Text(0, "EOF");
        return [.. Header(), .. _tags.ToBytes()];
    }

    private byte[] Header()
    {
        TagWriter header = new(TagForm.Ascii("\r\n"), _dialect.IsUtf8);
        header.Text(0, "SECTION").Text(2, "HEADER");
        header.Text(9, "$ACADVER").Text(1, mark);
        header.Text(9, "$DWGCODEPAGE").Text(3, "ANSI_1252");
        header.Text(9, "$HANDSEED").Text(5, _handles.Seed);
        header.Text(9, "$INSUNITS").Whole(70, (int)unit);
        header.Text(9, "$MEASUREMENT").Whole(70, unit.IsInchBased() ? 0 : 1);
        return header.Text(0, "ENDSEC").ToBytes();
    }

    private void Tables()
    {
        _tags.Text(0, "SECTION").Text(2, "TABLES");
        Table("VPORT", 1, owner => Viewport(owner));
        Table(
            "LTYPE",
            3,
            owner =>
            {
                LineType(owner, "ByBlock", "");
                LineType(owner, "ByLayer", "");
                LineType(owner, "Continuous", "Solid line");
            }
        );
        OverlayLayer[] distinct =
        [
            .. layers
                .DistinctBy(layer => layer.Name, StringComparer.OrdinalIgnoreCase)
                .Where(layer => layer.Name != "0"),
        ];
        Table("LAYER", distinct.Length + 1, owner => Layers(owner, distinct));
        Table("STYLE", 1, owner => TextStyle(owner));
        Table("VIEW", 0, _ => { });
        Table("UCS", 0, _ => { });
        Table("APPID", 1, owner => Record("APPID", owner, "AcDbRegAppTableRecord").Text(2, "ACAD").Whole(70, 0));
        DimensionStyles();
        Table(
            "BLOCK_RECORD",
            2,
            owner =>
            {
                _modelSpace = BlockRecord(owner, "*Model_Space");
                _paperSpace = BlockRecord(owner, "*Paper_Space");
            }
        );
        _tags.Text(0, "ENDSEC");
    }

    private void Table(string name, int entries, Action<string> writeEntries)
    {
        writeEntries(TableWriter.Open(_tags, _dialect, _handles, name, entries));
        _tags.Text(0, "ENDTAB");
    }

    private TagWriter Record(string type, string owner, string subclass)
    {
        _tags.Text(0, type).Text(5, _handles.Next()).Text(330, owner);
        return _tags.Text(100, "AcDbSymbolTableRecord").Text(100, subclass);
    }

    private void Viewport(string owner)
    {
        Record("VPORT", owner, "AcDbViewportTableRecord").Text(2, "*Active").Whole(70, 0);
        _tags.Number(10, 0).Number(20, 0).Number(11, 1).Number(21, 1).Number(12, 0).Number(22, 0);
        _tags.Number(13, 0).Number(23, 0).Number(14, 10).Number(24, 10).Number(15, 10).Number(25, 10);
        _tags.Place(16, 0, 0).Number(36, 1).Place(17, 0, 0);
        _tags.Number(40, 150 / unit.Millimetres()).Number(41, 1.5).Number(42, 50);
    }

    private void LineType(string owner, string name, string description)
    {
        Record("LTYPE", owner, "AcDbLinetypeTableRecord").Text(2, name).Whole(70, 0).Text(3, description);
        _tags.Whole(72, 65).Whole(73, 0).Number(40, 0);
    }

    private void Layers(string owner, IEnumerable<OverlayLayer> distinct)
    {
        LayerEntry entry = new(_dialect, owner, null);
        entry.Write(_tags, _handles, "0", 7);
        foreach (OverlayLayer layer in distinct)
        {
            entry.Write(_tags, _handles, layer.Name, layer.ColourIndex);
        }
    }

    private void TextStyle(string owner)
    {
        Record("STYLE", owner, "AcDbTextStyleTableRecord").Text(2, "Standard").Whole(70, 0).Number(40, 0);
        _tags.Number(41, 1).Number(50, 0).Whole(71, 0).Number(42, 2.5).Text(3, "txt").Text(4, "");
    }

    private void DimensionStyles()
    {
        // The one table whose records keep their handle in group 105.
        string owner = TableWriter.Open(_tags, _dialect, _handles, "DIMSTYLE", 1);
        _tags.Text(100, "AcDbDimStyleTable");
        _tags.Text(0, "DIMSTYLE").Text(105, _handles.Next()).Text(330, owner);
        _tags.Text(100, "AcDbSymbolTableRecord").Text(100, "AcDbDimStyleTableRecord").Text(2, "Standard").Whole(70, 0);
        _tags.Text(0, "ENDTAB");
    }

    private string BlockRecord(string owner, string name)
    {
        string handle = _handles.Next();
        _tags.Text(0, "BLOCK_RECORD").Text(5, handle).Text(330, owner);
        _tags.Text(100, "AcDbSymbolTableRecord").Text(100, "AcDbBlockTableRecord").Text(2, name).Text(340, "0");
        return handle;
    }

    private void Blocks()
    {
        _tags.Text(0, "SECTION").Text(2, "BLOCKS");
        Block(_modelSpace, "*Model_Space", isPaper: false);
        Block(_paperSpace, "*Paper_Space", isPaper: true);
        _tags.Text(0, "ENDSEC");
    }

    private void Block(string record, string name, bool isPaper)
    {
        BlockMark("BLOCK", record, isPaper);
        _tags.Text(100, "AcDbBlockBegin").Text(2, name).Whole(70, 0).Place(10, 0, 0).Text(3, name).Text(1, "");
        BlockMark("ENDBLK", record, isPaper);
        _tags.Text(100, "AcDbBlockEnd");
    }

    private void BlockMark(string type, string record, bool isPaper)
    {
        _tags.Text(0, type).Text(5, _handles.Next()).Text(330, record).Text(100, "AcDbEntity");
        if (isPaper)
        {
            _tags.Whole(67, 1);
        }

        _tags.Text(8, "0");
    }

    private void Objects()
    {
        string root = _handles.Next();
        string groups = _handles.Next();
        _tags.Text(0, "SECTION").Text(2, "OBJECTS");
        _tags.Text(0, "DICTIONARY").Text(5, root).Text(330, "0").Text(100, "AcDbDictionary").Whole(281, 1);
        _tags.Text(3, "ACAD_GROUP").Text(350, groups);
        _tags.Text(0, "DICTIONARY").Text(5, groups).Text(330, root).Text(100, "AcDbDictionary").Whole(281, 1);
        _tags.Text(0, "ENDSEC");
    }
}
