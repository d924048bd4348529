using Flushback.Dxf.Reading;
using Flushback.Dxf.Tags;

namespace Flushback.Dxf.Writing;

/// <summary>A user's file opened to be changed in a few places.</summary>
internal sealed class OpenedDrawing
{
    private OpenedDrawing(TagFile file, Sections sections)
    {
        File = file;
        Sections = sections;
        Survey = DrawingSurvey.Of(file, sections);
        Dialect = Dialect.Of(Survey.VersionMark);
        Handles = Survey.HasHandles || Dialect.HasMarkers ? new HandleSource(Survey.HighestHandle + 1) : null;
        Splices = new Splices(file);
    }

    /// <summary>The file's groups.</summary>
    public TagFile File { get; }

    /// <summary>Where its sections are.</summary>
    public Sections Sections { get; }

    /// <summary>What is known of it.</summary>
    public DrawingSurvey Survey { get; }

    /// <summary>The words of its version.</summary>
    public Dialect Dialect { get; }

    /// <summary>Handles above all of the file's own; null when it has none.</summary>
    public HandleSource? Handles { get; }

    /// <summary>The changes to be made.</summary>
    public Splices Splices { get; }

    /// <summary>Opens a file that <see cref="DxfReader"/> has accepted.</summary>
    /// <exception cref="ArgumentException">The file is none the reader accepts.</exception>
    public static OpenedDrawing Of(ReadOnlyMemory<byte> original)
    {
        TagScan scan = TagReader.Read(original, int.MaxValue, CancellationToken.None);
        ReadingLog log = new();
        if (scan.File is not { } file || Sections.Find(file, log) is var sections && log.HasErrors)
        {
            string why = scan.Issue?.Sentence ?? log.Issues[0].Sentence;
            throw new ArgumentException($"The file is none the reader accepts. {why}", nameof(original));
        }

        return new OpenedDrawing(file, sections);
    }

    /// <summary>A writer of groups in the form of the file.</summary>
    public TagWriter NewTags() => new(File.Form, Dialect.IsUtf8);

    /// <summary>A writer of entities for model space.</summary>
    public EntityWriter NewEntities(TagWriter tags, DrawingUnit unit) =>
        new(tags, Dialect, Handles, Survey.ModelSpaceHandle, unit);

    /// <summary>The changed file; its handle seed lies above every handle in it.</summary>
    public byte[] ToBytes()
    {
        if (Handles is not null && Survey.HandleSeed is { } seed)
        {
            Splices.ReplaceText(seed, Handles.Seed);
        }

        return Splices.Apply();
    }
}
