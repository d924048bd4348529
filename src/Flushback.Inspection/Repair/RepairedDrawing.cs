using System.Collections.Immutable;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Writing;

namespace Flushback.Inspection.Repair;

/// <summary>A copy of a drawing with what can be mended mended, and everything else as it was, byte for byte.</summary>
/// <param name="Bytes">The file; the original when there was nothing to mend.</param>
/// <param name="Repairs">What was mended, each in one sentence.</param>
/// <param name="Left">What is wrong and could not be mended, each in one sentence.</param>
public sealed record RepairedDrawing(byte[] Bytes, ImmutableArray<string> Repairs, ImmutableArray<string> Left)
{
    /// <summary>
    /// Joins ends across gaps, removes copies, overlaps and entities of no length, joins segments too short to cut with
    /// their neighbours, and draws arcs and circles where short lines, splines or ellipses stood for them; on the layers that
    /// are cut only.
    /// </summary>
    /// <param name="original">The file, as it was read.</param>
    /// <param name="read">What was read from this very file.</param>
    /// <param name="settings">The settings of the inspection.</param>
    /// <param name="ct">Stops the work with <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="ArgumentException">
    /// The drawing could not be read, or <paramref name="read"/> is not from this file.
    /// </exception>
    public static RepairedDrawing Make(
        ReadOnlyMemory<byte> original,
        DxfReadResult read,
        InspectionSettings settings,
        CancellationToken ct = default
    )
    {
        ArgumentNullException.ThrowIfNull(read);
        ArgumentNullException.ThrowIfNull(settings);
        if (read.Drawing is not { } drawing)
        {
            throw new ArgumentException("The drawing could not be read.", nameof(read));
        }

        MendingPlan plan = new(read, drawing, settings, ct);
        DxfReplacement[] replacements = [.. plan.Mends.SelectMany(mend => mend.Replacements)];
        RewrittenDrawing rewritten = DxfRewrite.Apply(original, drawing.Unit, replacements);
        return new RepairedDrawing(
            rewritten.Bytes,
            [.. plan.Mends.SelectMany(mend => mend.Sentences)],
            [.. plan.Left, .. rewritten.Issues.Select(issue => issue.Sentence)]
        );
    }
}
