using System.Globalization;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Writing;

/// <summary>What an overlay needs to know of a file: its version, its handles, and where things can be inserted.</summary>
internal sealed class DrawingSurvey
{
    private readonly TagFile _file;
    private string _table = "";
    private string _entry = "";
    private string _entryHandle = "";

    private DrawingSurvey(TagFile file)
    {
        _file = file;
    }

    /// <summary>The version mark of the header; empty when there is none.</summary>
    public string VersionMark { get; private set; } = "";

    /// <summary>The value of <c>$HANDSEED</c>.</summary>
    public DxfTag? HandleSeed { get; private set; }

    /// <summary>The highest handle anything has; zero when nothing has one.</summary>
    public ulong HighestHandle { get; private set; }

    /// <summary>True when entities have handles.</summary>
    public bool HasHandles { get; private set; }

    /// <summary>The end mark of the LAYER table.</summary>
    public DxfTag? LayerTableEnd { get; private set; }

    /// <summary>The entry count of the LAYER table.</summary>
    public DxfTag? LayerCount { get; private set; }

    /// <summary>The handle of the LAYER table.</summary>
    public string LayerTableHandle { get; private set; } = "0";

    /// <summary>The plot style of layer 0.</summary>
    public string? PlotStyle { get; private set; }

    /// <summary>The handle of the block record of model space.</summary>
    public string ModelSpaceHandle { get; private set; } = "0";

    /// <summary>The layers in the table, each with the group that spells its name.</summary>
    public Dictionary<string, DxfTag> LayerNames { get; } = new(StringComparer.OrdinalIgnoreCase);

    /// <summary>The end mark of the TABLES section.</summary>
    public DxfTag? TablesEnd { get; private set; }

    /// <summary>The end mark of the last ENTITIES section.</summary>
    public DxfTag EntitiesEnd { get; private set; }

    /// <summary>The opening mark of the first ENTITIES section.</summary>
    public DxfTag EntitiesStart { get; private set; }

    /// <summary>Looks through a file whose sections were found sound.</summary>
    public static DrawingSurvey Of(TagFile file, Sections sections)
    {
        DrawingSurvey survey = new(file);
        survey.LookAtHeader(sections);
        foreach (Range section in sections.Named("TABLES"))
        {
            survey.LookAtTables(section);
        }

        Range[] entities = [.. sections.Named("ENTITIES")];
        survey.EntitiesStart = file.Tags[entities[0].Start.Value - 2];
        survey.EntitiesEnd = file.Tags[entities[^1].End.Value];
        survey.LookAtHandles(sections, entities);
        return survey;
    }

    private void LookAtHeader(Sections sections)
    {
        foreach (Range section in sections.Named("HEADER"))
        {
            for (int i = section.Start.Value; i + 1 < section.End.Value; i++)
            {
                DxfTag name = _file.Tags[i];
                DxfTag value = _file.Tags[i + 1];
                if (name.Code == 9 && _file.Is(name, "$ACADVER"u8))
                {
                    VersionMark = _file.Text(value).ToUpperInvariant();
                }
                else if (name.Code == 9 && _file.Is(name, "$HANDSEED"u8))
                {
                    HandleSeed = value;
                    Raise(value);
                }
            }
        }
    }

    private void LookAtTables(Range section)
    {
        TablesEnd = _file.Tags[section.End.Value];
        for (int i = section.Start.Value; i < section.End.Value; i++)
        {
            LookAtTableTag(_file.Tags[i]);
        }
    }

    private void LookAtTableTag(in DxfTag tag)
    {
        switch (tag.Code)
        {
            case 0:
                _entry = _file.Text(tag).ToUpperInvariant();
                _entryHandle = "";
                if (_entry == "ENDTAB" && _table == "LAYER")
                {
                    LayerTableEnd ??= tag;
                }

                break;
            case 2 when _entry == "TABLE":
                _table = _file.Text(tag).ToUpperInvariant();
                LayerTableHandle = _table == "LAYER" && _entryHandle.Length > 0 ? _entryHandle : LayerTableHandle;
                break;
            case 2 when _entry == "LAYER" && _table == "LAYER":
                LayerNames.TryAdd(_file.Text(tag), tag);
                break;
            case 2 when _entry == "BLOCK_RECORD" && _file.Is(tag, "*MODEL_SPACE"u8):
                ModelSpaceHandle = _entryHandle;
                break;
            case 5:
                _entryHandle = _file.Text(tag);
                LayerTableHandle = _entry == "TABLE" && _table == "LAYER" ? _entryHandle : LayerTableHandle;
                break;
            case 70 when _entry == "TABLE" && _table == "LAYER":
                LayerCount ??= tag;
                break;
            case 390 when _table == "LAYER":
                PlotStyle ??= _file.Text(tag);
                break;
        }
    }

    private void LookAtHandles(Sections sections, Range[] entities)
    {
        foreach (Range section in entities)
        {
            for (int i = section.Start.Value; i < section.End.Value && !HasHandles; i++)
            {
                HasHandles = _file.Tags[i].Code == 5;
            }
        }

        // An empty drawing shows its habit in the header or in its tables.
        HasHandles |= HandleSeed is not null;
        int first = sections.Named("HEADER").Select(header => header.End.Value).DefaultIfEmpty(0).Max();
        for (int i = first; i < _file.Tags.Count; i++)
        {
            // 105 is the handle of a dimension style, whose group 5 was taken already.
            if (_file.Tags[i].Code is 5 or 105)
            {
                Raise(_file.Tags[i]);
            }
        }
    }

    private void Raise(in DxfTag tag)
    {
        bool isHandle = ulong.TryParse(
            _file.Raw(tag),
            NumberStyles.AllowHexSpecifier,
            CultureInfo.InvariantCulture,
            out ulong handle
        );
        if (isHandle && handle < long.MaxValue)
        {
            HighestHandle = Math.Max(HighestHandle, handle);
        }
    }
}
