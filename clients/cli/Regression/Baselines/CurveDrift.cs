namespace Flushback.Cli.Regression.Baselines;

/// <summary>Where the lift between the stops is not as before, stretch by stretch.</summary>
/// <param name="FromDeg">First blade angle of the stretch, in degrees.</param>
/// <param name="ToDeg">Last blade angle of the stretch, in degrees.</param>
/// <param name="MostDeg">Where it is off most, in degrees.</param>
/// <param name="WasMm">The lift there before; null where none was read all along the stretch.</param>
/// <param name="IsMm">The lift there now; null where none is read any more all along the stretch.</param>
internal readonly record struct CurveDrift(int FromDeg, int ToDeg, int MostDeg, double? WasMm, double? IsMm)
{
    private double OffMm => Math.Abs((IsMm - WasMm) ?? 0);

    /// <summary>The stretches in which one curve is off another by more than that allows, in order.</summary>
    /// <remarks>
    /// Beyond the ends of either there is nothing to compare: how far the blade turns is told by where it rests. A gap between
    /// them is a difference.
    /// </remarks>
    public static IReadOnlyList<CurveDrift> Between(KeptCurve before, KeptCurve after)
    {
        List<CurveDrift> stretches = [];
        bool goesOn = false;
        for (int i = 0; i < KeptCurve.Angles.Count; i++)
        {
            int angle = KeptCurve.Angles[i];
            CurveDrift here = new(angle, angle, angle, before.LiftsMm[i], after.LiftsMm[i]);
            bool isOff = here.IsOff(i, before, after);
            if (isOff && goesOn && stretches[^1].IsLike(here))
            {
                stretches[^1] = stretches[^1].With(here);
            }
            else if (isOff)
            {
                stretches.Add(here);
            }

            goesOn = isOff;
        }

        return stretches;
    }

    private bool IsOff(int i, KeptCurve before, KeptCurve after) =>
        (WasMm, IsMm) switch
        {
            (null, null) => false,
            (null, _) => Spans(before, i),
            (_, null) => Spans(after, i),
            _ => OffMm > before.WithinMm,
        };

    private bool IsLike(CurveDrift other) => (WasMm is null, IsMm is null) == (other.WasMm is null, other.IsMm is null);

    private CurveDrift With(CurveDrift next) =>
        next.OffMm > OffMm ? next with { FromDeg = FromDeg } : this with { ToDeg = next.ToDeg };

    private static bool Spans(KeptCurve curve, int i) =>
        curve.LiftsMm.Take(i).Any(lift => lift is not null) && curve.LiftsMm.Skip(i).Any(lift => lift is not null);
}
