using Flushback.Geometry;

namespace Flushback.Mechanism.Knives;

/// <summary>A knife in its own frame and the way back to the drawing it came from.</summary>
/// <param name="Knife">The knife in the knife frame.</param>
/// <param name="ToDrawing">From the knife frame to the drawing, for all that does not turn with the blade.</param>
/// <param name="DrawnBladeAngle">Blade angle at which the drawing shows the blade.</param>
/// <param name="DrawnBladeAngleFound">True when that angle was found from where the tip points, not given.</param>
public sealed record Placement(Knife Knife, RigidMotion ToDrawing, Angle DrawnBladeAngle, bool DrawnBladeAngleFound);
