namespace Flushback.Dxf.Reading;

/// <summary>How large a drawing may be. What goes beyond is refused with a sentence, before it costs anything.</summary>
public sealed record DxfLimits
{
    /// <summary>The limits of a public service.</summary>
    public static DxfLimits Default { get; } = new();

    /// <summary>Largest file.</summary>
    /// <value>4 MiB.</value>
    public int MaxBytes { get; init; } = 4 * 1024 * 1024;

    /// <summary>Most entities, counted after blocks are exploded.</summary>
    /// <value>50,000.</value>
    public int MaxEntities { get; init; } = 50_000;

    /// <summary>Most edges in all entities together, after curves have become arcs.</summary>
    /// <value>100,000.</value>
    public int MaxVertices { get; init; } = 100_000;

    /// <summary>Deepest nesting of blocks.</summary>
    /// <value>8.</value>
    public int MaxBlockDepth { get; init; } = 8;

    /// <summary>Most copies in one array of a block (rows times columns).</summary>
    /// <value>1,000.</value>
    public int MaxArrayCopies { get; init; } = 1_000;

    /// <summary>Most control or fit points of one spline.</summary>
    /// <value>2,000.</value>
    public int MaxSplinePoints { get; init; } = 2_000;

    /// <summary>Highest degree of a spline.</summary>
    /// <value>10.</value>
    public int MaxSplineDegree { get; init; } = 10;

    /// <summary>Farthest a coordinate may lie from the origin along either axis, in millimetres.</summary>
    /// <value>100,000 mm: beyond that a double no longer holds a micrometre comfortably through the mathematics.</value>
    public double MaxCoordinateMm { get; init; } = 1e5;
}
