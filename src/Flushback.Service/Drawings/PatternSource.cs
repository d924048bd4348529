using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Patterns;

namespace Flushback.Service.Drawings;

/// <summary>A knife that was drawn here: nothing was read, so nothing was mended, and its own frame is the drawing's.</summary>
internal static class PatternSource
{
    /// <summary>How the knife came in.</summary>
    public static KnifeSource Of(DrawnPattern pattern) =>
        new(pattern.ToDrawn(), Wire.LengthUnit.Millimetre, [], File: null);

    /// <summary>The knife in its frame, every face named by the pattern.</summary>
    public static Placement Place(DrawnPattern pattern) =>
        new(pattern.Knife, RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false);
}
