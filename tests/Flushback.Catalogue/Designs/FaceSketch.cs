using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Catalogue.Designs;

/// <summary>Draws a counter-clockwise outline corner by corner and remembers which face each edge belongs to.</summary>
/// <typeparam name="TFace">The names of the part's faces.</typeparam>
internal sealed class FaceSketch<TFace>
{
    private readonly List<Station> _stations = [];

    /// <summary>Adds a corner and the edge that leaves it.</summary>
    /// <param name="at">The corner, before it is rounded.</param>
    /// <param name="face">What the edge that leaves it is.</param>
    /// <param name="bulge">Bend of that edge; an edge with a bend must have sharp corners at both ends.</param>
    public void Add(Point at, TFace face, double bulge = 0) =>
        _stations.Add(new Station(at, face, bulge, 0, face, Relief.None));

    /// <summary>Adds a corner rounded with a radius, and the straight, perhaps relieved, edge that leaves it.</summary>
    public void AddRounded(Point at, double radiusMm, TFace corner, TFace face, Relief relief = default) =>
        _stations.Add(new Station(at, face, 0, radiusMm, corner, relief));

    /// <summary>The finished outline and the face of each of its edges.</summary>
    public (Outline Outline, ImmutableArray<TFace> Faces) Finish()
    {
        List<Vertex> vertices = [];
        List<TFace> faces = [];
        for (int i = 0; i < _stations.Count; i++)
        {
            Station here = _stations[i];
            Round round = RoundAt(i);
            if (here.RadiusMm > 0)
            {
                vertices.Add(new Vertex(round.Enters, round.Bulge));
                faces.Add(here.Corner);
            }

            AddEdge(here, round.Leaves, RoundAt((i + 1) % _stations.Count).Enters, vertices, faces);
        }

        return (Outline.FromVertices(vertices.ToArray()), [.. faces]);
    }

    private static void AddEdge(Station here, Point from, Point to, List<Vertex> vertices, List<TFace> faces)
    {
        if (here.Relief.DepthMm <= 0)
        {
            vertices.Add(new Vertex(from, here.Bulge));
            faces.Add(here.Face);
            return;
        }

        // Land, hollow, land: the hollow is an arc into the metal, on the left of the direction of travel.
        Vector along = (to - from).Normalized;
        double length = from.DistanceTo(to);
        double land = Math.Min(here.Relief.LandMm, 0.4 * length);
        double bulge = -2 * here.Relief.DepthMm / (length - (2 * land));
        if (land > 0)
        {
            vertices.Add(new Vertex(from));
            faces.Add(here.Face);
        }

        vertices.Add(new Vertex(from + (along * land), bulge));
        faces.Add(here.Face);
        if (land > 0)
        {
            vertices.Add(new Vertex(to - (along * land)));
            faces.Add(here.Face);
        }
    }

    private Round RoundAt(int index)
    {
        Station here = _stations[index];
        if (here.RadiusMm <= 0)
        {
            return new Round(here.At, here.At, 0);
        }

        Vector before = (here.At - _stations[(index + _stations.Count - 1) % _stations.Count].At).Normalized;
        Vector after = (_stations[(index + 1) % _stations.Count].At - here.At).Normalized;
        double turn = Math.Atan2(before.Cross(after), before.Dot(after));
        double trim = here.RadiusMm * Math.Tan(Math.Abs(turn) / 2);
        return new Round(here.At - (before * trim), here.At + (after * trim), Math.Tan(turn / 4));
    }

    private readonly record struct Station(
        Point At,
        TFace Face,
        double Bulge,
        double RadiusMm,
        TFace Corner,
        Relief Relief
    );

    private readonly record struct Round(Point Enters, Point Leaves, double Bulge);
}
