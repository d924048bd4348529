namespace Flushback.Mechanism.Plans.Solving;

/// <summary>Tilts of a cut, front depth less rear depth, between which the least metal lies, as the trials so far tell.</summary>
/// <remarks>
/// Steps by the slope of the area overshoot where contacts change and it jumps, or where one travels along a small round and
/// it turns quickly. Then the place between the two sides is tried at which the slopes found there would meet, and the
/// middle in turn. Reading and the other face move as well, so a side that was seen long ago is looked at again.
/// </remarks>
internal sealed class TiltBracket
{
    // The first trials know neither the reading nor what the other face pays: they do not tell on which side they lie.
    private const int Untold = 2;

    private const int MostSameSide = 4;

    // How far beyond a side it is looked at again.
    private const double BeyondMm = 1e-5;

    // Sides so near to each other have a place between them where contacts change; so far beside it the contacts are certain.
    private const double NarrowMm = 1e-4;
    private const double BesideMm = 1e-6;

    private (double TiltMm, double Slope) _least = (double.NegativeInfinity, -1);
    private (double TiltMm, double Slope) _most = (double.PositiveInfinity, 1);
    private double _width = double.PositiveInfinity;
    private bool _isSlow;
    private bool _takesMiddle;
    private int _noted;
    private int _sameSide;
    private bool _wasLeast;
    private bool _looksAgain;
    private bool _hasLooked;
    private double? _heldAtMm;
    private TiltHeld? _heldBy;

    /// <summary>
    /// Tilts just beyond the place between both sides, where the trials have closed in on one; null before.
    /// </summary>
    public (double LeastMm, double MostMm)? Sides =>
        _width < NarrowMm ? (_least.TiltMm - BesideMm, _most.TiltMm + BesideMm) : null;

    /// <summary>True when the tilt is settled, here or at an end.</summary>
    public bool IsHeld => _heldAtMm is not null || _heldBy is not null;

    /// <summary>The end of the tilts at which it is settled; null when it is not.</summary>
    public TiltHeld? HeldBy => _heldBy;

    /// <summary>Settles the tilt: no other is tried from here on.</summary>
    public void HoldAt(double tiltMm) => (_heldAtMm, _heldBy) = (tiltMm, null);

    /// <summary>Settles that the tilt is held by one of its bounds, wherever that lies.</summary>
    public void HoldBy(TiltHeld end) => (_heldAtMm, _heldBy) = (null, end);

    /// <summary>
    /// True when the side not tried last has shown itself lately; otherwise it is looked at again, and this may be asked anew.
    /// </summary>
    public bool IsSure()
    {
        bool isSure = IsHeld || _hasLooked || _sameSide <= 1 || !double.IsFinite(_width);
        _looksAgain |= !isSure;
        return isSure;
    }

    /// <summary>Takes note of a trial: with a falling area the least lies at more tilt, with a rising one at less.</summary>
    public void Note(double tiltMm, double slope)
    {
        if (_noted++ < Untold || IsHeld)
        {
            return;
        }

        bool isLeast = slope < 0;
        _sameSide = isLeast == _wasLeast ? _sameSide + 1 : 0;
        _hasLooked |= _looksAgain && _sameSide == 0;
        _looksAgain = false;
        _wasLeast = isLeast;
        if (isLeast)
        {
            _least = (tiltMm, slope);
            _most = _most.TiltMm > tiltMm ? _most : (double.PositiveInfinity, 1);
        }
        else
        {
            _most = (tiltMm, slope);
            _least = _least.TiltMm < tiltMm ? _least : (double.NegativeInfinity, -1);
        }

        double width = _most.TiltMm - _least.TiltMm;
        _isSlow = width > _width / 2;
        _width = width;
    }

    /// <summary>The tilt to try next, where another is proposed.</summary>
    public double Within(double proposedMm)
    {
        if (_heldAtMm is { } held)
        {
            return held;
        }

        if (!double.IsFinite(_width))
        {
            return proposedMm;
        }

        _looksAgain |= _sameSide > MostSameSide && !_hasLooked;
        if (_looksAgain)
        {
            return _wasLeast ? _most.TiltMm + BeyondMm : _least.TiltMm - BeyondMm;
        }

        bool isInside = proposedMm > _least.TiltMm && proposedMm < _most.TiltMm;
        if (isInside && !_isSlow)
        {
            return proposedMm;
        }

        _takesMiddle = !_takesMiddle;
        double share = _takesMiddle ? 0.5 : _least.Slope / (_least.Slope - _most.Slope);
        return _least.TiltMm + (share * _width);
    }
}
