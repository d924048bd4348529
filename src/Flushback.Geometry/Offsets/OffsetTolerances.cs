namespace Flushback.Geometry.Offsets;

/// <summary>What counts as the same place while parallels are cut and joined. All in millimetres.</summary>
/// <remarks>
/// They decide only where curves touch or run together; everywhere else results are good to rounding. They grow with
/// coordinates beyond a metre, as rounding does.
/// </remarks>
internal readonly record struct OffsetTolerances(double TouchingMm)
{
    private const double TouchingWithinAMetreMm = 1e-9;
    private const double MetreMm = 1000;

    /// <summary>
    /// How much nearer to the original a piece may lie than asked. More than <see cref="TouchingMm"/>: what is kept in error
    /// leads nowhere and is found out, what is dropped in error leaves a gap.
    /// </summary>
    public double NearerMm => 4 * TouchingMm;

    /// <summary>Ends this near to one another are the same place; shorter pieces are none.</summary>
    public double JoinMm => 10 * TouchingMm;

    /// <summary>Mean width (area over half the perimeter) below which a loop encloses nothing.</summary>
    public double ThinMm => 100 * TouchingMm;

    /// <summary>The tolerances for curves within a box.</summary>
    public static OffsetTolerances For(Box box)
    {
        double farthest = Math.Max(
            Math.Max(Math.Abs(box.MinX), Math.Abs(box.MaxX)),
            Math.Max(Math.Abs(box.MinY), Math.Abs(box.MaxY))
        );
        return new OffsetTolerances(TouchingWithinAMetreMm * Math.Max(1, farthest / MetreMm));
    }
}
