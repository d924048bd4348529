using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Service.Tests.Inputs;

/// <summary>The same knife in many more pieces: as good a knife, and as much more work.</summary>
internal static class FinelyDrawn
{
    /// <summary>As many vertices as a request may have: work of ten seconds and more, for tests that cut it short.</summary>
    public static DrawnKnife AtTheLimit() => Wagtail(19_990);

    /// <summary>A knife that reads as it should, every straight edge of its blade in so many pieces.</summary>
    public static DrawnKnife Wagtail(int pieces)
    {
        DrawnKnife knife = KnifeCatalogue.Wagtail.ToDrawn();
        IEnumerable<Vertex> vertices = knife.Blade.Edges.SelectMany(edge =>
            edge.IsArc
                ? [new Vertex(edge.Start, edge.Bulge)]
                : Enumerable
                    .Range(0, pieces)
                    .Select(i => new Vertex(edge.Start + ((edge.End - edge.Start) * (i / (double)pieces)), 0))
        );
        return knife with { Blade = Outline.FromVertices([.. vertices]) };
    }
}
