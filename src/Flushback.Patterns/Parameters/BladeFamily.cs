namespace Flushback.Patterns.Parameters;

/// <summary>Shapes of a blade, by the names of the trade (common practice, no source).</summary>
public enum BladeFamily
{
    /// <summary>The spine is cut back in a hollow to a point on the middle line; the edge sweeps up to it.</summary>
    ClipPoint,

    /// <summary>The spine falls in a long round to a point above the middle line.</summary>
    DropPoint,

    /// <summary>Spine and edge come to a point on the middle line in like rounds.</summary>
    SpearPoint,

    /// <summary>A straight edge; the spine comes down to it in a short round.</summary>
    Sheepsfoot,

    /// <summary>A straight edge; the spine comes down to it in a long, even round.</summary>
    Wharncliffe,

    /// <summary>A short spear whose rounds begin late.</summary>
    Pen,
}
