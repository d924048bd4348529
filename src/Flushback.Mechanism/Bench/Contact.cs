using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench;

/// <summary>A place where tang and spring touch or nearly touch.</summary>
/// <param name="At">Where, in the knife frame, blade turned and spring lifted; for a face contact its middle.</param>
/// <param name="Normal">Unit common normal in the knife frame, from the tang to the spring.</param>
/// <param name="GapMm">Distance between the two along the normal; 0 touching, negative overlapping.</param>
/// <param name="BladeFace">Face or corner of the blade.</param>
/// <param name="SpringFace">Face or corner of the spring.</param>
/// <param name="LengthMm">Length along which two parallel faces touch; 0 for a point.</param>
/// <param name="LiftPerDepth">
/// Drop of the reading at fixed blade angle for a small slice off the tang here, were this the only contact.
/// </param>
public readonly record struct Contact(
    Point At,
    Vector Normal,
    double GapMm,
    BladeFace BladeFace,
    SpringFace SpringFace,
    double LengthMm,
    double LiftPerDepth
)
{
    /// <summary>The point, or both ends of a face contact.</summary>
    public IEnumerable<Point> Ends
    {
        get
        {
            Vector half = Normal.Left * (LengthMm / 2);
            return LengthMm > 0 ? [At - half, At + half] : [At];
        }
    }
}
