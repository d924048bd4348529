namespace Flushback.Mechanism.Plans.Solving;

/// <summary>Change of something for each millimetre more at the front and at the rear place of a face.</summary>
internal readonly record struct PerDepth(double Front, double Rear)
{
    public static PerDepth operator +(PerDepth a, PerDepth b) => new(a.Front + b.Front, a.Rear + b.Rear);

    public static PerDepth operator -(PerDepth a, PerDepth b) => new(a.Front - b.Front, a.Rear - b.Rear);

    public static PerDepth operator -(PerDepth a) => new(-a.Front, -a.Rear);

    public static PerDepth operator *(PerDepth a, double factor) => new(a.Front * factor, a.Rear * factor);

    /// <summary>The change for given depths, to first order.</summary>
    public double Of(FaceDepths depths) => (Front * depths.FrontMm) + (Rear * depths.RearMm);
}
