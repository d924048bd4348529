using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Benchmarks;

/// <summary>Draws a blade in more edges without changing its shape: those of the tang are split, evenly by length.</summary>
internal static class Subdivision
{
    /// <summary>The same knife with a blade of so many edges, or as it is when it has as many already.</summary>
    public static Knife Of(Knife knife, int edges)
    {
        bool[] isTang = [.. knife.BladeFaces.Select(face => face is not (BladeFace.Edge or BladeFace.Spine))];
        ImmutableArray<Edge> drawn = knife.Blade.Edges;
        double tangMm = drawn.Where((_, i) => isTang[i]).Sum(edge => edge.LengthMm);
        int toSpread = edges - drawn.Length;
        if (toSpread <= 0)
        {
            return knife;
        }

        List<Vertex> vertices = [];
        List<BladeFace> faces = [];
        double passedMm = 0;
        for (int i = 0; i < drawn.Length; i++)
        {
            // Counted along the whole tang, so that what rounding drops on one edge the next one gets.
            double fromMm = passedMm;
            passedMm += isTang[i] ? drawn[i].LengthMm : 0;
            int extra = (int)(toSpread * passedMm / tangMm) - (int)(toSpread * fromMm / tangMm);
            for (int k = 0; k <= extra; k++)
            {
                double bulge = Math.Tan(drawn[i].Sweep.Radians / (extra + 1) / 4);
                vertices.Add(new Vertex(drawn[i].PointAt(k / (extra + 1.0)), bulge));
                faces.Add(knife.BladeFaces[i]);
            }
        }

        return knife with
        {
            Blade = Outline.FromVertices(vertices.ToArray()),
            BladeFaces = [.. faces],
        };
    }
}
