using Flushback.Dxf.Reading;
using Flushback.Dxf.Tags;

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
        TagScan scan = TagReader.Read(original, int.MaxValue, CancellationToken.None);
        ReadingLog log = new();
        if (scan.File is not { } file || Sections.Find(file, log) is var sections && log.HasErrors)
        {
            string why = scan.Issue?.Sentence ?? log.Issues[0].Sentence;
            throw new ArgumentException($"The file is none the reader accepts. {why}", nameof(original));
        }

        DrawingSurvey survey = DrawingSurvey.Of(file, sections);
        Dialect dialect = Dialect.Of(survey.VersionMark);
        HandleSource? handles =
            survey.HasHandles || dialect.HasMarkers ? new HandleSource(survey.HighestHandle + 1) : null;

        Splices splices = new(file);
        AddLayers(splices, survey, dialect, handles, layers, file.Form);

        TagWriter entities = new(file.Form, dialect.IsUtf8);
        new EntityWriter(entities, dialect, handles, survey.ModelSpaceHandle, unit).Write(layers);
        splices.InsertBefore(survey.EntitiesEnd, entities.ToBytes());

        if (handles is not null && survey.HandleSeed is { } seed)
        {
            splices.ReplaceText(seed, handles.Seed);
        }

        return splices.Apply();
    }

    private static void AddLayers(
        Splices splices,
        DrawingSurvey survey,
        Dialect dialect,
        HandleSource? handles,
        IReadOnlyList<OverlayLayer> layers,
        TagForm form
    )
    {
        OverlayLayer[] missing =
        [
            .. layers
                .DistinctBy(layer => layer.Name, StringComparer.OrdinalIgnoreCase)
                .Where(layer => !survey.LayerNames.Contains(layer.Name)),
        ];
        if (missing.Length == 0)
        {
            return;
        }

        TagWriter tags = new(form, dialect.IsUtf8);
        if (survey.LayerTableEnd is { } end)
        {
            WriteEntries(tags, new LayerEntry(dialect, survey.LayerTableHandle, survey.PlotStyle), handles, missing);
            splices.InsertBefore(end, tags.ToBytes());
            if (survey.LayerCount is { } count)
            {
                splices.RaiseCount(count, missing.Length);
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

        splices.InsertBefore(survey.TablesEnd ?? survey.EntitiesStart, tags.ToBytes());
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
