namespace Flushback.Dxf.Writing;

/// <summary>Adds layers of our own to a drawing and leaves everything else in it as it is, byte for byte.</summary>
public static class DxfOverlay
{
    /// <summary>The user's file with our layers beside what is in it.</summary>
    /// <param name="original">A file that <c>DxfReader</c> has accepted.</param>
    /// <param name="unit">The unit of the file's coordinates, as the reader found it.</param>
    /// <param name="layers">Layers in millimetres in the drawing's frame.</param>
    /// <remarks>
    /// Layers go into the LAYER table, entities before the end of the ENTITIES section, in the words of the file's own
    /// version and with its line endings. New handles lie above every handle in the file, and <c>$HANDSEED</c> is raised.
    /// </remarks>
    /// <exception cref="ArgumentException">
    /// The file is none the reader accepts, a layer name is not allowed, or a number is not finite.
    /// </exception>
    public static byte[] AddTo(ReadOnlyMemory<byte> original, DrawingUnit unit, IReadOnlyList<OverlayLayer> layers)
    {
        ArgumentNullException.ThrowIfNull(layers);
        OverlayCheck.ThrowIfUnfit(layers);
        OpenedDrawing drawing = OpenedDrawing.Of(original);
        AddLayers(drawing, layers);

        TagWriter entities = drawing.NewTags();
        drawing.NewEntities(entities, unit).Write(layers);
        drawing.Splices.InsertBefore(drawing.Survey.EntitiesEnd, entities.ToBytes());
        return drawing.ToBytes();
    }

    private static void AddLayers(OpenedDrawing drawing, IReadOnlyList<OverlayLayer> layers)
    {
        (DrawingSurvey survey, Dialect dialect, HandleSource? handles) = (
            drawing.Survey,
            drawing.Dialect,
            drawing.Handles
        );
        OverlayLayer[] missing =
        [
            .. layers
                .DistinctBy(layer => layer.Name, StringComparer.OrdinalIgnoreCase)
                .Where(layer => !survey.LayerNames.ContainsKey(layer.Name)),
        ];
        if (missing.Length == 0)
        {
            return;
        }

        TagWriter tags = drawing.NewTags();
        if (survey.LayerTableEnd is { } end)
        {
            WriteEntries(tags, new LayerEntry(dialect, survey.LayerTableHandle, survey.PlotStyle), handles, missing);
            drawing.Splices.InsertBefore(end, tags.ToBytes());
            if (survey.LayerCount is { } count)
            {
                drawing.Splices.RaiseCount(count, missing.Length);
            }

            return;
        }

        // No table of layers: make one, in a section of its own when there is none to put it in.
        bool needsSection = survey.TablesEnd is null;
        if (needsSection)
        {
            tags.Text(0, "SECTION").Text(2, "TABLES");
        }

        string tableHandle = TableWriter.Open(tags, dialect, handles, "LAYER", missing.Length);
        WriteEntries(tags, new LayerEntry(dialect, tableHandle, null), handles, missing);
        tags.Text(0, "ENDTAB");
        if (needsSection)
        {
            tags.Text(0, "ENDSEC");
        }

        drawing.Splices.InsertBefore(survey.TablesEnd ?? survey.EntitiesStart, tags.ToBytes());
    }

    private static void WriteEntries(
        TagWriter tags,
        LayerEntry entry,
        HandleSource? handles,
        IEnumerable<OverlayLayer> layers
    )
    {
        foreach (OverlayLayer layer in layers)
        {
            entry.Write(tags, handles, layer.Name, layer.ColourIndex);
        }
    }
}
