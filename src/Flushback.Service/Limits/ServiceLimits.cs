using System.ComponentModel.DataAnnotations;

namespace Flushback.Service.Limits;

/// <summary>How much a single request may ask for. Bound from the configuration section <see cref="Section"/>.</summary>
/// <remarks>
/// Going over an amount (bytes, vertices, samples, seconds) is RESOURCE_EXHAUSTED with the name of the limit, the limit
/// and the value; a number out of its range is INVALID_ARGUMENT like any other bad number. Checked when the service starts.
/// </remarks>
public sealed class ServiceLimits
{
    /// <summary>Name of the configuration section.</summary>
    public const string Section = "Limits";

    /// <summary>Largest request, in bytes, as sent and after decompression.</summary>
    /// <value>Default: 4 MB (4,194,304).</value>
    [Range(1024, 256 * 1024 * 1024)]
    public int MessageBytes { get; set; } = 4 * 1024 * 1024;

    /// <summary>Most vertices of all outlines of a request together, also after a drawing is read.</summary>
    /// <value>Default: 100,000.</value>
    [Range(8, 10_000_000)]
    public int Vertices { get; set; } = 100_000;

    /// <summary>Most entities of a drawing, counted with its blocks taken apart.</summary>
    /// <value>Default: 50,000.</value>
    [Range(10, 10_000_000)]
    public int Entities { get; set; } = 50_000;

    /// <summary>Deepest nesting of blocks in a drawing.</summary>
    /// <value>Default: 8.</value>
    [Range(1, 64)]
    public int BlockDepth { get; set; } = 8;

    /// <summary>Most copies in one array of a block, rows times columns.</summary>
    /// <value>Default: 1,000.</value>
    [Range(1, 1_000_000)]
    public int ArrayCopies { get; set; } = 1_000;

    /// <summary>Most control or fit points of one spline.</summary>
    /// <value>Default: 2,000.</value>
    [Range(4, 100_000)]
    public int SplinePoints { get; set; } = 2_000;

    /// <summary>Highest degree of a spline.</summary>
    /// <value>Default: 10.</value>
    [Range(3, 25)]
    public int SplineDegree { get; set; } = 10;

    /// <summary>Largest coordinate or length either way, in millimetres.</summary>
    /// <value>Default: 100,000 mm; beyond it a double no longer holds a nanometre safely.</value>
    [Range(1000.0, 1e7)]
    public double CoordinateMm { get; set; } = 1e5;

    /// <summary>Most samples of a lift curve over half a turn.</summary>
    /// <value>Default: 7,201, a step of 0.025 degrees.</value>
    [Range(19, 1_000_000)]
    public int Samples { get; set; } = 7201;

    /// <summary>Longest name of a pattern or a layer, in characters.</summary>
    /// <value>Default: 200.</value>
    [Range(1, 10_000)]
    public int NameLength { get; set; } = 200;

    /// <summary>Most faces a caller may name.</summary>
    /// <value>Default: 200.</value>
    [Range(1, 100_000)]
    public int FaceOverrides { get; set; } = 200;

    /// <summary>Requests, and items of streams, that are computed at the same time.</summary>
    /// <value>Default: 0, as many as the machine has cores.</value>
    [Range(0, 1024)]
    public int Parallel { get; set; }

    /// <summary>Requests, and items of streams, in flight at the service: computed or waiting for their turn.</summary>
    /// <value>Default: 256; beyond it the caller is told UNAVAILABLE and when to come again.</value>
    [Range(1, 100_000)]
    public int ItemsInFlight { get; set; } = 256;

    /// <summary>Items of one stream that are taken in and not yet answered.</summary>
    /// <value>Default: 16; what is sent beyond waits in the connection, and then at the sender.</value>
    [Range(1, 1_000)]
    public int StreamItems { get; set; } = 16;

    /// <summary>Most layers a caller may name as cut.</summary>
    /// <value>Default: 200.</value>
    [Range(1, 100_000)]
    public int CutLayers { get; set; } = 200;

    /// <summary>Most pins a caller may name for the holes of a drawing.</summary>
    /// <value>Default: 50.</value>
    [Range(1, 10_000)]
    public int PinDiameters { get; set; } = 50;

    /// <summary>Most passes of one simulation.</summary>
    /// <value>Default: 100; each is read and judged like a knife of its own.</value>
    [Range(1, 10_000)]
    public int Passes { get; set; } = 100;

    /// <summary>Most parts of one tolerance study.</summary>
    /// <value>Default: 20,000; each is drawn and solved like a knife of its own, in turns of 32.</value>
    [Range(1, 10_000_000)]
    public int Parts { get; set; } = 20_000;

    /// <summary>Longest time one request may take, in seconds; of a tolerance study each of its turns.</summary>
    /// <value>Default: 30.</value>
    [Range(0.001, 3600)]
    public double Seconds { get; set; } = 30;
}
