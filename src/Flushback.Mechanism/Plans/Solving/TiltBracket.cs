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

    private (double TiltMm, double Slope) _least = (double.NegativeInfinity, -1);
    private (double TiltMm, double Slope) _most = (double.PositiveInfinity, 1);
    private double _width = double.PositiveInfinity;
    private bool _isSlow;
    private bool _takesMiddle;
    private int _noted;
    private int _sameSide;
    private bool _wasLeast;

    /// <summary>Takes note of a trial: with a falling area the least lies at more tilt, with a rising one at less.</summary>
    public void Note(double tiltMm, double slope)
    {
        if (_noted++ < Untold)
        {
            return;
        }

        bool isLeast = slope < 0;
        _sameSide = isLeast == _wasLeast ? _sameSide + 1 : 0;
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
        if (!double.IsFinite(_width))
        {
            return proposedMm;
        }

        if (_sameSide > MostSameSide)
        {
            _sameSide = 0;
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
