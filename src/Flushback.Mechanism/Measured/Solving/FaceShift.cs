using Flushback.Geometry;
using Flushback.Geometry.Shifting;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Measured.Solving;

/// <summary>A knife with one of its faces a little higher or lower than it is.</summary>
internal static class FaceShift
{
    /// <summary>The corners beside the faces, before and after each on the way round the blade.</summary>
    private static (BladeFace Before, BladeFace After) CornersOf(BladeFace face) =>
        face switch
        {
            BladeFace.OpenFlat => (BladeFace.NotchCorner, BladeFace.OpenCorner),
            BladeFace.HalfStopFace => (BladeFace.OpenCorner, BladeFace.ClosedCorner),
            _ => (BladeFace.ClosedCorner, BladeFace.Kick),
        };

    /// <summary>Moves a face as a whole so that the line through two of its places comes to lie higher by an offset at each.</summary>
    /// <param name="knife">The knife.</param>
    /// <param name="places">The two places, with the directions out of the metal.</param>
    /// <param name="offset">How much higher; negative for lower.</param>
    /// <returns>The knife; null where it has no such face, or the face would no longer meet what lies beside it.</returns>
    public static Knife? Of(Knife knife, DepthPlaces places, FaceOffset offset)
    {
        if (offset is { FrontMm: 0, RearMm: 0 })
        {
            return knife;
        }

        Workpiece piece = Workpiece.Of(knife, Part.Blade);
        if (piece.RunOf(Site.On(offset.Face)) is not { } face)
        {
            return null;
        }

        (BladeFace before, BladeFace after) = CornersOf(offset.Face);
        EdgeRun run = new(face.First, face.Count, EdgesOf(piece, before, face), EdgesOf(piece, after, face));
        return RunShift.Of(knife.Blade, run, Motion(places, offset)) is { } blade ? knife with { Blade = blade } : null;
    }

    /// <summary>Edges between a face and the face on the other side of a corner.</summary>
    private static int EdgesOf(Workpiece piece, BladeFace corner, FaceRun face)
    {
        if (corner == BladeFace.NotchCorner)
        {
            return piece.RunOf(Site.On(corner)) is { } inner && piece.Around(inner.Last + 1) == face.First
                ? inner.Count
                : 0;
        }

        bool isBeside =
            CornerSpot.Of(piece, Site.On(corner)) is { } spot
            && (spot.After == face.First || spot.Before == piece.Around(face.Last));
        return isBeside ? CornerSpot.Of(piece, Site.On(corner))!.Value.Count : 0;
    }

    private static RigidMotion Motion(DepthPlaces places, FaceOffset offset)
    {
        Point front = places.Front.At;
        Point rear = places.Rear.At;
        Vector along = rear - front;
        Vector square = along.Right.Normalized;
        square = square.Dot(places.Front.Normal + places.Rear.Normal) < 0 ? -square : square;
        Point middle = front.MidpointTo(rear);
        double rise = offset.RearMm - offset.FrontMm;
        Angle turn = new(Math.Atan(rise / along.Length) * Math.Sign(along.Cross(square)));
        RigidMotion lift = new(Angle.Zero, square * ((offset.FrontMm + offset.RearMm) / 2));
        return RigidMotion.RotationAbout(middle, turn).Then(lift);
    }
}
