using System.Collections.Immutable;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Pins;

/// <summary>Finds which pin each round hole is for.</summary>
/// <remarks>
/// Inch and metric pins lie nearer together than a hole may be off and still be meant for one of them, but farther apart
/// than the whole of H7; so the pins of a drawing are taken to be of one system: that of the pins asked about, or else the
/// one that most holes fit, or else that of the drawing's unit.
/// </remarks>
internal sealed class PinHoles
{
    /// <summary>A hole farther than this from every usual pin is no pin hole: half of what lies between two sizes of drill.</summary>
    private const double NearMm = 0.09;

    /// <summary>The same below a pin's diameter where holes are drawn small: the most that a reamer takes, and some.</summary>
    private const double NearBelowMm = 0.25;

    /// <summary>A hole as near as this share of its diameter to a pin that was asked about is for that pin.</summary>
    private const double NearAskedShare = 0.25;

    /// <summary>An inch and a metric pin nearer than this pass for each other.</summary>
    private const double TwinMm = 0.04;

    private readonly bool _isReamed;
    private readonly bool _isInch;
    private readonly ImmutableArray<Pin> _asked;

    public PinHoles(IEnumerable<CutContour> holes, InspectionSettings settings, bool isInchDrawing)
    {
        _isReamed = settings.HolesAreReamed;
        _asked = [.. settings.PinDiametersMm.Select(Pin.Of).Where(pin => pin.DiameterMm <= HoleLimits.LargestPinMm)];
        _isInch = _asked.IsEmpty ? SystemOf(holes, isInchDrawing) : _asked[0].IsInch;
    }

    /// <summary>How a hole fits the pin it is for; null when it is no pin hole.</summary>
    public PinFit? FitOf(CutContour hole)
    {
        if (hole.Circle is not { } circle)
        {
            return null;
        }

        if (!_asked.IsEmpty)
        {
            return Nearest(_asked.Where(pin => IsNearAsked(pin, circle.DiameterMm)), circle.DiameterMm);
        }

        PinFit? own = Nearest(UsualNear(circle.DiameterMm, _isInch), circle.DiameterMm);
        PinFit? other = Nearest(UsualNear(circle.DiameterMm, !_isInch), circle.DiameterMm);
        bool isOther = own is null || (!own.Fits && other is { Fits: true });
        return isOther ? other : own;
    }

    /// <summary>The pin of the other system that a hole may have been meant for; null when its own is beyond doubt.</summary>
    /// <remarks>
    /// There is doubt when the hole fits the other and not its own, when it lies between the two, and when it fits its own
    /// but the drawing's other holes are of the other system.
    /// </remarks>
    public PinFit? TwinOf(PinFit fit)
    {
        if (_isReamed)
        {
            // What is left to the reamer covers both systems: which pin it is shows when the hole is reamed.
            return null;
        }

        Pin own = Pin.Of(fit.PinMm);
        Pin? twin = Pin.Usual.FirstOrDefault(pin =>
            pin.IsInch != own.IsInch && Math.Abs(pin.DiameterMm - own.DiameterMm) < TwinMm
        );
        if (twin is null)
        {
            return null;
        }

        PinFit other = HoleLimits.Of(twin, fit.HoleMm, _isReamed);
        bool isForeign = _asked.IsEmpty && fit.Fits && own.IsInch != _isInch && !other.Fits;
        bool isBetween = !fit.Fits && !other.Fits && (fit.HoleMm > fit.HighestMm) == (other.HoleMm < other.LowestMm);
        return isForeign || isBetween || (!fit.Fits && other.Fits) ? other : null;
    }

    private bool SystemOf(IEnumerable<CutContour> holes, bool isInchDrawing)
    {
        int inch = 0;
        int metric = 0;
        foreach (CutContour hole in holes.Where(hole => hole.Circle is not null))
        {
            double diameter = hole.Circle!.Value.DiameterMm;
            bool fitsInch = Nearest(UsualNear(diameter, isInch: true), diameter) is { Fits: true };
            bool fitsMetric = Nearest(UsualNear(diameter, isInch: false), diameter) is { Fits: true };
            inch += fitsInch && !fitsMetric ? 1 : 0;
            metric += fitsMetric && !fitsInch ? 1 : 0;
        }

        return inch == metric ? isInchDrawing : inch > metric;
    }

    private IEnumerable<Pin> UsualNear(double holeMm, bool isInch) =>
        Pin.Usual.Where(pin =>
            pin.IsInch == isInch
            && holeMm - pin.DiameterMm <= NearMm
            && pin.DiameterMm - holeMm <= (_isReamed ? NearBelowMm : NearMm)
        );

    private static bool IsNearAsked(Pin pin, double holeMm) =>
        Math.Abs(holeMm - pin.DiameterMm) <= NearAskedShare * pin.DiameterMm;

    private PinFit? Nearest(IEnumerable<Pin> pins, double holeMm) =>
        pins.Select(pin => HoleLimits.Of(pin, holeMm, _isReamed))
            .MinBy(fit => (OffMm(fit), Math.Abs(fit.HoleMm - fit.PinMm)));

    private static double OffMm(PinFit fit) =>
        Math.Max(0, Math.Max(fit.LowestMm - fit.HoleMm, fit.HoleMm - fit.HighestMm));
}
