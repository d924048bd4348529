using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.CompilerServices;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Writing;
using Flushback.Geometry;
using Xunit.Abstractions;

namespace Flushback.Dxf.Tests;

/// <summary>
/// Damaged drawings by the thousand: none crashes, hangs or eats memory, and every rejection is a sentence.
/// <c>FLUSHBACK_FUZZ=10000000 dotnet test --filter FuzzTests</c> runs as many as that.
/// </summary>
public sealed class FuzzTests(ITestOutputHelper output)
{
    private const int DefaultInputs = 20_000;
    private const long MostBytesAllocated = 64 * 1024 * 1024;

    private static readonly DxfReadOptions Options = new()
    {
        Limits = new DxfLimits { MaxEntities = 2000, MaxVertices = 4000 },
    };

    [Fact]
    public void No_damaged_drawing_crashes_hangs_or_swells()
    {
        byte[][] corpus = Corpus();
        int inputs = int.TryParse(
            Environment.GetEnvironmentVariable("FLUSHBACK_FUZZ"),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out int asked
        )
            ? asked
            : DefaultInputs;
        int seed = int.TryParse(
            Environment.GetEnvironmentVariable("FLUSHBACK_FUZZ_SEED"),
            NumberStyles.None,
            CultureInfo.InvariantCulture,
            out int given
        )
            ? given
            : 1;
        DrawingMutator mutator = new(corpus, seed);
        int read = 0;
        ProcessorTime clock = ProcessorTime.OfThisThread();
        TimeSpan slowest = default;
        long largest = 0;
        for (int i = 0; i < inputs; i++)
        {
            byte[] drawing = mutator.Next();
            TimeSpan started = clock.Spent;
            long before = GC.GetAllocatedBytesForCurrentThread();
            try
            {
                read += Judge(drawing) ? 1 : 0;
            }
            catch (Exception problem) when (problem is not Xunit.Sdk.XunitException)
            {
                string kept = Path.Combine(Path.GetTempPath(), $"flushback-fuzz-{seed}-{i}.dxf");
                File.WriteAllBytes(kept, drawing);
                throw new InvalidOperationException($"Input {i} of seed {seed}, kept as {kept}: {problem}", problem);
            }

            largest = Math.Max(largest, GC.GetAllocatedBytesForCurrentThread() - before);
            slowest = TimeSpan.FromTicks(Math.Max(slowest.Ticks, (clock.Spent - started).Ticks));
        }

        output.WriteLine(
            $"{inputs} inputs, {read} read as drawings; slowest {slowest.TotalMilliseconds:F0} ms, largest allocation {largest / 1024} KiB"
        );
        Assert.InRange(read, inputs / 20, inputs * 19 / 20);
        Assert.InRange(largest, 0, MostBytesAllocated);
        Assert.InRange(slowest, TimeSpan.Zero, TimeSpan.FromSeconds(10));
    }

    private static bool Judge(byte[] drawing)
    {
        DxfReadResult result = DxfReader.Read(drawing, Options);
        Assert.Equal(result.Drawing is null, result.Issues.Any(issue => issue.IsFatal));
        List<DxfIssue> issues = [.. result.Issues];
        if (result.Drawing is { } read)
        {
            ChainResult chained = DxfContours.ContoursOf(read, "BLADE", 0.01);
            issues.AddRange(chained.Issues);
            Assert.All(
                chained.Contours,
                contour =>
                    Assert.All(
                        contour.Outline.Edges,
                        edge => Assert.True(edge.Start.IsFinite && double.IsFinite(edge.Bulge))
                    )
            );

            byte[] overlaid = DxfOverlay.AddTo(drawing, read.Unit, Marks.Layers);
            Assert.NotNull(DxfReader.Read(overlaid, Options with { Unit = read.Unit }).Drawing);
            issues.AddRange(Rewritten(drawing, read));
        }

        foreach (DxfIssue issue in issues)
        {
            Assert.EndsWith(".", issue.Sentence, StringComparison.Ordinal);
            Assert.DoesNotContain(issue.Sentence, char.IsControl);
        }

        return result.Drawing is not null;
    }

    /// <summary>Puts a circle in the place of every loose entity, reads that again, and returns what was said.</summary>
    private static ImmutableArray<DxfIssue> Rewritten(byte[] drawing, DxfDrawing read)
    {
        ImmutableArray<OverlayEntity> circle = [new OverlayCircle(new Circle(new Point(1.5, -2), 0.75))];
        RewrittenDrawing rewritten = DxfRewrite.Apply(
            drawing,
            read.Unit,
            [.. read.Shapes.Select(shape => new DxfReplacement([shape], shape.Layer, circle))]
        );
        DxfDrawing? again = DxfReader.Read(rewritten.Bytes, Options with { Unit = read.Unit }).Drawing;
        Assert.NotNull(again);
        Assert.Equal(
            read.Shapes.Select(shape =>
                (shape.Layer.ToUpperInvariant(), shape.IsInBlock ? shape.Geometry.GetType() : typeof(FullCircle))
            ),
            again.Shapes.Select(shape => (shape.Layer.ToUpperInvariant(), shape.Geometry.GetType()))
        );
        Assert.All(
            again.Shapes.Where(shape => !shape.IsInBlock),
            shape => Assert.Equal(0.75, ((FullCircle)shape.Geometry).Circle.RadiusMm, 1e-9)
        );
        return rewritten.Issues;
    }

    private static byte[][] Corpus([CallerFilePath] string thisFile = "") =>
        [
            .. Directory
                .GetFiles(Path.Combine(Path.GetDirectoryName(thisFile)!, "Awkward"), "*.dxf")
                .Order(StringComparer.Ordinal)
                .Select(File.ReadAllBytes)
                .Where(file => file.Length > 60),
        ];
}
