using System.Collections.Immutable;
using Flushback.Dxf.Drawings;

namespace Flushback.Inspection.Contours;

/// <summary>Where in the file an entity stands, by the name that contours and findings know it by.</summary>
internal sealed class EntityOrder
{
    private readonly Dictionary<string, int> _first = new(StringComparer.Ordinal);

    public EntityOrder(DxfDrawing drawing)
    {
        for (int i = 0; i < drawing.Shapes.Length; i++)
        {
            _first.TryAdd(NameOf(drawing.Shapes[i]), i);
        }
    }

    /// <summary>The name of an entity: its handle or, where the file gives none, its place.</summary>
    public static string NameOf(DxfShape shape) => shape.Handle.Length > 0 ? shape.Handle : shape.Place;

    /// <summary>The place of the earliest of some entities; -1 when there are none.</summary>
    public int Of(ImmutableArray<string> names) =>
        names.IsEmpty ? -1 : names.Min(name => _first.GetValueOrDefault(name, int.MaxValue));
}
