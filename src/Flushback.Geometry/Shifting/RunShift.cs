using Flushback.Geometry.Crossings;
using Flushback.Geometry.Removal;

namespace Flushback.Geometry.Shifting;

/// <summary>Edges of an outline that follow one another, and how many small ones round them off at either end.</summary>
/// <param name="First">Index of the first edge.</param>
/// <param name="Count">How many.</param>
/// <param name="CornerBefore">Edges of the corner before them, which go along and keep their shape.</param>
/// <param name="CornerAfter">Edges of the corner after them.</param>
public readonly record struct EdgeRun(int First, int Count, int CornerBefore, int CornerAfter);

/// <summary>Moves a few edges of an outline a little; what lies beside them is prolonged or shortened to meet them.</summary>
/// <remarks>
/// Neighbours stay on their lines and circles, a smooth round keeps its radius and touches both sides again, any other
/// corner slides as it is along the neighbour. The number of edges does not change, nor what each of them is.
/// </remarks>
public static class RunShift
{
    // Sine of the turn below which a round passes smoothly into its neighbour.
    private const double Smooth = 1e-5;

    // Sine of the angle between the moved edges and a neighbour below which they meet nowhere in particular.
    private const double LeastSine = 0.05;

    private const double LeastLengthMm = 1e-3;

    /// <summary>Moves the edges of a run.</summary>
    /// <param name="outline">The outline.</param>
    /// <param name="run">Which edges.</param>
    /// <param name="motion">The small motion.</param>
    /// <returns>The outline after it; null where the neighbours no longer meet the run, or an edge would vanish.</returns>
    public static Outline? Of(Outline outline, EdgeRun run, RigidMotion motion)
    {
        ArgumentNullException.ThrowIfNull(outline);
        Edge[] edges = [.. outline.Edges];
        int count = edges.Length;
        int Around(int index) => ((index % count) + count) % count;
        for (int i = 0; i < run.Count; i++)
        {
            int at = Around(run.First + i);
            edges[at] = motion.Apply(edges[at]);
        }

        int last = run.First + run.Count - 1;
        Joint? start = Joint
            .At(outline, Around, run.First, run.CornerBefore, forwards: true)
            .Joined(edges[Around(run.First)]);
        if (start is null)
        {
            return null;
        }

        start.PutInto(edges, Around, run.First, forwards: true);
        Joint? end = Joint
            .At(outline, Around, last, run.CornerAfter, forwards: false)
            .Joined(edges[Around(last)].Reversed);
        if (end is null)
        {
            return null;
        }

        end.PutInto(edges, Around, last, forwards: false);
        return Outline.FromVertices([.. edges.Select(edge => new Vertex(edge.Start, edge.Bulge))]);
    }

    /// <summary>Where a run begins, seen along the outline from the neighbour through the corner to the first edge of the run.</summary>
    private sealed record Joint(Edge Neighbour, Edge[] Corner, Edge Face)
    {
        public static Joint At(Outline outline, Func<int, int> around, int face, int corner, bool forwards)
        {
            Edge Edge(int steps) =>
                forwards ? outline.Edges[around(face - steps)] : outline.Edges[around(face + steps)].Reversed;
            return new Joint(Edge(corner + 1), [.. Enumerable.Range(1, corner).Reverse().Select(Edge)], Edge(0));
        }

        public void PutInto(Edge[] edges, Func<int, int> around, int face, bool forwards)
        {
            void Put(int steps, Edge edge)
            {
                if (forwards)
                {
                    edges[around(face - steps)] = edge;
                }
                else
                {
                    edges[around(face + steps)] = edge.Reversed;
                }
            }

            Put(0, Face);
            for (int i = 0; i < Corner.Length; i++)
            {
                Put(Corner.Length - i, Corner[i]);
            }

            Put(Corner.Length + 1, Neighbour);
        }

        /// <summary>The same joint with the face moved.</summary>
        public Joint? Joined(Edge moved)
        {
            bool isSmooth =
                Corner is [{ IsArc: true } round]
                && Turn(Neighbour.TangentAt(1), round.TangentAt(0)) < Smooth
                && Turn(round.TangentAt(1), Face.TangentAt(0)) < Smooth;
            return Corner.Length == 0 ? AtPoint(moved)
                : isSmooth ? Rounded(moved, Corner[0])
                : Slid(moved);
        }

        private static double Turn(Vector before, Vector after) => Math.Abs(before.Cross(after));

        private Joint? AtPoint(Edge moved) =>
            Meet(moved) is { } at && To(Neighbour, at) is { } neighbour && From(moved, at) is { } face
                ? new Joint(neighbour, Corner, face)
                : null;

        private Joint? Rounded(Edge moved, Edge round) =>
            AtPoint(moved) is { } sharp
            && Fillet.Between(sharp.Neighbour, sharp.Face, round.RadiusMm, round.Bulge > 0) is { } fillet
            && To(Neighbour, fillet.Start) is { } neighbour
            && From(moved, fillet.End) is { } face
                ? new Joint(neighbour, [fillet], face)
                : null;

        private Joint? Slid(Edge moved)
        {
            Vector along = Neighbour.TangentAt(1);
            Vector face = moved.TangentAt(0);
            double sine = along.Cross(face);
            if (Math.Abs(sine) < LeastSine)
            {
                return null;
            }

            RigidMotion slide = new(Angle.Zero, along * ((moved.Start - Face.Start).Cross(face) / sine));
            Edge[] corner = [.. Corner.Select(slide.Apply)];
            return To(Neighbour, corner[0].Start) is { } neighbour && From(moved, corner[^1].End) is { } first
                ? new Joint(neighbour, corner, first)
                : null;
        }

        private Point? Meet(Edge moved)
        {
            // A corner between them lay where their carriers met before.
            Point old = Neighbour.End;
            int count = Carriers.CommonPoints(Neighbour, moved, out Point one, out Point other);
            return count == 0 ? null
                : count == 1 || one.DistanceTo(old) <= other.DistanceTo(old) ? one
                : other;
        }

        private static Edge? From(in Edge edge, Point start) => To(edge.Reversed, start)?.Reversed;

        /// <summary>An edge led to another end; an arc keeps its radius.</summary>
        private static Edge? To(in Edge edge, Point end)
        {
            Edge line = new(edge.Start, end);
            if (line.Chord.Dot(edge.Chord) <= 0 || line.Chord.Length < LeastLengthMm)
            {
                return null;
            }

            double sine = line.Chord.Length / (2 * edge.RadiusMm);
            return !edge.IsArc ? line
                : sine < 1 && Math.Abs(edge.Bulge) < 1
                    ? line with
                    {
                        Bulge = Math.Sign(edge.Bulge) * Math.Tan(Math.Asin(sine) / 2),
                    }
                : null;
        }
    }
}
