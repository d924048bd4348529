using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using Flushback.Geometry;
using Flushback.Geometry.Offsets;

namespace Flushback.Benchmarks;

/// <summary>What an offset and an opening cost as an outline has ever more edges: a disc with a wavy rim of arcs.</summary>
[SimpleJob(RunStrategy.Throughput, warmupCount: 1, iterationCount: 4)]
public class OffsetEdges
{
    private const double WaveMm = 1;

    private Outline _outline = null!;

    /// <summary>Edges of the outline.</summary>
    [Params(20, 200, 2_000, 20_000)]
    public int Edges { get; set; }

    /// <summary>Draws the rim: arcs out and in by turns, a millimetre long each.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        double radiusMm = Edges * WaveMm / Math.Tau;
        _outline = Outline.FromVertices([
            .. Enumerable
                .Range(0, Edges)
                .Select(i => new Vertex(
                    Point.Origin + (Vector.FromDirection(new Angle(Math.Tau * i / Edges)) * radiusMm),
                    i % 2 == 0 ? 0.4 : -0.4
                )),
        ]);
    }

    /// <summary>Outward by less than the radius of the hollows.</summary>
    [Benchmark]
    public int Outward() => Offset.Of(_outline, 0.2).Length;

    /// <summary>Inward by more than the radius of the waves, which takes them away.</summary>
    [Benchmark]
    public int Inward() => Offset.Of(_outline, -1).Length;

    /// <summary>An opening that rounds the crests.</summary>
    [Benchmark]
    public int Open() => Opening.Of(_outline, 1).Length;
}
