namespace Flushback.Geometry.Approximation;

/// <summary>On which side of an arc its chords lie.</summary>
public enum FlatteningBias
{
    /// <summary>
    /// All points lie on the arc. Chords lie inside it: a convex arc loses metal, a hollow one gains it, by up to the
    /// sagitta and by two thirds of it on average.
    /// </summary>
    PointsOnCurve,

    /// <summary>
    /// Inner points lie outside the arc by the sagitta and chords inside by as much, with a quarter of the error in area
    /// for the same number of points. The ends stay on the arc, so outlines stay closed.
    /// </summary>
    Centred,
}
