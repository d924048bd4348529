namespace Flushback.Dxf.Writing;

/// <summary>Writes an entry of the LAYER table.</summary>
/// <param name="Dialect">What the version wants.</param>
/// <param name="TableHandle">Handle of the table, for versions that name owners.</param>
/// <param name="PlotStyle">Plot style of layer 0 in the same file, which some programs insist on; null when it has none.</param>
internal readonly record struct LayerEntry(Dialect Dialect, string TableHandle, string? PlotStyle)
{
    /// <summary>Writes one entry.</summary>
    public void Write(TagWriter tags, HandleSource? handles, string name, int colourIndex)
    {
        tags.Text(0, "LAYER");
        if (Dialect.HasMarkers && handles is not null)
        {
            tags.Text(5, handles.Next());
            if (Dialect.HasOwners)
            {
                tags.Text(330, TableHandle);
            }

            tags.Text(100, "AcDbSymbolTableRecord").Text(100, "AcDbLayerTableRecord").Text(2, name).Whole(70, 0);
        }
        else
        {
            // Some readers pass over the first group, where newer versions have the handle: it must not be the name.
            tags.Whole(70, 0).Text(2, name);
        }

        tags.Whole(62, colourIndex).Text(6, "CONTINUOUS");
        if (PlotStyle is not null)
        {
            tags.Text(390, PlotStyle);
        }
    }
}
