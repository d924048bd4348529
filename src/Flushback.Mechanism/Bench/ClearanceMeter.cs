using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench;

/// <summary>Distances at one pose; <see cref="Nearest.OnFirst"/> lies on the blade, knife frame, blade turned.</summary>
internal readonly record struct BladeClearance(Nearest Edge, Nearest Tip, Nearest Tail);

/// <summary>Measures the blade against the spring and the handle through the rotation.</summary>
internal sealed class ClearanceMeter
{
    private readonly Knife _knife;
    private readonly Outline _edge;
    private readonly Edge[] _edgeChain;
    private readonly Edge[] _spring;
    private readonly Edge[] _tail;
    private readonly Edge[] _edgeTurned;
    private readonly Edge[] _bladeTurned;

    public ClearanceMeter(Knife knife)
    {
        _knife = knife;
        _edge = knife.Blade;
        ImmutableArray<Edge> blade = knife.Blade.Edges;
        _edgeChain = [.. blade.Where((_, i) => knife.BladeFaces[i] == BladeFace.Edge)];
        _spring = [.. knife.Spring.Edges];
        _tail = [.. knife.Spring.Edges.Where((_, i) => knife.SpringFaces[i] == SpringFace.Tail)];
        _edgeTurned = new Edge[_edgeChain.Length];
        _bladeTurned = new Edge[blade.Length];
        Tip = blade.Select(edge => edge.Start).MaxBy(p => (p - Point.Origin).LengthSquared);
    }

    /// <summary>The tip, blade open.</summary>
    public Point Tip { get; }

    /// <summary>The tip with the blade turned.</summary>
    public Point TipAt(Angle bladeAngle) => Knife.BladeAt(bladeAngle).Apply(Tip);

    /// <summary>Depth of the tip inside the handle; negative outside; null without a handle.</summary>
    public double? TipDepthMm(Angle bladeAngle) => _knife.Handle?.SignedDistanceMm(TipAt(bladeAngle));

    /// <summary>Distances of the edge, the tip and the whole blade from the spring or its tail.</summary>
    public BladeClearance At(Angle bladeAngle, Angle springRotation)
    {
        // Everything is measured in the spring's own frame: the blade turns, the spring's edges stay.
        RigidMotion blade = Knife.BladeAt(bladeAngle).Then(_knife.SpringAt(springRotation).Inverse);
        RigidMotion back = _knife.SpringAt(springRotation);
        Turn(_edgeChain, blade, _edgeTurned);
        Turn(_knife.Blade.Edges.AsSpan(), blade, _bladeTurned);
        Nearest edge = Distance.Between(_edgeTurned.AsSpan(), _spring.AsSpan());
        Nearest tip = Distance.Between(blade.Apply(Tip), _knife.Spring);
        Nearest tail = Distance.Between(_bladeTurned.AsSpan(), _tail.AsSpan());
        return new BladeClearance(InKnifeFrame(edge, back), InKnifeFrame(tip, back), InKnifeFrame(tail, back));
    }

    /// <summary>The gap of the notch's inner corner over the nose, blade open; null without a notch corner.</summary>
    public CornerGap? CornerGapAt(SpringPose open)
    {
        RigidMotion blade = Knife.BladeAt(open.BladeAngle).Then(_knife.SpringAt(open.Lowest).Inverse);
        RigidMotion back = _knife.SpringAt(open.Lowest);
        Nearest nearest = Nearest.None;
        FaceNaming faces = new(_knife);
        for (int i = 0; i < _edge.Edges.Length; i++)
        {
            if (_knife.BladeFaces[i] == BladeFace.NotchCorner)
            {
                Edge corner = blade.Apply(_edge.Edges[i]);
                nearest = Nearest.Shorter(nearest, Distance.Between([corner], _spring.AsSpan()));
            }
            else if (faces.BladeFaceOf(i, i) == BladeFace.NotchCorner && IsSharpCorner(i))
            {
                Point corner = blade.Apply(_edge.Edges[i].Start);
                nearest = Nearest.Shorter(nearest, Distance.Between(corner, _knife.Spring));
            }
        }

        return double.IsFinite(nearest.DistanceMm)
            ? new CornerGap(nearest.DistanceMm, back.Apply(nearest.OnFirst), back.Apply(nearest.OnSecond))
            : null;
    }

    private bool IsSharpCorner(int vertex)
    {
        int before = (vertex + _edge.Edges.Length - 1) % _edge.Edges.Length;
        return _knife.BladeFaces[before] == BladeFace.Shoulder && _knife.BladeFaces[vertex] == BladeFace.OpenFlat;
    }

    private static void Turn(ReadOnlySpan<Edge> edges, RigidMotion motion, Edge[] into)
    {
        for (int i = 0; i < edges.Length; i++)
        {
            into[i] = motion.Apply(edges[i]);
        }
    }

    private static Nearest InKnifeFrame(Nearest nearest, RigidMotion back) =>
        new(nearest.DistanceMm, back.Apply(nearest.OnFirst), back.Apply(nearest.OnSecond));
}
