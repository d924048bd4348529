namespace Flushback.Mechanism.Plans.Solving;

/// <summary>Tilts of a cut, front depth less rear depth, between which the least metal lies, as the trials so far tell.</summary>
/// <remarks>
/// Where contacts change the slope of the area jumps, and steps by the slope of either side go to and fro: then the middle
/// between the two sides is tried. Reading and the other face move as well, so a side may turn out wrong and is given up.
/// </remarks>
internal sealed class TiltBracket
{
    // So often a side may be stepped over before the middle is taken.
    private const int MostFree = 3;

    private const int MostSameSide = 4;

    private double _least = double.NegativeInfinity;
    private double _most = double.PositiveInfinity;
    private double _width = double.PositiveInfinity;
    private int _slow;
    private int _sameSide;
    private bool _wasLeast;

    /// <summary>Takes note of a trial: with a falling area the least lies at more tilt, with a rising one at less.</summary>
    public void Note(double tiltMm, double slope)
    {
        bool isLeast = slope < 0;
        (_least, _most) = isLeast ? (tiltMm, _most) : (_least, tiltMm);
        _sameSide = isLeast == _wasLeast ? _sameSide + 1 : 0;
        _wasLeast = isLeast;

        // The other side has not shown itself for long: it may have moved.
        if (_least >= _most || _sameSide > MostSameSide)
        {
            _sameSide = 0;
            (_least, _most) = isLeast ? (_least, double.PositiveInfinity) : (double.NegativeInfinity, _most);
            (_width, _slow) = (double.PositiveInfinity, 0);
        }

        double width = _most - _least;
        _slow = width > _width / 2 ? _slow + 1 : 0;
        _width = width;
    }

    /// <summary>The tilt to try next, where another is proposed.</summary>
    public double Within(double proposedMm)
    {
        bool isInside = proposedMm > _least && proposedMm < _most;
        bool isFinite = double.IsFinite(_least) && double.IsFinite(_most);
        if (!isFinite || (isInside && _slow < MostFree))
        {
            return proposedMm;
        }

        return (_least + _most) / 2;
    }
}
