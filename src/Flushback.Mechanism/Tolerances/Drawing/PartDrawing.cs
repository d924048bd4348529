using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Tolerances.Drawing;

/// <summary>A part as it comes off the machine: its outlines redrawn with every dimension off by its own.</summary>
/// <param name="Knife">The knife; its handle is where it was drawn.</param>
/// <param name="Motion">What has moved against the drawing.</param>
internal sealed record DrawnPart(Knife Knife, PartMotion Motion);

/// <summary>Draws parts of a knife.</summary>
internal sealed class PartDrawing
{
    private readonly Knife _knife;

    /// <summary>Looks up what each dimension moves.</summary>
    /// <param name="knife">The knife as drawn.</param>
    /// <param name="list">What varies.</param>
    /// <param name="rearmostXMm">Rearmost place of the spring that the tang bears on.</param>
    public PartDrawing(Knife knife, ToleranceList list, double rearmostXMm)
    {
        _knife = knife;
        Motions = [.. list.Dimensions.Select(d => PartMotion.Of(knife, list.Of(d), d.Deviation, rearmostXMm))];
    }

    /// <summary>What moves when a dimension is a millimetre off, in the order of the list.</summary>
    public ImmutableArray<PartMotion> Motions { get; }

    /// <summary>The part with these deviations; null when an edge would turn round, so that there is no such part.</summary>
    public DrawnPart? Draw(ReadOnlySpan<double> deviationsMm)
    {
        PartMotion motion = PartMotion.None;
        for (int i = 0; i < deviationsMm.Length; i++)
        {
            motion = deviationsMm[i] == 0 ? motion : motion.Plus(Motions[i], deviationsMm[i]);
        }

        return Draw(motion);
    }

    private DrawnPart? Draw(PartMotion motion)
    {
        Outline? blade = Moved(_knife.Blade, motion.Blade, motion.BladeShift);
        Outline? spring = Moved(_knife.Spring, motion.Spring, motion.WholeSpringShift);
        if (blade is null || spring is null)
        {
            return null;
        }

        return new DrawnPart(
            _knife with
            {
                Blade = blade,
                Spring = spring,
                CentrePin = _knife.CentrePin with { Centre = _knife.CentrePin.Centre + motion.PinShift },
                RearPin = _knife.RearPin is { } rear
                    ? rear with
                    {
                        Centre = rear.Centre + motion.RearShift + new Vector(0, motion.DropMm),
                    }
                    : null,

                // The dial stands where it stands, and its tip on the back.
                DialPoint = _knife.DialPoint + new Vector(0, motion.WholeSpringShift.Y),
            },
            motion
        );
    }

    private static Outline? Moved(Outline outline, ImmutableArray<Vector> moved, Vector shift)
    {
        Vertex[] vertices = new Vertex[outline.Edges.Length];
        for (int i = 0; i < vertices.Length; i++)
        {
            Edge edge = outline.Edges[i];
            Vector by = moved.IsEmpty ? shift : moved[i] + shift;
            vertices[i] = new Vertex(edge.Start + by, edge.Bulge);
        }

        for (int i = 0; i < vertices.Length; i++)
        {
            Vector chord = vertices[(i + 1) % vertices.Length].Position - vertices[i].Position;
            if (chord.Dot(outline.Edges[i].Chord) <= 0)
            {
                return null;
            }
        }

        return Outline.FromVertices(vertices);
    }
}
