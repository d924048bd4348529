using Flushback.Dxf.Reading;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Writing;

/// <summary>Finds how a new entity has to look in a file, so that it stands for an old one.</summary>
internal sealed class EntityLooks(OpenedDrawing drawing, EntityPlaces places)
{
    private readonly TagFile _file = drawing.File;

    /// <summary>The look of an entity on a layer.</summary>
    /// <param name="layer">The layer it goes on.</param>
    /// <param name="model">The entity it stands for; null for the look of the layer.</param>
    /// <exception cref="ArgumentException">The drawing has no such layer.</exception>
    public EntityLook Of(string layer, EntityRecord? model) =>
        model is { } record
            ? new EntityLook(Spelled(layer), GroupsOf(record), HeightOf(record))
            : new EntityLook(Spelled(layer), default, 0);

    private ReadOnlyMemory<byte> Spelled(string layer)
    {
        if (drawing.Survey.LayerNames.TryGetValue(layer, out DxfTag entry))
        {
            return _file.Raw(entry).ToArray();
        }

        if (places.LayerSpelling(layer) is { } used)
        {
            return _file.Raw(used).ToArray();
        }

        // Layer 0 is there in every drawing, told or not.
        return layer == "0"
            ? "0"u8.ToArray()
            : throw new ArgumentException($"The drawing has no layer {Wording.Quoted(layer)}.", nameof(layer));
    }

    // Line type and its scale, colour by number, value and name, line weight, transparency.
    private byte[] GroupsOf(in EntityRecord record)
    {
        using MemoryStream groups = new();
        for (int i = record.First + 1; i < record.End; i++)
        {
            DxfTag tag = _file.Tags[i];
            if (tag.Code is 6 or 48 or 62 or 370 or 420 or 430 or 440)
            {
                groups.Write(_file.Bytes.Span[tag.At.._file.EndOf(tag)]);
            }
        }

        return groups.ToArray();
    }

    private double HeightOf(in EntityRecord record)
    {
        // The first z there is: of the entity itself, or of the first vertex of a 3D polyline.
        int code = record.Type == "LWPOLYLINE" ? 38 : 30;
        double height = 0;
        for (int i = record.First + 1; i < record.FollowersEnd && height == 0; i++)
        {
            if (_file.Tags[i].Code == code && _file.TryNumber(_file.Tags[i], out double z))
            {
                height = z;
            }
        }

        // A line, a spline or an ellipse is given in the drawing's own coordinates whichever way it faces.
        bool isInOwnPlane = record.Type is not ("LINE" or "SPLINE" or "ELLIPSE");
        return isInOwnPlane && record.Facing == Facing.Down ? -height : height;
    }
}
