using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Chains;
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
    private readonly EdgeChain _blade;
    private readonly EdgeChain _edge;
    private readonly Edge[] _spring;
    private readonly Edge[] _tail;
    private readonly Edge[] _springTurned;
    private readonly Edge[] _tailTurned;

    public ClearanceMeter(Knife knife)
    {
        _knife = knife;
        ImmutableArray<Edge> blade = knife.Blade.Edges;
        _blade = new EdgeChain(blade);
        _edge = new EdgeChain([.. blade.Where((_, i) => knife.BladeFaces[i] == BladeFace.Edge)]);
        _spring = [.. knife.Spring.Edges];
        _tail = [.. knife.Spring.Edges.Where((_, i) => knife.SpringFaces[i] == SpringFace.Tail)];
        _springTurned = new Edge[_spring.Length];
        _tailTurned = new Edge[_tail.Length];
        Tip = DrawnBlade.TipOf(knife.Blade);
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
        // Everything is measured in the blade's own frame, where its boxes stand still and only the spring is turned.
        RigidMotion back = Knife.BladeAt(bladeAngle);
        RigidMotion spring = _knife.SpringAt(springRotation).Then(back.Inverse);
        spring.Apply(_spring, _springTurned);
        spring.Apply(_tail, _tailTurned);
        Nearest edge = Distance.Between(_edge, _springTurned);
        Nearest tip = Distance.Between(Tip, _springTurned);
        Nearest tail = Distance.Between(_blade, _tailTurned);
        return new BladeClearance(InKnifeFrame(edge, back), InKnifeFrame(tip, back), InKnifeFrame(tail, back));
    }

    /// <summary>The gap of the notch's inner corner over the nose, blade open; null without a notch corner.</summary>
    public CornerGap? CornerGapAt(SpringPose open)
    {
        RigidMotion blade = Knife.BladeAt(open.BladeAngle).Then(_knife.SpringAt(open.Lowest).Inverse);
        RigidMotion back = _knife.SpringAt(open.Lowest);
        Nearest nearest = Nearest.None;
        FaceNaming faces = new(_knife);
        for (int i = 0; i < _knife.Blade.Edges.Length; i++)
        {
            if (_knife.BladeFaces[i] == BladeFace.NotchCorner)
            {
                Edge corner = blade.Apply(_knife.Blade.Edges[i]);
                nearest = Nearest.Shorter(nearest, Distance.Between([corner], _spring.AsSpan()));
            }
            else if (faces.BladeFaceOf(i, i) == BladeFace.NotchCorner && IsSharpCorner(i))
            {
                Point corner = blade.Apply(_knife.Blade.Edges[i].Start);
                nearest = Nearest.Shorter(nearest, Distance.Between(corner, _knife.Spring));
            }
        }

        return double.IsFinite(nearest.DistanceMm)
            ? new CornerGap(nearest.DistanceMm, back.Apply(nearest.OnFirst), back.Apply(nearest.OnSecond))
            : null;
    }

    private bool IsSharpCorner(int vertex)
    {
        int before = (vertex + _knife.Blade.Edges.Length - 1) % _knife.Blade.Edges.Length;
        return _knife.BladeFaces[before] == BladeFace.Shoulder && _knife.BladeFaces[vertex] == BladeFace.OpenFlat;
    }

    private static Nearest InKnifeFrame(Nearest nearest, RigidMotion back) =>
        new(nearest.DistanceMm, back.Apply(nearest.OnFirst), back.Apply(nearest.OnSecond));
}
