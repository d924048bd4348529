namespace Flushback.Geometry.Offsets;

/// <summary>Tells which pieces of curves belong to the border that is looked for, by their middles.</summary>
internal interface IBorderTest
{
    /// <summary>False only for a piece that is none of the border for sure.</summary>
    public bool MayBeOnBorder(Point middle);

    /// <summary>True only for a piece of the border for sure; the unit normal points out of the area.</summary>
    public bool MustBeOnBorder(Point middle, Vector outwardNormal);
}
