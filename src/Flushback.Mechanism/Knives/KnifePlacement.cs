using System.Collections.Immutable;

namespace Flushback.Mechanism.Knives;

/// <summary>Brings a drawn knife into the knife frame, or says why it is none.</summary>
public static class KnifePlacement
{
    /// <summary>Finds the knife frame from the pins, the back and the drawn blade angle, and names the faces.</summary>
    /// <returns>The placement, or every problem found; exactly one of the two.</returns>
    public static (Placement? Placement, ImmutableArray<KnifeProblem> Problems) Place(DrawnKnife drawn) =>
        throw new NotImplementedException();
}
