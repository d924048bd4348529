using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Mechanism.Knives;

/// <summary>Finds the faces of a blade from the way its outline turns, blade open in the knife frame.</summary>
/// <remarks>
/// The walk starts at the open flat (the up-facing edge nearest under the nose) and follows the outward normal round the
/// tang: up on the open flat, to the rear on the half-stop face, down on the closed face, forward past the kick. Corners
/// are what turns between, whether one vertex, an arc or a few small edges.
/// </remarks>
internal static class BladeFaceFinder
{
    // Where one face ends and the next begins, by the direction of the outward normal in degrees.
    private const double FlatEnds = 125;
    private const double RearBegins = 145;
    private const double RearEnds = 215;
    private const double DownBegins = 235;
    private const double DownEnds = 300;

    // A convex arc that turns this far is a run, not a corner, unless it is small.
    private const double RunSweep = 40;
    private const double LargestCornerRadiusMm = 2;

    // How far in front of its start a closed face may reach, as a multiple of the tang's half height.
    private const double ClosedFaceReach = 2.5;

    /// <summary>The face of each edge of a counter-clockwise blade.</summary>
    /// <param name="blade">The blade, open, in the knife frame.</param>
    /// <param name="nose">Lowest front point of the spring, in the knife frame.</param>
    public static ImmutableArray<BladeFace> Find(Outline blade, Point nose)
    {
        CarrierRuns runs = new(blade.Edges);
        ImmutableArray<Edge> edges = runs.Edges;
        BladeFace[] faces = new BladeFace[edges.Length];
        if (OpenFlatUnder(edges, nose) is { } flat)
        {
            NameTang(edges, flat, faces);
            NameNotch(edges, flat, faces);
            NameBlade(edges, faces);
        }

        return runs.Spread(faces);
    }

    private static int? OpenFlatUnder(ImmutableArray<Edge> edges, Point nose)
    {
        int? best = null;
        double bestGap = double.PositiveInfinity;
        for (int i = 0; i < edges.Length; i++)
        {
            Box box = edges[i].Bounds;
            bool faceUp = edges[i].OutwardNormalAt(0.5).Y > Math.Sin(Math.PI / 4);
            bool underNose = box.MinX < nose.X && box.MaxX > -Math.Max(nose.Y, nose.X);
            bool isCorner = edges[i].Bulge > 0 && edges[i].RadiusMm <= LargestCornerRadiusMm;
            double gap = Math.Abs(edges[i].PointAt(0.5).Y - nose.Y);
            if (!isCorner && faceUp && underNose && gap < bestGap && edges[i].PointAt(0.5).X < nose.X)
            {
                (best, bestGap) = (i, gap);
            }
        }

        return best;
    }

    private static void NameTang(ImmutableArray<Edge> edges, int flat, BladeFace[] faces)
    {
        double normal = NormalDegrees(edges[flat]);
        double halfHeight = Math.Abs(edges[flat].PointAt(0.5).Y);
        faces[flat] = BladeFace.OpenFlat;
        Edge before = edges[flat];
        for (int step = 1; step < edges.Length; step++)
        {
            int i = (flat + step) % edges.Length;
            Edge edge = edges[i];
            normal += TurnDegrees(before, edge);
            before = edge;
            bool beyond = edge.Start.X > ClosedFaceReach * halfHeight && normal > DownBegins;
            if (normal > DownEnds || beyond)
            {
                NameKick(edges, i, faces);
                NameRunCorners(edges, flat, faces);
                return;
            }

            bool isRun = edge.Bulge > 0 && edge.Sweep.Degrees > RunSweep && edge.RadiusMm > LargestCornerRadiusMm;
            faces[i] = normal switch
            {
                _ when isRun => BladeFace.Run,
                < FlatEnds => BladeFace.OpenFlat,
                < RearBegins => BladeFace.OpenCorner,
                < RearEnds => BladeFace.HalfStopFace,
                < DownBegins => BladeFace.ClosedCorner,
                _ => BladeFace.ClosedFace,
            };
        }
    }

    /// <summary>A small convex arc on either side of a run is its corner, whichever way it faces.</summary>
    private static void NameRunCorners(ImmutableArray<Edge> edges, int flat, BladeFace[] faces)
    {
        for (int step = 1; step < edges.Length - 1; step++)
        {
            int i = (flat + step) % edges.Length;
            BladeFace before = faces[(i + edges.Length - 1) % edges.Length];
            BladeFace after = faces[(i + 1) % edges.Length];
            bool isCorner = edges[i].Bulge > 0 && edges[i].RadiusMm <= LargestCornerRadiusMm;
            if (isCorner && before == BladeFace.OpenFlat && after == BladeFace.Run)
            {
                faces[i] = BladeFace.OpenCorner;
            }
            else if (isCorner && before == BladeFace.Run && after == BladeFace.ClosedFace)
            {
                faces[i] = BladeFace.ClosedCorner;
            }
        }
    }

    /// <summary>The kick is the last convex turn before the outline leaves the tang: its arc, if it is one.</summary>
    private static void NameKick(ImmutableArray<Edge> edges, int first, BladeFace[] faces)
    {
        int previous = (first + edges.Length - 1) % edges.Length;
        if (edges[first].Bulge > 0 && edges[first].RadiusMm < 2 * LargestCornerRadiusMm)
        {
            faces[first] = BladeFace.Kick;
        }
        else if (edges[previous].Bulge > 0 && faces[previous] == BladeFace.ClosedFace)
        {
            faces[previous] = BladeFace.Kick;
        }
    }

    private static void NameNotch(ImmutableArray<Edge> edges, int flat, BladeFace[] faces)
    {
        double normal = NormalDegrees(edges[flat]);
        Edge after = edges[flat];
        bool onShoulder = false;
        for (int step = 1; step < edges.Length; step++)
        {
            int i = ((flat - step) + edges.Length) % edges.Length;
            if (faces[i] != BladeFace.Unknown)
            {
                return;
            }

            Edge edge = edges[i];
            normal -= TurnDegrees(edge, after);
            after = edge;
            bool hollow = edge.Bulge < 0 && Math.Abs(edge.Sweep.Degrees) > RunSweep;
            if (!onShoulder && hollow)
            {
                faces[i] = BladeFace.NotchCorner;
            }
            else if (normal is > 105 and < 250)
            {
                faces[i] = BladeFace.Shoulder;
                onShoulder = true;
            }
            else if (!onShoulder && normal < FlatEnds)
            {
                faces[i] = BladeFace.OpenFlat;
            }
            else
            {
                return;
            }
        }
    }

    private static void NameBlade(ImmutableArray<Edge> edges, BladeFace[] faces)
    {
        int afterKick = Enumerable
            .Range(0, faces.Length)
            .FirstOrDefault(
                i => faces[i] == BladeFace.Unknown && faces[(i + faces.Length - 1) % faces.Length] != BladeFace.Unknown,
                -1
            );
        if (afterKick < 0)
        {
            return;
        }

        List<int> rest = [];
        for (int step = 0; step < faces.Length && faces[(afterKick + step) % faces.Length] == BladeFace.Unknown; step++)
        {
            rest.Add((afterKick + step) % faces.Length);
        }

        int tip = rest.MaxBy(i => (edges[i].End - Point.Origin).LengthSquared);
        double reach = edges[tip].End.X - edges[afterKick].Start.X;
        bool onEdge = false;
        bool pastTip = false;
        foreach (int i in rest)
        {
            // The edge begins with the first long stretch that runs forward.
            onEdge |= edges[i].Chord.X > 0.2 * reach && edges[i].OutwardNormalAt(0.5).Y < 0;
            faces[i] =
                pastTip ? BladeFace.Spine
                : onEdge ? BladeFace.Edge
                : BladeFace.Ricasso;
            pastTip |= i == tip;
        }
    }

    private static double NormalDegrees(Edge edge) => edge.OutwardNormalAt(0.5).Direction.Degrees;

    /// <summary>How far the outline turns from the middle of one edge to the middle of the next, left positive.</summary>
    private static double TurnDegrees(Edge from, Edge to)
    {
        Vector arriving = from.TangentAt(1);
        Vector leaving = to.TangentAt(0);
        double corner = Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving)) * Angle.DegreesPerRadian;
        return (from.Sweep.Degrees / 2) + corner + (to.Sweep.Degrees / 2);
    }
}
