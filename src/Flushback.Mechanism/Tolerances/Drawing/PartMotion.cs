using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Tolerances.Drawing;

/// <summary>What of a knife moves, and by how much: for one dimension a millimetre off, or for a part with all of them.</summary>
/// <remarks>
/// Play is taken up by the press of the spring, at every stop alike: the blade lies half of it lower than its pin, the
/// spring half of it higher. The knife frame stays on the blade's hole, so a lower blade is a higher centre pin.
/// </remarks>
internal sealed record PartMotion
{
    /// <summary>Nothing moves.</summary>
    public static PartMotion None { get; } = new();

    /// <summary>Displacement of each of the blade's vertices, blade open; empty when all stay.</summary>
    public ImmutableArray<Vector> Blade { get; init; } = [];

    /// <summary>Displacement of each of the spring's vertices against the centre pin, as drawn; empty when all stay.</summary>
    public ImmutableArray<Vector> Spring { get; init; } = [];

    /// <summary>Displacement of the whole blade against its pivot.</summary>
    public Vector BladeShift { get; init; }

    /// <summary>Displacement of the whole spring against its centre pin.</summary>
    public Vector SpringShift { get; init; }

    /// <summary>Displacement of the centre pin, and of the spring with it, against the pivot.</summary>
    public Vector PinShift { get; init; }

    /// <summary>Displacement of the rear pin in the handle.</summary>
    public Vector RearShift { get; init; }

    /// <summary>How much lower than its pin the blade lies, which is where the frame lies.</summary>
    public double DropMm { get; init; }

    /// <summary>Added to the depth of the spring.</summary>
    public double DepthMm { get; init; }

    /// <summary>Added to its width.</summary>
    public double WidthMm { get; init; }

    /// <summary>Added to its preload.</summary>
    public double PreloadMm { get; init; }

    /// <summary>Displacement of the whole spring as drawn, in the knife frame.</summary>
    public Vector WholeSpringShift => PinShift + SpringShift;

    /// <summary>What moves when a dimension is a millimetre off.</summary>
    public static PartMotion Of(Knife knife, Tolerance tolerance, Deviation deviation, double rearmostXMm)
    {
        Vector unit = deviation == Deviation.Up ? new Vector(0, 1) : new Vector(1, 0);
        Vector halfUp = new(0, 0.5);
        return tolerance.Kind switch
        {
            ToleranceKind.PivotHole => None with { BladeShift = -unit },
            ToleranceKind.CentrePinHole => None with { SpringShift = -unit },
            ToleranceKind.CentrePinPlace => None with { PinShift = unit },
            ToleranceKind.RearPinPlace => None with { RearShift = unit },
            ToleranceKind.PivotPlay => None with { PinShift = halfUp, DropMm = 0.5 },
            ToleranceKind.CentrePinPlay => None with { PinShift = halfUp },
            ToleranceKind.SpringDepth => None with { DepthMm = 1 },
            ToleranceKind.SpringWidth => None with { WidthMm = 1 },
            ToleranceKind.Preload => None with { PreloadMm = 1 },
            _ => OfFace(knife, tolerance.Face!.Value, deviation, rearmostXMm),
        };
    }

    /// <summary>This motion and a multiple of another.</summary>
    public PartMotion Plus(PartMotion other, double times) =>
        new()
        {
            Blade = Sum(Blade, other.Blade, times),
            Spring = Sum(Spring, other.Spring, times),
            BladeShift = BladeShift + (other.BladeShift * times),
            SpringShift = SpringShift + (other.SpringShift * times),
            PinShift = PinShift + (other.PinShift * times),
            RearShift = RearShift + (other.RearShift * times),
            DropMm = DropMm + (other.DropMm * times),
            DepthMm = DepthMm + (other.DepthMm * times),
            WidthMm = WidthMm + (other.WidthMm * times),
            PreloadMm = PreloadMm + (other.PreloadMm * times),
        };

    /// <summary>Displacement of a place of the blade, blade open.</summary>
    public Vector OfBlade(Outline blade, int edge, int vertex, Point at) =>
        BladeShift + Carried(Blade, blade, edge, vertex, at);

    /// <summary>Displacement of a place of the spring as drawn, in the knife frame but for <see cref="PinShift"/>.</summary>
    public Vector OfSpring(Outline spring, int edge, int vertex, Point at) =>
        SpringShift + Carried(Spring, spring, edge, vertex, at);

    /// <summary>
    /// An edge keeps its bulge, so it goes by the turn and stretch that carry both its ends: linear in the place (complex
    /// numbers, elementary).
    /// </summary>
    private static Vector Carried(ImmutableArray<Vector> moved, Outline outline, int edge, int vertex, Point at)
    {
        if (moved.IsEmpty)
        {
            return default;
        }

        if (vertex >= 0)
        {
            return moved[vertex];
        }

        Edge e = outline.Edges[edge];
        Vector start = moved[edge];
        Vector stretch = moved[(edge + 1) % moved.Length] - start;
        Vector chord = e.Chord;
        Vector to = at - e.Start;
        double along = chord.Dot(to) / chord.LengthSquared;
        double left = chord.Cross(to) / chord.LengthSquared;
        return start + (stretch * along) + (stretch.Left * left);
    }

    private static PartMotion OfFace(Knife knife, Site face, Deviation deviation, double rearmostXMm)
    {
        ImmutableArray<Vector> moved = FaceMotion.Of(Workpiece.Of(knife, face.Part), face, deviation, rearmostXMm);
        return face.Part == Part.Blade ? None with { Blade = moved } : None with { Spring = moved };
    }

    private static ImmutableArray<Vector> Sum(ImmutableArray<Vector> a, ImmutableArray<Vector> b, double times)
    {
        if (b.IsEmpty)
        {
            return a;
        }

        Vector[] sum = new Vector[b.Length];
        for (int i = 0; i < sum.Length; i++)
        {
            sum[i] = (a.IsEmpty ? default : a[i]) + (b[i] * times);
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(sum);
    }
}
