using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;

namespace Flushback.Dxf.Writing;

/// <summary>Replaces entities of a drawing and leaves everything else in it as it is, byte for byte.</summary>
public static class DxfRewrite
{
    /// <summary>A copy of the user's file with some of its entities left out and others in their place.</summary>
    /// <param name="original">A file that <c>DxfReader</c> has accepted.</param>
    /// <param name="unit">The unit of the file's coordinates, as the reader found it.</param>
    /// <param name="replacements">
    /// What to replace, by the shapes that were read from this very file; an entity named twice goes once.
    /// </param>
    /// <remarks>
    /// A POLYLINE goes with its vertices and an entity with the comments inside it. A block may be placed elsewhere too, so
    /// a replacement that touches one (<see cref="DxfShape.IsInBlock"/>) is refused as a whole. New entities are written
    /// in the words of the file's own version and with its line endings, in the place of the first that goes, or at the
    /// end; their handles lie above every handle in the file, and <c>$HANDSEED</c> is raised.
    /// </remarks>
    /// <exception cref="ArgumentException">
    /// The file is none the reader accepts, a shape is not from it, it has no layer of that name, or a number is not finite.
    /// </exception>
    public static RewrittenDrawing Apply(
        ReadOnlyMemory<byte> original,
        DrawingUnit unit,
        IReadOnlyList<DxfReplacement> replacements
    )
    {
        ArgumentNullException.ThrowIfNull(replacements);
        foreach (DxfReplacement replacement in replacements)
        {
            OverlayCheck.ThrowIfUnfit(replacement.Layer, replacement.Added);
        }

        OpenedDrawing drawing = OpenedDrawing.Of(original);
        EntityPlaces places = new(drawing.File, drawing.Sections);
        EntityLooks looks = new(drawing, places);
        ImmutableArray<DxfReplacement> refused = [.. replacements.Where(IsInBlock)];
        bool[] gone = new bool[drawing.File.Tags.Count];
        foreach (DxfReplacement replacement in replacements.Where(replacement => !IsInBlock(replacement)))
        {
            Replace(drawing, places, looks, unit, replacement, gone);
        }

        DxfIssue? left = LeftReferences.In(drawing.File, gone);
        ImmutableArray<DxfIssue> issues = [.. refused.Select(Refusal), .. left is null ? [] : new[] { left }];
        bool isChanged = refused.Length < replacements.Count;
        return new RewrittenDrawing(isChanged ? drawing.ToBytes() : original.ToArray(), refused, issues);
    }

    private static void Replace(
        OpenedDrawing drawing,
        EntityPlaces places,
        EntityLooks looks,
        DrawingUnit unit,
        DxfReplacement replacement,
        bool[] gone
    )
    {
        EntityRecord[] records = [.. replacement.Gone.Select(places.Of)];
        EntityRecord? model = records.Length > 0 ? records[0] : null;
        byte[] added = [];
        if (replacement.Added.Length > 0)
        {
            EntityLook look = looks.Of(replacement.Layer, model);
            var tags = drawing.NewTags();
            EntityWriter entities = drawing.NewEntities(tags, unit);
            foreach (OverlayEntity entity in replacement.Added)
            {
                entities.Write(look, entity);
            }

            added = tags.ToBytes();
        }

        drawing.Splices.InsertBefore(
            model is { } first ? drawing.File.Tags[first.First] : drawing.Survey.EntitiesEnd,
            added
        );
        foreach (EntityRecord record in records.Where(record => !gone[record.First]))
        {
            (int from, int to) = places.BytesOf(record);
            drawing.Splices.Remove(from, to);
            gone.AsSpan(record.First..record.FollowersEnd).Fill(true);
        }
    }

    private static bool IsInBlock(DxfReplacement replacement) => replacement.Gone.Any(shape => shape.IsInBlock);

    private static DxfIssue Refusal(DxfReplacement replacement)
    {
        DxfShape shape = replacement.Gone.First(shape => shape.IsInBlock);
        return new DxfIssue(
            DxfIssueCodes.InBlock,
            DxfIssueKind.Notice,
            $"{shape.Label} on layer {shape.Layer} stands in a block, which may be placed elsewhere too, so it was left as "
                + "it is: explode the block first.",
            shape.Handle.Length > 0 ? shape.Handle : null,
            shape.Layer,
            shape.Line
        );
    }
}
