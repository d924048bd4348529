using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Removal;

namespace Flushback.Patterns.Drawing;

/// <summary>Rounds between edges that follow on one another, each tangent to both.</summary>
internal static class Rounds
{
    /// <summary>A corner to be rounded: the edge that leads to it and the radius.</summary>
    public readonly record struct Leg(Edge Edge, double RadiusAtEndMm);

    /// <summary>
    /// The chain with its corners rounded as far as they can be: a radius that does not fit is made smaller, and a corner
    /// that hardly turns stays.
    /// </summary>
    /// <param name="legs">Edges in order, each with the radius of the corner at its end; 0 leaves that corner.</param>
    /// <param name="isClosed">True when the last edge leads back to the first.</param>
    public static ImmutableArray<Edge> Of(ReadOnlySpan<Leg> legs, bool isClosed)
    {
        int corners = isClosed ? legs.Length : legs.Length - 1;
        double[] radii = new double[legs.Length];
        Edge?[] rounds = new Edge?[legs.Length];
        for (int i = 0; i < corners; i++)
        {
            radii[i] = legs[i].RadiusAtEndMm;
            rounds[i] = Between(legs[i].Edge, legs[(i + 1) % legs.Length].Edge, radii[i]);
        }

        for (int i = 0, tries = 0; i < legs.Length && tries < Tries * legs.Length; i++)
        {
            int before = (i + legs.Length - 1) % legs.Length;
            if (!IsLeft(legs[i].Edge, rounds[before], rounds[i]))
            {
                // Two rounds on one edge have no room: both give way, and the edges before are looked at again.
                foreach (int corner in new[] { before, i }.AsSpan())
                {
                    radii[corner] *= Smaller;
                    rounds[corner] = Between(legs[corner].Edge, legs[(corner + 1) % legs.Length].Edge, radii[corner]);
                }

                tries++;
                i = -1;
            }
        }

        return Chain(legs, rounds);
    }

    /// <summary>Whether enough of an edge is left between the rounds at its ends.</summary>
    private static bool IsLeft(Edge edge, Edge? before, Edge? after)
    {
        Point from = before?.End ?? edge.Start;
        Point to = after?.Start ?? edge.End;
        return (to - from).Dot(edge.Chord.Normalized) > ShortestRoundMm;
    }

    private static ImmutableArray<Edge> Chain(ReadOnlySpan<Leg> legs, Edge?[] rounds)
    {
        ImmutableArray<Edge>.Builder chain = ImmutableArray.CreateBuilder<Edge>();
        for (int i = 0; i < legs.Length; i++)
        {
            Edge? before = rounds[(i + legs.Length - 1) % legs.Length];
            Point from = before?.End ?? legs[i].Edge.Start;
            Point to = rounds[i]?.Start ?? legs[i].Edge.End;
            chain.Add(Between(legs[i].Edge, from, to));
            if (rounds[i] is { } round)
            {
                chain.Add(round);
            }
        }

        return chain.ToImmutable();
    }

    /// <summary>The piece of an edge between two of its points.</summary>
    public static Edge Between(Edge edge, Point from, Point to)
    {
        if (!edge.IsArc)
        {
            return new Edge(from, to);
        }

        Vector start = from - edge.Centre;
        Vector end = to - edge.Centre;
        return Edge.Arc(from, to, new Angle(Math.Atan2(start.Cross(end), start.Dot(end))));
    }

    /// <summary>The arc that leaves a point in a direction and ends in another point.</summary>
    /// <remarks>The angle between tangent and chord is half the arc's angle (tangent-chord theorem).</remarks>
    public static Edge Leaving(Point from, Vector direction, Point to)
    {
        Vector chord = to - from;
        double half = Math.Atan2(direction.Cross(chord), direction.Dot(chord));
        return Math.Abs(half) < Straight ? new Edge(from, to) : Edge.Arc(from, to, new Angle(2 * half));
    }

    // An arc that turns by less is a line: its height over the chord is under a nanometre on a knife.
    private const double Straight = 1e-7;

    // A shorter round than this is no round but a burr on the cutter's path.
    private const double ShortestRoundMm = 0.05;
    private const double Smaller = 0.8;
    private const int Tries = 8;

    private static Edge? Between(Edge first, Edge second, double radiusMm)
    {
        double turn = first.TangentAt(1).Cross(second.TangentAt(0));
        double radius = radiusMm;
        for (int i = 0; radius * Math.Abs(turn) > ShortestRoundMm && i < Tries; i++, radius *= Smaller)
        {
            if (Fillet.Between(first, second, radius, convex: turn > 0) is { } round)
            {
                return round;
            }
        }

        return null;
    }
}
