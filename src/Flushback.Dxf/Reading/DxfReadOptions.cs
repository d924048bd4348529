namespace Flushback.Dxf.Reading;

/// <summary>How to read a drawing.</summary>
public sealed record DxfReadOptions
{
    /// <summary>The defaults: the file's own unit, public limits.</summary>
    public static DxfReadOptions Default { get; } = new();

    /// <summary>The unit of the coordinates, over whatever the file says.</summary>
    /// <value>Null: the file's own; a file that states none is refused.</value>
    public DrawingUnit? Unit { get; init; }

    /// <summary>How far apart two ends may lie and still be one point, in millimetres.</summary>
    /// <value>0.01 mm. Chaining takes it; reading itself joins nothing.</value>
    public double JoinToleranceMm { get; init; } = 0.01;

    /// <summary>Farthest that an arc or line may lie from the spline or ellipse it stands for, in millimetres.</summary>
    /// <value>0.001 mm.</value>
    public double CurveToleranceMm { get; init; } = 0.001;

    /// <summary>How large the drawing may be.</summary>
    /// <value><see cref="DxfLimits.Default"/>.</value>
    public DxfLimits Limits { get; init; } = DxfLimits.Default;
}
