using Flushback.Geometry.Polar;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>
/// Goes through the radii about the centre pin from the inside out. Between two neighbouring breakpoints the blade is a
/// stack of strips, each with one lower and one upper boundary, and so is the spring; each strip of the one against each
/// strip of the other forbids one interval of spring rotation.
/// </summary>
/// <remarks>
/// Needed where the nose lies under an overhanging shoulder: the rotations forbidden by the tang below it and by the
/// shoulder above it are then two blocks with a free interval between.
/// </remarks>
internal sealed class StackSweep
{
    private readonly RadialPiece[] _springPieces;
    private readonly StripStack _spring = new();
    private readonly StripStack _blade = new();
    private readonly ForbiddenRotations _forbidden = new();

    public StackSweep(SpringSides spring)
    {
        _springPieces = spring.Pieces;
        _spring.Build(_springPieces, [.. spring.FrontUpper.Select(Index)], [.. spring.FrontLower.Select(Index)]);

        static int Index(RadialPiece piece) => piece.Index;
    }

    /// <summary>Highest support and lowest ceiling of the free interval near a rotation; crossed where none is near.</summary>
    public (Touch Support, Touch Ceiling) Bounds(
        ReadOnlySpan<RadialPiece> blade,
        List<int> upper,
        List<int> lower,
        double near
    )
    {
        _blade.Build(blade, upper, lower);
        _forbidden.Clear();
        Touch solid = Touch.None;
        ReadOnlySpan<StripStack.Slab> blades = _blade.Slabs;
        ReadOnlySpan<StripStack.Slab> springs = _spring.Slabs;
        for (int b = 0, s = 0; b < blades.Length && s < springs.Length; )
        {
            Forbid(ref solid, blade, blades[b], springs[s]);
            if (blades[b].OuterMm < springs[s].OuterMm)
            {
                b++;
            }
            else
            {
                s++;
            }
        }

        if (double.IsFinite(solid.Rotation))
        {
            _forbidden.Add(Touch.None, solid);
        }

        return _forbidden.GapNear(near);
    }

    private void Forbid(
        ref Touch solid,
        ReadOnlySpan<RadialPiece> blade,
        in StripStack.Slab bladeSlab,
        in StripStack.Slab springSlab
    )
    {
        double inner = Math.Max(bladeSlab.InnerMm, springSlab.InnerMm);
        double outer = Math.Min(bladeSlab.OuterMm, springSlab.OuterMm);
        if (outer <= inner)
        {
            return;
        }

        foreach (StripStack.Strip bladeStrip in _blade.StripsOf(bladeSlab))
        {
            foreach (StripStack.Strip springStrip in _spring.StripsOf(springSlab))
            {
                if (bladeStrip.Upper < 0 || springStrip.Lower < 0)
                {
                    continue;
                }

                ref readonly RadialPiece top = ref blade[bladeStrip.Upper];
                ref readonly RadialPiece underside = ref _springPieces[springStrip.Lower];
                if (bladeStrip.Lower < 0 || springStrip.Upper < 0)
                {
                    // A strip whose lower boundary lies out of reach is solid all the way down; the highest of these counts.
                    Touching.Raise(ref solid, top, underside, inner, outer);
                    continue;
                }

                Touch to = Touch.None;
                Touching.Raise(ref to, top, underside, inner, outer);
                Touch from = Touch.Unbounded;
                Touching.Lower(ref from, blade[bladeStrip.Lower], _springPieces[springStrip.Upper], inner, outer);
                _forbidden.Add(from, to);
            }
        }
    }
}
