using Flushback.Geometry.Polar;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Touching behind the centre pin, where polar angles are counted from 0 to 2 pi so that they do not jump.</summary>
internal static class TailTouching
{
    /// <summary>Lowers an upper bound by a blade piece under the spring's tail; true when it was lowered.</summary>
    public static bool Lower(
        ref Touch bound,
        in RadialPiece blade,
        in RadialPiece spring,
        double innerMm,
        double outerMm
    )
    {
        bool lowered = Try(ref bound, blade, spring, innerMm) | Try(ref bound, blade, spring, outerMm);
        double tangency = Touching.TangencyRadius(blade, spring);
        return tangency > innerMm && tangency < outerMm ? Try(ref bound, blade, spring, tangency) | lowered : lowered;
    }

    private static bool Try(ref Touch bound, in RadialPiece blade, in RadialPiece spring, double radiusMm)
    {
        double bladePolar = SpringSides.Behind(blade.AngleAt(radiusMm));
        double rotation = bladePolar - SpringSides.Behind(spring.AngleAt(radiusMm));
        if (rotation >= bound.Rotation)
        {
            return false;
        }

        bound = new Touch(rotation, radiusMm, bladePolar, blade.Index, spring.Index);
        return true;
    }
}
