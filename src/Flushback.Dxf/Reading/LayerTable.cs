using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Reading;

/// <summary>The layers of a drawing: those of its table, and those that entities name without an entry there.</summary>
internal sealed class LayerTable
{
    private const int FrozenFlag = 1;

    private readonly Dictionary<string, DxfLayer> _byName = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<DxfLayer> _inOrder = [];

    /// <summary>All layers met so far.</summary>
    public ImmutableArray<DxfLayer> Layers => [.. _inOrder];

    /// <summary>Reads the LAYER table, wherever it stands in the TABLES section.</summary>
    public static LayerTable Of(TagFile file, Sections sections)
    {
        LayerTable table = new();
        foreach (Range section in sections.Named("TABLES"))
        {
            (int first, int count) = section.GetOffsetAndLength(file.Tags.Count);
            int end = first + count;
            for (int i = first; i < end; i++)
            {
                DxfTag tag = file.Tags[i];
                bool opensEntry = tag.Code == 0 && file.Is(tag, "LAYER"u8);
                if (opensEntry)
                {
                    table.TakeEntry(file, i + 1, end);
                }
            }
        }

        return table;
    }

    /// <summary>The layer of a name; one that has no entry is on and thawed.</summary>
    public DxfLayer Named(string name)
    {
        if (!_byName.TryGetValue(name, out DxfLayer? layer))
        {
            layer = new DxfLayer(name);
            Add(layer);
        }

        return layer;
    }

    private void Add(DxfLayer layer)
    {
        if (_byName.TryAdd(layer.Name, layer))
        {
            _inOrder.Add(layer);
        }
    }

    private void TakeEntry(TagFile file, int first, int end)
    {
        string name = "";
        int flags = 0;
        int colour = 7;
        for (int i = first; i < end && file.Tags[i].Code != 0; i++)
        {
            DxfTag tag = file.Tags[i];
            switch (tag.Code)
            {
                case 2:
                    name = file.Text(tag);
                    break;
                case 70:
                    _ = file.TryInteger(tag, out flags);
                    break;
                case 62:
                    _ = file.TryInteger(tag, out colour);
                    break;
            }
        }

        if (name.Length > 0)
        {
            // A layer that is off keeps its colour with a minus sign.
            Add(new DxfLayer(name, IsOn: colour >= 0, IsFrozen: (flags & FrozenFlag) != 0));
        }
    }
}
